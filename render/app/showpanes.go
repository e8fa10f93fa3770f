package app

import (
	"fmt"

	"steadyneedle/render/dial"
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
		s.gauges(a, s.left)
		s.plots(a, s.right)
	case 2:
		s.gauges(a, s.right)
	}
}

// gauges puts four large dials: intake and discharge above, line and speed below.
func (s *show) gauges(a *App, box draw.Rect) {
	g := a.attempt.Info().Gauges
	line := fmt.Sprintf("line%d_gauge", s.stage.Player().Attempt.Drill.Setup.Ground.Discharge)
	units := a.eyes.Units
	rpm := dial.Even(g.Tach.Low, g.Tach.High, g.Tach.Division, "rpm × 100")
	rpm.Label = func(v float64) string { return fmt.Sprintf("%.0f", v/100) }
	big := []struct {
		name, signal string
		scale        *dial.Scale
	}{
		{"Intake", "intake_gauge", dial.VacuumIn(units, -g.Intake.Low, g.Intake.High, g.Intake.Division)},
		{"Discharge", "discharge_gauge", dial.In(units, g.Discharge.Low, g.Discharge.High, g.Discharge.Division, "psi").Sparse()},
		{"Line", line, dial.In(units, g.Line.Low, g.Line.High, g.Line.Division, "psi").Sparse()},
		{"Engine", "tach", rpm},
	}
	r := s.dialR(box)
	size := dial.SizeOf(r)
	back := a.shelf.Get(fmt.Sprintf("show/gauges/%v/%v", box, units), box, func(cv *draw.Canvas) {
		cv.Fill(draw.Round(box, 10), draw.Solid(theme.Paper.Sheet))
		for i := range big {
			c := s.dialAt(box, i)
			dial.Draw(cv, &theme.Day, c, size, big[i].scale)
			cv.Text(draw.Pt(c.X, c.Y+r+s.text), draw.Center, draw.Style{Size: s.text, Weight: draw.Bold, Color: theme.Paper.Ink}, big[i].name)
		}
	})
	a.frame.Put(back, draw.Point{})
	for i := range big {
		if s.hidden(big[i].signal) {
			s.coverDial(a, s.dialAt(box, i), r)
			continue
		}
		v := s.stage.Truth(big[i].signal)
		dial.Needle(a.shelf, &a.frame, &theme.Day, s.dialAt(box, i), size, big[i].scale, v)
	}
}

// coverDial lies over a gauge that the class must not read yet.
func (s *show) coverDial(a *App, at draw.Point, r float64) {
	a.frame.Put(a.shelf.Get(fmt.Sprintf("show/coverdial/%v", r), draw.Around(draw.Point{}, 2*r+4, 2*r+4), func(cv *draw.Canvas) {
		cv.Fill(draw.Circle(draw.Point{}, r), draw.Solid(theme.Paper.Cover))
		cv.Middle(draw.Point{}, draw.Center, draw.Style{Size: r, Weight: draw.Bold, Color: theme.Paper.Chalk}, "?")
	}), at)
}

func (s *show) dialAt(box draw.Rect, i int) draw.Point {
	return draw.Pt(box.X+box.W*(0.25+0.5*float64(i%2)), box.Y+box.H*0.5*float64(i/2)+6+s.dialR(box))
}

// dialR is the radius of the dials: each has its name below it.
func (s *show) dialR(box draw.Rect) float64 {
	return min(box.W/2-18, box.H/2-12-s.text*1.2) / 2
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
