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

// Still paints the seat.
func (b Brake) Still(cv *draw.Canvas, th *theme.Theme) {
	cv.Fill(draw.Circle(b.At, b.R*0.5), draw.Solid(draw.Darker(th.PlateLo, 0.6)))
	cv.Fill(draw.Circle(b.At, b.R*0.42), draw.Conic{Center: b.At, Stops: draw.Even(th.SteelLo, th.Steel, th.SteelLo, th.Steel, th.SteelLo)})
}

// Moving puts the knob: larger and with a longer shadow where it stands out.
func (b Brake) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	set := v >= 0.5
	art := sh.Get(fmt.Sprintf("brake/%s/%v", th.Name, set), draw.Around(draw.Point{}, 3*b.R, 3*b.R), func(cv *draw.Canvas) {
		r, drop, word := b.R*0.8, 3.0, "off"
		if set {
			r, drop, word = b.R*0.97, 9, "SET"
		}
		o := draw.Point{}
		yellow := draw.Hex(0xf2c21a)
		p := draw.Poly(o.Polar(r, 0), o.Polar(r, 90), o.Polar(r, 180), o.Polar(r, 270))
		cv.Shadow(p, 0, drop, drop*2, draw.Fade(th.Shade, 0.8))
		cv.Fill(p, draw.Solid(draw.Darker(yellow, 0.5)))
		in := r - 2
		cv.Fill(draw.Poly(o.Polar(in, 0), o.Polar(in, 90), o.Polar(in, 180), o.Polar(in, 270)),
			draw.Linear{From: draw.Pt(-r, -r), To: draw.Pt(r, r), Stops: draw.Even(draw.Lighter(yellow, 0.35), yellow, draw.Darker(yellow, 0.2))})
		cv.Middle(o, draw.Center, draw.Style{Size: 16, Weight: draw.Bold, Color: draw.Hex(0x14181a)}, word)
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
