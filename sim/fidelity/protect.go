package fidelity

import (
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/unit"
)

// protectTrials try the valves that protect supply and pump.
func protectTrials() []Trial { return []Trial{intakeReliefTrial(), thermalTrial()} }

// columnStopped lets 300 ft of supply hose flow hard and shuts the intake at once; it returns the highest
// pressure before the intake, psi.
func columnStopped(b *bench, valve bool) float64 {
	s := street()
	s.Hydrant.FlowGPM, s.Supply = 3000, hose(4, 0.2, 0)
	s.Line.Trunk, s.Line.Nozzle = hose(4, 0.2, 25), tip(2)
	if valve {
		d := rig.DefaultIntakeRelief()
		s.Rig.IntakeRelief = &d
	}
	k := set(b.model, s)
	k.reliefOut()
	k.inGear()
	k.onHydrant(300)
	k.line(0)
	k.turn(&k.in.Throttle, 0.35, 3)
	k.settle()
	n, top := ticks(0.3), 0.0
	for i := range n + ticks(4) {
		k.in.Intake = max(0, 1-float64(i+1)/float64(n))
		k.run(tick)
		top = max(top, k.o.SupplyPSI)
	}
	b.takes(k)
	return top
}

// standingRelief lets the valve stand open against a strong main, and holds its flow against its law.
func standingRelief(b *bench) float64 {
	s := street()
	s.Hydrant = fireground.HydrantDef{StaticPSI: 160, ResidualPSI: 140, FlowGPM: 1000}
	d := rig.DefaultIntakeRelief()
	s.Rig.IntakeRelief = &d
	k := set(b.model, s)
	k.coupled(25)
	k.run(30)
	b.takes(k)
	supply := hoseCv(0.2, 25)
	lo, hi := d.SetPSI, 160.0
	flow := func(p float64) float64 { return float64(float64(d.Cv*min(1, (p-d.SetPSI)/d.SpanPSI)) * root(p)) }
	for range 60 {
		p := float64(0.5 * (lo + hi))
		loss := flow(p) / supply
		if float64(hydraulics.ResidualAtFlow(1000, 160, 140, unit.GPM(flow(p))))-float64(loss*loss) > p {
			lo = p
		} else {
			hi = p
		}
	}
	return k.o.IntakeReliefGPM / flow(lo)
}

func intakeReliefTrial() Trial {
	top, topWidth := limits(125, 165)
	less, lessWidth := limits(10, 300)
	return Trial{initial: "Engine 41 with an intake relief valve set at 125 psi, on a good main of 65 psi; 300 ft of 4 in supply hose; a 2 in tip flowing", begin: func(m Model) *bench { return &bench{model: m} }, checks: []check{
		{Test: record("intake-relief-peak", Transients, "A supply column stopped, with the intake relief valve", "The valve takes what a stopped column brings: the pressure goes little above its setting and span.", "Shut the intake in 0.3 s.", "highest pressure before the intake", "psi", top, topWidth, Source{Computed, "setting of 125 psi (common practice) and span of 40 psi (assumption)"}),
			measure: func(b *bench) float64 { b.peak = columnStopped(b, true); return b.peak }},
		{Test: record("intake-relief-flow", Transients, "Water out of the intake relief valve", "It is the valve that takes it: water goes to the ground.", "On a main of 160 psi, the intake shut, wait until steady.", "flow over that of 200 gpm at 1 psi, open by a fortieth for each psi above the setting", "", 1, formula(0.02), Source{Computed, "the law of the valve solved with the hydrant's by bisection; setting and span as above"}),
			measure: standingRelief},
		{Test: record("intake-relief-without", Transients, "The same without the valve", "Without it the pressure goes higher: the valve's test can fail.", "The same on an apparatus without the valve.", "highest pressure over that with the valve", "psi", less, lessWidth, ownDesign),
			measure: func(b *bench) float64 { return columnStopped(b, false) - b.peak }},
	}}
}

func thermalTrial() Trial {
	hot, width := limits(110, 140)
	return Trial{initial: shutText + "; tank to pump open, 1333 rpm; with a thermal relief valve that opens from 120 °F", begin: func(m Model) *bench {
		s := street()
		d := rig.DefaultThermalRelief()
		s.Rig.ThermalRelief = &d
		b := set(m, s)
		b.reliefOut()
		b.inGear()
		b.onTank()
		b.rpmFor(1333)
		return b
	}, checks: []check{
		{Test: record("thermal-relief", Transients, "Thermal relief valve of a dead-headed pump", "The valve lets hot water go before it scalds, and cold water takes its place.", "Wait 40 min.", "water in the pump", "°F", hot, width, ownDesign),
			measure: func(b *bench) float64 { b.run(2400); return b.o.PumpF }},
		{Test: record("thermal-relief-flow", Transients, "Water out of the thermal relief valve", "It is the valve that cools it.", "As before.", "flow to the ground over what carries the shaft's power off at the rise found", "", 1, empirical(0.2), deadHead),
			measure: func(b *bench) float64 {
				rise := b.o.PumpF - b.o.TankF
				return b.o.ThermalGPM / (float64(b.o.ShaftHP*42.41) / float64(8.34*rise))
			}},
	}}
}
