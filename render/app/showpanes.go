package app

import (
	"fmt"
	"math"
	"strings"

	"steadyneedle/render/chart"
	"steadyneedle/render/cutaway"
	"steadyneedle/render/dial"
	"steadyneedle/render/draw"
	"steadyneedle/render/report"
	"steadyneedle/render/theme"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/demo"
	"steadyneedle/sim/world"
)

// traceS is how much of the past is plotted, s.
const traceS = 60.0

// covered reports whether the class has been asked, and must not see the answer yet.
func (s *show) covered() bool {
	p := s.stage.Player()
	ask := p.Step().Ask
	return ask != nil && len(ask.Hide) > 0 && p.Hidden(ask.Hide[0])
}

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
	if s.covered() {
		s.cover(a)
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

// state is the inside of the pump, from the truth.
func (s *show) state() cutaway.State {
	t := func(name string) float64 {
		if v := s.stage.Truth(name); !math.IsNaN(v) {
			return v
		}
		return 0
	}
	now := s.stage.Player().Attempt.Now()
	return cutaway.State{
		At: now.Seconds(), IntakePSI: t("intake_psi"), DischargePSI: t("discharge_psi"), ShaftRPM: t("shaft_rpm"),
		HeadFactor: t("head_factor"), AirFactor: t("air_factor"), CasingWater: t("casing_water"),
		NPSHa: t("npsh_available"), NPSHr: t("npsh_required"), PumpF: t("pump_f"),
		IntakeGPM: t("intake_gpm"), TankToPumpGPM: t("tank_to_pump_gpm"), DischargeGPM: max(0, t("pump_gpm")-t("relief_gpm")-t("recirc_gpm")-t("tank_fill_gpm")),
		ReliefGPM: t("relief_gpm"), RecircGPM: t("recirc_gpm"), TankFillGPM: t("tank_fill_gpm"), ReliefLift: t("relief_lift"), ReliefSetPSI: t("relief_set_psi"),
		Governor: t("governor_fitted") > 0, TankGal: t("tank_gal"), TankShare: t("tank_gal") / s.stage.Rig().Tank.Gallons,
		SupplyFill: t("supply_fill"), Draft: s.stage.Player().Attempt.Drill.Setup.Ground.Draft != nil,
	}
}

// plots puts readings against time above the pump's curve, redrawn ten times a second; at a stop, what
// was claimed stands in the curve's place.
func (s *show) plots(a *App, box draw.Rect) {
	upper, lower := box, box
	claims := s.settled()
	upper.H = box.H*0.52 - 5
	if len(claims) > 0 {
		upper.H = box.H*0.42 - 5
	}
	lower.Y, lower.H = upper.Bottom()+10, box.H-upper.H-10
	p := s.stage.Player()
	beat := int64(p.Attempt.Now()) / 6
	left := int64(0)
	if l := s.stage.Left(); l != nil {
		left = int64(l.From)<<32 + int64(l.To)
	}
	key := fmt.Sprintf("%d/%d/%v/%v/%d", beat, left, s.readS, upper, s.pair)
	a.frame.Put(a.shelf.Once("show/trace", "show/trace/"+key, upper, func(cv *draw.Canvas) {
		t := s.trace(upper)
		t.Draw(cv)
	}), draw.Point{})
	if len(claims) > 0 {
		s.claims(a, lower, claims)
		return
	}
	a.frame.Put(a.shelf.Once("show/curve", "show/curve/"+key, lower, func(cv *draw.Canvas) {
		c := s.curve(lower)
		c.Draw(cv)
	}), draw.Point{})
}

// trace is the last minute, or the minute before what is read off.
func (s *show) trace(box draw.Rect) chart.Trace {
	p := s.stage.Player()
	now := p.Attempt.Now().Seconds()
	t := chart.Trace{Box: box, Text: s.text, Title: "Last minute", From: max(0, now-traceS), To: max(now, traceS), At: math.NaN()}
	if now < traceS {
		t.To = traceS
	}
	if s.readS > 0 {
		t.At = s.readS
		t.Title = clockText(s.readS)
	}
	for i, name := range p.Demonstration.Plot {
		if l := s.stage.Left(); l != nil {
			t.Lines = append(t.Lines, s.line(&l.Series, name, i, t.From, true))
		}
	}
	for i, name := range p.Demonstration.Plot {
		t.Lines = append(t.Lines, s.line(&p.Attempt.Series, name, i, t.From, false))
	}
	return t
}

// line takes one series out of what has been recorded, from a moment on.
func (s *show) line(from *attempt.Series, name string, color int, since float64, ghost bool) chart.Line {
	l := chart.Line{Name: shortName(name), Color: color, Ghost: ghost}
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
		for k := first; k < len(from.At); k += 2 {
			l.At = append(l.At, from.At[k].Seconds())
			v := units.From(c.V[k], c.Unit)
			l.V = append(l.V, v)
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
	for _, end := range [...]string{"_psi", "_rpm", "_gpm", "_f", "_gal"} {
		name = strings.TrimSuffix(name, end)
	}
	return strings.ReplaceAll(name, "_", " ")
}

// curve is the pump's curve at its present speed, and what the lines ask for.
func (s *show) curve(box draw.Rect) chart.Curve {
	d := s.stage.Rig().Pump
	t := s.stage.Truth
	w := t("shaft_rpm") / d.RatedRPM
	u := s.stage.Info().Units
	psi := func(v float64) float64 { return u.From(v, "psi") }
	gpm := func(v float64) float64 { return u.From(v, "gpm") }
	c := chart.Curve{
		Box: box, Text: s.text, ShutoffPSI: psi(d.ShutoffPSI * w * w), LossPSI: d.LossPSI * psi(1) / (gpm(1) * gpm(1)), RPM: t("shaft_rpm"),
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
		v := s.stage.Truth(big[i].signal)
		dial.Needle(a.shelf, &a.frame, &theme.Day, s.dialAt(box, i), size, big[i].scale, v)
	}
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

// cover hides the panes until the run is over.
func (s *show) cover(a *App) {
	box := s.left
	box.W = s.right.Right() - s.left.X
	a.frame.Put(a.shelf.Get(fmt.Sprintf("show/cover/%v", box), box, func(cv *draw.Canvas) {
		cv.Fill(draw.Round(box, 10), draw.Solid(theme.Paper.Cover))
		st := draw.Style{Size: s.text * 1.5, Weight: draw.Bold, Color: theme.Paper.Chalk}
		cv.Middle(box.Center(), draw.Center, st, "Running … gauges covered")
	}), draw.Point{})
	rpm := s.stage.Truth("engine_rpm")
	st := draw.Style{Size: s.text, Color: theme.Paper.Chalk}
	a.shelf.Middle(&a.frame, box.Center().Add(draw.Pt(0, s.text*2)), draw.Center, st, fmt.Sprintf("engine %.0f rpm", math.Round(rpm/10)*10))
}

// simulated lists the faults that are set, by their labels.
func (s *show) simulated() []string {
	var list []string
	for i, c := range s.stage.Controls() {
		if isFault(&s.stage.Controls()[i]) && s.stage.Player().Attempt.Scene.World.Hand(world.ControlID(i)) != c.Start {
			list = append(list, c.Label)
		}
	}
	return list
}
