package fidelity

import (
	"math"
	"strconv"
	"strings"
)

// Tier is the kind of a tolerance.
type Tier uint8

const (
	Numerical  Tier = iota // another solution of the same equations: 1e-4
	Formula                // an engineering formula: 2 %, or 1 psi, or 5 gpm, whichever is wider
	Empirical              // measured practice and rules of thumb: 10 to 20 %
	OtherModel             // another model of the same thing: 40 % of the widest empirical tolerance, 8 %
	Stated                 // the source itself gives a value with its width
	Limit                  // a standard or a habit gives bounds
)

// String names the tier.
func (t Tier) String() string {
	return [...]string{"numerical", "engineering formula", "empirical", "other model", "stated with the value", "limits"}[t]
}

// Tolerance is how far measured may lie from expected: the wider of a width and a share.
type Tolerance struct {
	Tier  Tier
	Width float64 // in the test's unit
	Share float64 // of the expected value
}

// At is the tolerance at an expected value, in its unit.
func (t Tolerance) At(expected float64) float64 {
	return max(t.Width, float64(t.Share*math.Abs(expected)))
}

// widest is the most that a tier allows for a unit; false where the source alone decides.
func (t Tier) widest(unit string) (Tolerance, bool) {
	switch t {
	case Numerical:
		return Tolerance{Width: 1e-4, Share: 1e-4}, true
	case Formula:
		w := Tolerance{Share: 0.02}
		switch unit {
		case "psi":
			w.Width = 1
		case "gpm":
			w.Width = 5
		}
		return w, true
	case Empirical:
		return Tolerance{Share: 0.2}, true
	case OtherModel:
		return Tolerance{Share: 0.08}, true
	}
	return Tolerance{}, false
}

func numerical() Tolerance                { return Tolerance{Numerical, 1e-4, 1e-4} }
func formula(share float64) Tolerance     { return Tolerance{Tier: Formula, Share: share} }
func formulaPSI() Tolerance               { return Tolerance{Formula, 1, 0.02} }
func empirical(share float64) Tolerance   { return Tolerance{Tier: Empirical, Share: share} }
func otherModel(share float64) Tolerance  { return Tolerance{Tier: OtherModel, Share: share} }
func statedWidth(width float64) Tolerance { return Tolerance{Tier: Stated, Width: width} }
func statedShare(share float64) Tolerance { return Tolerance{Tier: Stated, Share: share} }
func limits(lo, hi float64) (float64, Tolerance) {
	return float64(0.5 * (lo + hi)), Tolerance{Tier: Limit, Width: float64(0.5 * (hi - lo))}
}

// ExpectedText writes what is expected with its tolerance, without the unit: "50 ± 1" or "0 to 30".
func (t *Test) ExpectedText() string {
	w := t.Tolerance.At(t.Expected)
	switch {
	case t.Tolerance.Tier == Limit && w > 50:
		return Number(t.Expected-w, w) + " to " + Number(t.Expected+w, w)
	case t.Tolerance.Tier == Limit:
		return Number(t.Expected-w, 0) + " to " + Number(t.Expected+w, 0)
	case w == 0:
		return Number(t.Expected, 0)
	}
	return Number(t.Expected, w) + " ± " + Number(w, w)
}

// inches writes the size of a hose as the trade does: 2½. Hose comes in quarters of an inch.
func inches(size float64) string {
	whole := math.Floor(size)
	quarter := [...]string{"", "¼", "½", "¾"}[int(math.Floor(float64(4*(size-whole))))]
	if whole == 0 && quarter != "" {
		return quarter
	}
	return Number(whole, 0) + quarter
}

// MeasuredText writes what was measured, as finely as the tolerance asks for, without the unit.
func (r *Result) MeasuredText() string { return Number(r.Measured, r.Width()) }

// Number writes a value finely enough to tell a tenth of a width; a width of 0 shows what a value needs.
func Number(v, width float64) string {
	if v != v {
		return "none"
	}
	if width <= 0 {
		return strconv.FormatFloat(v, 'g', 6, 64)
	}
	decimals := 0
	for ; width < 5 && decimals < 9; width = float64(width * 10) {
		decimals++
	}
	if decimals == 9 {
		return strconv.FormatFloat(v, 'g', 3, 64)
	}
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" && s[0] == '-' {
		return s[1:] // one zero only
	}
	return s
}
