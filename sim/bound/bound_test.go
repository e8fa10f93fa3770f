package bound

import (
	"math"
	"testing"
)

// The built-in functions are the reference; the sign of a zero and a number that is not one included.
func TestLikeBuiltIn(t *testing.T) {
	numbers := []float64{math.Inf(-1), -3, -1, math.Copysign(0, -1), 0, 0.5, 1, 7, math.Inf(1), math.NaN()}
	same := func(a, b float64) bool { return math.Float64bits(a) == math.Float64bits(b) || a != a && b != b }
	for _, x := range numbers {
		for _, b := range []float64{-1, 0, 1} {
			if got, want := AtLeast(x, b), max(x, b); !same(got, want) {
				t.Errorf("AtLeast(%g, %g) = %g, want %g", x, b, got, want)
			}
			if got, want := AtMost(x, b), min(x, b); !same(got, want) && x != 0 {
				t.Errorf("AtMost(%g, %g) = %g, want %g", x, b, got, want)
			}
		}
		if got, want := Within(x, 0, 1), max(0, min(1, x)); !same(got, want) {
			t.Errorf("Within(%g, 0, 1) = %g, want %g", x, got, want)
		}
	}
}
