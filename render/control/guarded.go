package control

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Guarded is a bat switch under a hinged cover: down and closed it is off; the cover stands open while
// the switch is on, so that its state shows from afar and no sleeve throws it.
type Guarded struct {
	At draw.Point
}

// Box is the switch with its open cover.
func (g Guarded) Box() draw.Rect { return draw.Around(g.At, 46, 72) }

// Still paints the seat and the hinge.
func (g Guarded) Still(cv *draw.Canvas, th *theme.Theme) {
	seat := draw.Around(g.At.Add(draw.Pt(0, 4)), 40, 56)
	cv.Shadow(draw.Round(seat, 5), 0, 2, 6, draw.Fade(th.Shade, 0.6))
	cv.Fill(draw.Round(seat, 5), draw.Solid(draw.Darker(th.PlateLo, 0.5)))
	cv.Fill(draw.Frame(seat, 5, 1), draw.Solid(draw.Fade(th.Edge, 0.6)))
	hinge := draw.Around(g.At.Add(draw.Pt(0, -22)), 44, 7)
	cv.Fill(draw.Round(hinge, 3), alongY(hinge, metal(th)))
}

// Moving puts the cover, and the bat below it while it is open.
func (g Guarded) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	on := v >= 0.5
	key := "guard/shut/" + th.Name
	if on {
		key = "guard/open/" + th.Name
	}
	art := sh.Get(key, draw.Around(draw.Point{}, 64, 96), func(cv *draw.Canvas) {
		if on {
			g.open(cv, th)
			return
		}
		g.shut(cv, th)
	})
	f.Put(art, g.At)
}

func (g Guarded) open(cv *draw.Canvas, th *theme.Theme) {
	lid := draw.Rect{X: -17, Y: -38, W: 34, H: 16} // seen from its edge, standing up
	cv.Shadow(draw.Round(lid, 4), 0, 3, 6, draw.Fade(th.Shade, 0.7))
	cv.Fill(draw.Round(lid, 4), draw.Down(lid, th.GripHi, th.Grip, draw.Darker(th.Grip, 0.45)))
	c := draw.Pt(0, 8)
	cv.Fill(draw.Circle(c, 11), draw.Conic{Center: c, Stops: draw.Even(th.SteelHi, th.SteelLo, th.Steel, th.SteelLo, th.SteelHi)})
	cv.Fill(draw.Circle(c, 7), draw.Solid(draw.Darker(th.Groove, 0.4)))
	tip := draw.Pt(0, -9)
	cv.Fill(draw.Poly(draw.Pt(-3.5, 8), draw.Pt(3.5, 8), tip.Add(draw.Pt(6, 0)), tip.Add(draw.Pt(-6, 0))), alongX(draw.Rect{X: -7, W: 14}, metal(th)))
	cv.Fill(draw.Circle(tip, 6), draw.Radial{Center: tip.Add(draw.Pt(-2, -2.5)), R: 10, Stops: draw.Even(th.SteelHi, th.Steel, th.SteelLo)})
}

func (g Guarded) shut(cv *draw.Canvas, th *theme.Theme) {
	lid := draw.Rect{X: -17, Y: -20, W: 34, H: 50}
	cv.Shadow(draw.Round(lid, 5), 0, 4, 8, draw.Fade(th.Shade, 0.75))
	cv.Fill(draw.Round(lid, 5), draw.Solid(draw.Darker(th.Grip, 0.55)))
	in := lid.Inset(1.2)
	cv.Fill(draw.Round(in, 4), draw.Down(in, th.GripHi, th.Grip, th.Grip, draw.Darker(th.Grip, 0.35)))
	rib := draw.Rect{X: -7, Y: -12, W: 14, H: 32}
	cv.Fill(draw.Round(rib, 4), draw.Across(rib, draw.Darker(th.Grip, 0.3), th.GripHi, draw.Darker(th.Grip, 0.3)))
	lip := draw.Rect{X: -13, Y: 23, W: 26, H: 5}
	cv.Fill(draw.Round(lip, 2), draw.Down(lip, th.GripHi, draw.Darker(th.Grip, 0.3)))
}

// Drag lifts the cover and throws the switch, or the other way round.
func (g Guarded) Drag(from, to draw.Point, v float64) float64 { return v - (to.Y-from.Y)/50 }

// Click throws it.
func (g Guarded) Click(_ draw.Point, v float64) (float64, bool) { return flip(v), true }

// Round is false.
func (g Guarded) Round() bool { return false }
