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

// Still paints the valve body and the two end marks: a ring where the lever is shut, a dot where it is
// open, and the sweep between.
func (l Lever) Still(cv *draw.Canvas, th *theme.Theme) {
	r := l.R * 0.52
	cv.Shadow(draw.Circle(l.At, r+2), 0, 2, 5, draw.Fade(th.Shade, 0.6))
	cv.Fill(draw.Circle(l.At, r+2), draw.Solid(draw.Darker(th.PlateLo, 0.6)))
	cv.Fill(draw.Circle(l.At, r), draw.Conic{Center: l.At, Stops: draw.Even(th.Steel, th.SteelLo, draw.Darker(th.SteelLo, 0.4), th.SteelLo, th.Steel, draw.Darker(th.SteelLo, 0.3), th.Steel)})
	cv.Fill(draw.Ring(l.At, r*0.8, r*0.7), draw.Solid(draw.Fade(th.Shade, 0.45)))
	shut, open := l.At.Polar(l.R+4.5, l.Shut), l.At.Polar(l.R+4.5, l.Shut+90)
	cv.Fill(draw.Ring(shut, 4.2, 2.4), draw.Solid(th.Soft))
	cv.Fill(draw.Circle(open, 4), draw.Solid(th.Soft))
	cv.Fill(draw.Sector(l.At, l.R+5.4, l.R+3.6, l.Shut+14, l.Shut+76), draw.Solid(draw.Fade(th.Soft, 0.55)))
}

// arm is the lever's outline, pointing up: narrow at the nut, wider toward the grip.
func (l Lever) arm(grow float64) *draw.Path {
	a, b, r := l.R*0.13+grow, l.R*0.18+grow, l.R
	p := new(draw.Path).Arc(draw.Pt(0, r*0.14), a+r*0.06, 90, 270)
	return p.Line(draw.Pt(-b, -r+b)).Arc(draw.Pt(0, -r+b), b, -90, 90).Close()
}

// Moving puts the lever.
func (l Lever) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	key := fmt.Sprintf("lever/%s/%v", th.Name, l.R)
	box := draw.Around(draw.Point{}, l.R*0.9, 2*l.R+8)
	shadow := sh.Get(key+"/shadow", box, func(cv *draw.Canvas) { cv.Shadow(l.arm(0), 0, 0, 6, draw.Fade(th.Shade, 0.65)) })
	art := sh.Get(key, box, func(cv *draw.Canvas) {
		cv.Fill(l.arm(0), draw.Solid(draw.Darker(th.SteelLo, 0.6)))
		w := draw.Rect{X: -l.R * 0.18, W: l.R * 0.36}
		cv.Fill(l.arm(-1), draw.Across(w, th.SteelLo, th.SteelHi, th.Steel, th.SteelLo))
		b := l.R*0.18 - 1
		tip := new(draw.Path).Move(draw.Pt(-b, -l.R*0.46)).Line(draw.Pt(-b, -l.R+b+1)).Arc(draw.Pt(0, -l.R+b+1), b, -90, 90).Line(draw.Pt(b, -l.R*0.46)).Close()
		cv.Fill(tip, draw.Across(w, draw.Darker(th.Grip, 0.25), th.GripHi, th.Grip, draw.Darker(th.Grip, 0.35)))
		for k := range 3 { // ribs of the grip
			y := -l.R * (0.54 + 0.12*float64(k))
			cv.Fill(draw.Box(draw.Rect{X: -b + 1, Y: y, W: 2*b - 2, H: 1.3}), draw.Solid(draw.Fade(th.Shade, 0.35)))
		}
	})
	a := l.Shut + 90*v
	f.Turn(shadow, l.At.Add(draw.Pt(1.5, 3.5)), a)
	f.Turn(art, l.At, a)
	nut := sh.Get(key+"/nut", draw.Around(draw.Point{}, l.R*0.6, l.R*0.6), func(cv *draw.Canvas) {
		hex := func(r float64) *draw.Path {
			var p []draw.Point
			for i := range 6 {
				p = append(p, (draw.Point{}).Polar(r, float64(i)*60))
			}
			return draw.Poly(p...)
		}
		cv.Fill(hex(l.R*0.22), draw.Solid(draw.Darker(th.SteelLo, 0.5)))
		cv.Fill(hex(l.R*0.19), draw.Linear{From: draw.Pt(-5, -5), To: draw.Pt(5, 5), Stops: draw.Even(th.SteelHi, th.SteelLo)})
		cv.Fill(draw.Circle(draw.Point{}, l.R*0.08), draw.Solid(draw.Darker(th.SteelLo, 0.3)))
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
