package fidelity

import (
	"steadyneedle/sim/fireground"
)

// lay is the calculated pressure of the street's line, psi: a 1⅛ tip at 50 psi, 265.8 gpm, and 600 ft
// of 2½ with C = 2.
const lay = 134.8

// The numbers that an old hand checks first on Engine 41, computed from this apparatus's constants by the
// formulas of the trade unless a record says otherwise.

// streetTrials are those of the steady line on the hydrant.
func streetTrials() []Trial {
	return []Trial{idleOnStreet(), outOfGear(), lineOnStreet(), weakerMain(), secondLine(), endOfSupply(), fromTankTrial(), shutOnStreet()}
}

// street is a record with what all of them share.
func record(id string, area Area, title, objective, steps, compared, unitName string, expected float64, tol Tolerance, source Source) Test {
	return Test{ID: id, Area: area, Title: title, Objective: objective, Steps: steps, Compared: compared, Unit: unitName, Expected: expected, Tolerance: tol, Source: source}
}

func idleOnStreet() Trial {
	net, netWidth := limits(35, 50)
	return Trial{initial: streetText + ", nozzle shut; engine idling", begin: func(m Model) *bench {
		b := onStreet(m, street(), 0)
		b.in.Lines[0].Attached = true
		b.turn(&b.in.Discharge[0], 1, 4)
		b.run(60)
		return b
	}, checks: []check{
		{Test: record("idle-speed", Steady, "Idle speed in pump gear", "The engine idles as it should.", "Read the tachometer.", "tachometer", "rpm", 700, statedWidth(25), machineMemory),
			measure: func(b *bench) float64 { return b.snap(func() float64 { return b.o.TachNeedle }) }},
		{Test: record("idle-net", Steady, "Net pressure at idle", "In gear, idle already makes pressure.", "Read discharge and intake.", "discharge less intake", "psi", net, netWidth, ownConstants),
			measure: func(b *bench) float64 { return b.snap(b.net) }},
		{Test: record("idle-gauge", Steady, "Line gauge at idle on the hydrant, no flow", "Idle on a 65 psi hydrant already shows about 105 psi.", "Read the line gauge.", "line gauge", "psi", 106, statedWidth(8), ownConstants),
			measure: func(b *bench) float64 { return b.snap(b.gauge(0)) }},
	}}
}

// outOfGear needs an apparatus without a throttle interlock.
func outOfGear() Trial {
	return Trial{initial: "Engine 41 without its throttle interlock, pump out of gear; the street's hydrant and line, nozzle shut", begin: func(m Model) *bench {
		s := street()
		s.Rig.Drive.FreeThrottle = true
		b := set(m, s)
		b.reliefOut()
		b.onHydrant(25)
		b.in.Lines[0].Attached = true
		b.turn(&b.in.Discharge[0], 1, 4)
		b.run(90)
		return b
	}, checks: []check{
		{Test: record("out-of-gear-gauge", Abnormal, "Pump never put in gear: line gauge", "Out of gear the pump adds nothing.", "Let the line fill through the standing pump; read the line gauge.", "line gauge", "psi", 65, statedWidth(3), ownConstants),
			measure: func(b *bench) float64 { return b.snap(b.gauge(0)) }},
		{Test: record("out-of-gear-throttle", Abnormal, "Pump never put in gear: throttle", "Out of gear the throttle changes the engine's speed only.", "Open the throttle half.", "change of the line gauge", "psi", 0, statedWidth(0.5), ownConstants),
			measure: func(b *bench) float64 {
				was := b.gauge(0)()
				b.turn(&b.in.Throttle, 0.5, 3)
				return b.snap(b.gauge(0)) - was
			}},
		{Test: record("out-of-gear-rpm", Abnormal, "Pump never put in gear: engine speed", "The engine answers the throttle all the same.", "As before; read the engine's speed.", "engine speed", "rpm", 1425, statedShare(0.05), ownConstants),
			measure: func(b *bench) float64 { return b.snap(b.rpm) }},
	}}
}

func lineOnStreet() Trial {
	at := "Throttle until the line gauge shows 134.8 psi; wait until steady."
	t := Trial{initial: streetText, begin: func(m Model) *bench {
		b := onStreet(m, street(), 1)
		b.throttleFor(lay, 0, b.gauge(0))
		return b
	}}
	add := func(test Test, measure func(*bench) float64) {
		t.checks = append(t.checks, check{Test: test, measure: measure})
	}
	add(record("street-speed", Steady, "Engine speed at 134.8 psi on the hydrant", "The hydrant's pressure spares engine speed.", at, "engine speed", "rpm", 933, statedShare(0.08), ownConstants),
		func(b *bench) float64 { return b.snap(b.rpm) })
	add(record("street-nozzle", Steady, "Nozzle pressure at the calculated pump pressure", "The calculated pressure brings the nozzle pressure it was calculated for.", at, "nozzle pressure", "psi", 50, statedWidth(1), ownConstants),
		func(b *bench) float64 { return b.snap(b.nozzle(0)) })
	add(record("street-flow", Steady, "Flow at the calculated pump pressure", "A 1⅛ in tip at 50 psi gives 266 gpm.", at, "nozzle flow", "gpm", 266, statedShare(0.02), ownConstants),
		func(b *bench) float64 { return b.snap(b.gpm(0)) })
	add(record("street-reaction", Steady, "Reaction at the calculated pump pressure", "A 1⅛ in tip at 50 psi pushes with 99 lbf.", at, "nozzle reaction", "lbf", 99, statedShare(0.03), ownConstants),
		func(b *bench) float64 { return b.snap(func() float64 { return b.o.Lines[0].ReactionLbf[0] }) })
	add(record("street-intake-falls", Steady, "Fall of the intake with the first line", "A good main gives way little.", at, "static less intake", "psi", 2.1, statedWidth(0.7), ownConstants),
		func(b *bench) float64 { return 65 - b.snap(b.intake) })
	add(record("street-100-rpm", Controls, "Pressure for a hundred rpm", "About 14 psi come with every hundred rpm here.", "Raise the speed by 100 rpm; wait until steady.", "rise of the line pressure", "psi", 14, statedWidth(3), ownConstants),
		func(b *bench) float64 {
			was := b.o.Lines[0].ValvePSI
			b.rpmFor(b.o.EngineRPM + 100)
			return b.snap(func() float64 { return b.o.Lines[0].ValvePSI }) - was
		})
	for _, c := range [...]struct {
		name         string
		off, np, gpm float64
	}{{"below", -15, 44, 251}, {"above", 15, 56, 280}} {
		how := "Throttle until the line gauge shows 15 psi " + c.name + " the calculated pressure; wait until steady."
		add(record("street-15-"+c.name+"-nozzle", Steady, "Nozzle pressure, 15 psi "+c.name, "What a miss on the needle does at the nozzle.", how, "nozzle pressure", "psi", c.np, statedShare(0.03), ownConstants),
			func(b *bench) float64 {
				b.throttleFor(lay+c.off, 0, b.gauge(0))
				return b.snap(b.nozzle(0))
			})
		add(record("street-15-"+c.name+"-flow", Steady, "Flow, 15 psi "+c.name, "What a miss on the needle does to the flow.", how, "nozzle flow", "gpm", c.gpm, statedShare(0.03), ownConstants),
			func(b *bench) float64 { return b.snap(b.gpm(0)) })
	}
	return t
}

func weakerMain() Trial {
	return Trial{initial: "As on the street, but the hydrant gives 45 psi at 500 gpm", begin: func(m Model) *bench {
		s := street()
		s.Hydrant.FlowGPM = 500
		b := onStreet(m, s, 1)
		b.throttleFor(lay, 0, b.gauge(0))
		return b
	}, checks: []check{
		{Test: record("weaker-main-intake-falls", Steady, "Fall of the intake on a weaker main", "A weaker main shows itself at the first line.", "Throttle to 134.8 psi; wait until steady.", "static less intake", "psi", 6.6, statedWidth(1), ownConstants),
			measure: func(b *bench) float64 { return 65 - b.snap(b.intake) }},
	}}
}

func secondLine() Trial {
	mid, width := limits(9*0.75, 13*1.25)
	return Trial{initial: streetText + "; a second like line on discharge 2, shut", begin: func(m Model) *bench {
		b := pumpingLay(m)
		b.before = b.o.IntakePSI
		return b
	}, checks: []check{
		{Test: record("second-line-falls", Controls, "First line falls when a second is opened at a fixed throttle", "A second line takes pressure from the first until the throttle follows.", "Open the second line and let it fill; leave the throttle; wait until steady.", "fall of the first line's pressure", "psi", mid, width, ownConstants),
			measure: func(b *bench) float64 {
				was := b.o.Lines[0].ValvePSI
				b.line(1)
				return was - b.snap(func() float64 { return b.o.Lines[0].ValvePSI })
			}},
		{Test: record("second-line-intake", Controls, "Intake falls when a second line is opened", "The main gives way with the flow.", "As before.", "fall of the intake", "psi", 5, statedShare(0.25), ownConstants),
			measure: func(b *bench) float64 { return b.before - b.snap(b.intake) }},
	}}
}

// endOfSupply opens more and more until the intake has come down.
func endOfSupply() Trial {
	begin := func(m Model) *bench {
		s := street()
		s.Line = fireground.LineDef{Trunk: hose(4, 0.2, 25), Nozzle: tip(2.5)}
		b := onStreet(m, s, 3)
		for i := range 3 {
			b.turn(&b.in.Lines[i].Nozzle[0], 0.2, 3)
		}
		b.turn(&b.in.Throttle, 0.3, 3)
		b.run(30)
		return b
	}
	test := func(psi, gpm float64, id string) check {
		return check{
			Test: record(id, Steady, "Flow at which the intake comes down to "+Number(psi, 0)+" psi", "How much the hydrant and its hose can give.", "With three lines of large hose, open the nozzles slowly until the intake shows "+Number(psi, 0)+" psi.", "flow from the hydrant", "gpm", gpm, statedShare(0.08), ownConstants),
			measure: func(b *bench) float64 {
				for open := b.in.Lines[0].Nozzle[0]; b.o.IntakePSI > psi && open < 1; open += 0.0005 {
					for i := range 3 {
						b.in.Lines[i].Nozzle[0] = open
					}
					b.run(0.1)
				}
				return b.o.HydrantGPM
			},
		}
	}
	return Trial{initial: "Engine 41 on the street's hydrant with 25 ft of 4 in supply hose; three lines of 25 ft of 4 in hose with 2½ in tips", begin: begin,
		checks: []check{test(20, 1370, "supply-to-20"), test(0, 1660, "supply-to-0")}}
}

func fromTankTrial() Trial {
	net, width := limits(40, 44)
	begin := func(m Model) *bench {
		s := street()
		s.Rig.Tank.Gallons, s.Rig.Tank.StartFraction = largeTank, 0.9
		b := set(m, s)
		b.reliefOut()
		b.inGear()
		b.onTank()
		return b
	}
	return Trial{initial: tankText + "; the street's line", begin: begin, checks: []check{
		{Test: record("tank-idle", Steady, "Discharge gauge at idle from the tank, no flow", "Without a hydrant idle shows the pump's own pressure.", "Read the discharge gauge.", "discharge gauge", "psi", net, width, ownConstants),
			measure: func(b *bench) float64 { return b.snap(func() float64 { return b.o.DischargeNeedle }) }},
		{Test: record("tank-speed", Steady, "Engine speed at 134.8 psi from the tank", "From the tank the pump must make all the pressure.", "Open the line and throttle until its gauge shows 134.8 psi; wait until steady.", "engine speed", "rpm", 1266, statedShare(0.08), ownConstants),
			measure: func(b *bench) float64 {
				b.line(0)
				b.throttleFor(lay, 0, b.gauge(0))
				return b.snap(b.rpm)
			}},
	}}
}

func shutOnStreet() Trial {
	mid, width := limits(3.5, 8)
	return Trial{initial: streetText, begin: pumpingLay, checks: []check{
		{Test: record("street-shut", Transients, "Line shut slowly without relief, on the hydrant", "One line of 266 gpm shut slowly raises the pressure little.", "Shut the discharge in 8 s; wait.", "rise of the discharge pressure", "psi", mid, width, ownConstants),
			measure: func(b *bench) float64 {
				was := b.o.DischargePSI
				b.turn(&b.in.Discharge[0], 0, 8)
				return b.snap(b.discharge) - was
			}},
	}}
}
