package fireground

import (
	"math"
	"testing"

	"steadyneedle/sim/unit"
)

// TestKink: the tighter the kink, the less flows; a full one stops it exactly.
func TestKink(t *testing.T) {
	last := math.Inf(1)
	b := flowing(t, 600, 1.0/240)
	for _, k := range []float64{0, 0.3, 0.6, 0.9, 0.97, 1} {
		b.hose.Kink(k)
		b.run(20)
		q := b.gpm()
		if !(q < last) {
			t.Errorf("kink %.2f: %.1f gpm, no less than %.1f", k, q, last)
		}
		if k == 0.9 && (q > 170 || q < 40) {
			t.Errorf("kink 0.9: %.0f gpm, want it felt, not shut (assumption)", q)
		}
		last = q
	}
	if last != 0 {
		t.Errorf("%g gpm through a hose that is kinked shut", last)
	}
	b.hose.Kink(0)
	b.run(20)
	if q := b.gpm(); math.Abs(q-184.386) > 0.1 {
		t.Errorf("%.2f gpm after the kink is out, want 184.39", q)
	}
	b.check(t)
}

// TestInLeak: 2 L/s at 5 psi of vacuum in soft hose (assumption), none in hard, none under pressure.
func TestInLeak(t *testing.T) {
	for _, c := range []struct {
		hard bool
		psi  float64
		want float64
	}{{false, -5, 2e-3}, {false, -1.25, 0.5e-3}, {false, 5, 0}, {true, -5, 0}} {
		def := supply4
		def.Hard = c.hard
		b := newBench(t, 10, 4e-4, def, NozzleDef{TipIn: 1, RatedPSI: 50})
		b.hose.Update(b.Net)
		end := b.hose.End
		end.P = c.psi * unit.PaPerPSI
		b.hose.InLeak(1)
		if math.Abs(end.AirIn-c.want) > 1e-9 {
			t.Errorf("hard %v at %.2f psi: %.5f m³/s, want %.5f", c.hard, c.psi, end.AirIn, c.want)
		}
	}
}

// TestTakenAway: a hose that is rolled up leaves nothing behind, and can be laid again.
func TestTakenAway(t *testing.T) {
	b := flowing(t, 600, 1.0/240)
	before := b.stub.Stretch
	b.nozzle.Set(0)
	def := HoseDef{SizeIn: 1.75, LossC: 15.5, LengthFt: 200}
	b.hose.Lay(b.Net, def, 0, 0, 0)
	b.run(1)
	if q := b.gpm(); q != 0 || b.hose.End.Water != 0 {
		t.Errorf("%g gpm and %g m³ in a hose that isn't there", q, b.hose.End.Water)
	}
	b.hose.Lay(b.Net, def, 200, 0, 0)
	if s := b.stub.Stretch; math.Abs(s/before-1) > 1e-9 {
		t.Errorf("the valve's end gives %g m³/Pa after laying it again, before %g", s, before)
	}
	b.nozzle.Set(1)
	b.run(60)
	if q := b.gpm(); math.Abs(q-184.386) > 0.1 {
		t.Errorf("%.2f gpm after laying it again, want 184.39", q)
	}
	b.check(t)
}
