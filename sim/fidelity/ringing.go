package fidelity

import (
	"fmt"
	"math"
)

// ringingTrials look at a stopped line after its first peak.
func ringingTrials() []Trial {
	var list []Trial
	for _, seconds := range [...]float64{0.2, 0.5, 1} {
		list = append(list, ringingTrial(seconds))
	}
	return append(list, thrownBack())
}

// thrownBack looks at how a supply hose comes to rest whose water was stopped at the intake.
func thrownBack() Trial {
	return Trial{
		initial: "Engine 41 on the street's hydrant, 300 ft of 2½ in supply hose, 200 gpm flowing; intake shut in 0.3 s",
		begin: func(m Model) *bench {
			s := street()
			s.Supply, s.Line.Trunk, s.Line.Nozzle = hose(2.5, 2, 0), hose(1.75, 15.5, 100), tip(0.75)
			b := onStreet(m, s, 0)
			b.onHydrant(300)
			b.line(0)
			b.settle()
			b.turn(&b.in.Intake, 0, 0.3)
			b.run(10)
			last, was := b.o.SupplyPSI, 0.0
			for range ticks(20) {
				b.run(tick)
				by := b.o.SupplyPSI - last
				if float64(by*was) < 0 {
					b.rung = append(b.rung, math.Abs(last-b.setup.Hydrant.StaticPSI))
				}
				last, was = b.o.SupplyPSI, by
			}
			return b
		},
		checks: []check{{
			Test: record("supply-thrown-back", Transients, "What a main throws back of a stopped supply column", "A supply hose swings a few times and stands: the main carries most of each wave away.",
				"Shut the intake in 0.3 s; from 10 s on note by how much the pressure before the intake is off at each turn.", "swing at the second turn over that at the first", "", thrownShare(), empirical(0.15),
				Source{Computed, "reflection at two pipes of 8 in (assumption), ρa/A each, |Zm − Zh|/(Zm + Zh) (Allievi), and the fabric's damping ratio of 0.03 (assumption)"}),
			measure: func(b *bench) float64 {
				if len(b.rung) < 2 {
					b.fails("the hose does not swing")
					return 0
				}
				return b.rung[1] / b.rung[0]
			},
		}},
	}
}

// thrownShare is what a main of 8 in each way, 4000 ft/s, leaves of a swing of 2½ in hose at 600 ft/s.
func thrownShare() float64 {
	main, hose := 4000.0/(2*64), 600/6.25
	const fabric = 0.91006 // e^(−0.03 π)
	return float64((hose - main) / (hose + main) * fabric)
}

// ringingTrial holds the second and the third peak against the method of characteristics. The main is so
// strong that the line is fed at nearly one pressure, as that method's is.
func ringingTrial(seconds float64) Trial {
	history, _ := surge(600, seconds, ringS)
	wanted := peaks(history, 155.3)
	steps := fmt.Sprintf("Shut the nozzle in %g s, its free area evenly; watch %d s.", seconds, ringS)
	t := Trial{
		initial: "Engine 41 on a hydrant of 65 psi that gives 3000 gpm at 64, 25 ft of 4 in supply hose; 200 ft of 1¾ in with a 15/16 in tip at 155.3 psi, the model's own wave speed",
		begin: func(m Model) *bench {
			s := street()
			s.Hydrant.ResidualPSI, s.Hydrant.FlowGPM = 64, 3000
			s.Line.Trunk, s.Line.Nozzle = hose(1.75, 15.5, 200), tip(0.9375)
			s.Line.Trunk.WaveFtS = 600
			b := onStreet(m, s, 1)
			b.throttleFor(155.3, 0, b.gauge(0))
			b.settle()
			b.rings(seconds)
			return b
		},
	}
	for k, name := range [...]string{"second", "third"} {
		t.checks = append(t.checks, check{
			Test: record(fmt.Sprintf("hammer-%s-peak-in-%g", name, seconds), Transients, fmt.Sprintf("The %s peak at the nozzle, shut in %g s", name, seconds), "What the first peak leaves dies away about as fast as friction takes it, though the period is a third too long.",
				steps, name+" highest pressure at the nozzle", "psi", wanted[k+1], statedShare(0.15), characterist),
			measure: func(b *bench) float64 {
				if len(b.rung) < k+2 {
					b.fails("the line does not ring so long")
					return 0
				}
				return b.rung[k+1]
			},
		})
	}
	return t
}

const ringS = 6 // s that are watched after the nozzle is shut

// rings shuts the nozzle of line 1 and keeps its peaks.
func (b *bench) rings(seconds float64) {
	var p []float64
	for k := range ticks(seconds + ringS) {
		b.in.Lines[0].Nozzle[0] = travelFor(max(0, 1-float64(k+1)/float64(ticks(seconds))))
		b.run(tick)
		p = append(p, b.endPSI())
	}
	b.rung = peaks(p, 155.3)
}

// peaks are the highest values of each stretch of a history that lies above rest.
func peaks(history []float64, rest float64) []float64 {
	var all []float64
	top := rest
	for _, p := range history {
		switch {
		case p > rest:
			top = max(top, p)
		case top > rest:
			all = append(all, top)
			top = rest
		}
	}
	return all
}
