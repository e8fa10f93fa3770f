package chart

import (
	"fmt"
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
)

// Margin plots what a pump has at its inlet against what it needs there, over time; what lies between is
// shaded, and named: left over, or short.
type Margin struct {
	Box   draw.Rect
	Text  float64 // size of type, units
	Title string
	Unit  string
	From  float64 // s, left edge
	To    float64 // s, right edge
	Have  Line
	Need  Line
	Left  []Line  // the same two, of another way
	At    float64 // s, a moment that is read off; NaN: the newest
}

// Draw paints it whole.
func (m *Margin) Draw(cv *draw.Canvas) {
	t := Trace{Box: m.Box, Text: m.Text, From: m.From, To: m.To, At: m.At, Lines: append(m.Left[:len(m.Left):len(m.Left)], m.Have, m.Need)}
	a := frame(cv, m.Box, m.Text, m.Title, "")
	word, col := m.word(t.read())
	st := draw.Style{Size: m.Text, Weight: draw.Bold, Color: col}
	cv.Text(draw.Pt(m.Box.Right()-14, m.Box.Y+8+m.Text), draw.Right, st, word)
	t.body(cv, a, func(plot draw.Rect) { m.shade(cv, plot, &t) })
}

// Top is the upper end of a scale that holds all lines.
func (m *Margin) Top() float64 {
	top := 0.0
	for _, l := range append(m.Left[:len(m.Left):len(m.Left)], m.Have, m.Need) {
		for i := range l.V {
			if l.At[i] >= m.From {
				top = max(top, l.V[i])
			}
		}
	}
	return top * 1.1
}

// word says what is left over, or short.
func (m *Margin) word(at float64) (string, draw.Color) {
	left := m.Have.value(at) - m.Need.value(at)
	switch {
	case math.IsNaN(left):
		return "", theme.Paper.Ink
	case left < 0:
		return fmt.Sprintf("%.0f %s short", -left, m.Unit), theme.Paper.Bad
	}
	return fmt.Sprintf("%.0f %s left", left, m.Unit), theme.Paper.Good
}

// shade fills between the lines: quietly while something is left over, with strokes where it is short.
func (m *Margin) shade(cv *draw.Canvas, a draw.Rect, t *Trace) {
	have, need := t.points(a, &m.Have), t.points(a, &m.Need)
	n := min(len(have), len(need))
	short := func(i int) bool { return have[i].Y > need[i].Y }
	for first := 0; first < n-1; {
		last := first + 1
		for last < n-1 && short(last) == short(last-1) {
			last++
		}
		col := draw.Fade(theme.Paper.Good, 0.2)
		if short(last - 1) {
			col = draw.Fade(theme.Paper.Bad, 0.3)
		}
		area := new(draw.Path).Move(have[first])
		for i := first + 1; i <= last; i++ {
			area.Line(have[i])
		}
		for i := last; i >= first; i-- {
			area.Line(need[i])
		}
		cv.Fill(area.Close(), draw.Solid(col))
		for i := first; i <= last; i++ {
			if i%6 == 0 && short(i) {
				cv.Fill(draw.Stroke(draw.Polyline(have[i], need[i]), 2), draw.Solid(draw.Fade(theme.Paper.Bad, 0.8)))
			}
		}
		first = last
	}
}
