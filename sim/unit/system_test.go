package unit

import (
	"math"
	"testing"
)

func TestText(t *testing.T) {
	for _, c := range []struct {
		v        float64
		unit     string
		us, si   string
		spanText string // the same value as a difference, in SI
	}{
		{134.8, "psi", "134.8 psi", "929 kPa", "929 kPa"},
		{-9, "inHg", "-9.0 inHg", "-30.5 kPa", "-30.5 kPa"},
		{266, "gpm", "266 gpm", "1007 L/min", "1007 L/min"},
		{500, "gal", "500 gal", "1893 L", "1893 L"},
		{25, "ft", "25.0 ft", "7.6 m", "7.6 m"},
		{2.5, "in", "2.50 in", "64 mm", "64 mm"},
		{4, "ft/s", "4.0 ft/s", "1.22 m/s", "1.22 m/s"},
		{212, "°F", "212 °F", "100 °C", "118 °C"},
		{99, "lbf", "99 lbf", "440 N", "440 N"},
		{193, "hp", "193 hp", "144 kW", "144 kW"},
		{1200, "lb-ft", "1200 lb-ft", "1627 N·m", "1627 N·m"},
		{700, "rpm", "700 rpm", "700 rpm", "700 rpm"},
		{5, "s", "5.0 s", "5.0 s", "5.0 s"},
		{0.5, "", "0.50", "0.50", "0.50"},
		{3, "furlong", "3.00 furlong", "3.00 furlong", "3.00 furlong"},
	} {
		if got := US.Text(c.v, c.unit); got != c.us {
			t.Errorf("US: %v %s is written %q, want %q", c.v, c.unit, got, c.us)
		}
		if got := SI.Text(c.v, c.unit); got != c.si {
			t.Errorf("SI: %v %s is written %q, want %q", c.v, c.unit, got, c.si)
		}
		if got := SI.SpanText(c.v, c.unit); got != c.spanText {
			t.Errorf("SI: a difference of %v %s is written %q, want %q", c.v, c.unit, got, c.spanText)
		}
		if got := US.SpanText(c.v, c.unit); got != c.us {
			t.Errorf("US: a difference of %v %s is written %q, want %q", c.v, c.unit, got, c.us)
		}
	}
}

func TestTypedNumbersComeBack(t *testing.T) {
	for _, s := range []System{US, SI} {
		for _, p := range pairs {
			for _, v := range []float64{-20, 0, 65, 2150} {
				if got := s.To(s.From(v, p.trade), p.trade); math.Abs(got-v) > 1e-9 {
					t.Errorf("%v: %v %s comes back as %v", s, v, p.trade, got)
				}
			}
		}
	}
}

func TestTypedVacuum(t *testing.T) {
	for _, v := range []float64{-9, 0, 65} {
		n, _ := SI.Compound(v)
		if got := SI.Typed(n, "psi"); math.Abs(got-v) > 1e-9 {
			t.Errorf("a needle at %g, typed in SI, comes back as %g", v, got)
		}
	}
}

func TestCompound(t *testing.T) {
	for _, c := range []struct {
		s      System
		needle float64
		want   float64
		unit   string
	}{
		{US, 65, 65, "psi"}, {US, 0, 0, "psi"}, {US, -9, -9, "inHg"},
		{SI, 65, 448.159, "kPa"}, {SI, -9, -30.477, "kPa"},
	} {
		if got, u := c.s.Compound(c.needle); math.Abs(got-c.want) > 0.001 || u != c.unit {
			t.Errorf("%v: needle at %v is %v %s, want %v %s", c.s, c.needle, got, u, c.want, c.unit)
		}
	}
}

func TestSystemNames(t *testing.T) {
	for _, s := range []System{US, SI} {
		if got, ok := SystemNamed(s.String()); !ok || got != s {
			t.Errorf("%q is not found again", s)
		}
	}
	if _, ok := SystemNamed("imperial"); ok {
		t.Error("a system that is not there is found")
	}
}
