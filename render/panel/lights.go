package panel

import (
	"fmt"

	"steadyneedle/render/control"
	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// hoods are the work lights along the panel's upper edge.
func (p *Panel) hoods() [3]draw.Rect {
	var h [3]draw.Rect
	for i, x := range [3]float64{236, 640, 1030} {
		h[i] = draw.Rect{X: p.at(x, 0).X - 70, Y: p.box.Y, W: 140, H: 9}
	}
	return h
}

// putLights puts the hoods, and the light that they throw down the plate while they burn.
func (p *Panel) putLights(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, on bool) {
	if on {
		const reach = 260.0
		box := draw.Rect{X: p.box.X + 2, Y: p.box.Y + 2, W: p.box.W - 4, H: reach}
		f.Put(sh.Get(fmt.Sprintf("glow/%s/%v", th.Name, p.box), box, func(cv *draw.Canvas) {
			for _, h := range p.hoods() {
				c := draw.Pt(h.Center().X, h.Bottom())
				cone := draw.Poly(draw.Pt(h.X, h.Bottom()-4), draw.Pt(h.Right(), h.Bottom()-4), draw.Pt(h.Right()+150, box.Bottom()), draw.Pt(h.X-150, box.Bottom()))
				cv.Fill(cone, draw.Radial{Center: c, R: reach, Stops: draw.Even(th.Glow, draw.Fade(th.Glow, float64(th.Glow.A)/255*0.45), draw.Fade(th.Glow, 0))})
			}
		}), draw.Point{})
	}
	for _, h := range p.hoods() {
		art := sh.Get(fmt.Sprintf("hood/%s/%v", th.Name, on), draw.Rect{X: -6, W: h.W + 12, H: 22}, func(cv *draw.Canvas) {
			hood := draw.Rect{W: h.W, H: 7}
			cv.Shadow(draw.Round(hood, 3), 0, 3, 6, draw.Fade(th.Shade, 0.8))
			cv.Fill(draw.Round(hood, 3), draw.Down(hood, th.Steel, th.SteelLo, draw.Darker(th.SteelLo, 0.4)))
			strip := draw.Rect{X: 8, Y: 6, W: h.W - 16, H: 3}
			lens := draw.Darker(th.Unlit, 0.2)
			if on {
				lens = draw.Lighter(th.Amber, 0.75)
			}
			cv.Fill(draw.Round(strip, 1.5), draw.Solid(lens))
		})
		f.Put(art, draw.Pt(h.X, h.Y))
	}
}

// testButton lights every lamp of the panel, to see that none is broken.
func (p *Panel) testButton() control.Push {
	return control.Push{At: p.at(722, 268), R: 12, Color: draw.Hex(0x3a4248), Name: "gray"}
}

// TestBox is where the lamp test is pressed.
func (p *Panel) TestBox() draw.Rect { return p.testButton().Box() }

func (p *Panel) putTest(sh *stage.Shelf, f *stage.Frame, th *theme.Theme) {
	in := 0.0
	if p.Test {
		in = 1
	}
	p.testButton().Moving(sh, f, th, in)
}
