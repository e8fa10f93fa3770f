package app

import (
	"fmt"
	"math"

	"steadyneedle/render/dial"
	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
)

// bigDial is a gauge that a class reads.
type bigDial struct {
	name, signal string
	scale        *dial.Scale
	step         float64 // to which its figure is rounded
}

func (s *show) bigDials(a *App) []bigDial {
	g, units := a.attempt.Info().Gauges, a.eyes.Units
	line := fmt.Sprintf("line%d_gauge", s.stage.Player().Attempt.Drill.Setup.Ground.Discharge)
	rpm := dial.Even(g.Tach.Low, g.Tach.High, g.Tach.Division, "rpm × 100")
	rpm.Label = func(v float64) string { return fmt.Sprintf("%.0f", v/100) }
	return []bigDial{
		{"Intake", "intake_gauge", dial.VacuumIn(units, -g.Intake.Low, g.Intake.High, g.Intake.Division), 1},
		{"Discharge", "discharge_gauge", dial.In(units, g.Discharge.Low, g.Discharge.High, g.Discharge.Division, "psi").Sparse(), 1},
		{"Line", line, dial.In(units, g.Line.Low, g.Line.High, g.Line.Division, "psi").Sparse(), 1},
		{"Engine", "tach", rpm, 10},
	}
}

// figure is what the needle shows, as a number that the back row reads.
func (d *bigDial) figure(s *show, v float64) string {
	units := s.stage.Info().Units
	switch d.signal {
	case "tach":
	case "intake_gauge":
		v, _ = units.Compound(v)
	default:
		v = units.From(v, "psi")
	}
	v = math.Round(v/d.step) * d.step
	if v < 0 {
		return fmt.Sprintf("−%.0f", -v)
	}
	return fmt.Sprintf("%.0f", math.Abs(v))
}

// gauges puts so many large dials, two to a row: intake and discharge above, line and speed below. Each has
// its name below it, and what its needle shows.
func (s *show) gauges(a *App, box draw.Rect, n int) {
	list := s.bigDials(a)[:n]
	r := s.dialR(box, n)
	size := dial.SizeOf(r)
	back := a.shelf.Get(fmt.Sprintf("show/gauges/%v/%v/%d", box, a.eyes.Units, n), box, func(cv *draw.Canvas) {
		cv.Fill(draw.Round(box, 10), draw.Solid(theme.Paper.Sheet))
		for i := range list {
			dial.Draw(cv, &theme.Day, s.dialAt(box, n, i), size, list[i].scale)
		}
	})
	a.frame.Put(back, draw.Point{})
	st := draw.Style{Size: s.text, Weight: draw.Bold, Color: theme.Paper.Ink}
	for i := range list {
		d, c := &list[i], s.dialAt(box, n, i)
		text := d.name + " ?"
		if s.hidden(d.signal) {
			dial.Cover(a.shelf, &a.frame, c, r)
		} else {
			v := s.stage.Truth(d.signal)
			dial.Needle(a.shelf, &a.frame, &theme.Day, c, size, d.scale, v)
			text = d.name + " " + d.figure(s, v)
		}
		a.shelf.Text(&a.frame, draw.Pt(c.X, c.Y+r+s.text), draw.Center, st, text)
	}
}

// dialAt is the middle of the i-th of n dials.
func (s *show) dialAt(box draw.Rect, n, i int) draw.Point {
	row := box.H / float64(n/2)
	return draw.Pt(box.X+box.W*(0.25+0.5*float64(i%2)), box.Y+row*float64(i/2)+6+s.dialR(box, n))
}

// dialR is the radius of n dials.
func (s *show) dialR(box draw.Rect, n int) float64 {
	return min(box.W/2-18, box.H/float64(n/2)-12-s.text*1.2) / 2
}
