package fidelity

import (
	"fmt"

	"steadyneedle/sim/fireground"
)

// supplyTrials are what hydrant hose, air in it and a weak main do.
func supplyTrials() []Trial {
	list := append(columnTrials(), bleedTrial(), unbledTrial(), weakTrial(), lostTrial(), surgeTrial(), looseTrial(), checkValveTrial())
	for _, c := range [...]struct{ size, loss, ft, tip, seconds float64 }{
		{1.75, 15.5, 200, 0.9375, 7}, {2.5, 2, 400, 1.125, 14}, {2.5, 2, 600, 1.125, 25},
	} {
		list = append(list, fillTrial(c.size, c.loss, c.ft, c.tip, c.seconds))
	}
	return list
}

// fillTrial opens a dry line at idle.
func fillTrial(size, loss, ft, tipIn, seconds float64) Trial {
	return Trial{
		initial: fmt.Sprintf("Engine 41 in gear at idle on the street's hydrant; %g ft of %s in hose laid dry, nozzle open", ft, inches(size)),
		begin: func(m Model) *bench {
			s := street()
			s.Line = fireground.LineDef{Trunk: hose(size, loss, ft), Nozzle: tip(tipIn)}
			b := onStreet(m, s, 0)
			b.in.Lines[0].Attached = true
			b.nozzles(0, 1)
			return b
		},
		checks: []check{{
			Test: record(fmt.Sprintf("fill-%g-%g", size, ft), Transients, fmt.Sprintf("Filling %g ft of %s in at idle", ft, inches(size)), "Water takes its time to reach the nozzle.", "Open the discharge in 4 s; wait until the nozzle shows 10 psi.", "time", "s", seconds, statedShare(0.3), ownConstants),
			measure: func(b *bench) float64 {
				from := b.s
				b.turn(&b.in.Discharge[0], 1, 4)
				b.until("water at the nozzle", 90, func() bool { return b.o.Lines[0].NozzlePSI[0] > 10 })
				return b.s - from
			},
		}},
	}
}

// bleedTrial lets the air out of the supply hose.
func bleedTrial() Trial {
	mid, width := limits(4, 15)
	left, leftWidth := limits(0, 0.02)
	return Trial{
		initial: "Engine 41 at the street's hydrant, 25 ft of 4 in supply hose under pressure, its air still in it, intake shut",
		begin: func(m Model) *bench {
			b := set(m, street())
			b.coupled(25)
			b.run(2)
			return b
		},
		checks: []check{
			{Test: record("supply-air", Steady, "Air in an unbled supply hose", "A hose laid flat and charged keeps a pocket of air.", "Read the air in the hose.", "share of its volume", "", 0.15, statedWidth(0.04), ownDesign),
				measure: func(b *bench) float64 { return b.o.SupplyAir }},
			{Test: record("bleeder-air", Instruments, "The bleeder spits while air comes", "What is seen at the bleeder tells when to shut it.", "Open the bleeder; look.", "air seen (1 yes)", "", 1, statedWidth(0), ownDesign),
				measure: func(b *bench) float64 { b.in.Bleeder = 1; b.run(0.5); return lit(b.o.BleederAir) }},
			{Test: record("bleeder-time", Transients, "Time to bleed 25 ft of 4 in", "Solid water comes after some seconds.", "Wait until solid water comes.", "time", "s", mid, width, Source{Assumed, "some 8 s for the bleeder of Engine 41"}),
				measure: func(b *bench) float64 {
					return 0.5 + b.until("solid water", 60, func() bool { return !b.o.BleederAir })
				}},
			{Test: record("bleeder-left", Transients, "Air left when the bleeder runs solid", "Bled, the hose holds next to no air.", "Read the air in the hose.", "share of its volume", "", left, leftWidth, ownDesign),
				measure: func(b *bench) float64 { return b.o.SupplyAir }},
		},
	}
}

// unbledTrial opens the intake on an unbled hose while a line flows from the tank.
func unbledTrial() Trial {
	bound, boundWidth := limits(0, 2)
	back, backWidth := limits(6.5, 15.5)
	return Trial{
		initial: "Engine 41 pumping the street's line at 134.8 psi from a large tank; supply hose charged, not bled, intake shut",
		begin: func(m Model) *bench {
			b := fromTank(m, street().Line)
			b.throttleFor(lay, 0, b.gauge(0))
			b.coupled(25)
			b.settle()
			b.before = b.o.NetPSI
			return b
		},
		checks: []check{
			{Test: record("unbled-bound", Abnormal, "Intake opened on an unbled hose: time until air-bound", "The air of an unbled hose binds the pump at once.", "Open the intake in a second.", "time until the net pressure is below 15 %", "s", bound, boundWidth, ownDesign),
				measure: func(b *bench) float64 {
					plot := &Curve{X: "time", XUnit: "s", Y: "net pressure", YUnit: "psi"}
					from, beat := b.s, 0
					b.watch = func() {
						if beat++; beat%6 == 0 && b.s-from < 20 {
							plot.trace(b.s-from, b.o.NetPSI)
						}
					}
					b.turn(&b.in.Intake, 1, 1)
					s := b.until("binding", 10, func() bool { return b.o.NetPSI < float64(0.15*b.before) })
					b.plot = plot
					return s
				}},
			{Test: record("unbled-back", Abnormal, "Intake opened on an unbled hose: time until it pumps again", "The pump clears itself after some seconds.", "Wait until 90 % of the net pressure are back.", "time", "s", back, backWidth, Source{Assumed, "trial model of the impeller's eye: about 11 s"}),
				measure: func(b *bench) float64 {
					s := b.until("recovery", 60, func() bool { return b.o.NetPSI > float64(0.9*b.before) })
					b.watch = nil
					return s
				}},
		},
	}
}

// weakTrial draws a weak hydrant's hose flat.
func weakTrial() Trial {
	intake, intakeWidth := limits(-5, 0.5)
	s := street()
	s.Hydrant = fireground.HydrantDef{StaticPSI: 40, ResidualPSI: 15, FlowGPM: 300}
	s.Line = fireground.LineDef{Trunk: hose(2.5, 2, 200), Nozzle: tip(1.25)}
	back, backWidth := limits(0.5, 15)
	return Trial{
		initial: "Engine 41 in gear on a hydrant of 40 psi static, 15 psi at 300 gpm; 25 ft of 4 in supply hose; 200 ft of 2½ in with a 1¼ in tip",
		begin:   func(m Model) *bench { return onStreet(m, s, 1) },
		checks: []check{
			{Test: record("weak-plateau", Abnormal, "Discharge over speed on a weak hydrant", "Once the hose is drawn flat, more throttle brings no more pressure.", "Throttle to 1300 rpm, then step by step to full; wait 60 s at each.", "discharge pressure against that at 1300 rpm", "psi", 0, empirical(0.1), Source{Assumed, "trial model: the hose limits before the pump"}),
				sweep: func(b *bench) *Curve {
					c := &Curve{X: "engine speed", XUnit: "rpm", Y: "discharge pressure", YUnit: "psi"}
					for _, rpm := range [...]float64{1300, 1450, 1600, 1800, 2000, 2120} {
						b.throttleTo(rpm, -1, b.rpm)
						b.run(60)
						p := b.o.DischargePSI
						if rpm == 1300 {
							b.before = p
						}
						c.add(b.o.EngineRPM, p, b.before, empirical(0.1))
					}
					return c
				}},
			{Test: record("weak-intake", Abnormal, "Intake on a weak hydrant drawn flat", "The intake hangs a little below zero: couplings let air in.", "As before, at full throttle.", "intake", "psi", intake, intakeWidth, Source{Assumed, "−2 to −4 psi with in-leak at soft couplings, by a trial model"}),
				measure: func(b *bench) float64 { return b.o.IntakePSI }},
			{Test: record("weak-flat", Abnormal, "The supply hose lies flat", "It can be seen that more is taken than the supply gives.", "As before; look at the hose.", "flat (1 yes)", "", 1, statedWidth(0), ownDesign),
				measure: func(b *bench) float64 { return lit(b.o.SupplyFlat) }},
			{Test: record("weak-recovers", Abnormal, "Gated down, a flat hose recovers", "Less flow lets the hose fill again.", "Throttle down and gate the line in 2 s each; wait.", "time until the intake shows 10 psi", "s", back, backWidth, Source{Assumed, "4 to 10 s by a trial model"}),
				measure: func(b *bench) float64 {
					b.turn(&b.in.Throttle, 0.2, 2)
					b.turn(&b.in.Discharge[0], 0.3, 2)
					return b.until("recovery", 60, func() bool { return b.o.IntakePSI > 10 })
				}},
		},
	}
}

// lostTrial takes the hydrant away and gives it back.
func lostTrial() Trial {
	low, lowWidth := limits(0, 150)
	return Trial{initial: streetText + ", at 134.8 psi", begin: pumpingLay, checks: []check{
		{Test: record("hydrant-lost-flow", Abnormal, "Flow when the main fails", "Without the main the line is lost.", "Take 64 psi from the main; wait 30 s.", "nozzle flow", "gpm", low, lowWidth, ownDesign),
			measure: func(b *bench) float64 {
				b.in.Shock.StaticDropPSI = 64
				b.run(30)
				return b.gpm(0)()
			}},
		{Test: record("hydrant-lost-flat", Abnormal, "Supply hose when the main fails", "A hose without pressure lies flat.", "As before; look at the hose.", "flat (1 yes)", "", 1, statedWidth(0), ownDesign),
			measure: func(b *bench) float64 { return lit(b.o.SupplyFlat) }},
		{Test: record("hydrant-back", Abnormal, "Line when the main comes back", "With the main the pressure comes back.", "Give the pressure back; wait until steady.", "line gauge", "psi", lay, statedWidth(4), ownDesign),
			measure: func(b *bench) float64 {
				b.in.Shock.StaticDropPSI = 0
				b.run(60)
				return b.snap(b.gauge(0))
			}},
	}}
}

// surgeTrial opens the intake fast and slowly.
func surgeTrial() Trial {
	open := func(m Model, seconds float64) float64 {
		b := set(m, street())
		b.inGear()
		b.coupled(25)
		b.in.Bleeder = 1
		b.until("bleeding", 60, func() bool { return b.o.SupplyAir < 0.003 })
		b.in.Bleeder = 0
		b.run(2)
		b.turn(&b.in.Intake, 1, seconds)
		b.run(3)
		return b.o.SupplySurgePSI
	}
	slow, slowWidth := limits(-5, 15)
	more, moreWidth := limits(1, 100)
	return Trial{initial: "Engine 41 in gear, supply hose bled and under the street's pressure, intake shut", begin: func(m Model) *bench { return &bench{model: m} }, checks: []check{
		{Test: record("intake-slow", Transients, "Surge when the intake is opened in 8 s", "Opened slowly the intake strikes nothing.", "Open the intake in 8 s.", "highest intake pressure over static", "psi", slow, slowWidth, Source{Assumed, "trial model"}),
			measure: func(b *bench) float64 { return open(b.model, 8) }},
		{Test: record("intake-fast", Transients, "Surge when the intake is opened in half a second, over that in 8 s", "Opened at once it does.", "Open the intake in 0.5 s; compare.", "difference of the highest intake pressures", "psi", more, moreWidth, Source{Assumed, "trial model"}),
			measure: func(b *bench) float64 { return open(b.model, 0.5) - open(b.model, 8) }},
	}}
}

// looseTrial pressurizes a hand-tight coupling and an open outlet.
func looseTrial() Trial {
	return Trial{initial: "Engine 41 at the street's hydrant, supply hose hand-tight at the intake", begin: func(m Model) *bench {
		b := set(m, street())
		b.reliefOut()
		b.inGear()
		b.in.Supply.LengthFt, b.in.Supply.AtEngine, b.in.Supply.AtHydrant = 25, 0.5, 1
		b.turn(&b.in.Hydrant.Open, 1, 8)
		b.in.Bleeder = 1
		b.until("bleeding", 60, func() bool { return b.o.SupplyAir < 0.003 })
		b.in.Bleeder = 0
		b.run(5)
		return b
	}, checks: []check{
		{Test: record("hand-tight", Abnormal, "Leak of a hand-tight coupling", "A coupling that is not spanner-tight drips under pressure.", "Open the hydrant; bleed; wait a minute; read its flow.", "flow from the hydrant over that of 0.7 gpm at 1 psi", "", 1, formula(0.02), Source{Computed, "flow by the root of the pressure; the opening is an assumption"}),
			measure: func(b *bench) float64 { b.run(60); return b.o.HydrantGPM / float64(0.7*root(b.o.SupplyPSI)) }},
		{Test: record("uncapped", Abnormal, "An uncapped outlet opened", "An outlet opened without a line on it dumps water.", "Tighten, open the intake; open discharge 2 without cap or line.", "water out of the open outlet over what the pump drives through its valve and an opening of 30 d²", "", 1, formula(0.02), Source{Computed, balanced.Text + "; an outlet's opening 30 d² gpm at 1 psi (assumption)"}),
			measure: func(b *bench) float64 {
				b.in.Supply.AtEngine = 1
				b.turn(&b.in.Intake, 1, 5)
				b.in.Lines[1].CapOff = true
				b.turn(&b.in.Discharge[1], 1, 4)
				b.run(20)
				outlet := inRow(streetValve, 30*6.25)
				return b.o.DumpGPM / float64(outlet*root(streetBalance(b.o.PumpShaftRPM, outlet, 0)))
			}},
	}}
}

// checkValveTrial lets the hydrant's pressure stand against the tank's check valve.
func checkValveTrial() Trial {
	return Trial{initial: "Engine 41 in gear on the street's hydrant, tank to pump left open", begin: func(m Model) *bench {
		b := set(m, street())
		b.reliefOut()
		b.inGear()
		b.onTank()
		b.onHydrant(25)
		return b
	}, checks: []check{
		{Test: record("tank-check-valve", Abnormal, "Tank to pump left open on a hydrant", "The check valve keeps the hydrant's water out of the tank.", "Wait a minute.", "change of the tank", "gal", 0, statedWidth(0.1), ownDesign),
			measure: func(b *bench) float64 {
				from := b.o.TankGal
				b.run(60)
				return b.o.TankGal - from
			}},
	}}
}
