package hydraulics

import (
	"math"
	"testing"

	"steadyneedle/sim/unit"
)

func near(t *testing.T, name string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.5g, want %.5g ± %.3g", name, got, want, within)
	}
}

// Columns "29.7": Q = 29.7 d² √NP to the decimal printed [C]. Columns "hi": Hydraulic Institute,
// Engineering Data Book, table of theoretical discharge of nozzles, C = 1.0 [S]: a theoretical jet gives
// half a percent more than the trade's formula. 0 where the table has no row.
func TestSmoothBoreTable(t *testing.T) {
	for _, c := range []struct{ tip, at50, hi50, at80, hi80 float64 }{
		{1.0 / 2, 52.5, 52.8, 66.4, 66.7},
		{5.0 / 8, 82.0, 82.4, 103.8, 104.3},
		{3.0 / 4, 118.1, 119, 149.4, 150},
		{7.0 / 8, 160.8, 162, 203.4, 204},
		{15.0 / 16, 184.6, 0, 233.5, 0},
		{1, 210.0, 211, 265.6, 267},
		{1.125, 265.8, 267, 336.2, 338},
		{1.25, 328.1, 330, 415.1, 417},
		{1.375, 397.1, 399, 502.2, 505},
		{1.5, 472.5, 475, 597.7, 601},
		{1.75, 643.2, 646, 813.5, 817},
		{2, 840.0, 844, 1062.6, 1068},
	} {
		at50 := float64(SmoothBore(unit.Inches(c.tip), HandlineTip))
		at80 := float64(SmoothBore(unit.Inches(c.tip), MasterTip))
		near(t, "tip at 50 psi", at50, c.at50, 0.051)
		near(t, "tip at 80 psi", at80, c.at80, 0.051)
		if c.hi50 != 0 {
			near(t, "tip at 50 psi, HI", at50, c.hi50, 0.01*c.hi50)
			near(t, "tip at 80 psi, HI", at80, c.hi80, 0.01*c.hi80)
		}
	}
}

func TestNozzles(t *testing.T) {
	// T. Kolb, water supply slides [S]: 2½ in outlet, c 0.8, pitot 28 psi → 789 gpm
	near(t, "pitot", float64(Pitot(0.8, 2.5, 28)), 789, 1)
	// drill number 7: 1⅛ at 50 psi, 266 gpm and 99 lbf [C]
	near(t, "1⅛ tip", float64(SmoothBore(1.125, 50)), 266, 0.5)
	near(t, "1⅛ reaction", float64(SmoothBoreReaction(1.125, 50)), 99, 0.5)
	near(t, "fog reaction, 150 gpm at 100 psi", float64(FogReaction(150, 100)), 75.75, 0.001) // [C]
	// fixed orifice: a quarter of the pressure gives half of the flow [C]
	near(t, "fog at rating", float64(Fog(150, 100, 100)), 150, 1e-12)
	near(t, "fog at a quarter", float64(Fog(150, 100, 25)), 75, 1e-12)
	near(t, "fog 175 at 75 worked at 100", float64(Fog(175, 75, 100)), 202.07, 0.01)
	// what sucks does not flow
	near(t, "below zero", float64(SmoothBore(1, -5)), 0, 0)
	near(t, "fog below zero", float64(Fog(150, 100, -5)), 0, 0)
}
