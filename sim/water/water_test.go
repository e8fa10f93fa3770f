package water

import (
	"math"
	"testing"
)

func off(got, want float64) float64 { return math.Abs(got/want - 1) }

func TestReferenceItself(t *testing.T) {
	for _, c := range []struct{ k, mpa float64 }{ // IAPWS-IF97 table 35 [S]
		{300, 0.00353658941}, {500, 2.63889776}, {600, 12.3443146},
	} {
		if got := saturation(c.k); off(got, c.mpa) > 2e-9 {
			t.Errorf("saturation(%v K) = %.9g MPa, release prints %.9g", c.k, got, c.mpa)
		}
	}
	// IAPWS-IF97 table 5, 300 K and 3 MPa: v 0.100215168e-2 m³/kg, c_p 4.17301218 kJ/(kg K) [M]
	rho, cp := liquid(300, 3)
	if off(1/rho, 0.100215168e-2) > 2e-9 || off(cp, 4.17301218) > 2e-9 {
		t.Errorf("liquid(300 K, 3 MPa): v %.9g, c_p %.9g", 1/rho, cp)
	}
}

func TestPublishedTable(t *testing.T) {
	for _, c := range []struct{ celsius, pa, density, heat float64 }{
		// IAPWS-IF97 region 4; density and heat capacity of the saturated liquid, rounded as printed [C]
		{10, 1228.1839, 999.65, 4.1958},
		{20, 2339.2148, 998.16, 4.1851},
		{40, 7384.4275, 992.18, 4.1788},
		{60, 19945.8019, 983.18, 4.1830},
		{80, 47414.7199, 971.78, 4.1956},
		{100, 101417.9779, 958.35, 4.2167},
	} {
		k := c.celsius + 273.15
		if got := VaporPressure(k); off(got, c.pa) > 1e-7 {
			t.Errorf("%v °C: vapor pressure %.4f Pa, want %.4f", c.celsius, got, c.pa)
		}
		if got := Density(k); off(got, c.density) > 1e-4 {
			t.Errorf("%v °C: density %.3f kg/m³, want %.2f", c.celsius, got, c.density)
		}
		if got := HeatCapacity(k); off(got, c.heat*1000) > 2e-4 {
			t.Errorf("%v °C: heat capacity %.2f J/(kg K), want %.1f", c.celsius, got, c.heat*1000)
		}
	}
}

func TestAgainstIF97Between(t *testing.T) {
	for d := 0; d <= 1500; d++ {
		k := MinK + float64(d)/10
		ps := saturation(k)
		rho, cp := liquid(k, ps)
		if got := VaporPressure(k); off(got, ps*1e6) > 1e-9 {
			t.Fatalf("%.2f K: vapor pressure %.6g Pa, IF97 %.6g", k, got, ps*1e6)
		}
		if got := Density(k); off(got, rho) > 2.5e-4 { // Kell is for one atmosphere, this for saturation
			t.Fatalf("%.2f K: density %.4f, IF97 %.4f", k, got, rho)
		}
		if got := HeatCapacity(k); off(got, cp*1000) > 2e-4 {
			t.Fatalf("%.2f K: heat capacity %.3f, IF97 %.3f", k, got, cp*1000)
		}
	}
}

func TestBoilingPoint(t *testing.T) {
	for _, c := range []struct{ pa, k float64 }{ // IAPWS-IF97 table 36 [M]
		{0.1e6, 372.755919}, {1e6, 453.035632}, {10e6, 584.149488},
	} {
		if got := BoilingPoint(c.pa); off(got, c.k) > 2e-9 {
			t.Errorf("%v Pa boils at %.9g K, release prints %.9g", c.pa, got, c.k)
		}
	}
	for k := 274.0; k < MaxK; k += 0.5 {
		if got := BoilingPoint(VaporPressure(k)); off(got, k) > 1e-9 {
			t.Errorf("the vapor pressure of %v K boils at %v K", k, got)
		}
	}
	if BoilingPoint(-1) != BoilingPoint(612) || BoilingPoint(1e9) != BoilingPoint(22e6) {
		t.Error("a pressure out of range is not taken as the nearer end")
	}
}

func TestOutsideTheRange(t *testing.T) {
	for _, f := range []func(float64) float64{VaporPressure, Density, HeatCapacity} {
		if f(0) != f(MinK) || f(-1e300) != f(MinK) || f(math.Inf(1)) != f(MaxK) {
			t.Error("a temperature out of range is not taken as the nearer end")
		}
	}
}

func BenchmarkVaporPressure(b *testing.B) {
	s := 0.0
	for i := range b.N {
		s += VaporPressure(280 + float64(i&63))
	}
	_ = s
}
