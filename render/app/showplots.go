package app

import (
	"fmt"
	"math"
	"strings"

	"steadyneedle/render/chart"
	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/demo"
)

// traceS is how much of the past is plotted, s.
const traceS = 60.0

// plots puts readings against time above the pump's curve, its suction head or both, redrawn ten times a
// second; at a stop, what was claimed stands in their place.
func (s *show) plots(a *App, box draw.Rect) {
	claims, below := s.settled(), s.lower()
	upper, lower := s.upper(a, box), box
	if !s.traceFits(upper) {
		s.claims(a, box, claims)
		return
	}
	lower.Y, lower.H = upper.Bottom()+10, box.H-upper.H-10
	key := fmt.Sprintf("%s/%v/%d", s.plotted(), upper, below)
	sheet := func(name string, box draw.Rect, paint func(cv *draw.Canvas)) {
		a.frame.Put(a.shelf.Once("show/"+name, "show/"+name+"/"+key, box, paint), draw.Point{})
	}
	trace := func() {
		sheet("trace", upper, func(cv *draw.Canvas) {
			t := s.trace(upper)
			t.Draw(cv)
		})
	}
	switch {
	case len(claims) > 0 && below == demo.Suction: // what the claims are about keeps its place
		sheet("suction", upper, func(cv *draw.Canvas) { s.drawSuction(cv, upper) })
		s.claims(a, lower, claims)
		return
	case len(claims) > 0:
		trace()
		s.claims(a, lower, claims)
		return
	}
	trace()
	curve, suction := lower, lower
	if below == demo.Both {
		curve.H = lower.H/2 - 5
		suction.Y, suction.H = curve.Bottom()+10, curve.H
	}
	if below != demo.Suction {
		sheet("curve", curve, func(cv *draw.Canvas) { s.drawCurve(cv, curve) })
	}
	if below != demo.Curve {
		sheet("suction", suction, func(cv *draw.Canvas) { s.drawSuction(cv, suction) })
	}
}

// upper is the upper part of the plots' pane.
func (s *show) upper(a *App, box draw.Rect) draw.Rect {
	claims := s.settled()
	whole := box.H
	box.H = whole*0.52 - 5
	switch {
	case len(claims) > 0:
		box.H = min(box.H, whole-10-s.claimsHeight(a, box.W, claims))
	case s.lower() == demo.Both:
		box.H = whole*0.34 - 5
	}
	return box
}

// traceFits reports whether a box has room for readings against time, with their names.
func (s *show) traceFits(box draw.Rect) bool {
	p := s.stage.Player()
	names := len(p.Demonstration.Plot)
	if l, _ := p.Limit(); l != nil {
		names++
	}
	return box.H >= chart.Least(s.text, names)
}

// plotted tells one state of the plots from another: they are drawn anew ten times a second, and when what is
// covered, read off or plotted thin changes though time stands still.
func (s *show) plotted() string {
	p := s.stage.Player()
	return fmt.Sprintf("%s/%d/%d/%d/%v/%v/%v", p.Demonstration.Drill.Name, s.way, int64(p.Attempt.Now())/6, p.Index(), s.covered(), s.readS, s.pair)
}

// lone puts readings against time alone.
func (s *show) lone(a *App, box draw.Rect) {
	key := fmt.Sprintf("show/lone/%s/%v", s.plotted(), box)
	a.frame.Put(a.shelf.Once("show/lone", key, box, func(cv *draw.Canvas) {
		t := s.trace(box)
		t.Draw(cv)
	}), draw.Point{})
}

// drawCurve paints the pump's curve, unless what it tells is covered.
func (s *show) drawCurve(cv *draw.Canvas, box draw.Rect) {
	if s.hidden("discharge_psi", "pump_gpm", "engine_rpm", "intake_psi") {
		s.coverSheet(cv, box, "Pump's curve ?")
		return
	}
	c := s.curve(box)
	c.Draw(cv)
}

// drawSuction paints suction head at hand and needed, unless it is covered.
func (s *show) drawSuction(cv *draw.Canvas, box draw.Rect) {
	if s.hidden("npsh_available", "npsh_required", "head_factor", "intake_psi") {
		s.coverSheet(cv, box, "Suction head ?")
		return
	}
	m := s.suction(box)
	m.Draw(cv)
}

// coverSheet is a sheet that tells nothing yet.
func (s *show) coverSheet(cv *draw.Canvas, box draw.Rect, text string) {
	cv.Fill(draw.Round(box, 10), draw.Solid(theme.Paper.Cover))
	cv.Middle(box.Center(), draw.Center, draw.Style{Size: s.text, Weight: draw.Bold, Color: theme.Paper.Chalk}, text)
}

// suction is the pump's suction head over the plotted minute.
func (s *show) suction(box draw.Rect) chart.Margin {
	from, to, at := s.window()
	se := &s.stage.Player().Attempt.Series
	m := chart.Margin{Box: box, Text: s.text, Title: "Suction head", Unit: s.stage.Info().Units.Unit("ft"), From: from, To: to, At: at}
	m.Have, m.Need = s.line(se, "npsh_available", 1, from, false), s.line(se, "npsh_required", 3, from, false)
	m.Have.Name, m.Need.Name = "at hand", "needed"
	if l := s.stage.Left(); l != nil && l.To.Seconds() > from {
		m.Left = []chart.Line{s.line(&l.Series, "npsh_available", 1, from, true), s.line(&l.Series, "npsh_required", 3, from, true)}
	}
	top := m.Top()
	for _, l := range []*chart.Line{&m.Have, &m.Need} {
		l.Low, l.Top = 0, top
	}
	for i := range m.Left {
		m.Left[i].Low, m.Left[i].Top = 0, top
	}
	return m
}

// window is the span that is plotted, s, and the moment that is read off; NaN: the newest.
func (s *show) window() (from, to, at float64) {
	now := s.stage.Player().Attempt.Now().Seconds()
	to = max(now, traceS)
	if l := s.stage.Left(); l != nil { // as far as the other way went on from here
		to = max(to, min(l.To.Seconds(), now+traceS/3))
	}
	from, at = max(0, to-traceS), math.NaN()
	if s.readS > 0 && s.readS >= from && s.readS <= now { // else the plot has left it behind
		at = s.readS
	}
	return from, to, at
}

// trace is the last minute.
func (s *show) trace(box draw.Rect) chart.Trace {
	p := s.stage.Player()
	t := chart.Trace{Box: box, Text: s.text, Title: "Last minute"}
	t.From, t.To, t.At = s.window()
	if l := s.stage.Left(); l != nil && l.To.Seconds() > t.From {
		t.Title = "Thin: the other way"
		for i, name := range p.Demonstration.Plot {
			t.Lines = append(t.Lines, s.line(&l.Series, name, i, t.From, true))
		}
	}
	if !math.IsNaN(t.At) {
		t.Title = "At " + clockText(t.At)
	}
	for i, name := range p.Demonstration.Plot {
		t.Lines = append(t.Lines, s.line(&p.Attempt.Series, name, i, t.From, false))
	}
	t.Limit = s.limit()
	t.Share()
	return t
}

// limit is the level that the step's lines are to be seen against.
func (s *show) limit() *chart.Limit {
	l, v := s.stage.Player().Limit()
	if l == nil {
		return nil
	}
	units := s.stage.Info().Units
	low, top := family(l.Unit)
	v = units.From(v, l.Unit)
	return &chart.Limit{Name: units.Prose(l.Name), Unit: units.Unit(l.Unit), V: v, Low: units.From(low, l.Unit), Top: max(v*1.05, units.From(top, l.Unit))}
}

// line takes one series out of what has been recorded, from a moment on.
func (s *show) line(from *attempt.Series, name string, color int, since float64, ghost bool) chart.Line {
	l := chart.Line{Name: shortName(name), Color: color, Ghost: ghost, Covered: s.hidden(name)}
	until := math.Inf(1)
	if l.Covered {
		until = s.stage.Player().Began().Seconds()
	}
	for i := range from.Channels {
		c := &from.Channels[i]
		if c.Name != name {
			continue
		}
		units := s.stage.Info().Units
		l.Unit = units.Unit(c.Unit)
		low, top := family(c.Unit)
		first := 0
		for n := len(from.At); n > 0 && from.At[n-1].Seconds() >= since; n-- {
			first = n - 1
		}
		for k := first - first%2; k < len(from.At) && from.At[k].Seconds() <= until; k += 2 {
			n := sharper(c.V, k)
			l.At = append(l.At, from.At[n].Seconds())
			l.V = append(l.V, units.From(c.V[n], c.Unit))
		}
		l.Low, l.Top = units.From(low, c.Unit), units.From(top, c.Unit)
		for _, v := range l.V {
			l.Top, l.Low = max(l.Top, v*1.05), min(l.Low, v)
		}
	}
	if l.Top == l.Low {
		l.Top = l.Low + 1
	}
	return l
}

// sharper is which of two neighbors, from k on, is drawn for both: the one that stands out more, always the
// same one, so that a short peak neither vanishes nor flickers.
func sharper(v []float64, k int) int {
	if k+1 < len(v) && k > 0 && math.Abs(v[k+1]-v[k-1]) > math.Abs(v[k]-v[k-1]) {
		return k + 1
	}
	return k
}

// family is the scale that all series of a unit share.
func family(unit string) (low, top float64) {
	switch unit {
	case "psi":
		return -15, 200
	case "rpm":
		return 0, 2200
	case "gpm":
		return 0, 800
	case "°F":
		return 40, 200
	case "ft":
		return 0, 60
	case "gal":
		return 0, 500
	}
	return 0, 1
}

// shortName is what a signal is called beside its line.
func shortName(name string) string {
	if name == "pump_f" {
		return "water"
	}
	if line, ok := strings.CutSuffix(name, "_gauge"); ok && strings.HasPrefix(line, "line") {
		return "line " + strings.TrimPrefix(line, "line")
	}
	for _, end := range [...]string{"_psi", "_rpm", "_gpm", "_f", "_gal"} {
		name = strings.TrimSuffix(name, end)
	}
	return strings.ReplaceAll(name, "_", " ")
}

// curve is the pump's curve at its present speed, and what the lines ask for.
func (s *show) curve(box draw.Rect) chart.Curve {
	d := &s.stage.Rig().Pump
	t := s.stage.Truth
	shutoff, loss := d.Curve(s.series())
	w := t("shaft_rpm") / d.RatedRPM
	u := s.stage.Info().Units
	psi := func(v float64) float64 { return u.From(v, "psi") }
	gpm := func(v float64) float64 { return u.From(v, "gpm") }
	c := chart.Curve{
		Box: box, Text: s.text, ShutoffPSI: psi(shutoff * w * w), LossPSI: loss * psi(1) / (gpm(1) * gpm(1)), RPM: t("shaft_rpm"),
		IntakePSI: psi(t("intake_psi")), GPM: gpm(t("pump_gpm")), PSI: psi(t("discharge_psi")),
		TopGPM: gpm(max(d.RatedGPM*0.8, 400)), TopPSI: psi(300), Pressure: u.Unit("psi"), Flow: u.Unit("gpm"),
	}
	for c.TopGPM < c.GPM*1.1 {
		c.TopGPM *= 1.5
	}
	se := &s.stage.Player().Attempt.Series
	flow, pressure := channel(se, "pump_gpm"), channel(se, "discharge_psi")
	for k := max(0, len(flow)-200); k < len(flow); k += 10 {
		c.Before = append(c.Before, chart.Was{GPM: gpm(flow[k]), PSI: psi(pressure[k])})
	}
	return c
}

func channel(s *attempt.Series, name string) []float64 {
	for i := range s.Channels {
		if s.Channels[i].Name == name {
			return s.Channels[i].V
		}
	}
	return nil
}
