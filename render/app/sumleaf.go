package app

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/report"
)

// sumLeaf is the calculation in the debrief: each term beside the right one, and the simulated lay's word.
type sumLeaf struct{ s *report.Sums }

func (l *sumLeaf) name() string { return "Calculation" }

func (l *sumLeaf) items(*App, *debrief) []Item { return nil }

func (l *sumLeaf) turn(*App, *debrief, int) {}

func (l *sumLeaf) moving(*App, *debrief) {}

func (l *sumLeaf) still(a *App, d *debrief, cv *draw.Canvas) {
	th, b := a.theme, d.box(a)
	a.panelOf(cv, b)
	x := [4]float64{b.X + 16, b.X + b.W*0.235, b.X + b.W*0.335, b.X + b.W*0.44}
	head := draw.Style{Size: 15, Weight: draw.Bold, Color: th.Say}
	for i, word := range []string{"Term", "Yours", "Right", "Working"} {
		cv.Text(draw.Pt(x[i], b.Y+24), draw.Left, head, word)
	}
	below := 92.0 // for the proof and the caution
	h := min(24, (b.H-40-below)/float64(len(l.s.Lines)+1))
	y := b.Y + 34 + h/2
	for i := range l.s.Lines {
		l.line(a, cv, x, b.Right()-16, y, &l.s.Lines[i])
		y += h
	}
	y += 5
	cv.Fill(draw.Box(draw.Rect{X: x[0], Y: y - h/2 - 2, W: b.W - 32, H: 1}), draw.Solid(th.Rule))
	total := l.s.Total
	total.Working = fmt.Sprintf("rounded to %.0f %s: %.0f", l.s.RoundPSI, l.s.Unit, l.s.Rounded)
	if l.s.Said {
		total.Working += fmt.Sprintf("; you stated %.0f", l.s.Stated)
	}
	if over := l.s.OverLimit(max(l.s.Rounded, l.s.Stated)); over != "" {
		total.Working += "; " + over
	}
	l.line(a, cv, x, b.Right()-16, y, &total)
	y += h/2 + 22
	for i := range l.s.Proofs {
		y = cv.Paragraph(draw.Pt(x[0], y), b.W-32, 20, draw.Style{Size: 15, Color: th.CardText}, l.s.Proofs[i].Words(l.s.Unit))
	}
	cv.Paragraph(draw.Pt(x[0], y), b.W-32, 19, draw.Style{Size: 15, Color: th.Caution}, report.SumsCaution)
}

// line writes one term about a height.
func (l *sumLeaf) line(a *App, cv *draw.Canvas, x [4]float64, right, y float64, s *report.Sum) {
	th := a.theme
	st := draw.Style{Size: 15, Color: th.CardText}
	title := st
	if s.Adds {
		title.Weight = draw.Bold
	}
	cv.Middle(draw.Pt(x[0], y), draw.Left, title, s.Title)
	own, text := st, "not written"
	switch {
	case !s.Given:
		own.Color = th.CardSoft
	case s.OK:
		own.Color, text = th.Good, s.Number(s.Answer)
	default:
		own.Color, text = th.Bad, s.Number(s.Answer)
	}
	cv.Middle(draw.Pt(x[1], y), draw.Left, own, text)
	cv.Middle(draw.Pt(x[2], y), draw.Left, st, s.Number(s.Right))
	soft := draw.Style{Size: 15, Color: th.CardSoft}
	cv.Middle(draw.Pt(x[3], y), draw.Left, soft, soft.Fit(cv.Scale, right-x[3], s.Working))
}
