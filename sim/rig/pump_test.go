package rig

import (
	"math"
	"testing"

	"steadyneedle/sim/unit"
)

const (
	testDensity = 999.0
	testVapor   = 1766.0 // Pa at 60 °F
)

func gainAt(p *Pump, rpm, gpm, psi float64) (gain, hp float64) {
	p.Prepare(unit.RPM(rpm).RadS(), 0, unit.PaAtm, testVapor, testDensity)
	q := unit.GPM(gpm).M3S()
	g, _, _ := p.Gain(q, unit.PSI(psi).Pa())
	return g / unit.PaPerPSI, p.Power(q, unit.PSI(psi).Pa(), 1) / unit.WPerHP
}

// Source: computed by hand from the constants chosen for this pump; 5 % for the speed's rounding.
func TestPumpRatingPoints(t *testing.T) {
	p := NewPump(Default().Pump)
	for _, c := range []struct{ rpm, gpm, net, hp float64 }{
		{1520, 1500, 150, 193}, {1622, 1050, 200, 186}, {1759, 750, 250, 198}, {1577, 1500, 165, 211}, {700, 0, 41, 7.3},
	} {
		net, hp := gainAt(&p, c.rpm, c.gpm, 50) // ample suction pressure: no cavitation
		if math.Abs(net-c.net) > 1.5 || math.Abs(hp/0.97-c.hp) > 0.05*c.hp+0.5 {
			t.Errorf("%v rpm, %v gpm: %.1f psi, %.0f hp with drive loss, want %v and %v", c.rpm, c.gpm, net, hp/0.97, c.net, c.hp)
		}
	}
}

// f is 0.97 where NPSHa = NPSHr by definition, above 0.995 at twice that, 0 at the gone ratio, and
// smooth between (definition of NPSHr; the rest assumption).
func TestHeadFactor(t *testing.T) {
	p := NewPump(Default().Pump)
	for _, c := range []struct{ r, lo, hi float64 }{{1, 0.97, 0.97}, {2, 0.995, 1}, {0.4, 0, 0}, {0.2, 0, 0}, {0.7, 0.3, 0.7}} {
		if f, _ := p.headFactor(c.r); f < c.lo-1e-12 || f > c.hi+1e-12 {
			t.Errorf("f(%v) = %v, want %v to %v", c.r, f, c.lo, c.hi)
		}
	}
	for r := 0.3; r < 3; r += 0.01 {
		const h = 1e-6
		a, _ := p.headFactor(r - h)
		b, _ := p.headFactor(r + h)
		if _, s := p.headFactor(r); math.Abs((b-a)/(2*h)-s) > 1e-3 || s < 0 {
			t.Fatalf("slope of f at %v is %v, differences give %v", r, s, (b-a)/(2*h))
		}
	}
}

// The solver's Newton steps live on these derivatives.
func TestGainDerivatives(t *testing.T) {
	p := NewPump(Default().Pump)
	for _, psi := range []float64{-12, -10, -8, -5, 0, 20} {
		for _, gpm := range []float64{-300, 1, 266, 1500, 2300} {
			p.Prepare(unit.RPM(1700).RadS(), 0.05, unit.PaAtm, testVapor, testDensity)
			q, ps := unit.GPM(gpm).M3S(), unit.PSI(psi).Pa()
			_, dq, dp := p.Gain(q, ps)
			const hq, hp = 1e-7, 0.1
			a, _, _ := p.Gain(q-hq, ps)
			b, _, _ := p.Gain(q+hq, ps)
			c, _, _ := p.Gain(q, ps-hp)
			d, _, _ := p.Gain(q, ps+hp)
			if nq, np := (b-a)/(2*hq), (d-c)/(2*hp); math.Abs(nq-dq) > 1e-3*math.Abs(nq)+10 || math.Abs(np-dp) > 1e-3*math.Abs(np)+1e-3 {
				t.Errorf("%v psi %v gpm: derivatives %v %v, differences %v %v", psi, gpm, dq, dp, nq, np)
			}
		}
	}
}

func TestAirTakesHead(t *testing.T) {
	p := NewPump(Default().Pump)
	last := 2.0
	for _, s := range []float64{0, 0.02, 0.05, 0.1, 0.15, 0.18, 0.5} {
		f := p.airFactor(s)
		if f > last {
			t.Errorf("air factor rises to %v at %v", f, s)
		}
		last = f
	}
	if p.airFactor(0.02) != 1 || p.airFactor(0.18) != 0 {
		t.Error("head must fall between 2 and 18 % of air (assumption)")
	}
	p.Prepare(unit.RPM(1520).RadS(), 0.5, unit.PaAtm, testVapor, testDensity)
	bound := p.Power(0, 0, 1)
	p.Prepare(unit.RPM(1520).RadS(), 0, unit.PaAtm, testVapor, testDensity)
	if full := p.Power(0, 0, 1); bound > 0.5*full {
		t.Errorf("air-bound pump takes %v W of %v", bound, full)
	}
}

func TestWear(t *testing.T) {
	p := NewPump(Default().Pump)
	p.Prepare(unit.RPM(1520).RadS(), 0, unit.PaAtm, testVapor, testDensity)
	p.Wear(10, 1, 1)
	if p.Damage() != 0 {
		t.Error("a healthy pump wears")
	}
	p.Wear(10, 0.5, 1)
	if p.Damage() <= 0 {
		t.Error("cavitation does not wear the pump")
	}
	was := p.Damage()
	p.Wear(10, 1, 0)
	if p.Damage() <= was {
		t.Error("running dry does not wear the pump")
	}
}
