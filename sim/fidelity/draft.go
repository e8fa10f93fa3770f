package fidelity

import (
	"fmt"

	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/water"
)

// draftTrials stand at open water.
func draftTrials() []Trial {
	list := []Trial{primeTrial(12, 29), primeTrial(9.5, 37), vacuumTrial(), dryVacuum(), drownedFlow()}
	for _, c := range [...]struct{ ft, f float64 }{{0, 60}, {2000, 60}, {5000, 60}, {10000, 60}, {5000, 100}, {5000, 140}} {
		list = append(list, liftTrial(c.ft, c.f))
	}
	return append(list, onsetTrial())
}

// primeTrial primes at 10 ft with a primer of so many L/s.
func primeTrial(litersS, seconds float64) Trial {
	mid, width := limits(10, 45)
	id := fmt.Sprintf("prime-%g", litersS)
	vac, vacWidth := limits(8, 10)
	return Trial{
		initial: fmt.Sprintf("Engine 41 at draft, dry, pump in gear at idle: 10 ft of lift, 20 ft of 6 in suction hose, sea level, water 60 °F; primer of %g L/s", litersS),
		begin: func(m Model) *bench {
			return atPond(m, pond{lift: 10, waterF: 60, primer: litersS})
		},
		checks: []check{
			{Test: record(id+"-time", Transients, fmt.Sprintf("Time to prime, %g L/s", litersS), "A primer's size decides how long it takes.", "Work the primer until the casing is full.", "time", "s", seconds, empirical(0.2),
				Source{Computed, "volume of hose and casing through the primer against the growing vacuum, by a trial model"}),
				measure: func(b *bench) float64 {
					b.peak = b.prime()
					return b.peak
				}},
			{Test: record(id+"-rule", Transients, fmt.Sprintf("Time to prime within the standard's, %g L/s", litersS), "The pump primes in the time that the standard gives a 1500 gpm pump.", "As before.", "time", "s", mid, width, primeRule),
				measure: func(b *bench) float64 { return b.peak }},
			{Test: record(id+"-vacuum", Steady, fmt.Sprintf("Vacuum when primed, no flow, %g L/s", litersS), "10 ft of lift are 9 inHg.", "Let it stand; read the intake gauge.", "intake gauge", "inHg", vac, vacWidth, nwcgLift),
				measure: func(b *bench) float64 { return b.snap(func() float64 { return -b.o.IntakeNeedle }) }},
		},
	}
}

// vacuumTrial reads the intake gauge of a primed pump at several lifts.
func vacuumTrial() Trial {
	tol := Tolerance{Formula, 0.25, 0.02}
	return Trial{initial: "Engine 41 at draft, primed, no flow, sea level, water 60 °F", checks: []check{{
		Test: record("vacuum-over-lift", Steady, "Vacuum over lift", "The intake gauge weighs the column: 1 inHg for 1.134 ft.", "At each lift prime and let it stand; read the intake.", "vacuum", "inHg", 0, formula(0.02), nwcgLift),
		sweep: func(b *bench) *Curve {
			c := &Curve{X: "lift", XUnit: "ft", Y: "vacuum with no flow", YUnit: "inHg"}
			for lift := 5.0; lift <= 20; lift += 2.5 {
				k := atPond(b.model, pond{lift: lift, waterF: 60})
				k.prime()
				c.add(lift, k.snap(k.inHg), lift/1.134, tol)
				b.takes(k)
			}
			return c
		},
	}}, begin: func(m Model) *bench { return &bench{model: m} }}
}

// liftTrial finds the highest lift from which the pump can be primed, with a primer that is stronger
// than the air.
func liftTrial(ft, waterF float64) Trial {
	patm := float64(hydraulics.Atmosphere(unit.Feet(ft)))
	k := unit.Fahrenheit(waterF).K()
	vapor := water.VaporPressure(k) / unit.PaPerPSI
	perFt := float64(water.Density(k) * (unit.Gravity * unit.MPerFt / unit.PaPerPSI))
	limit := (patm - vapor) / perFt
	limit = min(limit, float64(29*(unit.PaPerInHg/unit.PaPerPSI))/perFt)
	return Trial{
		initial: fmt.Sprintf("Engine 41 at draft, dry, %g ft above sea level, water %g °F; a tight pump, and a primer that can reach 29 inHg", ft, waterF),
		begin:   func(m Model) *bench { return &bench{model: m} },
		checks: []check{{
			Test: record(fmt.Sprintf("lift-%g-ft-%g-F", ft, waterF), Steady, fmt.Sprintf("Highest lift %g ft above sea level, water of %g °F", ft, waterF), "Air pressure less vapor pressure is what lifts the water.",
				"Work the primer for ten minutes at different lifts, until the highest from which the casing fills is known within 0.2 ft.", "highest lift", "ft", limit, formula(0.02),
				Source{Computed, "(atmosphere less vapor pressure) over the weight of water, at most 29 inHg; 33.9 ft at sea level without vapor"}),
			measure: func(b *bench) float64 {
				lo, hi := 15.0, 39.9
				for hi-lo > 0.2 {
					lift := float64(0.5 * (lo + hi))
					if fillsFrom(b.model, pond{lift: lift, elevation: ft, waterF: waterF, strong: true}) {
						lo = lift
					} else {
						hi = lift
					}
				}
				return float64(0.5 * (lo + hi))
			},
		}},
	}
}

// fillsFrom reports whether the primer fills the casing within ten minutes.
func fillsFrom(m Model, p pond) bool {
	b := atPond(m, p)
	if b.p == nil {
		return false
	}
	b.in.Primer = true
	b.waits(600, func() bool { return b.o.CasingWater > 0.9 })
	return b.o.CasingWater > 0.9
}

// dryVacuum is the test of tightness: the empty pump holds a vacuum.
func dryVacuum() Trial {
	mid, width := limits(0, 10)
	return Trial{
		initial: "Engine 41 parked, pump drained, everything shut",
		begin: func(m Model) *bench {
			b := set(m, street())
			b.in.PumpDrain = 1
			b.run(400)
			b.in.PumpDrain = 0
			return b
		},
		checks: []check{
			{Test: record("dry-vacuum-reached", Steady, "Dry vacuum test: vacuum reached", "The primer draws the empty pump down to 22 inHg.", "Work the primer until the intake shows 22 inHg.", "vacuum", "inHg", 22, formula(0.02), vacuumRule),
				measure: func(b *bench) float64 {
					b.in.Primer = true
					b.until("22 inHg", 120, func() bool { return b.inHg() >= 22 })
					b.in.Primer = false
					b.before = b.inHg()
					return b.before
				}},
			{Test: record("dry-vacuum-loss", Steady, "Dry vacuum test: loss in five minutes", "A tight pump loses no more than the standard allows.", "Stop the primer; wait five minutes.", "loss of vacuum", "inHg", mid, width, vacuumRule),
				measure: func(b *bench) float64 {
					plot := &Curve{X: "time", XUnit: "s", Y: "vacuum", YUnit: "inHg"}
					for range 30 {
						b.run(10)
						plot.add(b.s, b.inHg(), b.before-5, Tolerance{Tier: Limit, Width: 5})
					}
					b.plot = plot
					return b.before - b.inHg()
				}},
		},
	}
}

// drownedFlow opens big tips at draft and raises the speed: the flow rises, then the pump cavitates.
func drownedFlow() Trial {
	model := Source{Computed, "trial model of this pump with tips of its own"}
	t := Trial{
		initial: "Engine 41 at draft: 10 ft of lift, 20 ft of 6 in suction hose, sea level, water 60 °F; three lines of 25 ft of 4 in hose with 1¾ in tips, open",
		begin: func(m Model) *bench {
			b := atPond(m, pond{lift: 10, waterF: 60})
			b.primedLines()
			for i := range 3 {
				b.turn(&b.in.Lines[i].Nozzle[0], 1, 3)
			}
			return b
		},
	}
	for _, c := range [...]struct{ rpm, gpm float64 }{{900, 1438}, {1300, 1799}, {2100, 1772}} {
		t.checks = append(t.checks, check{
			Test: record(fmt.Sprintf("draft-flow-%g-rpm", c.rpm), Abnormal, fmt.Sprintf("Flow with big tips at draft, %g rpm", c.rpm), "With big tips the flow rises with speed until the pump cavitates; then it stays, however fast the pump turns.",
				fmt.Sprintf("Throttle to %g rpm; wait 15 s.", c.rpm), "pump flow", "gpm", c.gpm, empirical(0.15), model),
			measure: func(b *bench) float64 {
				b.turn(&b.in.Throttle, (c.rpm-700)/1450, 3)
				b.throttleTo(c.rpm, -1, b.rpm)
				b.run(15)
				return b.o.PumpGPM
			},
		})
	}
	recover, width := limits(0, 10)
	loud, loudWidth := limits(0.5, 1)
	lost, lostWidth := limits(0, 0.6)
	t.checks = append(t.checks,
		check{Test: record("draft-cavitates", Abnormal, "Head left when cavitating at draft", "At high speed most of the head is lost.", "As before, at 2100 rpm.", "head factor", "", lost, lostWidth, ownDesign),
			measure: func(b *bench) float64 { return b.o.HeadFactor }},
		check{Test: record("draft-gravel", Abnormal, "Gravel when cavitating at draft", "Cavitation is heard.", "As before.", "sound of gravel, 0 to 1", "", loud, loudWidth, ownDesign),
			measure: func(b *bench) float64 { return b.o.GravelSound }},
		check{Test: record("draft-gating-cures", Abnormal, "Gating down ends cavitation", "Less flow ends it within seconds.", "Gate all nozzles to a fifth in a second each; wait.", "time until 97 % of the head are back", "s", recover, width, ownDesign),
			measure: func(b *bench) float64 {
				for i := range 3 {
					b.turn(&b.in.Lines[i].Nozzle[0], 0.2, 1)
				}
				return b.until("recovery", 60, func() bool { return b.o.HeadFactor > 0.97 })
			}},
	)
	return t
}

// onsetTrial finds for several speeds the flow at which 3 % of the head are lost.
func onsetTrial() Trial {
	tol := Tolerance{Formula, 5, 0.02}
	return Trial{
		initial: "Engine 41 at draft: 10 ft of lift, 20 ft of 6 in suction hose, sea level, water 60 °F; three lines of 25 ft of 4 in hose with 2½ in tips",
		begin:   func(m Model) *bench { return &bench{model: m} },
		checks: []check{{
			Test: record("cavitation-onset", Steady, "Onset of cavitation over speed at draft", "Cavitation begins where the NPSH at hand falls to what the pump needs, at every speed.",
				"At each speed open the nozzles until 3 % of the head are lost; read flow and intake pressure.", "flow at which NPSHr meets the measured NPSHa", "gpm", 0, Tolerance{Tier: Formula, Share: 0.02},
				Source{Computed, "NPSHr = 1.97 + 3 ω² + 9 (Q/1500)² ft, this pump's data, solved for Q at the measured intake pressure"}),
			sweep: func(b *bench) *Curve {
				c := &Curve{X: "engine speed", XUnit: "rpm", Y: "flow at 3 % loss of head", YUnit: "gpm"}
				for rpm := 1200.0; rpm <= 1800; rpm += 100 {
					k := atPond(b.model, pond{lift: 10, waterF: 60, tip: 2.5})
					k.primedLines()
					k.throttleFor(rpm, -1, k.rpm)
					k.nozzlesFor(97, func() float64 { return float64(100 * k.o.HeadFactor) })
					k.settle()
					w := k.o.EngineRPM / 1520
					have := (float64(hydraulics.Atmosphere(0)) + k.o.IntakePSI - 0.2563) / 0.4333
					need := (have - 1.9685 - float64(3*float64(w*w))) / 9
					c.add(k.o.EngineRPM, k.o.PumpGPM, float64(1500*root(need)), tol)
					b.takes(k)
				}
				return c
			},
		}},
	}
}
