package debrief

import (
	"fmt"
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/report"
	"steadyneedle/render/theme"
	"steadyneedle/sim/world"
)

// Plot is a timeline in a box.
type Plot struct {
	Box   draw.Rect
	Sheet *report.Sheet
}

const (
	padL = 62.0
	padR = 20.0
	padT = 34.0
	padB = 28.0

	rpmTop = 3000.0
)

func (p Plot) area() draw.Rect {
	return draw.Rect{X: p.Box.X + padL, Y: p.Box.Y + padT, W: p.Box.W - padL - padR - 50, H: p.Box.H - padT - padB}
}

// X is where a moment stands.
func (p Plot) X(at world.Tick) float64 {
	a := p.area()
	return a.X + a.W*math.Min(1, float64(at)/math.Max(1, float64(p.Sheet.Length)))
}

// At is the moment under a point.
func (p Plot) At(x float64) world.Tick {
	a := p.area()
	t := (x - a.X) / a.W
	return world.Tick(max(0, min(1, t)) * float64(p.Sheet.Length))
}

// Draw paints the whole plot.
func (p Plot) Draw(cv *draw.Canvas, th *theme.Theme) {
	cv.Fill(draw.Round(p.Box, 10), draw.Solid(th.Card))
	cv.Fill(draw.Frame(p.Box, 10, 1), draw.Solid(th.Rule))
	p.grid(cv, th)
	p.band(cv, th)
	x := p.area().X
	for i, line := range p.Sheet.Main() {
		s := &line
		col := theme.Series[i%len(theme.Series)]
		p.line(cv, s, col, i)
		cv.Fill(draw.Box(draw.Rect{X: x, Y: p.Box.Y + 14, W: 22, H: 4}), draw.Solid(col))
		st := draw.Style{Size: 15, Color: th.CardText}
		name := fmt.Sprintf("%s (%s)", s.Name, s.Unit)
		cv.Middle(draw.Pt(x+30, p.Box.Y+16), draw.Left, st, name)
		x += 30 + st.Width(cv.Scale, name) + 26
	}
	for _, f := range p.Sheet.Findings {
		p.flag(cv, th, f)
	}
}

// top is the upper end of the scale that a series is drawn on.
func top(s *report.Series) float64 {
	if s.Unit == "rpm" {
		return rpmTop
	}
	hi := 200.0
	for _, v := range s.V {
		if v > hi {
			hi = v
		}
	}
	return math.Ceil(hi/100) * 100
}

// pressureTop is the common upper end of all pressures.
func (p Plot) pressureTop() float64 {
	hi := 200.0
	for _, line := range p.Sheet.Main() {
		if s := &line; s.Unit != "rpm" {
			hi = max(hi, top(s))
		}
	}
	return hi
}

// pressureUnit is what pressures are drawn in.
func (p Plot) pressureUnit() string {
	for i := range p.Sheet.Series {
		if s := &p.Sheet.Series[i]; s.Unit != "rpm" {
			return s.Unit
		}
	}
	return ""
}

func (p Plot) y(v, hi float64) float64 {
	a := p.area()
	return a.Bottom() - a.H*max(-0.02, min(1.04, v/hi))
}

func (p Plot) grid(cv *draw.Canvas, th *theme.Theme) {
	a := p.area()
	hi := p.pressureTop()
	soft := draw.Style{Size: 15, Color: th.CardSoft}
	for v := 0.0; v <= hi+1; v += hi / 4 {
		y := cv.Snap(p.y(v, hi))
		cv.Fill(draw.Box(draw.Rect{X: a.X, Y: y, W: a.W, H: 1}), draw.Solid(th.Rule))
		cv.Middle(draw.Pt(a.X-8, y), draw.Right, soft, fmt.Sprintf("%.0f", v))
		cv.Middle(draw.Pt(a.Right()+8, y), draw.Left, soft, fmt.Sprintf("%.0f", v/hi*rpmTop))
	}
	cv.Middle(draw.Pt(p.Box.X+12, p.Box.Y+16), draw.Left, soft, p.pressureUnit())
	cv.Middle(draw.Pt(p.Box.Right()-14, p.Box.Y+16), draw.Right, soft, "rpm")
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
	hi := p.pressureTop()
	r := draw.Rect{X: p.X(b.From), Y: p.y(b.Hi, hi)}
	r.W, r.H = p.X(b.To)-r.X, p.y(b.Lo, hi)-r.Y
	cv.Fill(draw.Box(r), draw.Solid(draw.Fade(theme.Series[0], 0.2)))
	cv.Fill(draw.Box(draw.Rect{X: r.X, Y: r.Y, W: r.W, H: 1.2}), draw.Solid(draw.Fade(theme.Series[0], 0.7)))
	cv.Fill(draw.Box(draw.Rect{X: r.X, Y: r.Bottom(), W: r.W, H: 1.2}), draw.Solid(draw.Fade(theme.Series[0], 0.7)))
}

// line draws a series; gaps (NaN) stay gaps. Each has its own dash, so that color is not all.
func (p Plot) line(cv *draw.Canvas, s *report.Series, col draw.Color, n int) {
	hi := p.pressureTop()
	if s.Unit == "rpm" {
		hi = rpmTop
	}
	var run []draw.Point
	flush := func() {
		if len(run) > 1 {
			path := draw.Polyline(run...)
			if n == 0 {
				cv.Fill(draw.Stroke(path, 2.4), draw.Solid(col))
			} else {
				on := []float64{0, 9, 3}[n%3]
				for _, d := range draw.Dashes(path, on, on*0.6+1) {
					cv.Fill(draw.Stroke(d, 1.8), draw.Solid(col))
				}
			}
		}
		run = run[:0]
	}
	step := max(1, len(s.V)/int(max(1, p.area().W*cv.Scale)))
	for i := 0; i < len(s.V); i += step {
		if math.IsNaN(s.V[i]) {
			flush()
			continue
		}
		run = append(run, draw.Pt(p.X(world.TicksIn(float64(i))), p.y(s.V[i], hi)))
	}
	flush()
}

// flag marks a finding above the plot.
func (p Plot) flag(cv *draw.Canvas, th *theme.Theme, f report.Finding) {
	a := p.area()
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
	}
	return th.CardSoft
}
