package rig

import (
	"math"
	"testing"

	"steadyneedle/sim/unit"
)

// The valve moves slowly, both ways; changed over above its safe pressure it jolts, once a change, and the
// harder the higher the pressure (assumptions).
func TestTransferMovesAndJolts(t *testing.T) {
	v := NewTransfer(DefaultTransfer())
	seconds := 0.0
	for ; v.At() < 1 && seconds < 20; seconds += step {
		v.Step(step, true, 45)
	}
	if math.Abs(seconds-4) > 0.05 || v.Jolts() != 0 || v.Wear() != 0 {
		t.Errorf("to series at 45 psi: %.2f s, %v jolts, wear %v", seconds, v.Jolts(), v.Wear())
	}
	v.Step(step, false, 100)
	wear := v.Wear()
	v.Step(step, false, 100)
	if v.Jolts() != 1 || wear != 0.02 || v.Wear() != 0 {
		t.Errorf("back at 100 psi: %v jolts, wear %v then %v, want one of 0.02", v.Jolts(), wear, v.Wear())
	}
	v.Step(step, true, 200)
	if v.Wear() <= wear {
		t.Errorf("a change at 200 psi wears %v, no more than %v at 100", v.Wear(), wear)
	}
	for range 240 * 5 {
		v.Step(step, true, 45)
	}
	if v.Series(false) != 1 || math.Abs(v.Series(true)-0.1) > 1e-12 {
		t.Errorf("series %v, with a clapper open %v, want 1 and 0.1", v.Series(false), v.Series(true))
	}
}

// In series the same impellers, each with the whole flow, add their rises (computed: one impeller at half
// the flow gives the parallel curve).
func TestSeriesIsTwiceOneImpeller(t *testing.T) {
	def := Default().Pump
	parallel, series := NewPump(def), NewPump(def)
	series.Arrange(1)
	for _, gpm := range []float64{0, 200, 500, 750} {
		one, _ := gainAt(&parallel, 1400, 2*gpm, 200) // an impeller with gpm is the pair with twice of it
		two, hp := gainAt(&series, 1400, gpm, 200)
		_, both := gainAt(&parallel, 1400, 2*gpm, 200)
		if math.Abs(two-2*one) > 0.01*two || math.Abs(hp-both) > 1e-6*both {
			t.Errorf("%v gpm: %.1f psi with %.1f hp, want twice %.1f psi and %.1f hp", gpm, two, hp, one, both)
		}
	}
	q := unit.GPM(750).M3S()
	_, need := series.NPSH(q, 0)
	if _, same := parallel.NPSH(2*q, 0); math.Abs(need-same) > 1e-9 {
		t.Errorf("NPSH required %v m in series, want that of one impeller with the whole flow, %v", need, same)
	}
}

// The curve that is told of a pump is the one that it works on [C: A and B in series, as above], for any
// speed, flow and arrangement; ample suction pressure leaves 0.1 % of the head to cavitation.
func TestCurveIsWorkedOn(t *testing.T) {
	def := Default().Pump
	for _, series := range []float64{0, 0.4, 1} {
		p := NewPump(def)
		p.Arrange(series)
		shutoff, loss := def.Curve(series)
		for _, gpm := range []float64{0, 200, 600} {
			w := 1400 / def.RatedRPM
			got, _ := gainAt(&p, 1400, gpm, 200)
			if want := shutoff*w*w - loss*gpm*gpm; math.Abs(got-want) > 0.001*want {
				t.Errorf("series %v, %v gpm: %.2f psi, the curve says %.2f", series, gpm, got, want)
			}
		}
	}
}
