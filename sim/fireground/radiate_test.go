package fireground

import (
	"math"
	"testing"
)

// TestRadiate shuts the nozzle of a hose on a hydrant and looks at how much less it swings at each turn: by
// the share that a main of two 8 in pipes throws back, |Zm − Zh|/(Zm + Zh) (Allievi, closed form [C]), and
// what the fabric takes, ζ = 0.03. From 2 in on the bound of the damping decides, ζ = 0.1.
func TestRadiate(t *testing.T) {
	for _, c := range []struct{ size, loss, ft float64 }{{1.5, 24, 200}, {1.75, 15.5, 200}, {2.5, 2, 300}, {3, 0.8, 300}, {4, 0.2, 300}} {
		b := newBench(t, 65, 1e-9, HoseDef{SizeIn: c.size, LossC: c.loss, LengthFt: c.ft}, NozzleDef{TipIn: 0.25, RatedPSI: 50})
		b.hose.Radiate()
		b.gate.SetShut(false)
		b.nozzle.Set(1)
		b.SetAir(b.hose.End, 0)
		b.SetWater(b.hose.End, b.hose.Content())
		b.run(60)
		b.nozzle.Set(0)
		turns := b.turns(30)
		if len(turns) < 4 {
			t.Fatalf("%v in: %d turns", c.size, len(turns))
		}
		// ρa/A of the hose with water of 998.16 kg/m³ at 600 ft/s; the main 4000 ft/s in 8 in, both ways
		area := func(in float64) float64 { return math.Pi / 4 * in * in * 0.0254 * 0.0254 }
		hose, main := 998.16*182.88/area(c.size), 998.16*1219.2/(2*area(8))
		want := max(math.Abs(main-hose)/(main+hose), math.Exp(-math.Pi*0.1/math.Sqrt(1-0.01)))
		want *= math.Exp(-math.Pi * 0.03)
		for k := 1; k < 3; k++ {
			if got := math.Abs(turns[k+1]-65) / math.Abs(turns[k]-65); math.Abs(got/want-1) > 0.1 {
				t.Errorf("%v in: turn %d swings by %.3f of the one before, want %.3f", c.size, k+1, got, want)
			}
		}
		b.check(t)
	}
}

// turns are the pressures at which the hose's end turns back, psi.
func (b *bench) turns(seconds float64) []float64 {
	var all []float64
	last, was := b.endPSI(), 0.0
	for end := b.seconds + seconds; b.seconds < end; {
		b.step()
		by := b.endPSI() - last
		if by*was < 0 {
			all = append(all, last)
		}
		last += by
		was = by
	}
	return all
}
