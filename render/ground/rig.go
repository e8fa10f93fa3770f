package ground

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
)

// paintRig draws the apparatus from above, its front to the right.
func (g *Ground) paintRig(cv *draw.Canvas, th *theme.Theme, s scene, x float64) {
	r := draw.Rect{X: x, Y: g.plan.Y + rigTop, W: rigW, H: rigH}
	cv.Shadow(draw.Round(r, 8), 0, 4, 14, draw.Fade(th.Shade, 0.7))
	for _, wx := range []float64{62, rigW - 70} {
		for _, wy := range []float64{r.Y - 4, r.Bottom() - 8} {
			cv.Fill(draw.Round(draw.Rect{X: x + wx - 20, Y: wy, W: 40, H: 12}, 4), draw.Solid(draw.Hex(0x0a0c0d)))
		}
	}
	body := draw.Rect{X: r.X, Y: r.Y, W: r.W - 92, H: r.H}
	cv.Fill(draw.Round(body, 5), draw.Down(body, draw.Lighter(th.Rig, 0.15), th.Rig, draw.Darker(th.Rig, 0.25)))
	front := draw.Rect{X: r.Right() - 96, Y: r.Y + 1, W: 96, H: r.H - 2}
	cv.Fill(draw.Round(front, 12), draw.Down(front, draw.Hex(0xf0ece2), draw.Hex(0xd8d2c4)))
	glass := draw.Rect{X: r.Right() - 26, Y: r.Y + 8, W: 12, H: r.H - 16}
	cv.Fill(draw.Round(glass, 4), draw.Solid(draw.Hex(0x26343d)))
	bar := draw.Rect{X: r.Right() - 66, Y: r.Y + 10, W: 11, H: r.H - 20}
	cv.Fill(draw.Round(bar, 3), draw.Down(bar, th.Red, draw.Hex(0x2b6fb8), th.Red))
	bed := draw.Rect{X: r.X + 8, Y: r.Y + 10, W: 92, H: r.H - 20}
	cv.Fill(draw.Round(bed, 3), draw.Solid(draw.Hex(0x1a1f22)))
	for i := range 6 {
		y := bed.Y + 5 + float64(i)*7
		cv.Fill(draw.Round(draw.Rect{X: bed.X + 4, Y: y, W: bed.W - 8, H: 4.5}, 2), draw.Solid(draw.Darker(th.Hose, 0.15)))
	}
	tank := draw.Rect{X: r.X + rigW*0.36 - 14, Y: r.Y + 12, W: 28, H: r.H - 24}
	cv.Fill(draw.Round(tank, 4), draw.Solid(th.SteelLo))
	pump := draw.Rect{X: r.X + rigW*0.44, Y: r.Y, W: rigW * 0.24, H: r.H}
	cv.Fill(draw.Box(pump), draw.Down(pump, th.Steel, th.SteelLo))
	panel := draw.Rect{X: pump.X, Y: r.Y - 2, W: pump.W, H: 7}
	cv.Fill(draw.Round(panel, 2), draw.Solid(draw.Hex(0x30383e)))
	step := draw.Rect{X: r.X - 8, Y: r.Y + 4, W: 8, H: r.H - 8}
	cv.Fill(draw.Box(step), draw.Solid(th.SteelLo))
	if s.doors { // an open compartment sticks out
		cv.Fill(draw.Box(draw.Rect{X: r.X + 112, Y: r.Bottom(), W: 4, H: 16}), draw.Solid(th.GripHi))
		cv.Fill(draw.Box(draw.Rect{X: r.X + 144, Y: r.Bottom(), W: 4, H: 16}), draw.Solid(th.GripHi))
	}
}
