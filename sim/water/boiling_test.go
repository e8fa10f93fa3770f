package water

import (
	"math"
	"testing"
)

func TestBoilingPointUndoesVaporPressure(t *testing.T) {
	for d := 1; d <= 1500; d++ {
		k := MinK + float64(d)/10
		if got := BoilingPoint(VaporPressure(k)); math.Abs(got-k) > 1e-6 {
			t.Fatalf("water boils at %.7f K under its own vapor pressure at %.7f K", got, k)
		}
	}
}
