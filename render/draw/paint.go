package draw

import (
	"math"
	"sort"
)

// Paint gives a color to every point of a filled path.
type Paint interface {
	At(x, y float64) Color
}

// Solid is one color everywhere.
type Solid Color

// At is the color.
func (s Solid) At(float64, float64) Color { return Color(s) }

// Stop is a color at a share of the way, 0 to 1.
type Stop struct {
	T float64
	C Color
}

// ramp looks a color up between stops that rise in T.
func ramp(stops []Stop, t float64) Color {
	i := sort.Search(len(stops), func(i int) bool { return stops[i].T >= t })
	switch {
	case i == 0:
		return stops[0].C
	case i == len(stops):
		return stops[i-1].C
	}
	a, b := stops[i-1], stops[i]
	return Mix(a.C, b.C, (t-a.T)/(b.T-a.T))
}

// Even spreads colors evenly from 0 to 1.
func Even(colors ...Color) []Stop {
	stops := make([]Stop, len(colors))
	for i, c := range colors {
		stops[i] = Stop{float64(i) / float64(max(1, len(colors)-1)), c}
	}
	return stops
}

// Linear changes color along the way from From to To.
type Linear struct {
	From, To Point
	Stops    []Stop
}

// At is the color at a point.
func (l Linear) At(x, y float64) Color {
	d := l.To.Sub(l.From)
	t := ((x-l.From.X)*d.X + (y-l.From.Y)*d.Y) / (d.X*d.X + d.Y*d.Y)
	return ramp(l.Stops, t)
}

// Down is a gradient from the top of r to its bottom.
func Down(r Rect, colors ...Color) Linear {
	return Linear{Pt(r.X, r.Y), Pt(r.X, r.Bottom()), Even(colors...)}
}

// Across is a gradient from the left of r to its right.
func Across(r Rect, colors ...Color) Linear {
	return Linear{Pt(r.X, r.Y), Pt(r.Right(), r.Y), Even(colors...)}
}

// Radial changes color with the distance from Center, up to R.
type Radial struct {
	Center Point
	R      float64
	Stops  []Stop
}

// At is the color at a point.
func (r Radial) At(x, y float64) Color {
	return ramp(r.Stops, math.Hypot(x-r.Center.X, y-r.Center.Y)/r.R)
}

// Conic changes color with the direction from Center, clockwise from straight up: turned metal.
type Conic struct {
	Center Point
	Stops  []Stop
}

// At is the color at a point.
func (c Conic) At(x, y float64) Color {
	t := math.Atan2(x-c.Center.X, c.Center.Y-y) / (2 * math.Pi)
	return ramp(c.Stops, t-math.Floor(t))
}
