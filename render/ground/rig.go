package ground

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
)

// wheels of the apparatus, from its rear end.
const (
	rearWheel  = 62.0
	frontWheel = rigW - 70
)

// paintRig draws the apparatus from above, its front to the right: hose bed, tank and tower, pump house
// with the panel on its left side, cab.
func (g *Ground) paintRig(cv *draw.Canvas, th *theme.Theme, s scene, x float64) {
	r := draw.Rect{X: x, Y: g.plan.Y + rigTop, W: rigW, H: rigH}
	cv.Shadow(draw.Round(r, 8), 3, 6, 16, draw.Fade(th.Shade, 0.75))
	g.wheels(cv, r)
	body := draw.Rect{X: r.X, Y: r.Y, W: r.W - 92, H: r.H}
	cv.Fill(draw.Round(body, 5), draw.Solid(draw.Darker(th.Rig, 0.5)))
	cv.Fill(draw.Round(body.Inset(1), 4), draw.Down(body, draw.Lighter(th.Rig, 0.22), th.Rig, th.Rig, draw.Darker(th.Rig, 0.3)))
	for _, y := range []float64{r.Y + 4, r.Bottom() - 6} { // a stripe along each side
		cv.Fill(draw.Box(draw.Rect{X: r.X + 4, Y: y, W: body.W - 8, H: 1.6}), draw.Solid(draw.Fade(draw.Hex(0xf4f3ee), 0.75)))
	}
	g.bed(cv, th, draw.Rect{X: r.X + 8, Y: r.Y + 10, W: 88, H: r.H - 20})
	tank := draw.Rect{X: r.X + rigW*0.36 - 13, Y: r.Y + 11, W: 27, H: r.H - 22}
	cv.Fill(draw.Round(tank, 4), draw.Across(tank, th.SteelLo, th.Steel, th.SteelLo))
	cv.Fill(draw.Frame(tank, 4, 1.2), draw.Solid(draw.Darker(th.SteelLo, 0.45)))
	g.pumpHouse(cv, th, draw.Rect{X: r.X + rigW*0.43, Y: r.Y, W: rigW * 0.25, H: r.H})
	g.cabRoof(cv, th, r, s.lights)
	step := draw.Rect{X: r.X - 9, Y: r.Y + 4, W: 9, H: r.H - 8}
	cv.Fill(draw.Box(step), draw.Across(step, draw.Darker(th.SteelLo, 0.4), th.Steel))
	for y := step.Y + 4; y < step.Bottom()-2; y += 5 { // tread plate
		cv.Fill(draw.Box(draw.Rect{X: step.X + 2, Y: y, W: 5, H: 1}), draw.Solid(draw.Fade(th.Shade, 0.5)))
	}
	if s.doors { // open compartments stick out
		for _, dx := range []float64{112, 144} {
			door := draw.Rect{X: r.X + dx, Y: r.Bottom() - 1, W: 4, H: 17}
			cv.Shadow(draw.Box(door), 2, 2, 4, draw.Fade(th.Shade, 0.7))
			cv.Fill(draw.Box(door), draw.Across(door, th.GripHi, th.Grip))
		}
	}
}

func (g *Ground) wheels(cv *draw.Canvas, r draw.Rect) {
	rubber := draw.Hex(0x0a0c0d)
	for _, wx := range []float64{rearWheel, frontWheel} {
		for _, wy := range []float64{r.Y - 4, r.Bottom() - 8} {
			tire := draw.Rect{X: r.X + wx - 20, Y: wy, W: 40, H: 12}
			cv.Fill(draw.Round(tire, 4), draw.Solid(rubber))
			for k := range 6 {
				cv.Fill(draw.Box(draw.Rect{X: tire.X + 4 + float64(k)*6, Y: tire.Y + 1, W: 1.4, H: 10}), draw.Solid(draw.Lighter(rubber, 0.2)))
			}
		}
	}
}

// bed is the hose bed: flat loads, folded to and fro.
func (g *Ground) bed(cv *draw.Canvas, th *theme.Theme, r draw.Rect) {
	cv.Fill(draw.Round(r, 3), draw.Solid(draw.Hex(0x14181b)))
	for i := range 6 {
		y := r.Y + 4 + float64(i)*6
		col := draw.Darker(th.Hose, 0.18)
		if i > 3 {
			col = draw.Darker(th.Supply, 0.25)
		}
		fold := draw.Rect{X: r.X + 4, Y: y, W: r.W - 8, H: 4.6}
		cv.Fill(draw.Round(fold, 2.3), draw.Down(fold, draw.Lighter(col, 0.2), col, draw.Darker(col, 0.35)))
	}
	cv.Fill(draw.Frame(r, 3, 1.2), draw.Solid(draw.Fade(th.SteelHi, 0.5)))
}

// pumpHouse holds the pump; the panel is the plate on its upper, left side.
func (g *Ground) pumpHouse(cv *draw.Canvas, th *theme.Theme, r draw.Rect) {
	cv.Fill(draw.Box(r), draw.Down(r, th.SteelHi, th.Steel, th.SteelLo))
	for x := r.X + 9; x < r.Right()-4; x += 8 {
		cv.Fill(draw.Box(draw.Rect{X: x, Y: r.Y + 12, W: 1, H: r.H - 24}), draw.Solid(draw.Fade(th.Shade, 0.25)))
	}
	cv.Fill(draw.Box(draw.Rect{X: r.X, Y: r.Y, W: 1.5, H: r.H}), draw.Solid(draw.Fade(th.Shade, 0.6)))
	cv.Fill(draw.Box(draw.Rect{X: r.Right() - 1.5, Y: r.Y, W: 1.5, H: r.H}), draw.Solid(draw.Fade(th.Shade, 0.6)))
	panel := draw.Rect{X: r.X + 2, Y: r.Y - 3, W: r.W - 4, H: 8}
	cv.Fill(draw.Round(panel, 2), draw.Down(panel, draw.Hex(0x4a545b), draw.Hex(0x262d32)))
	for i := range 5 { // its dials and outlets, as far as they show from above
		c := draw.Pt(panel.X+8+float64(i)*14, panel.Y+2.5)
		cv.Fill(draw.Circle(c, 2.2), draw.Solid(th.Face))
	}
}

// cabRoof is the cab with windshield, light bar and, while they burn, its warning lights' glow: steady
// on the plan, which nothing should make flash.
func (g *Ground) cabRoof(cv *draw.Canvas, th *theme.Theme, r draw.Rect, lights bool) {
	front := draw.Rect{X: r.Right() - 96, Y: r.Y + 1, W: 96, H: r.H - 2}
	white := draw.Hex(0xefeade)
	if th.Name != "day" && !th.Plain {
		white = draw.Hex(0x8f8c84)
	}
	cv.Fill(draw.Round(front, 12), draw.Solid(draw.Darker(white, 0.5)))
	cv.Fill(draw.Round(front.Inset(1), 11), draw.Down(front, white, draw.Darker(white, 0.06), draw.Darker(white, 0.2)))
	glass := draw.Rect{X: r.Right() - 26, Y: r.Y + 7, W: 13, H: r.H - 14}
	cv.Fill(draw.Round(glass, 5), draw.Down(glass, draw.Hex(0x5b7484), draw.Hex(0x1d2930)))
	for _, y := range []float64{r.Y - 5, r.Bottom() - 1} { // mirrors
		cv.Fill(draw.Round(draw.Rect{X: r.Right() - 24, Y: y, W: 6, H: 6}, 2), draw.Solid(draw.Hex(0x15191c)))
	}
	for _, y := range []float64{r.Y + 6, r.Bottom() - 13} { // headlights
		cv.Fill(draw.Round(draw.Rect{X: r.Right() - 5, Y: y, W: 4, H: 7}, 1.5), draw.Solid(draw.Hex(0xfff3cf)))
	}
	bar := draw.Rect{X: r.Right() - 66, Y: r.Y + 9, W: 11, H: r.H - 18}
	if lights {
		c := bar.Center()
		for i, col := range []draw.Color{th.Red, draw.Hex(0x4f9dff)} {
			p := c.Add(draw.Pt(0, float64(i)*26-13))
			cv.Fill(draw.Circle(p, 30), draw.Radial{Center: p, R: 30, Stops: draw.Even(draw.Fade(col, 0.5), draw.Fade(col, 0))})
		}
	}
	cv.Shadow(draw.Round(bar, 3), 1, 2, 4, draw.Fade(th.Shade, 0.6))
	red, blue := draw.Darker(th.Red, 0.45), draw.Hex(0x27517f)
	if lights {
		red, blue = draw.Lighter(th.Red, 0.25), draw.Hex(0x8fc1ff)
	}
	cv.Fill(draw.Round(bar, 3), draw.Down(bar, red, red, blue, blue))
	cv.Fill(draw.Frame(bar, 3, 1), draw.Solid(draw.Fade(th.Shade, 0.6)))
}
