package fidelity

import (
	"math"
	"testing"
)

func TestNumber(t *testing.T) {
	for _, c := range []struct {
		v, width float64
		want     string
	}{
		{52.54, 0.5, "52.5"}, {1500.37, 15, "1500"}, {0.0461, 0.01, "0.046"}, {-0.001, 0.5, "0.0"}, {1, 0, "1"},
		{2.6e-15, 1e-9, "2.6e-15"}, {0, 1e-9, "0"}, {3536.58941, 0.0035, "3536.5894"}, {math.NaN(), 1, "none"},
	} {
		if got := Number(c.v, c.width); got != c.want {
			t.Errorf("%v to %v: %q, want %q", c.v, c.width, got, c.want)
		}
	}
	mid, width := limits(0, 30)
	for want, test := range map[string]Test{
		"0 to 30":     {Expected: mid, Tolerance: width},
		"50.0 ± 1.0":  {Expected: 50, Tolerance: formulaPSI(), Unit: "psi"},
		"1":           {Expected: 1, Tolerance: statedWidth(0)},
		"-12.0 ± 2.0": {Expected: -12, Tolerance: statedWidth(2)},
	} {
		if got := test.ExpectedText(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// The worst point of a sweep is the one farthest out in its own tolerance; a number that is none is worst.
func TestWorst(t *testing.T) {
	var c Curve
	if _, ok := c.worst(); ok {
		t.Error("a worst point of nothing")
	}
	c.trace(0, 99)
	c.add(1, 52, 50, statedWidth(4))
	c.add(2, 1.3, 1, statedWidth(0.5))
	if p, ok := c.worst(); !ok || p.X != 2 {
		t.Errorf("%+v", p)
	}
	c.add(3, math.NaN(), 1, statedWidth(1))
	c.add(4, 100, 1, statedWidth(1))
	if p, _ := c.worst(); p.X != 3 {
		t.Errorf("%+v", p)
	}
}

// A trial whose machine cannot be built, or comes into trouble, fails with its reason.
func TestTroubleFails(t *testing.T) {
	record := Test{ID: "x", Expected: 1, Tolerance: statedWidth(1)}
	trial := Trial{begin: func(m Model) *bench {
		s := street()
		s.Hydrant.StaticPSI = -5
		return set(m, s)
	}, checks: []check{{Test: record, measure: func(*bench) float64 { return 1 }}}}
	if r := trial.Run(Model{})[0]; r.Pass || r.Problem == "" || !math.IsNaN(r.Measured) {
		t.Errorf("%+v", r)
	}
	trial = Trial{begin: func(m Model) *bench { return set(m, street()) }, checks: []check{
		{Test: record, measure: func(b *bench) float64 { b.prime(); return 1 }},
		{Test: record, measure: func(b *bench) float64 { b.throttleFor(900, -1, b.rpm); return 1 }},
		{Test: record, measure: func(*bench) float64 { return 1 }},
	}}
	r := trial.Run(Model{})
	if !r[0].Pass || r[1].Pass || r[1].Problem != "the throttle does not bring 900" || r[2].Pass || r[2].Problem != r[1].Problem {
		t.Errorf("%+v", r)
	}
}
