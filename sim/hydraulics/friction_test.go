package hydraulics

import (
	"testing"

	"steadyneedle/sim/unit"
)

func TestCoefficients(t *testing.T) {
	for _, c := range []struct{ size, coupling, want float64 }{
		{1, 0, 150}, {1.5, 0, 24}, {1.75, 0, 15.5}, {2, 0, 8}, {2.5, 0, 2}, {3, 2.5, 0.8}, {3, 3, 0.677},
		{3, 0, 0.8}, {3.5, 0, 0.34}, {4, 0, 0.2}, {4.5, 0, 0.1}, {5, 0, 0.08}, // Renton, Rohnert Park handouts [S in part]
		{0.75, 0, 1100}, {1.25, 0, 80}, {6, 0, 0.05}, // [M]
	} {
		got, ok := Coefficient(unit.Inches(c.size), unit.Inches(c.coupling))
		if !ok || got != c.want {
			t.Errorf("%v in hose: %v %v, want %v", c.size, got, ok, c.want)
		}
	}
	if _, ok := Coefficient(2.75, 0); ok {
		t.Error("a coefficient for a size that nobody publishes")
	}
	Hoses()[0].C = -1
	if c, _ := Coefficient(0.75, 0); c != 1100 {
		t.Error("a caller can change the table")
	}
	near(t, "two 2½ siamesed", Siamesed(2, 2), 0.5, 0)        // Renton [S]
	near(t, "three 2½ siamesed", Siamesed(2, 3), 0.22, 0.003) // Renton [S]
}

func TestFrictionExamples(t *testing.T) {
	for _, c := range []struct{ coefficient, gpm, ft, want, within float64 }{
		{2, 200, 100, 8, 1e-9},        // Rohnert Park, apparatus operator slides 3-8 [S]
		{2, 100, 300, 6, 1e-9},        // the same
		{2, 200, 400, 32, 1e-9},       // the same
		{2, 300, 200, 36, 1e-9},       // the same: wye, trunk
		{10, 150, 150, 34, 0.5},       // the same: wye, branch, rounded there
		{15.5, 150, 200, 69.75, 1e-9}, // [C]
		{2, 200, 300, 24, 1e-9},       // [C]
		{15.5, 0, 200, 0, 0},          // nothing flows, nothing is lost
	} {
		got := FrictionLoss(c.coefficient, unit.GPM(c.gpm), unit.Feet(c.ft))
		near(t, "friction loss", float64(got), c.want, c.within)
	}
}

func TestContentAndVelocity(t *testing.T) {
	near(t, "100 ft of 1½", float64(Content(1.5, 100)), 9.2, 0.05) // NWCG, Fireline Handbook table 3.1 [S]
	near(t, "100 ft of 1", float64(Content(1, 100)), 4.1, 0.05)    // the same
	near(t, "100 ft of 1, exact", float64(Content(1, 100)), 4.08, 0.001)
	near(t, "200 ft of 1¾", float64(Content(1.75, 200)), 25, 0.03*25) // [C], as the drill uses it
	near(t, "400 ft of 2½", float64(Content(2.5, 400)), 102, 0.03*102)
	near(t, "600 ft of 2½", float64(Content(2.5, 600)), 153, 0.03*153)
	near(t, "25 ft of 4", float64(Content(4, 25)), 16, 0.03*16)

	// 0.4085 Q/d² is the flow over the area, by the units' definitions [C]
	area := unit.Inches(1.75).M() * unit.Inches(1.75).M() * 0.7853981633974483
	near(t, "velocity", float64(Velocity(150, 1.75)), unit.GPM(150).M3S()/area/unit.MPerFt, 0.002)
}
