package dial

import (
	"math"
	"testing"

	"steadyneedle/sim/unit"
)

// A needle's bearing: clockwise from −135° to 135°, equal steps for equal values.
func TestBearing(t *testing.T) {
	s := Even(0, 400, 5, "psi")
	for _, c := range []struct{ v, want float64 }{{0, -135}, {200, 0}, {400, 135}, {100, -67.5}} {
		if got := s.Bearing(c.v); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%g psi: %g°, want %g°", c.v, got, c.want)
		}
	}
	if got := s.Bearing(1000); got != 139 {
		t.Errorf("beyond the end: %g°, want it to rest at 139°", got)
	}
	if got := s.Bearing(-50); got != -139 {
		t.Errorf("below the beginning: %g°, want −139°", got)
	}
	if got := s.Bearing(math.NaN()); got != -139 {
		t.Errorf("unseen: %g°, want −139°", got)
	}
	c := Compound(30, 400, 5)
	for v, want := range map[float64]float64{-30: -135, 0: -66, 400: 135} {
		if got := c.Bearing(v); math.Abs(got-want) > 1e-9 {
			t.Errorf("compound: %g stands at %g°, want %g°", v, got, want)
		}
	}
}

// Marks: steps of 1, 2 or 5 × 10ⁿ, three sizes, and at most nine marks between the longest ones
// (ASME B40.100, read in excerpts).
func TestMarks(t *testing.T) {
	for name, s := range map[string]*Scale{
		"line": Even(0, 400, 5, "psi").Sparse(), "tach": Even(0, 3000, 50, "rpm"), "compound": Compound(30, 400, 5),
		"oil": FanScale(0, 100, 5, "psi"), "volts": FanScale(8, 18, 0.5, "V"), "coolant": FanScale(100, 280, 5, "°F"), "pump": FanScale(40, 240, 5, "°F"),
	} {
		between, numbers := 0, 0
		for _, m := range s.marks() {
			if m.number {
				numbers++
			}
			if m.size == 2 {
				between = 0
				continue
			}
			if between++; between > 9 {
				t.Errorf("%s: more than nine marks before %g", name, m.value)
				break
			}
		}
		if numbers < 3 {
			t.Errorf("%s: only %d numbers", name, numbers)
		}
		for _, p := range s.Parts {
			unit := p.Mark / math.Pow(10, math.Floor(math.Log10(p.Mark)+1e-9))
			if r := math.Round(unit); math.Abs(unit-r) > 1e-9 || r != 1 && r != 2 && r != 5 {
				t.Errorf("%s: division %g is not 1, 2 or 5 × 10ⁿ", name, p.Mark)
			}
		}
	}
}

// TestSIFaces: a gauge in SI has round numbers of its own, holds the whole range of the trade's, and its
// needle stands where the signal is.
func TestSIFaces(t *testing.T) {
	for _, c := range []struct {
		name   string
		s      *Scale
		lo, hi float64
		signal float64
		shown  float64 // [C] from the factors of package unit
	}{
		{"pressure", In(unit.SI, 0, 400, 5, "psi"), 0, 2800, 150, 1034.2},
		{"oil", FanIn(unit.SI, 0, 100, 5, "psi"), 0, 700, 50, 344.7},
		{"coolant", FanIn(unit.SI, 100, 280, 5, "°F"), 40, 140, 186, 85.6},
		{"vacuum", VacuumIn(unit.SI, 30, 400, 5), -100, 2800, -9, -30.5},
		{"volts", FanIn(unit.SI, 8, 18, 0.5, "V"), 8, 18, 13, 13},
	} {
		first, last := c.s.Parts[0], c.s.Parts[len(c.s.Parts)-1]
		if first.Lo != c.lo || last.Hi != c.hi {
			t.Errorf("%s: from %g to %g, want %g to %g", c.name, first.Lo, last.Hi, c.lo, c.hi)
		}
		if got := c.s.Read(c.signal); math.Abs(got-c.shown) > 0.06 {
			t.Errorf("%s: a signal of %g is shown as %.2f, want %g", c.name, c.signal, got, c.shown)
		}
		for _, m := range c.s.marks() {
			if m.number && !whole(m.value/10) && c.name != "volts" {
				t.Errorf("%s: the number %g is not round", c.name, m.value)
			}
		}
	}
}
