package control

import (
	"strconv"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Face is how a control looks and how a hand moves it. Positions are shares of full travel, 0 to 1.
type Face interface {
	// Box is where it is grabbed, in units.
	Box() draw.Rect
	// Still paints what never moves into the page.
	Still(cv *draw.Canvas, th *theme.Theme)
	// Moving puts what moves, standing at v.
	Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64)
	// Drag is the position after the pointer went from one point to another while it was v.
	Drag(from, to draw.Point, v float64) float64
	// Click is the position wanted by a press and release without a move; false: none.
	Click(at draw.Point, v float64) (float64, bool)
	// Round reports whether the focus ring is a circle.
	Round() bool
}

// turned is how far a drag about c went, in degrees, clockwise positive. Close to the center a hand
// has no lever and nothing turns.
func turned(c, from, to draw.Point, dead float64) float64 {
	if from.Sub(c).Len() < dead || to.Sub(c).Len() < dead {
		return 0
	}
	d := c.Bearing(to) - c.Bearing(from)
	switch {
	case d > 180:
		d -= 360
	case d < -180:
		d += 360
	}
	return d
}

// flip is the other end.
func flip(v float64) float64 {
	if v < 0.5 {
		return 1
	}
	return 0
}

// metal is the gradient of a bright round bar that lies across or along r.
func metal(th *theme.Theme) []draw.Stop {
	return []draw.Stop{{T: 0, C: th.SteelLo}, {T: 0.22, C: th.SteelHi}, {T: 0.5, C: th.Steel}, {T: 0.8, C: th.SteelLo}, {T: 1, C: draw.Darker(th.SteelLo, 0.45)}}
}

func alongX(r draw.Rect, s []draw.Stop) draw.Paint {
	return draw.Linear{From: draw.Pt(r.X, 0), To: draw.Pt(r.Right(), 0), Stops: s}
}

func alongY(r draw.Rect, s []draw.Stop) draw.Paint {
	return draw.Linear{From: draw.Pt(0, r.Y), To: draw.Pt(0, r.Bottom()), Stops: s}
}

// size is a length as part of an art's name.
func size(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
