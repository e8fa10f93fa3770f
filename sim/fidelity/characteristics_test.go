package fidelity

import (
	"math"
	"testing"
)

// The method of characteristics gives the table that the tests of hammer are held against [C].
func TestSurgeTable(t *testing.T) {
	for _, h := range hammerPeaks {
		for i, seconds := range closures {
			if got := surgePeak(h.wave, seconds); math.Abs(got/h.peak[i]-1) > 0.02 {
				t.Errorf("%s, %v s: %.0f psi, the table has %.0f", h.text, seconds, got, h.peak[i])
			}
		}
	}
}
