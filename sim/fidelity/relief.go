package fidelity

import (
	"fmt"

	"steadyneedle/sim/fireground"
)

// reliefCases are the conditions of the standard's test of pressure control, with the rise without a
// valve in a trial model.
var reliefCases = [...]struct {
	gpm, net, from float64 // from: net pressure at which the valves were set, throttle then reduced to net
	without        float64 // psi
}{
	{1500, 150, 150, 61},
	{1162, 90, 150, 35},
	{750, 250, 250, 19},
}

// reliefTrials shut every discharge from draft, with the relief valve set and without it.
func reliefTrials() []Trial {
	var list []Trial
	for _, c := range reliefCases {
		begin := func(m Model) *bench {
			b := rated(m, map[bool]float64{true: c.gpm, false: 1500}[c.from == c.net], c.from)
			if c.from != c.net {
				b.throttleFor(c.net, -1, b.net)
				b.settle()
			}
			return b
		}
		at := fmt.Sprintf("%g gpm at %g psi net", c.gpm, c.net)
		how := "Prime, pump " + at
		if c.from != c.net {
			how = fmt.Sprintf("Prime, pump 1500 gpm at %g psi net, then reduce the throttle to %g psi without touching a valve", c.from, c.net)
		}
		list = append(list, reliefTrial(3, c.net, at, how, begin), reliefTrial(10, c.net, at, how, begin),
			withoutRelief(c.without, c.net, at, how, begin))
	}
	return append(list, reliefAtRest(), reliefOnColumn(), reliefHandling())
}

func reliefTrial(seconds, net float64, at, how string, begin func(Model) *bench) Trial {
	mid, width := limits(0, 30)
	id := fmt.Sprintf("relief-%g-in-%g", net, seconds)
	steps := fmt.Sprintf("%s; set the relief valve by its lamp; shut all discharges evenly in %g s; wait.", how, seconds)
	title := fmt.Sprintf("%s, all shut in %g s", at, seconds)
	return Trial{initial: ratedText, begin: begin, checks: []check{
		{Test: Test{ID: id + "-peak", Area: Transients, Title: "Highest rise, " + title, Objective: "The relief valve keeps the rise within what the standard allows.",
			Steps: steps, Compared: "highest discharge pressure less that before", Unit: "psi", Expected: mid, Tolerance: width, Source: reliefRule},
			measure: func(b *bench) float64 {
				b.setRelief()
				b.settle()
				return b.shutAllPlotted(seconds, 30)
			}},
		{Test: Test{ID: id + "-opened", Area: Transients, Title: "By-pass, " + title, Objective: "It is the valve that holds the pressure: the water runs back through it.",
			Steps: "As before, after the lines are shut.", Compared: "by-pass flow over the pump's flow", Expected: 1, Tolerance: statedWidth(0.02), Source: conservation},
			measure: func(b *bench) float64 { return b.snap(func() float64 { return b.o.ReliefGPM / b.o.PumpGPM }) }},
		{Test: Test{ID: id + "-lamp", Area: Instruments, Title: "Amber lamp, " + title, Objective: "The lamp tells that the valve by-passes.",
			Steps: "As before.", Compared: "amber lamp (1 lit)", Expected: 1, Tolerance: statedWidth(0), Source: ownDesign},
			measure: func(b *bench) float64 { return lit(b.o.AmberLamp) }},
		{Test: Test{ID: id + "-rest", Area: Steady, Title: "Pressure held by the valve, " + title, Objective: "By-passing, the valve stands where its own law and the pump's meet.",
			Steps: "As before, after the lines are shut, until steady; expected for the speed and the intake pressure then measured.", Compared: "discharge pressure over that expected", Expected: 1, Tolerance: formula(0.01), Source: reliefLaw},
			measure: func(b *bench) float64 { return b.snap(b.discharge) / b.byPassing() }},
	}}
}

// byPassing is the discharge pressure, psi, at which all that the pump moves goes back through the relief
// valve: the pressure p where the pump's rise A ω² − B q² over the intake is left by the flow
// q = Cv·lift·√(p − intake), its lift growing with p over the setting by the valve's span.
func (b *bench) byPassing() float64 {
	pump, valve := &b.setup.Rig.Pump, b.setup.Rig.Relief
	w := b.o.PumpShaftRPM / pump.RatedRPM
	shutoff := float64(pump.ShutoffPSI * float64(w*w))
	lo, hi := b.o.IntakePSI, b.o.IntakePSI+shutoff
	for range 60 {
		p := float64(0.5 * (lo + hi))
		lift := max(0, min(1, (p-b.o.ReliefSetPSI)/valve.SpanPSI))
		q := float64(float64(valve.Cv*max(0, (lift-valve.Overlap)/(1-valve.Overlap))) * root(p-b.o.IntakePSI))
		if p-b.o.IntakePSI > shutoff-float64(pump.LossPSI*float64(q*q)) {
			hi = p
		} else {
			lo = p
		}
	}
	return hi
}

// withoutRelief is what makes the tests above able to fail: the same without the valve.
func withoutRelief(rise, net float64, at, how string, begin func(Model) *bench) Trial {
	return Trial{initial: ratedText, begin: begin, checks: []check{{
		Test: Test{ID: fmt.Sprintf("no-relief-%g", net), Area: Transients, Title: "Rise without the relief valve, " + at + ", all shut in 3 s",
			Objective: "Without the valve the pressure rises farther: the valve's tests can fail.", Steps: how + "; leave the relief valve wound in; shut all discharges evenly in 3 s; wait.",
			Compared: "discharge pressure less that before", Unit: "psi", Expected: rise, Tolerance: empirical(0.2), Source: reliefModel},
		measure: func(b *bench) float64 {
			b.shutAllPlotted(3, 0)
			return b.snap(b.discharge) - b.before
		},
	}}}
}

// shutAllPlotted shuts all discharges, keeps the time history with the bound at limit psi above the
// pressure before (0: none), and returns the highest rise.
func (b *bench) shutAllPlotted(seconds, limit float64) float64 {
	b.before = b.o.DischargePSI
	plot := &Curve{X: "time", XUnit: "s", Y: "rise of the discharge pressure", YUnit: "psi", Bounds: limit > 0}
	from, beat := b.s, 0
	b.watch = func() {
		if beat++; beat%6 != 0 {
			return
		}
		if limit > 0 {
			plot.add(b.s-from, b.o.DischargePSI-b.before, float64(0.5*limit), Tolerance{Tier: Limit, Width: float64(0.5 * limit)})
		} else {
			plot.trace(b.s-from, b.o.DischargePSI-b.before)
		}
	}
	b.peak = b.shutAll(seconds) - b.before
	b.watch = nil
	b.plot = plot
	return b.peak
}

// reliefAtRest holds the valve against hunting at the coarse and at a fine step.
func reliefAtRest() Trial {
	mid, width := limits(0, 0.5)
	return Trial{initial: streetText, begin: func(m Model) *bench {
		b := onStreet(m, street(), 1)
		b.throttleFor(lay, 0, b.gauge(0))
		return b
	}, checks: []check{
		{Test: Test{ID: "relief-set-dip", Area: Controls, Title: "Setting the relief valve by its lamp", Objective: "Set so that amber just goes out, the valve leaves the pressure alone.",
			Steps: "Throttle to 134.8 psi; wind the wheel out until amber lights, then in until it goes out; wait.", Compared: "line gauge", Unit: "psi", Expected: lay, Tolerance: statedWidth(2), Source: ownConstants},
			measure: func(b *bench) float64 {
				b.setRelief()
				return b.snap(b.gauge(0))
			}},
		{Test: Test{ID: "relief-set-amber", Area: Instruments, Title: "Amber out when set", Objective: "A valve that is set and not working shows no amber.", Steps: "As before.",
			Compared: "amber lamp (1 lit)", Expected: 0, Tolerance: statedWidth(0), Source: ownDesign}, measure: func(b *bench) float64 { return lit(b.o.AmberLamp) }},
		{Test: Test{ID: "relief-calm", Area: Controls, Title: "A relief valve that is set does not hunt", Objective: "A set valve stands still.", Steps: "As before; watch for 10 s.",
			Compared: "swing of the discharge pressure", Unit: "psi", Expected: mid, Tolerance: width, Source: ownDesign}, measure: func(b *bench) float64 { return b.swing(10, b.discharge) }},
		{Test: Test{ID: "relief-by-passing-calm", Area: Controls, Title: "A by-passing relief valve does not hunt", Objective: "With the throttle far above the setting the valve by-passes much, and stands still.",
			Steps: "Raise the throttle by a third of its travel; wait 20 s; watch for 10 s.", Compared: "swing of the discharge pressure", Unit: "psi", Expected: mid, Tolerance: width, Source: ownDesign},
			measure: func(b *bench) float64 {
				b.turn(&b.in.Throttle, b.in.Throttle+0.33, 4)
				b.run(20)
				return b.swing(10, b.discharge)
			}},
		{Test: Test{ID: "relief-holds-throttle", Area: Controls, Title: "The relief valve against the throttle", Objective: "The valve holds the pressure when the speed rises.", Steps: "As before; read the line gauge.",
			Compared: "rise of the line gauge", Unit: "psi", Expected: 10, Tolerance: statedWidth(10), Source: ownDesign}, measure: func(b *bench) float64 { return b.snap(b.gauge(0)) - lay }},
	}}
}

// onColumn has a by-passing relief valve between the column of a hydrant's hose and three short wide lines
// with their nozzles shut, which have nothing to damp a swing.
func onColumn(m Model) *bench {
	s := street()
	s.Line = fireground.LineDef{Trunk: hose(4, 0.2, 25), Nozzle: tip(2)}
	b := onStreet(m, s, 3)
	for i := range 3 {
		b.turn(&b.in.Lines[i].Nozzle[0], 0, 2)
	}
	b.turn(&b.in.Throttle, 0.4, 3)
	b.run(8)
	d := s.Rig.Relief
	b.in.ReliefTurns = (b.o.DischargePSI - 30 - d.LowestPSI) / d.PSIPerTurn
	b.run(15)
	return b
}

func reliefOnColumn() Trial {
	mid, width := limits(0, 0.5)
	return Trial{initial: "Engine 41 in pump gear; hydrant 65 psi static, 45 psi at 1000 gpm; 25 ft of 4 in supply hose, bled; three lines of 25 ft of 4 in with 2 in tips, nozzles shut; relief valve set 30 psi below the pressure at 1280 rpm", begin: onColumn, checks: []check{
		{Test: Test{ID: "relief-column-calm", Area: Controls, Title: "A by-passing relief valve does not swing with the supply's column", Objective: "A valve that followed late would drive the column of the supply hose against the elasticity of the lines.",
			Steps: "Watch for 10 s.", Compared: "swing of the discharge pressure", Unit: "psi", Expected: mid, Tolerance: width, Source: ownDesign}, measure: func(b *bench) float64 { return b.swing(10, b.discharge) }},
		{Test: Test{ID: "relief-column-rest", Area: Steady, Title: "Pressure held by the valve on short lines", Objective: "The valve stands where its own law and the pump's meet.",
			Steps: "As before.", Compared: "discharge pressure over that expected", Expected: 1, Tolerance: formula(0.01), Source: reliefLaw}, measure: func(b *bench) float64 { return b.snap(b.discharge) / b.byPassing() }},
	}}
}

// reliefHandling is how the wheel feels.
func reliefHandling() Trial {
	turn, turnWidth := limits(15, 25)
	lift, liftWidth := limits(0, 15)
	return Trial{initial: streetText, begin: func(m Model) *bench {
		b := onStreet(m, street(), 1)
		b.throttleFor(lay, 0, b.gauge(0))
		b.setRelief()
		return b
	}, checks: []check{
		{Test: Test{ID: "relief-turn", Area: Controls, Title: "Pressure for one turn of the relief wheel", Objective: "The wheel is fine enough to set by hand.",
			Steps: "Set the valve at 134.8 psi; turn the wheel once clockwise.", Compared: "change of the setting", Unit: "psi", Expected: turn, Tolerance: turnWidth, Source: ownDesign},
			measure: func(b *bench) float64 {
				set := b.o.ReliefSetPSI
				b.in.ReliefTurns++
				b.run(1)
				d := b.o.ReliefSetPSI - set
				b.in.ReliefTurns--
				b.run(5)
				return d
			}},
		{Test: Test{ID: "relief-lifts", Area: Controls, Title: "Pressure above the setting at which the valve lifts", Objective: "A set valve opens soon after.",
			Steps: "Raise the speed by 25 rpm a second until water by-passes.", Compared: "discharge pressure less the setting", Unit: "psi", Expected: lift, Tolerance: liftWidth, Source: ownDesign},
			measure: func(b *bench) float64 {
				for b.o.ReliefGPM < 1 && b.in.Throttle < 1 {
					b.in.Throttle += 25.0 / 1450 / 60
					b.run(tick)
				}
				return b.o.DischargePSI - b.o.ReliefSetPSI
			}},
	}}
}

// lit is 1 for a lamp that is lit.
func lit(lamp bool) float64 {
	if lamp {
		return 1
	}
	return 0
}
