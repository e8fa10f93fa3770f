package dial

import (
	"fmt"
	"math"

	"steadyneedle/sim/unit"
)

// Each system of units has faces of its own: an SI gauge is not a psi gauge with other words on it, but
// one with round numbers of its own. Signals speak the trade's units; a scale that shows others
// converts what it is given.

// In makes an even scale of a quantity of the trade from lo to hi, marked at every division, as the
// system's own gauge would have it: the ends on whole marks, divisions of 1, 2 or 5.
func In(sys unit.System, lo, hi, division float64, trade string) *Scale {
	if sys == unit.US || sys.Unit(trade) == trade {
		return Even(lo, hi, division, trade)
	}
	lo, hi, division = ends(sys, lo, hi, division, trade)
	s := Even(lo, hi, division, sys.Unit(trade))
	s.hundreds()
	s.from = func(v float64) float64 { return sys.From(v, trade) }
	return s
}

// FanIn is In for a fan.
func FanIn(sys unit.System, lo, hi, division float64, trade string) *Scale {
	if sys == unit.US || sys.Unit(trade) == trade {
		return FanScale(lo, hi, division, trade)
	}
	lo, hi, division = ends(sys, lo, hi, division, trade)
	s := FanScale(lo, hi, division, sys.Unit(trade))
	s.from = func(v float64) float64 { return sys.From(v, trade) }
	return s
}

// VacuumIn is a compound scale of low inHg (positive) to high psi.
func VacuumIn(sys unit.System, low, high, division float64) *Scale {
	if sys == unit.US {
		return Compound(low, high, division)
	}
	_, top, division := ends(sys, 0, high, division, "psi")
	low = math.Round(sys.From(low, "inHg")/10) * 10
	s := Compound(low, top, division)
	p := &s.Parts[0]
	p.Mark, p.Mid, p.Major, p.Number = 10, 50, 50, 100
	s.Unit, s.Below = "kPa × 100", "vacuum"
	s.Label = func(v float64) string { return fmt.Sprintf("%.0f", math.Abs(v)/100) }
	s.from = func(v float64) float64 { v, _ = sys.Compound(v); return v }
	return s
}

// ends are the ends and the division of the system's own gauge for a range of the trade's.
func ends(sys unit.System, lo, hi, division float64, trade string) (float64, float64, float64) {
	d := step(sys.Span(division, trade), 1)
	span := 2 * d
	lo = math.Round(sys.From(lo, trade)/span) * span
	hi = math.Ceil(sys.From(hi, trade)/span-0.2) * span
	return lo, hi, d
}

// hundreds writes the numbers of a scale in hundreds, as dials do where they would be too long.
func (s *Scale) hundreds() {
	if p := &s.Parts[0]; p.Hi < 1000 {
		return
	}
	s.Unit += " × 100"
	s.Label = func(v float64) string { return fmt.Sprintf("%.0f", v/100) }
}

// Read is what the scale shows of a signal.
func (s *Scale) Read(v float64) float64 {
	if s.from == nil {
		return v
	}
	return s.from(v)
}
