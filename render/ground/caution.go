package ground

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
	"steadyneedle/sim/world"
)

// cautions stand beside what is in reach, at the step itself; the same in every mode.
var cautions = map[world.Place]string{
	world.Walking:  "Mind traffic, and wear what makes you seen.",
	world.Panel:    "Stand clear of couplings, caps and charged hose. Bleed or drain before you open one.",
	world.Wheels:   "Mind traffic. Both chocks stand before the throttle is touched.",
	world.RearStep: "Stand clear of charged hose. Never open a coupling under pressure: drain first.",
	world.Hydrant:  "Stand clear of caps and couplings. Never open one under pressure: bleed first.",
	world.TankTop:  "Three points of contact when you climb.",
	world.Round:    "Mind traffic, and stand clear of couplings and charged hose.",
}

// caution writes the place's caution at the right end of the heading at height y.
func (g *Ground) caution(cv *draw.Canvas, th *theme.Theme, y float64) {
	text := cautions[g.stands]
	if text == "" {
		return
	}
	st := draw.Style{Size: 15, Weight: draw.Bold, Color: th.Caution}
	x := g.box.Right() - 8
	cv.Middle(draw.Pt(x, y), draw.Right, st, text)
	c := draw.Pt(x-st.Width(cv.Scale, text)-16, y)
	cv.Fill(draw.Poly(c.Add(draw.Pt(0, -9)), c.Add(draw.Pt(9, 7)), c.Add(draw.Pt(-9, 7))), draw.Solid(th.Caution))
	cv.Middle(c.Add(draw.Pt(0, 1.5)), draw.Center, draw.Style{Size: 15, Weight: draw.Bold, Color: th.Room}, "!")
}
