package hydraulics

import (
	"math"
	"testing"

	"steadyneedle/sim/unit"
)

func TestFlowAtResidual(t *testing.T) {
	for _, c := range []struct {
		flowed           unit.GPM
		static, residual unit.PSI
		at               unit.PSI
		want, within     float64
	}{
		{789, 86, 42, 20, 980, 5},       // T. Kolb, water supply slides, "about 980" [S]
		{1000, 65, 50, 20, 1809.9, 0.1}, // [C]
		{1000, 80, 60, 20, 1809.9, 0.1}, // [C]
		{1000, 65, 45, 45, 1000, 1e-9},  // the test's own point
		{1000, 65, 45, 65, 0, 0},        // nothing flows at static
		{1000, 65, 65, 20, 0, 0},        // a test without a drop says nothing
	} {
		got := FlowAtResidual(c.flowed, c.static, c.residual, c.at)
		near(t, "flow at residual", float64(got), c.want, c.within)
	}
}

func TestResidualAtFlow(t *testing.T) {
	// T. Kolb, water supply slides [S], printed as whole psi
	near(t, "at 500 gpm", float64(ResidualAtFlow(789, 86, 42, 500)), 67, 0.5)
	near(t, "at 750 gpm", float64(ResidualAtFlow(789, 86, 42, 750)), 46, 0.5)
	near(t, "at rest", float64(ResidualAtFlow(789, 86, 42, 0)), 86, 0)
	for q := unit.GPM(50); q < 1000; q += 50 { // the two readings of the law undo each other
		r := ResidualAtFlow(789, 86, 42, q)
		near(t, "there and back", float64(FlowAtResidual(789, 86, 42, r)), float64(q), 1e-9*float64(q))
	}
}

func TestHydrantColors(t *testing.T) { // NFPA 291 [M]
	for q, want := range map[unit.GPM]string{
		1500: "light blue", 1499: "green", 1000: "green", 999: "orange", 500: "orange", 499: "red",
	} {
		if got := HydrantColor(q); got != want {
			t.Errorf("%v gpm: %s, want %s", q, got, want)
		}
	}
}

func TestLikeLines(t *testing.T) {
	for _, c := range []struct {
		static, residual unit.PSI
		percent          float64
		want             int
	}{
		{80, 60, 25, 1},      // at 500 gpm [P]
		{60, 54, 10, 3},      // [C]
		{70, 62, 11.4286, 2}, // [C]
		{70, 55, 21.4286, 1}, // [C]
		{65, 60, 7.6923, 3},  // [C]
		{65, 45, 30.7692, 0}, // [C]
	} {
		p := PercentDrop(c.static, c.residual)
		near(t, "percent drop", p, c.percent, 1e-4)
		if got := LikeLines(p); got != c.want {
			t.Errorf("%v/%v: %d like lines by percent, want %d", c.static, c.residual, got, c.want)
		}
		// the field methods may differ by a line [P]
		if got := LikeLinesByDigit(c.static, c.residual); got < c.want-1 || got > c.want+1 {
			t.Errorf("%v/%v: %d like lines by digit, %d by percent", c.static, c.residual, got, c.want)
		}
	}
	for _, c := range []struct { // the trade's bands, percentages not rounded [P]
		percent float64
		want    int
	}{{0, 3}, {10, 3}, {10.01, 2}, {15, 2}, {15.01, 1}, {25, 1}, {25.01, 0}, {80, 0}} {
		if got := LikeLines(c.percent); got != c.want {
			t.Errorf("%v %%: %d like lines, want %d", c.percent, got, c.want)
		}
	}
	for _, c := range []struct { // first digit × 1, 2, 3 psi [P]
		static, residual unit.PSI
		want             int
	}{{65, 59, 3}, {65, 58.9, 2}, {65, 53, 2}, {65, 52.9, 1}, {65, 47, 1}, {65, 46.9, 0}} {
		if got := LikeLinesByDigit(c.static, c.residual); got != c.want {
			t.Errorf("%v/%v: %d like lines by digit, want %d", c.static, c.residual, got, c.want)
		}
	}
}

func TestPowerAgainstPow(t *testing.T) {
	for _, e := range []float64{0, 0.2559, 0.5, 0.54, 1/0.54 - 1, 0.999} {
		for _, x := range []float64{1e-9, 0.02, 0.5, 1, 1.5, 30, 1e6} {
			want := math.Pow(x, e)
			near(t, "power", power(x, e), want, 4e-15*want)
		}
	}
	near(t, "power of nothing", power(0, 0.54), 0, 0)
}
