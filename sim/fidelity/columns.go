package fidelity

import (
	"fmt"
	"math"

	"steadyneedle/sim/rig"
)

// columnTrials stop the water of supply hoses at the intake.
func columnTrials() []Trial {
	var list []Trial
	for _, c := range [...]struct{ size, loss, ft, tip, seconds float64 }{
		{2.5, 2, 300, 1, 0.5}, {4, 0.2, 300, 2, 0.3}, {4, 0.2, 300, 2, 1}, {5, 0.08, 500, 2, 0.3}, {5, 0.08, 1000, 2, 2},
	} {
		list = append(list, columnTrial(column{size: c.size, loss: c.loss, ft: c.ft}, c.tip, c.seconds))
	}
	return list
}

// columnTrial holds the first peak before an intake that is shut fast against the method of characteristics.
func columnTrial(c column, tipIn, seconds float64) Trial {
	return Trial{
		initial: fmt.Sprintf("Engine 41 on a good main of 65 psi (45 at 3000 gpm), %g ft of %s in supply hose, 25 ft of 4 in with a %g in tip flowing at 1000 rpm", c.ft, inches(c.size), tipIn),
		begin: func(m Model) *bench {
			s := street()
			s.Hydrant.FlowGPM, s.Supply = 3000, hose(c.size, c.loss, 0)
			s.Line.Trunk, s.Line.Nozzle = hose(4, 0.2, 25), tip(tipIn)
			b := onStreet(m, s, 0)
			b.in.Lines[0].Attached = true
			b.onHydrant(c.ft)
			b.line(0)
			b.rpmFor(1000)
			b.settle()
			return b
		},
		checks: []check{{
			Test: record(fmt.Sprintf("column-%g-%g-in-%g", c.size, c.ft, seconds), Transients, fmt.Sprintf("%g ft of %s in supply hose stopped in %g s", c.ft, inches(c.size), seconds), "An intake shut fast strikes the supply hose as the column of its water does.",
				fmt.Sprintf("Shut the intake in %g s.", seconds), "highest pressure before the intake over that by the method of characteristics", "", 1, empirical(0.1),
				Source{Computed, "method of characteristics, hose fed at constant pressure, the intake valve's opening as its handle's curve says"}),
			measure: func(b *bench) float64 {
				if b.p == nil {
					return math.NaN()
				}
				d := rig.Default().Intake.Valve
				drop := b.o.SupplyPSI - b.o.IntakePSI
				c.start, c.behind, c.open = b.o.IntakeGPM, b.o.IntakePSI, b.o.IntakeGPM/root(drop)
				c.feed = b.o.SupplyPSI + float64(float64(c.loss*c.ft)*float64(c.start*c.start))/1e6
				c.left = func(x float64) float64 {
					travel := max(0, (1-x-d.Lock)/(1-d.Lock))
					return travel / (d.Curve - float64((d.Curve-1)*travel))
				}
				wanted, peak := c.stopped(600, seconds, 3.5)
				plot := &Curve{X: "time", XUnit: "s", Y: "pressure before the intake", YUnit: "psi", Reference: "method of characteristics"}
				top := 0.0
				for k := range ticks(seconds + 3) {
					b.in.Intake = max(0, 1-float64(k+1)/float64(ticks(seconds)))
					b.run(tick)
					plot.Points = append(plot.Points, Point{float64(float64(k+1) * tick), b.o.SupplyPSI, wanted[k], 0})
					top = max(top, b.o.SupplyPSI)
				}
				b.plot = plot
				return top / peak
			},
		}},
	}
}
