package app

import (
	"fmt"
	"math"
	"strings"

	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
	"steadyneedle/sim/demo"
	"steadyneedle/sim/unit"
)

// settled are the claims of the step that has just been done, while the script waits.
func (s *show) settled() []demo.Result {
	p := s.stage.Player()
	if p.Phase() != demo.Waiting && p.Phase() != demo.Ended {
		return nil
	}
	var list []demo.Result
	for _, r := range p.Results() {
		if r.Step == p.Step().ID && !r.Answer { // the answer is told by itself
			list = append(list, r)
		}
	}
	return list
}

// hadIt says how many of the class chose what was right; nothing if no hands were counted.
func (s *show) hadIt() string {
	p := s.stage.Player()
	right, all := 0, 0
	for i, n := range p.Votes(p.Index()) {
		all += n
		if i == p.Step().Ask.Right {
			right = n
		}
	}
	if all == 0 {
		return ""
	}
	return fmt.Sprintf(" (%d of %d)", right, all)
}

// claimLine is a line of what was seen: words, and where the measured number ends it, that.
type claimLine struct {
	text, number string
	first        bool // it begins a claim, and has its tick or cross
	holds        bool
	answer       bool // it belongs to the answer
}

// claimLines breaks answer and claims into lines of a width.
func (s *show) claimLines(scale, w float64, list []demo.Result, units unit.System) []claimLine {
	var lines []claimLine
	bold := draw.Style{Size: s.text, Weight: draw.Bold}
	if ask := s.stage.Player().Step().Ask; ask != nil {
		for _, l := range bold.Wrap(scale, w, units.Prose(ask.Options[ask.Right])+s.hadIt()) {
			lines = append(lines, claimLine{text: l, answer: true})
		}
	}
	st := draw.Style{Size: s.text}
	inner := w - s.text*1.1
	for _, r := range list {
		n := len(lines)
		for _, l := range st.Wrap(scale, inner, units.Prose(r.Text)) {
			lines = append(lines, claimLine{text: l, holds: r.Holds})
		}
		lines[n].first = true
		number := measured(&r, units)
		last := &lines[len(lines)-1]
		if number == "" || st.Width(scale, last.text+"  ")+bold.Width(scale, number) <= inner {
			last.number = number
		} else {
			lines = append(lines, claimLine{number: number})
		}
	}
	return lines
}

// measured writes a claim's number, large enough to be told apart and no finer; nought, and one without a
// unit, say nothing to a class.
func measured(r *demo.Result, units unit.System) string {
	if r.Unit == "" {
		return ""
	}
	v := units.From(r.Measured, r.Unit)
	if r.Span {
		v = units.Span(r.Measured, r.Unit)
	}
	digits := 0
	if math.Abs(v) < 9.95 {
		digits = 1
	}
	text := fmt.Sprintf("%.*f", digits, v)
	if strings.Trim(text, "-0.") == "" {
		return ""
	}
	return strings.Replace(text, "-", "−", 1) + " " + units.Unit(r.Unit)
}

// claimsHeight is what answer and claims take of a pane.
func (s *show) claimsHeight(a *App, w float64, list []demo.Result) float64 {
	lines := s.claimLines(a.scale, w-28, list, a.eyes.Units)
	return float64(len(lines))*s.text*1.1 + s.text*0.75 + s.text*0.2*float64(len(list))
}

// claims says what was seen, each with its measure.
func (s *show) claims(a *App, box draw.Rect, list []demo.Result) {
	units := a.eyes.Units
	key := fmt.Sprintf("show/claims/%v/%v/%d/%v", box, list, s.stage.Player().Index(), units)
	a.frame.Put(a.shelf.Once("show/claims", key, box, func(cv *draw.Canvas) {
		cv.Fill(draw.Round(box, 10), draw.Solid(theme.Paper.Sheet))
		st := draw.Style{Size: s.text, Color: theme.Paper.Ink}
		bold := draw.Style{Size: s.text, Weight: draw.Bold, Color: theme.Paper.Chosen}
		y := box.Y + s.text*1.1
		for _, l := range s.claimLines(cv.Scale, box.W-28, list, units) {
			if l.answer {
				cv.Text(draw.Pt(box.X+14, y), draw.Left, draw.Style{Size: s.text, Weight: draw.Bold, Color: theme.Paper.Good}, l.text)
				y += s.text * 1.1
				continue
			}
			if l.first {
				y += s.text * 0.2
				col := theme.Paper.Good
				if !l.holds {
					col = theme.Paper.Bad
				}
				mark(cv, draw.Pt(box.X+26, y-s.text*0.34), s.text*0.4, l.holds, col)
			}
			x := box.X + 14 + s.text*1.1
			if l.text != "" {
				cv.Text(draw.Pt(x, y), draw.Left, st, l.text)
				x += st.Width(cv.Scale, l.text+"  ")
			}
			if l.number != "" {
				cv.Text(draw.Pt(x, y), draw.Left, bold, l.number)
			}
			y += s.text * 1.1
		}
	}), draw.Point{})
}

// mark is a tick or a cross, drawn, for not every face has them.
func mark(cv *draw.Canvas, c draw.Point, r float64, good bool, col draw.Color) {
	if good {
		cv.Fill(draw.Stroke(draw.Polyline(c.Add(draw.Pt(-r, 0)), c.Add(draw.Pt(-r*0.25, r*0.75)), c.Add(draw.Pt(r, -r*0.8))), r*0.45), draw.Solid(col))
		return
	}
	cv.Fill(draw.Stroke(draw.Polyline(c.Add(draw.Pt(-r*0.7, -r*0.7)), c.Add(draw.Pt(r*0.7, r*0.7))), r*0.45), draw.Solid(col))
	cv.Fill(draw.Stroke(draw.Polyline(c.Add(draw.Pt(-r*0.7, r*0.7)), c.Add(draw.Pt(r*0.7, -r*0.7))), r*0.45), draw.Solid(col))
}
