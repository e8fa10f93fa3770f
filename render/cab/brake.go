package cab

import (
	"fmt"

	"steadyneedle/render/control"
	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Brake is the parking brake's valve: a square knob on its corner; pulled out it is set, pushed in it
// is released.
type Brake struct {
	At draw.Point
	R  float64
}

var _ control.Face = Brake{}

// Box is the knob.
func (b Brake) Box() draw.Rect { return draw.Around(b.At, 2*b.R, 2*b.R) }

// Still paints the seat and, round it, which way is which.
func (b Brake) Still(cv *draw.Canvas, th *theme.Theme) {
	cv.Shadow(draw.Circle(b.At, b.R*0.56), 0, 2, 6, draw.Fade(th.Shade, 0.6))
	cv.Fill(draw.Circle(b.At, b.R*0.56), draw.Conic{Center: b.At, Stops: draw.Even(th.SteelHi, th.Steel, th.SteelLo, th.Steel, th.SteelHi, th.SteelLo, th.Steel, th.SteelLo, th.SteelHi)})
	cv.Fill(draw.Circle(b.At, b.R*0.46), draw.Solid(draw.Darker(th.PlateLo, 0.65)))
}

// diamond is the knob's outline with rounded corners.
func diamond(r float64) *draw.Path {
	o, k := draw.Point{}, r*0.2
	p := new(draw.Path)
	for i := range 4 {
		a := float64(i) * 90
		c := o.Polar(r-k*1.414, a)
		p.Arc(c, k, a-45, a+45)
	}
	return p.Close()
}

// Moving puts the knob: larger and with a longer shadow where it stands out.
func (b Brake) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	set := v >= 0.5
	art := sh.Get(fmt.Sprintf("brake/%s/%v", th.Name, set), draw.Around(draw.Point{}, 3*b.R, 3*b.R), func(cv *draw.Canvas) {
		r, drop, word := b.R*0.84, 3.0, "in"
		if set {
			r, drop, word = b.R, 10, "SET"
		}
		o := draw.Point{}
		yellow := draw.Hex(0xf2c21a)
		cv.Shadow(diamond(r), 0, drop, drop*2, draw.Fade(th.Shade, 0.85))
		cv.Fill(diamond(r), draw.Solid(draw.Darker(yellow, 0.6)))
		in := r - 2
		for i := range 4 { // four faces of a flat pyramid, lit from above
			a := float64(i) * 90
			shade := [...]draw.Color{draw.Darker(yellow, 0.1), draw.Darker(yellow, 0.3), draw.Darker(yellow, 0.08), draw.Lighter(yellow, 0.3)}[i]
			face := new(draw.Path).Move(o).Line(o.Polar(in*0.93, a)).Line(o.Polar(in*0.93, a+90)).Close()
			cv.Fill(face, draw.Solid(shade))
		}
		cv.Fill(diamond(r*0.74), draw.Linear{From: draw.Pt(-r, -r), To: draw.Pt(r, r), Stops: draw.Even(draw.Lighter(yellow, 0.28), yellow, draw.Darker(yellow, 0.12))})
		cv.Middle(o, draw.Center, draw.Style{Size: 17, Weight: draw.Bold, Color: draw.Hex(0x14181a)}, word)
	})
	f.Put(art, b.At)
}

// Drag leaves it.
func (b Brake) Drag(_, _ draw.Point, v float64) float64 { return v }

// Click pulls it out or pushes it in.
func (b Brake) Click(_ draw.Point, v float64) (float64, bool) {
	if v < 0.5 {
		return 1, true
	}
	return 0, true
}

// Round is true.
func (b Brake) Round() bool { return true }
