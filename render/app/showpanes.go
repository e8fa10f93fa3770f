package app

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/report"
	"steadyneedle/render/theme"
	"steadyneedle/sim/demo"
)

// panes puts the two things that stand side by side.
func (s *show) panes(a *App) {
	p := s.stage.Player()
	if !s.warned {
		s.warn(a)
		return
	}
	if p.Phase() == demo.Asking {
		s.question(a)
		return
	}
	if s.cut != nil {
		st := s.state()
		s.cut.Moving(a.shelf, &a.frame, &st)
	}
	switch s.pair {
	case 0:
		s.plots(a, s.right)
	case 1:
		s.gauges(a, s.left, 4)
		s.plots(a, s.right)
	case 2:
		s.gauges(a, s.right, 4)
	case 3:
		upper, lower := s.parted()
		if claims := s.settled(); len(claims) > 0 {
			s.claims(a, s.right, claims)
			return
		}
		s.gauges(a, upper, 2)
		s.lone(a, lower)
	}
}

// parted is the right side of all three: gauges above, readings against time below.
func (s *show) parted() (upper, lower draw.Rect) {
	upper, lower = s.right, s.right
	upper.H = s.right.H*0.46 - 5
	lower.Y, lower.H = upper.Bottom()+10, s.right.H-upper.H-10
	return upper, lower
}

// warn puts the caution over everything until it has been read.
func (s *show) warn(a *App) {
	box := s.left
	box.W = s.right.Right() - s.left.X
	d := s.stage.Player().Demonstration
	text := a.eyes.Units.Prose(d.Caution)
	a.frame.Put(a.shelf.Get(fmt.Sprintf("show/warn/%v/%s", box, text), box, func(cv *draw.Canvas) {
		cv.Fill(draw.Round(box, 10), draw.Solid(theme.Paper.Sheet))
		cv.Fill(draw.Frame(box, 10, 8), draw.Solid(theme.Paper.Bad))
		st := draw.Style{Size: s.text * 1.4, Weight: draw.Bold, Color: theme.Paper.Bad}
		cv.Text(draw.Pt(box.X+40, box.Y+s.text*2), draw.Left, st, "Caution")
		y := cv.Paragraph(draw.Pt(box.X+40, box.Y+s.text*3.6), box.W-80, s.text*1.2, draw.Style{Size: s.text, Color: theme.Paper.Ink}, text)
		cv.Paragraph(draw.Pt(box.X+40, y+s.text*1.6), box.W-80, s.text*1.2, draw.Style{Size: s.text, Color: theme.Paper.Soft}, report.Caution)
	}), draw.Point{})
}
