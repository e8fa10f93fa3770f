package control

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Wheel is a handwheel. Turns is full travel, clockwise; negative where counter-clockwise is more, as it
// is where a valve is opened.
type Wheel struct {
	At    draw.Point
	R     float64
	Turns float64
}

// Box is the wheel's square.
func (w Wheel) Box() draw.Rect { return draw.Around(w.At, 2*w.R, 2*w.R) }

// Still paints the wheel's shadow and seat.
func (w Wheel) Still(cv *draw.Canvas, th *theme.Theme) {
	cv.Fill(draw.Circle(w.At, w.R*0.36), draw.Solid(draw.Darker(th.PlateLo, 0.5)))
	cv.Fill(draw.Circle(w.At, w.R*0.33), draw.Conic{Center: w.At, Stops: draw.Even(th.SteelLo, th.Steel, th.SteelLo, th.Steel, th.SteelLo)})
	w.arrow(cv, th)
	cv.Shadow(w.rim(w.At), 0, w.R*0.11, w.R*0.2, draw.Fade(th.Shade, 0.75))
}

// arrow says which way is more.
func (w Wheel) arrow(cv *draw.Canvas, th *theme.Theme) {
	r, dir := w.R+8, 1.0
	if w.Turns < 0 {
		dir = -1
	}
	from, to := 20*dir, 62*dir
	cv.Fill(draw.Sector(w.At, r+1.2, r-1.2, min(from, to), max(from, to)), draw.Solid(th.Soft))
	cv.Fill(draw.Poly(w.At.Polar(r, to+9*dir), w.At.Polar(r+5, to), w.At.Polar(r-5, to)), draw.Solid(th.Soft))
}

func (w Wheel) rim(c draw.Point) *draw.Path { return draw.Ring(c, w.R, w.R*0.8) }

// Moving puts the wheel, turned.
func (w Wheel) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	box := draw.Around(draw.Point{}, 2*w.R+6, 2*w.R+6)
	art := sh.Get(fmt.Sprintf("wheel/%s/%v", th.Name, w.R), box, func(cv *draw.Canvas) { w.paint(cv, th) })
	f.Turn(art, w.At, v*w.Turns*360)
	cap := sh.Get(fmt.Sprintf("wheelcap/%s/%v", th.Name, w.R), draw.Around(draw.Point{}, w.R*0.5, w.R*0.5), func(cv *draw.Canvas) {
		r := w.R * 0.15
		cv.Fill(draw.Circle(draw.Point{}, r+1), draw.Solid(draw.Darker(th.SteelLo, 0.5)))
		cv.Fill(draw.Circle(draw.Point{}, r), draw.Radial{Center: draw.Pt(-r*0.4, -r*0.5), R: r * 1.7, Stops: draw.Even(th.SteelHi, th.Steel, th.SteelLo)})
	})
	f.Put(cap, w.At)
}

// paint draws the wheel with shading that is the same all round, so that it may turn.
func (w Wheel) paint(cv *draw.Canvas, th *theme.Theme) {
	o := draw.Point{}
	dark := draw.Darker(th.Grip, 0.55)
	for i := range 5 {
		a := float64(i) * 72
		spoke := draw.Poly(o.Polar(w.R*0.1, a-80), o.Polar(w.R*0.86, a-4.2), o.Polar(w.R*0.86, a+4.2), o.Polar(w.R*0.1, a+80))
		cv.Fill(draw.Stroke(draw.Polyline(o, o.Polar(w.R*0.86, a)), w.R*0.15), draw.Solid(dark))
		cv.Fill(spoke, draw.Solid(th.Grip))
		cv.Fill(draw.Segment(o.Polar(w.R*0.2, a), o.Polar(w.R*0.8, a), w.R*0.03), draw.Solid(draw.Fade(th.GripHi, 0.8)))
	}
	cv.Fill(draw.Circle(o, w.R*0.25), draw.Radial{Center: o, R: w.R * 0.25, Stops: draw.Even(th.Grip, th.GripHi, dark)})
	cv.Fill(w.rim(o), draw.Radial{Center: o, R: w.R, Stops: []draw.Stop{{T: 0.79, C: dark}, {T: 0.84, C: th.Grip}, {T: 0.895, C: th.GripHi}, {T: 0.95, C: th.Grip}, {T: 1, C: dark}}})
	for i := range 20 { // finger notches
		cv.Fill(draw.Circle(o.Polar(w.R*1.015, float64(i)*18+9), w.R*0.035), draw.Solid(draw.Fade(dark, 0.9)))
	}
	pip := o.Polar(w.R*0.895, 0)
	cv.Fill(draw.Circle(pip, w.R*0.085), draw.Solid(dark))
	cv.Fill(draw.Circle(pip, w.R*0.065), draw.Solid(th.Text))
}

// Drag turns about the hub.
func (w Wheel) Drag(from, to draw.Point, v float64) float64 {
	return v + turned(w.At, from, to, w.R*0.2)/360/w.Turns
}

// Click does nothing: a wheel is turned.
func (w Wheel) Click(draw.Point, float64) (float64, bool) { return 0, false }

// Round is true.
func (w Wheel) Round() bool { return true }
