package app

import (
	"fmt"
	"strings"

	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
	"steadyneedle/sim/demo"
)

// words puts what is said about the step, in large type: what it teaches before it begins, and the reason
// after a question.
func (s *show) words(a *App) {
	p := s.stage.Player()
	text := a.eyes.Units.Prose(p.Step().Caption)
	switch {
	case p.Phase() == demo.Stuck:
		text = "The demonstration cannot go on: " + p.Err().Error()
	case !s.warned:
		text = a.eyes.Units.Prose(p.Demonstration.Teaches)
	case p.Phase() == demo.Asking:
		text = "Type how many hands go up for each answer, then run it."
	case p.Phase() == demo.Waiting && p.Step().Ask != nil:
		text = a.eyes.Units.Prose(p.Step().Ask.Because)
	case p.Phase() == demo.Ended:
		text = p.Demonstration.Teaches + " Training aid only."
	}
	faults := s.simulated()
	if len(faults) > 0 {
		text = "Simulated: " + strings.Join(faults, ", ") + ". " + text
	}
	box := s.caption
	art := a.shelf.Once("show/words", "show/words/"+text+fmt.Sprint(box), box, func(cv *draw.Canvas) {
		cv.Fill(draw.Round(box, 10), draw.Solid(theme.Paper.Board))
		st := draw.Style{Size: s.text, Color: theme.Paper.Chalk}
		lines := st.Wrap(cv.Scale, box.W-36, text)
		if len(lines) > 3 {
			lines = lines[:3]
			lines[2] = st.Fit(cv.Scale, box.W-36, lines[2]+" …")
		}
		y := box.Y + s.text*1.05
		if len(lines) < 3 {
			y += s.text * 0.58 * float64(3-len(lines))
		}
		for _, l := range lines {
			cv.Text(draw.Pt(box.X+18, y), draw.Left, st, l)
			y += s.text * 1.16
		}
	})
	a.frame.Put(art, draw.Point{})
}

// settled are the claims of the step that has just been done, while the script waits.
func (s *show) settled() []demo.Result {
	p := s.stage.Player()
	if p.Phase() != demo.Waiting && p.Phase() != demo.Ended {
		return nil
	}
	var list []demo.Result
	for _, r := range p.Results() {
		if r.Step == p.Step().ID {
			list = append(list, r)
		}
	}
	return list
}

// claims says what was seen, each with its measure.
func (s *show) claims(a *App, box draw.Rect, list []demo.Result) {
	key := fmt.Sprintf("show/claims/%v/%v/%d", box, list, s.stage.Player().Index())
	ask := s.stage.Player().Step().Ask
	units := a.eyes.Units
	a.frame.Put(a.shelf.Once("show/claims", key, box, func(cv *draw.Canvas) {
		cv.Fill(draw.Round(box, 10), draw.Solid(theme.Paper.Sheet))
		y := box.Y + s.text*1.15
		if ask != nil {
			st := draw.Style{Size: s.text, Weight: draw.Bold, Color: theme.Paper.Good}
			y = cv.Paragraph(draw.Pt(box.X+14, y), box.W-28, s.text*1.12, st, ask.Options[ask.Right]) + s.text*1.2
		}
		for _, r := range list {
			word, col := "✓", theme.Paper.Good
			if !r.Holds {
				word, col = "✗", theme.Paper.Bad
			}
			st := draw.Style{Size: s.text, Color: theme.Paper.Ink}
			text := r.Text
			lines := st.Wrap(cv.Scale, box.W-60, units.Prose(text))
			if y+float64(len(lines)-1)*s.text*1.1 > box.Bottom()-8 {
				continue
			}
			mark(cv, draw.Pt(box.X+26, y-s.text*0.34), s.text*0.4, word == "✓", col)
			for _, l := range lines {
				cv.Text(draw.Pt(box.X+48, y), draw.Left, st, l)
				y += s.text * 1.1
			}
			y += s.text * 0.15
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
