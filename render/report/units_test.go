package report

import (
	"math"
	"testing"

	"steadyneedle/sim/unit"
)

func TestSheetInSI(t *testing.T) {
	s := (&Sheet{
		Title:    "600 ft of hose",
		Findings: []Finding{{Title: "Intake below 20 psi", Expected: "150 ± 10 psi", Measured: "131 psi", Why: "Twenty.", Follows: []string{"above 200 °F"}}},
		Steps:    []Step{{Text: "6 to 8 ft off the curb"}},
		Series:   []Series{{Unit: "psi", V: []float64{100, math.NaN(), -9}}, {Unit: "gpm", V: []float64{100}}, {Unit: "open", V: []float64{0.5}}},
		Band:     &Band{Lo: 100, Hi: 150},
	}).In(unit.SI)
	f := s.Findings[0]
	for got, want := range map[string]string{ // [C] from the factors of package unit
		s.Title: "182.9 m of hose", f.Title: "Intake below 138 kPa", f.Expected: "1034 ± 69 kPa", f.Measured: "903 kPa",
		f.Why: "Twenty.", f.Follows[0]: "above 93 °C", s.Steps[0].Text: "1.8 to 2.4 m off the curb",
		s.Series[0].Unit: "kPa", s.Series[1].Unit: "L/min", s.Series[2].Unit: "open",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	for i, want := range []float64{689.48, math.NaN(), -30.48} {
		if got := s.Series[0].V[i]; math.Abs(got-want) > 0.01 || math.IsNaN(got) != math.IsNaN(want) {
			t.Errorf("pressure %d is %g, want %g", i, got, want)
		}
	}
	if s.Series[1].V[0] < 378 || s.Series[1].V[0] > 379 || s.Series[2].V[0] != 0.5 || math.Abs(s.Band.Hi-1034.2) > 0.1 {
		t.Errorf("series %+v, band %+v", s.Series, s.Band)
	}
	if n := len(s.Main()); n != 1 {
		t.Errorf("%d main series, want the pressure", n)
	}
}
