package debrief

import (
	"fmt"
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/report"
	"steadyneedle/render/theme"
	"steadyneedle/sim/world"
)

// View is what a timeline shows.
type View uint8

const (
	Pressures View = iota // pressures and engine speed, with the line's band
	FlowHeat              // flow, and temperatures
	Positions             // lamps and valves
	viewCount
)

var viewNames = [...]string{Pressures: "pressures, speed", FlowHeat: "flow, heat", Positions: "lamps, valves"}

// String names the view.
func (v View) String() string { return viewNames[v] }

// Next is the view after this one, around to the first.
func (v View) Next() View { return (v + 1) % viewCount }

// sides are what a view draws on its left axis and on its right, in either system of units, with the
// least top of each axis.
var sides = [...][2]map[string]float64{
	Pressures: {{"psi": 200, "kPa": 1500}, {"rpm": 3000}},
	FlowHeat:  {{"gpm": 400, "L/min": 1500}, {"°F": 250, "°C": 125}},
	Positions: {{"lamp": 1, "open": 1}, nil},
}

// Plot is a timeline in a box.
type Plot struct {
	Box   draw.Rect
	Sheet *report.Sheet
	View  View
}

const (
	padL = 62.0
	padR = 20.0
	padT = 40.0
	padB = 28.0
)

// Area is where time runs, from left to right.
func (p Plot) Area() draw.Rect {
	left := padL
	if p.View == Positions {
		left = laneNames
	}
	return draw.Rect{X: p.Box.X + left, Y: p.Box.Y + padT, W: p.Box.W - left - padR - 50, H: p.Box.H - padT - padB}
}

// X is where a moment stands.
func (p Plot) X(at world.Tick) float64 {
	a := p.Area()
	return a.X + a.W*math.Min(1, float64(at)/math.Max(1, float64(p.Sheet.Length)))
}

// At is the moment under a point.
func (p Plot) At(x float64) world.Tick {
	a := p.Area()
	t := (x - a.X) / a.W
	return world.Tick(max(0, min(1, t)) * float64(p.Sheet.Length))
}

// shown are the series of the view.
func (p Plot) shown() []report.Series {
	var list []report.Series
	for _, s := range p.Sheet.Series {
		for side := range sides[p.View] {
			if sides[p.View][side][s.Unit] > 0 {
				list = append(list, s)
			}
		}
	}
	return list
}

// Draw paints the whole plot.
func (p Plot) Draw(cv *draw.Canvas, th *theme.Theme) {
	cv.Fill(draw.Round(p.Box, 10), draw.Solid(th.Card))
	cv.Fill(draw.Frame(p.Box, 10, 1), draw.Solid(th.Rule))
	p.minutes(cv, th)
	if p.View == Positions {
		p.lanes(cv, th)
	} else {
		p.curves(cv, th)
	}
	for _, f := range p.Sheet.Findings {
		p.flag(cv, th, f)
	}
}

func (p Plot) curves(cv *draw.Canvas, th *theme.Theme) {
	p.grid(cv, th)
	if p.View == Pressures {
		p.band(cv, th)
	}
	x := p.Area().X
	for i, s := range p.shown() {
		col := theme.Series[i%len(theme.Series)]
		p.line(cv, &s, col, i)
		for _, d := range dashes(draw.Polyline(draw.Pt(x, p.Box.Y+16), draw.Pt(x+26, p.Box.Y+16)), i) {
			cv.Fill(draw.Stroke(d, 3), draw.Solid(col))
		}
		st := draw.Style{Size: 15, Color: th.CardText}
		name := fmt.Sprintf("%s (%s)", s.Name, s.Unit)
		cv.Middle(draw.Pt(x+34, p.Box.Y+16), draw.Left, st, name)
		x += 34 + st.Width(cv.Scale, name) + 26
	}
}

// axis is one side of the plot.
type axis struct {
	unit string
	top  float64
}

// axes are the left one and the right one. The left grows with what is drawn.
func (p Plot) axes() (left, right axis) {
	for _, s := range p.shown() {
		if least := sides[p.View][1][s.Unit]; least > 0 {
			right = axis{s.Unit, least}
			continue
		}
		left.unit, left.top = s.Unit, max(left.top, sides[p.View][0][s.Unit])
		for _, v := range s.V {
			if v > left.top {
				left.top = math.Ceil(v/100) * 100
			}
		}
	}
	return left, right
}

func (p Plot) y(v, hi float64) float64 {
	a := p.Area()
	return a.Bottom() - a.H*max(-0.02, min(1.04, v/hi))
}

func (p Plot) grid(cv *draw.Canvas, th *theme.Theme) {
	a := p.Area()
	left, right := p.axes()
	soft := draw.Style{Size: 15, Color: th.CardSoft}
	for i := range 5 {
		k := float64(i) / 4
		y := cv.Snap(p.y(k, 1))
		cv.Fill(draw.Box(draw.Rect{X: a.X, Y: y, W: a.W, H: 1}), draw.Solid(th.Rule))
		cv.Middle(draw.Pt(a.X-8, y), draw.Right, soft, fmt.Sprintf("%.0f", k*left.top))
		cv.Middle(draw.Pt(a.Right()+8, y), draw.Left, soft, fmt.Sprintf("%.0f", k*right.top))
	}
	cv.Middle(draw.Pt(p.Box.X+12, p.Box.Y+16), draw.Left, soft, left.unit)
	cv.Middle(draw.Pt(p.Box.Right()-14, p.Box.Y+16), draw.Right, soft, right.unit)
}

func (p Plot) minutes(cv *draw.Canvas, th *theme.Theme) {
	a := p.Area()
	soft := draw.Style{Size: 15, Color: th.CardSoft}
	total := p.Sheet.Length.Seconds()
	step := 60.0
	for total/step > 12 {
		step *= 2
	}
	for s := 0.0; s <= total; s += step {
		x := cv.Snap(p.X(world.TicksIn(s)))
		cv.Fill(draw.Box(draw.Rect{X: x, Y: a.Bottom(), W: 1, H: 5}), draw.Solid(th.CardSoft))
		cv.Middle(draw.Pt(x, a.Bottom()+15), draw.Center, soft, fmt.Sprintf("%.0f min", s/60))
	}
}

func (p Plot) band(cv *draw.Canvas, th *theme.Theme) {
	b := p.Sheet.Band
	if b == nil || b.To <= b.From {
		return
	}
	left, _ := p.axes()
	r := draw.Rect{X: p.X(b.From), Y: p.y(b.Hi, left.top)}
	r.W, r.H = p.X(b.To)-r.X, p.y(b.Lo, left.top)-r.Y
	cv.Fill(draw.Box(r), draw.Solid(draw.Fade(theme.Series[0], 0.2)))
	cv.Fill(draw.Box(draw.Rect{X: r.X, Y: r.Y, W: r.W, H: 1.2}), draw.Solid(draw.Fade(theme.Series[0], 0.7)))
	cv.Fill(draw.Box(draw.Rect{X: r.X, Y: r.Bottom(), W: r.W, H: 1.2}), draw.Solid(draw.Fade(theme.Series[0], 0.7)))
}

// dashes breaks a line in the manner of series n, so that color is not all.
func dashes(path *draw.Path, n int) []*draw.Path {
	if n == 0 {
		return []*draw.Path{path}
	}
	on := []float64{0, 9, 3}[n%3]
	return draw.Dashes(path, on, on*0.6+1)
}

// line draws a series; gaps (NaN) stay gaps.
func (p Plot) line(cv *draw.Canvas, s *report.Series, col draw.Color, n int) {
	side, right := p.axes()
	if s.Unit == right.unit {
		side = right
	}
	width := 1.8
	if n == 0 {
		width = 2.4
	}
	var run []draw.Point
	flush := func() {
		if len(run) > 1 {
			for _, d := range dashes(draw.Polyline(run...), n) {
				cv.Fill(draw.Stroke(d, width), draw.Solid(col))
			}
		}
		run = run[:0]
	}
	step := max(1, len(s.V)/int(max(1, p.Area().W*cv.Scale)))
	for i := 0; i < len(s.V); i += step {
		if math.IsNaN(s.V[i]) {
			flush()
			continue
		}
		run = append(run, draw.Pt(p.X(world.TicksIn(float64(i))), p.y(s.V[i], side.top)))
	}
	flush()
}

// flag marks a finding above the plot.
func (p Plot) flag(cv *draw.Canvas, th *theme.Theme, f report.Finding) {
	a := p.Area()
	x := p.X(f.At)
	col := Color(th, f.Severity)
	cv.Fill(draw.Box(draw.Rect{X: cv.Snap(x), Y: a.Y, W: 1, H: a.H}), draw.Solid(draw.Fade(col, 0.7)))
	c := draw.Pt(x, a.Y-2)
	cv.Fill(draw.Poly(c.Add(draw.Pt(0, 7)), c.Add(draw.Pt(-6, -4)), c.Add(draw.Pt(6, -4))), draw.Solid(col))
}

// Color is a severity's color; the word always stands beside it.
func Color(th *theme.Theme, severity string) draw.Color {
	switch severity {
	case "unsafe":
		return th.Bad
	case "error":
		return th.Caution
	case "clean":
		return th.Good
	}
	return th.CardSoft
}
