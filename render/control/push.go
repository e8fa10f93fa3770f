package control

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Push is a button that acts while it is held.
type Push struct {
	At    draw.Point
	R     float64
	Color draw.Color
	Name  string // of the color, for keeping the art
}

// Box is the button's square.
func (p Push) Box() draw.Rect { return draw.Around(p.At, 2*p.R+6, 2*p.R+6) }

// Still paints the collar.
func (p Push) Still(cv *draw.Canvas, th *theme.Theme) {
	cv.Shadow(draw.Circle(p.At, p.R+3), 0, 2, 6, draw.Fade(th.Shade, 0.7))
	cv.Fill(draw.Circle(p.At, p.R+3), draw.Conic{Center: p.At, Stops: draw.Even(th.SteelHi, th.Steel, th.SteelLo, th.Steel, th.SteelLo, th.Steel, th.SteelHi)})
	cv.Fill(draw.Circle(p.At, p.R), draw.Solid(draw.Darker(th.Groove, 0.5)))
}

// Moving puts the button, in or out.
func (p Push) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	in := v >= 0.5
	key := "push/" + th.Name + p.Name
	if in {
		key += "/in"
	}
	art := sh.Get(key+size(p.R), draw.Around(draw.Point{}, 2*p.R+4, 2*p.R+4), func(cv *draw.Canvas) {
		r, col := p.R-1.5, p.Color
		stops := draw.Even(draw.Lighter(col, 0.28), col, draw.Darker(col, 0.35))
		if in {
			r -= 1.5
			stops = draw.Even(draw.Darker(col, 0.45), draw.Darker(col, 0.2))
		}
		cv.Fill(draw.Circle(draw.Point{}, r), draw.Linear{From: draw.Pt(0, -r), To: draw.Pt(0, r), Stops: stops})
		cv.Fill(draw.Circle(draw.Point{}, r*0.72), draw.Linear{From: draw.Pt(0, -r), To: draw.Pt(0, r), Stops: draw.Even(draw.Darker(col, 0.15), draw.Lighter(col, 0.12))})
	})
	f.Put(art, p.At)
}

// Drag leaves it as it is.
func (p Push) Drag(_, _ draw.Point, v float64) float64 { return v }

// Click does nothing more: pressing and letting go have already been told.
func (p Push) Click(draw.Point, float64) (float64, bool) { return 0, false }

// Round is true.
func (p Push) Round() bool { return true }
