// Package lamp draws indicator lamps, lit and dark. Each has its own shape as well as its color, so
// that nothing depends on color alone: round green, diamond amber, triangle red.
package lamp

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Kind is what a lamp means.
type Kind uint8

const (
	Ready   Kind = iota // green, round: as it should be
	Notice              // amber, diamond: something is at work
	Warning             // red, triangle: look here
)

func (k Kind) color(th *theme.Theme) draw.Color {
	return [...]draw.Color{th.Green, th.Amber, th.Red}[k]
}

func (k Kind) lens(r float64) *draw.Path {
	o := draw.Point{}
	switch k {
	case Notice:
		return draw.Poly(draw.Pt(0, -r*1.12), draw.Pt(r*1.12, 0), draw.Pt(0, r*1.12), draw.Pt(-r*1.12, 0))
	case Warning:
		return draw.Poly(draw.Pt(0, -r*1.1), draw.Pt(r*1.12, r*0.85), draw.Pt(-r*1.12, r*0.85))
	}
	return draw.Circle(o, r*0.92)
}

// State is how a lamp stands.
type State uint8

const (
	Unlit State = iota
	Lit
	Test // lit by the lamp test: a bright collar says that it means nothing
)

// Of is the state of a lamp whose signal is on or off.
func Of(on bool) State {
	if on {
		return Lit
	}
	return Unlit
}

// Put places a lamp of radius r at p.
func Put(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, p draw.Point, r float64, k Kind, s State) {
	key := fmt.Sprintf("lamp/%s/%d/%v/%d", th.Name, k, r, s)
	art := sh.Get(key, draw.Around(draw.Point{}, r*5, r*5), func(cv *draw.Canvas) { paint(cv, th, r, k, s) })
	f.Put(art, p)
}

func paint(cv *draw.Canvas, th *theme.Theme, r float64, k Kind, s State) {
	lens, col := k.lens(r), k.color(th)
	if s != Unlit {
		cv.Fill(draw.Circle(draw.Point{}, r*2.4), draw.Radial{R: r * 2.4, Stops: []draw.Stop{{T: 0, C: draw.Fade(col, 0.55)}, {T: 0.45, C: draw.Fade(col, 0.28)}, {T: 1, C: draw.Fade(col, 0)}}})
	}
	box := draw.Rect{X: -r, Y: -r, W: 2 * r, H: 2 * r}
	seat, rim := draw.Stroke(lens, r*0.62), draw.Stroke(lens, r*0.46)
	cv.Shadow(seat, 0, 2, 5, draw.Fade(th.Shade, 0.7))
	cv.Fill(seat, draw.Solid(draw.Darker(th.SteelLo, 0.55)))
	if s == Test {
		cv.Fill(rim, draw.Solid(th.Text))
	} else {
		cv.Fill(rim, draw.Down(box, th.SteelHi, th.Steel, th.SteelLo))
	}
	cv.Fill(draw.Stroke(lens, r*0.12), draw.Solid(draw.Darker(th.SteelLo, 0.6)))
	if s == Unlit {
		cv.Fill(lens, draw.Radial{Center: draw.Pt(-r*0.3, -r*0.4), R: r * 1.6, Stops: draw.Even(draw.Mix(th.Unlit, col, 0.26), draw.Mix(th.Unlit, col, 0.08), draw.Darker(th.Unlit, 0.4))})
		cv.Fill(draw.Circle(draw.Pt(-r*0.24, -r*0.26), r*0.2), draw.Solid(draw.Fade(th.SteelHi, 0.45)))
		return
	}
	cv.Fill(lens, draw.Radial{R: r * 1.25, Stops: draw.Even(draw.Lighter(col, 0.75), col, draw.Darker(col, 0.12))})
}
