package control

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Toggle is a bat switch with two positions: up is on.
type Toggle struct {
	At draw.Point
}

const (
	batReach = 21.0
	batSeat  = 13.0
)

// Box is the switch with its bat.
func (t Toggle) Box() draw.Rect { return draw.Around(t.At, 40, 60) }

// Still paints the seat, and "on" above.
func (t Toggle) Still(cv *draw.Canvas, th *theme.Theme) {
	seat := draw.Around(t.At, 34, 34)
	cv.Fill(draw.Round(seat, 5), draw.Solid(draw.Darker(th.PlateLo, 0.45)))
	cv.Fill(draw.Circle(t.At, batSeat), draw.Conic{Center: t.At, Stops: draw.Even(th.SteelHi, th.SteelLo, th.Steel, th.SteelLo, th.SteelHi)})
	cv.Fill(draw.Circle(t.At, batSeat-4), draw.Solid(draw.Darker(th.Groove, 0.4)))
	up := t.At.Add(draw.Pt(0, -26))
	cv.Fill(draw.Box(draw.Around(up, 2.4, 8)), draw.Solid(th.Soft))
	down := t.At.Add(draw.Pt(0, 26))
	cv.Fill(draw.Ring(down, 4, 2.2), draw.Solid(th.Soft))
}

// Moving puts the bat, up or down.
func (t Toggle) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	up := v >= 0.5
	key, dir := "bat/down/"+th.Name, 1.0
	if up {
		key, dir = "bat/up/"+th.Name, -1
	}
	art := sh.Get(key, draw.Around(draw.Point{}, 34, 70), func(cv *draw.Canvas) {
		tip := draw.Pt(0, dir*batReach)
		bat := draw.Poly(draw.Pt(-4, 0), draw.Pt(4, 0), tip.Add(draw.Pt(7.5, 0)), tip.Add(draw.Pt(-7.5, 0)))
		cv.Shadow(bat, 2, 4, 6, draw.Fade(th.Shade, 0.7))
		r := draw.Rect{X: -8, W: 16}
		cv.Fill(bat, alongX(r, metal(th)))
		cv.Fill(draw.Circle(draw.Point{}, 4.5), alongX(r, metal(th)))
		cv.Fill(draw.Circle(tip, 7.5), draw.Radial{Center: tip.Add(draw.Pt(-2.5, -3)), R: 12, Stops: draw.Even(th.SteelHi, th.Steel, th.SteelLo)})
	})
	f.Put(art, t.At)
}

// Drag throws the switch when the bat is drawn far enough.
func (t Toggle) Drag(from, to draw.Point, v float64) float64 { return v - (to.Y-from.Y)/(2*batReach) }

// Click throws it.
func (t Toggle) Click(_ draw.Point, v float64) (float64, bool) { return flip(v), true }

// Round is false.
func (t Toggle) Round() bool { return false }
