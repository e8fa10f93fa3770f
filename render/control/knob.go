package control

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Knob is turned: clockwise is more. Sweep is full travel in degrees, beginning at bearing Zero.
type Knob struct {
	At    draw.Point
	R     float64
	Zero  float64
	Sweep float64
	Marks int // marks around a knob of less than one turn
}

// Box is the knob's square.
func (k Knob) Box() draw.Rect { return draw.Around(k.At, 2*k.R, 2*k.R) }

// Still paints the well, the marks round it and the shadow.
func (k Knob) Still(cv *draw.Canvas, th *theme.Theme) {
	for i := range k.Marks {
		a := k.Zero + k.Sweep*float64(i)/float64(k.Marks-1)
		cv.Fill(draw.Segment(k.At.Polar(k.R+4, a), k.At.Polar(k.R+9, a), 2), draw.Solid(th.Soft))
	}
	if k.Marks == 0 { // many turns: a ring of arrows says which way is more
		k.arrow(cv, th)
	}
	cv.Fill(draw.Circle(k.At, k.R+2), draw.Solid(draw.Darker(th.PlateLo, 0.55)))
	cv.Shadow(draw.Circle(k.At, k.R), 0, k.R*0.12, k.R*0.25, draw.Fade(th.Shade, 0.8))
}

func (k Knob) arrow(cv *draw.Canvas, th *theme.Theme) {
	r := k.R + 9
	cv.Fill(draw.Sector(k.At, r+1.2, r-1.2, -50, 44), draw.Solid(th.Soft))
	tip := k.At.Polar(r, 54)
	cv.Fill(draw.Poly(tip, k.At.Polar(r+5.5, 43), k.At.Polar(r-5.5, 43)), draw.Solid(th.Soft))
}

// Moving puts the knob, turned, with a cap that keeps its light.
func (k Knob) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	key := fmt.Sprintf("knob/%s/%v", th.Name, k.R)
	art := sh.Get(key, draw.Around(draw.Point{}, 2*k.R+6, 2*k.R+6), func(cv *draw.Canvas) { k.skirt(cv, th) })
	f.Turn(art, k.At, k.Zero+v*k.Sweep)
	top := sh.Get(key+"/cap", draw.Around(draw.Point{}, 2*k.R, 2*k.R), func(cv *draw.Canvas) {
		r := k.R * 0.62
		o := draw.Point{}
		cv.Fill(draw.Circle(o, r+1), draw.Solid(draw.Darker(th.SteelLo, 0.6)))
		cv.Fill(draw.Circle(o, r), draw.Conic{Center: o, Stops: draw.Even(th.SteelHi, th.Steel, th.SteelLo, th.Steel, th.SteelHi, th.Steel, th.SteelLo, th.Steel, th.SteelHi)})
		cv.Fill(draw.Circle(o, r*0.86), draw.Linear{From: draw.Pt(-r, -r), To: draw.Pt(r, r), Stops: draw.Even(draw.Fade(th.SteelHi, 0.5), draw.Fade(th.SteelLo, 0.4))})
	})
	f.Put(top, k.At)
	line := sh.Get(key+"/mark", draw.Around(draw.Point{}, 12, 2*k.R), func(cv *draw.Canvas) {
		mark := draw.Segment(draw.Pt(0, -k.R+2), draw.Pt(0, -k.R*0.66), max(4, k.R*0.1))
		cv.Fill(mark, draw.Solid(th.Caution))
	})
	f.Turn(line, k.At, k.Zero+v*k.Sweep)
}

// skirt is the knurled body.
func (k Knob) skirt(cv *draw.Canvas, th *theme.Theme) {
	o := draw.Point{}
	dark := draw.Hex(0x0d1012)
	cv.Fill(draw.Circle(o, k.R), draw.Radial{Center: o, R: k.R, Stops: []draw.Stop{{T: 0.6, C: draw.Lighter(dark, 0.22)}, {T: 0.86, C: draw.Lighter(dark, 0.1)}, {T: 1, C: dark}}})
	n := max(16, int(k.R*0.9))
	for i := range n {
		a := 360 * float64(i) / float64(n)
		cv.Fill(draw.Segment(o.Polar(k.R, a), o.Polar(k.R*0.82, a), 1.6), draw.Solid(draw.Fade(th.SteelHi, 0.3)))
	}
}

// Drag turns about the middle.
func (k Knob) Drag(from, to draw.Point, v float64) float64 {
	return v + turned(k.At, from, to, k.R*0.15)/k.Sweep
}

// Click does nothing: a knob is turned.
func (k Knob) Click(draw.Point, float64) (float64, bool) { return 0, false }

// Round is true.
func (k Knob) Round() bool { return true }
