package control

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Lever is a quarter-turn valve lever: across the pipe it is shut, along the pipe it is open.
type Lever struct {
	At draw.Point
	R  float64
	// Shut is the lever's bearing when shut; it opens clockwise by a quarter turn.
	Shut float64
}

// Box is the square in which the lever swings.
func (l Lever) Box() draw.Rect { return draw.Around(l.At, 2*l.R, 2*l.R) }

// Still paints the valve body and the two end marks.
func (l Lever) Still(cv *draw.Canvas, th *theme.Theme) {
	r := l.R * 0.5
	cv.Fill(draw.Circle(l.At, r+2), draw.Solid(draw.Darker(th.PlateLo, 0.6)))
	cv.Fill(draw.Circle(l.At, r), draw.Conic{Center: l.At, Stops: draw.Even(th.SteelLo, draw.Darker(th.SteelLo, 0.4), th.SteelLo, draw.Darker(th.SteelLo, 0.5), th.SteelLo)})
	for i, a := range []float64{l.Shut, l.Shut + 90} {
		p := l.At.Polar(l.R+4, a)
		if i == 0 {
			cv.Fill(draw.Ring(p, 3.4, 1.8), draw.Solid(th.Soft))
		} else {
			cv.Fill(draw.Circle(p, 3.2), draw.Solid(th.Soft))
		}
	}
	cv.Fill(draw.Sector(l.At, l.R+4.8, l.R+3.2, l.Shut+14, l.Shut+76), draw.Solid(draw.Fade(th.Soft, 0.5)))
}

// Moving puts the lever.
func (l Lever) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	key := fmt.Sprintf("lever/%s/%v", th.Name, l.R)
	box := draw.Around(draw.Point{}, l.R*0.9, 2*l.R+8)
	arm := draw.Round(draw.Rect{X: -l.R * 0.15, Y: -l.R, W: l.R * 0.3, H: l.R * 1.22}, l.R*0.15)
	shadow := sh.Get(key+"/shadow", box, func(cv *draw.Canvas) { cv.Shadow(arm, 0, 0, 6, draw.Fade(th.Shade, 0.6)) })
	art := sh.Get(key, box, func(cv *draw.Canvas) {
		b := draw.Rect{X: -l.R * 0.15, Y: -l.R, W: l.R * 0.3, H: l.R * 1.22}
		cv.Fill(arm, draw.Solid(draw.Darker(th.SteelLo, 0.5)))
		in := b.Inset(1)
		cv.Fill(draw.Round(in, l.R*0.15), draw.Across(in, th.Steel, th.SteelHi, th.Steel))
		tip := draw.Rect{X: in.X, Y: in.Y, W: in.W, H: l.R * 0.42}
		cv.Fill(draw.Round(tip, l.R*0.15), draw.Across(tip, th.Grip, th.GripHi, th.Grip))
	})
	a := l.Shut + 90*v
	f.Turn(shadow, l.At.Add(draw.Pt(1.5, 3.5)), a)
	f.Turn(art, l.At, a)
	nut := sh.Get(key+"/nut", draw.Around(draw.Point{}, l.R*0.5, l.R*0.5), func(cv *draw.Canvas) {
		var hex []draw.Point
		for i := range 6 {
			hex = append(hex, (draw.Point{}).Polar(l.R*0.19, float64(i)*60))
		}
		cv.Fill(draw.Poly(hex...), draw.Linear{From: draw.Pt(-5, -5), To: draw.Pt(5, 5), Stops: draw.Even(th.SteelHi, th.SteelLo)})
	})
	f.Put(nut, l.At)
}

// Drag swings about the nut.
func (l Lever) Drag(from, to draw.Point, v float64) float64 {
	return v + turned(l.At, from, to, l.R*0.15)/90
}

// Click throws it to the other end.
func (l Lever) Click(_ draw.Point, v float64) (float64, bool) { return flip(v), true }

// Round is true.
func (l Lever) Round() bool { return true }
