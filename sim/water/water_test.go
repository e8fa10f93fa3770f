package water

import (
	"math"
	"testing"
)

// Source: IAPWS-IF97 (region 4) for vapor pressure, IF97 for density, 10 to 100 °C.
func TestTable(t *testing.T) {
	for _, c := range []struct{ celsius, pa, rho float64 }{
		{10, 1228.1839, 999.65}, {20, 2339.2148, 998.16}, {40, 7384.4275, 992.18},
		{60, 19945.8019, 983.18}, {80, 47414.7199, 971.78}, {100, 101417.9779, 958.35},
	} {
		k := c.celsius + 273.15
		if got := VaporPressure(k); math.Abs(got-c.pa) > 1e-6*c.pa {
			t.Errorf("%v °C: vapor pressure %v, want %v", c.celsius, got, c.pa)
		}
		if got := Density(k); math.Abs(got-c.rho) > 2e-4*c.rho {
			t.Errorf("%v °C: density %v, want %v", c.celsius, got, c.rho)
		}
		if got := BoilingPoint(c.pa); math.Abs(got-k) > 1e-4 {
			t.Errorf("%v Pa boils at %v K, want %v", c.pa, got, k)
		}
	}
}

// Source: IAPWS-IF97, table 35.
func TestVerificationValues(t *testing.T) {
	for _, c := range []struct{ k, mpa float64 }{{300, 0.00353658941}, {500, 2.63889776}, {600, 12.3443146}} {
		if got := VaporPressure(c.k) / 1e6; math.Abs(got-c.mpa) > 1e-8*c.mpa {
			t.Errorf("p(%v K) = %v MPa, want %v", c.k, got, c.mpa)
		}
	}
}

func TestClamped(t *testing.T) {
	for _, k := range []float64{-1e9, 0, 1e9} {
		for _, v := range []float64{VaporPressure(k), BoilingPoint(k), Density(k)} {
			if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
				t.Errorf("at %v: %v", k, v)
			}
		}
	}
}
