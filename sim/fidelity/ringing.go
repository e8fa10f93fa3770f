package fidelity

import "fmt"

// ringingTrials look at a stopped line after its first peak.
func ringingTrials() []Trial {
	var list []Trial
	for _, seconds := range [...]float64{0.2, 0.5, 1} {
		list = append(list, ringingTrial(seconds))
	}
	return list
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
