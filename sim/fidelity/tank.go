package fidelity

import (
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/plant"
)

// tankTrials draw from the booster tank, fill it, and run it dry.
func tankTrials() []Trial {
	return []Trial{tankFlowTrial(), tankFillTrial(), tankDryTrial(), tankSuddenTrial(), tankLampTrial(), overflowTrial()}
}

// onFullTank has the pump in gear with tank to pump open, and three lines of large hose with tips that take
// all that the tank gives.
func onFullTank(m Model) *bench {
	s := street()
	s.Rig.Tank.StartFraction = 1
	s.Line = fireground.LineDef{Trunk: hose(4, 0.2, 25), Nozzle: tip(1.75)}
	b := set(m, s)
	b.reliefOut()
	b.inGear()
	b.onTank()
	for i := range 3 {
		b.in.Lines[i].Attached = true
		b.nozzles(i, 0.3)
		b.turn(&b.in.Discharge[i], 1, 2)
	}
	return b
}

func tankFlowTrial() Trial {
	flow, flowWidth := limits(500, 1500)
	out, outWidth := limits(400, 500)
	return Trial{
		initial: "Engine 41 in gear with a full 500 gal tank, tank to pump open, three short lines of large hose",
		begin:   onFullTank,
		checks: []check{
			{Test: record("tank-to-pump-flow", Steady, "Tank-to-pump flow", "The pump can take from its tank what the standard asks.", "Throttle up and open the nozzles; read the flow from the tank until a quarter of it is out.", "lowest flow from the tank from 5 s on", "gpm", flow, flowWidth, tankRule),
				measure: func(b *bench) float64 {
					b.turn(&b.in.Throttle, 0.35, 2)
					b.run(3)
					least := b.o.TankToPumpGPM
					for b.o.TankGal > 375 && b.problem == "" {
						b.run(tick)
						least = min(least, b.o.TankToPumpGPM)
					}
					return least
				}},
			{Test: record("tank-to-pump-until", Steady, "Water out of the tank before the flow fails", "The flow lasts until 80 % of the tank are out.", "Go on until the flow from the tank falls below 500 gpm.", "gallons out of the tank", "gal", out, outWidth, tankRule),
				measure: func(b *bench) float64 {
					b.until("the end of the tank", 120, func() bool { return b.o.TankToPumpGPM < 500 })
					return 500 - b.o.TankGal
				}},
		},
	}
}

// tankFillTrial fills the tank while a line flows.
func tankFillTrial() Trial {
	t := Trial{initial: streetText + ", at 134.8 psi; tank three quarters full", begin: func(m Model) *bench {
		b := pumpingLay(m)
		b.before, b.speed = b.o.Lines[0].ValvePSI, b.o.PumpShaftRPM
		return b
	}}
	for _, c := range [...]struct {
		id  string
		gpm float64
	}{{"tank-fill-100", 100}, {"tank-fill-185", 185}} {
		t.checks = append(t.checks, check{
			Test: record(c.id, Controls, "What filling the tank at "+Number(c.gpm, 0)+" gpm takes from the line", "Filling the tank costs pressure at the line until the throttle follows.",
				"Open tank fill slowly until "+Number(c.gpm, 0)+" gpm run into the tank; leave the throttle.", "fall of the line's pressure over what so much more from the pump takes, by hand", "", 1, empirical(0.1), balanced),
			measure: func(b *bench) float64 {
				for b.o.TankFillGPM < c.gpm && b.in.TankFill < 1 {
					b.in.TankFill += 0.005
					b.run(0.5)
				}
				b.run(10)
				line := inRow(hoseCv(2, 600), tipCv(1.125))
				at := func(rpm, fill float64) float64 {
					return across(streetBalance(rpm, inRow(streetValve, line)+fill, 0), streetValve, line)
				}
				fall := at(b.speed, 0) - at(b.o.PumpShaftRPM, b.o.TankFillGPM/root(b.o.DischargePSI))
				return (b.before - b.o.Lines[0].ValvePSI) / fall
			},
		})
	}
	mid, width := limits(38, 75)
	t.checks = append(t.checks, check{
		Test: record("tank-fill-time", Transients, "Time to fill a quarter of the tank", "A tank is not filled in a moment.", "Shut tank fill; wait 5 s; open it full; wait until 125 gal have gone in since the trial began.", "time for 125 gal", "s", mid, width, ownConstants),
		measure: func(b *bench) float64 {
			k := onStreet(b.model, street(), 1)
			k.throttleFor(lay, 0, k.gauge(0))
			k.in.TankFill = 1
			from := k.o.TankGal
			s := k.until("filling", 120, func() bool { return k.o.TankGal-from >= 124.9 || k.o.Overflowing })
			b.takes(k)
			return s
		},
	})
	return t
}

// emptying has the street's line flowing from the tank, and notes the pressure.
func emptying(m Model, s plant.Setup) *bench {
	b := set(m, s)
	b.reliefOut()
	b.inGear()
	b.onTank()
	b.line(0)
	b.turn(&b.in.Throttle, 0.4, 2)
	b.run(5)
	b.before = b.o.DischargePSI
	return b
}

// tankDryTrial runs the tank dry with a line flowing.
func tankDryTrial() Trial {
	left, leftWidth := limits(1, 40)
	half, halfWidth := limits(0.7, 1.6)
	dead, deadWidth := limits(-1, 5)
	load, loadWidth := limits(0, 0.3)
	return Trial{
		initial: "Engine 41 in gear with a tank three quarters full, the street's line flowing from it at 1280 rpm and more",
		begin:   func(m Model) *bench { return emptying(m, street()) },
		checks: []check{
			{Test: record("tank-dry-left", Abnormal, "Water left when the outlet draws air", "The outlet's vortex draws air before the tank is empty.", "Pump until the first air takes 3 % of the head.", "gallons left", "gal", left, leftWidth, ownDesign),
				measure: func(b *bench) float64 {
					b.until("the end of the tank", 400, func() bool { return b.o.AirFactor < 0.97 })
					return b.o.TankGal
				}},
			{Test: record("tank-dry-half", Abnormal, "From first air to half pressure", "The vortex mixes air in as the level falls: the pressure goes within a second or so.", "Go on.", "time", "s", half, halfWidth,
				Source{Computed, "the eye's 20 L go from 4 to 10 % of air, 1.3 L: the vortex brings 11 % of some 200 gpm, 1.4 L/s, and the pump carries 0.3 L/s off; about 1.1 s"}),
				measure: (*bench).toHalf},
			{Test: record("tank-dry-dead", Abnormal, "Pressure of an empty pump", "Without water no speed makes pressure.", "Wait 15 s.", "discharge pressure", "psi", dead, deadWidth, ownDesign),
				measure: func(b *bench) float64 { b.run(15); return b.o.DischargePSI }},
			{Test: record("tank-dry-load", Abnormal, "Engine load with an empty pump", "An empty pump turns light: the engine races by its droop.", "As before.", "share of the torque available", "", load, loadWidth, ownDesign),
				measure: func(b *bench) float64 { return b.o.EngineLoad }},
		},
	}
}

// toHalf is the time until the discharge pressure has come down to half of what it was, s.
func (b *bench) toHalf() float64 {
	return b.until("half pressure", 30, func() bool { return b.o.DischargePSI < float64(0.5*b.before) })
}

// tankSuddenTrial runs a tank dry that draws no vortex: all of the air comes at once.
func tankSuddenTrial() Trial {
	half, halfWidth := limits(0.08, 0.25)
	return Trial{
		initial: "As Engine 41 on its tank, with a sump that keeps the vortex away until the water is gone; the street's line flowing at 1280 rpm and more",
		begin: func(m Model) *bench {
			s := street()
			s.Rig.Tank.VortexShare = 0.001
			b := emptying(m, s)
			b.until("the end of the tank", 400, func() bool { return b.o.AirFactor < 0.97 })
			return b
		},
		checks: []check{{
			Test: record("tank-dry-sudden", Abnormal, "From first air to half pressure, without a vortex", "Where the air comes at once the pressure is gone at once: it is the vortex that stretches it.", "Go on.", "time", "s", half, halfWidth,
				Source{Computed, "1.3 L of air, as above, at 250 gpm at first and 80 gpm in the end"}),
			measure: (*bench).toHalf,
		}},
	}
}

// tankLampTrial drains and fills the tank and reads its lamps.
func tankLampTrial() Trial {
	t := Trial{initial: "Engine 41 in gear with a full 500 gal tank, tank to pump open, three short lines of large hose", begin: onFullTank}
	for _, c := range [...]struct {
		id, title string
		lamp      int
		share     float64
	}{{"full", "F", 4, 0.855}, {"3-4", "¾", 3, 0.68}, {"1-2", "½", 2, 0.44}, {"1-4", "¼", 1, 0.20}} {
		t.checks = append(t.checks, check{
			Test: record("tank-lamp-"+c.id+"-out", Instruments, "Level at which lamp "+c.title+" goes out", "The lamps stand for quarters, with a little hysteresis.", "Pump the tank down at about 200 gpm until the lamp goes out.", "level, share of the tank", "", c.share, statedWidth(0.03), ownDesign),
			measure: func(b *bench) float64 {
				b.until("lamp "+c.title, 300, func() bool { return !b.o.TankLamp[c.lamp] })
				return b.o.TankGal / 500
			},
		})
	}
	return t
}

// overflowTrial fills the tank from the hydrant until it runs over.
func overflowTrial() Trial {
	return Trial{
		initial: "Engine 41 on the street's hydrant, tank three quarters full, tank fill open, 1000 rpm",
		begin: func(m Model) *bench {
			b := onStreet(m, street(), 0)
			b.turn(&b.in.Throttle, 0.2, 2)
			b.turn(&b.in.TankFill, 1, 2)
			return b
		},
		checks: []check{
			{Test: record("tank-lamp-late", Instruments, "Lamp F while filling", "While it fills, ¾ stands alone for 12 % of the tank too long: the lamps mislead.", "Fill until lamp F lights or water runs over.", "level, share of the tank", "", 0.995, statedWidth(0.02), ownDesign),
				measure: func(b *bench) float64 {
					b.until("lamp F", 200, func() bool { return b.o.TankLamp[4] || b.o.Overflowing })
					return b.o.TankGal / 500
				}},
			{Test: record("tank-overflows", Abnormal, "Tank left overflowing", "A tank left filling runs over, and the water at the tires tells.", "Go on for 60 s.", "overflow seen (1 yes)", "", 1, statedWidth(0), ownDesign),
				measure: func(b *bench) float64 { b.run(60); return lit(b.o.Overflowing) }},
			{Test: record("tank-overflow-holds", Abnormal, "An overflowing tank holds no more than it can", "What the overflow carries away is not kept.", "As before.", "gallons in the tank", "gal", 500, statedWidth(1), conservation),
				measure: func(b *bench) float64 { return b.o.TankGal }},
		},
	}
}
