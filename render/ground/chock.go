package ground

import (
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
)

// chock is one wheel chock as it stands.
type chock struct {
	wheel  int     // 0 stowed, 1 left rear, 2 left front
	gap    float64 // in from the tire
	skew   float64 // degrees off square
	locked bool
}

func chockOf(e *view.Eyes, name string) chock {
	return chock{
		wheel: int(math.Floor(e.Named(name) + 0.01)), gap: math.Round(e.Named(name + "_gap")),
		skew: math.Round(e.Named(name+"_skew")/3) * 3, locked: e.Named(name+"_lock") >= 0.5,
	}
}

// paintChocks draws both chocks as they stand: before and behind their wheel, near or away from the tire,
// square or turned. One that is not locked open is dull.
func (g *Ground) paintChocks(cv *draw.Canvas, th *theme.Theme, s scene, x float64) {
	g.paintChock(cv, th, s.front, x, 1)
	g.paintChock(cv, th, s.rear, x, -1)
}

func (g *Ground) paintChock(cv *draw.Canvas, th *theme.Theme, c chock, x, side float64) {
	if c.wheel == 0 {
		return
	}
	wx := x + rearWheel
	if c.wheel == 2 {
		wx = x + frontWheel
	}
	p := draw.Pt(wx+side*(31+c.gap*1.4), g.plan.Y+rigTop+1)
	turn := 90*side + c.skew
	tip, back := p.Polar(-9, turn), p.Polar(9, turn)
	col := th.Caution
	if !c.locked {
		col = draw.Darker(th.Caution, 0.45)
	}
	wedge := draw.Poly(tip.Polar(7, turn+90), tip.Polar(7, turn-90), back.Polar(7, turn-90), back.Polar(7, turn+90))
	cv.Shadow(wedge, 1, 2, 4, draw.Fade(th.Shade, 0.7))
	cv.Fill(wedge, draw.Linear{From: tip, To: back, Stops: draw.Even(draw.Darker(col, 0.5), col)})
	cv.Fill(draw.Segment(back.Polar(7, turn+90), back.Polar(7, turn-90), 2.4), draw.Solid(draw.Lighter(col, 0.4)))
	for k := range 2 { // ribs
		q := p.Polar(float64(k)*6-3, turn)
		cv.Fill(draw.Segment(q.Polar(6, turn+90), q.Polar(6, turn-90), 1.2), draw.Solid(draw.Darker(col, 0.55)))
	}
}
