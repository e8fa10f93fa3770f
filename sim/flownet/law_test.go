package flownet

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestPower852 compares the product of square roots with math.Pow: within 0.05 % at 3 and 0.17 % at
// 0.02 times the flow at which the law is exact, and on the way between.
func TestPower852(t *testing.T) {
	for i := range 1000 {
		x := 0.02 * math.Pow(150, float64(i)/999)
		within := 0.00175
		if x >= 1 {
			within = 0.0005
		}
		if got, want := power852(x), math.Pow(x, 0.852); math.Abs(got/want-1) > within {
			t.Fatalf("%.4f^0.852 = %.6f, want %.6f", x, got, want)
		}
	}
	if power852(0) != 0 || power852(1) != 1 {
		t.Error("0 and 1 must stay as they are")
	}
}

// TestLossSlope: the derivative used by Newton's method is the loss's own.
func TestLossSlope(t *testing.T) {
	for _, exponent := range []float64{Quadratic, HazenWilliams} {
		for _, q := range []float64{-0.05, -1e-6, 0, 1e-6, 1e-4, 0.02, 0.1} {
			l := Link{Exponent: exponent, QRef: 0.06, R: 3e8, K: 1e8}
			at := func(q float64) (float64, float64) {
				l.work = linkWork{q: q, thin: 1, curve: 4e8}
				return l.loss()
			}
			_, slope := at(q)
			e := 1e-4 * max(math.Abs(q), 1e-6)
			up, _ := at(q + e)
			down, _ := at(q - e)
			if want := (up - down) / (2 * e); math.Abs(slope/want-1) > 0.001 {
				t.Errorf("exponent %.3f at %g: slope %g, want %g", exponent, q, slope, want)
			}
		}
	}
}

// TestStorageLaw: pressure from water and water from pressure are one law, for hard and soft walls,
// with much air and almost none, down to the vapor limit.
func TestStorageLaw(t *testing.T) {
	const patm = 101325
	dice := rand.New(rand.NewPCG(1, 2))
	for range 20000 {
		n := Node{Volume: 0.001 + dice.Float64(), Stretch: 1e-9 * dice.Float64()}
		n.Air = n.Volume * math.Pow(10, -7*dice.Float64())
		if dice.IntN(2) == 0 {
			n.Soft = SoftWall{Give: 500 + 5000*dice.Float64(), Flat: 0.3 * dice.Float64(), Floor: 1e-10}
		}
		n.P = -(patm - vaporAt20C) + math.Pow(10, 7*dice.Float64())
		(&Net{Patm: patm, free: []*Node{&n}}).evaluate()
		w, slope := n.store.equal, n.store.slope
		if p := n.pressureFor(w, patm); math.Abs(p-n.P)*slope > 1e-9*n.Volume {
			t.Fatalf("%+v: %g Pa back from %g m³", n, p, w)
		}
		if slope <= 0 {
			t.Fatalf("%+v: more pressure, less water", n)
		}
		if p := n.pressureFor(w-10*n.Volume, patm); p <= -(patm - vaporAt20C) {
			t.Fatalf("%+v: %g Pa is below the vapor limit", n, p)
		}
	}
}
