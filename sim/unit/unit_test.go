package unit

import (
	"math"
	"testing"
)

// Definitions: NIST SP 811, appendix B [M]. The compiler works constants out exactly, so equality is asked.
func TestFactorsAreExact(t *testing.T) {
	const (
		inch  = 0.0254
		pound = 0.45359237 * 9.80665 // N
	)
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"psi", PaPerPSI, pound / (inch * inch)},
		{"inHg", PaPerInHg, 25.4 * 133.322387415},
		{"gallon", M3PerGal, 231 * inch * inch * inch},
		{"gpm", M3SPerGPM, 231 * inch * inch * inch / 60},
		{"foot", MPerFt, 12 * inch},
		{"inch", MPerIn, inch},
		{"horsepower", WPerHP, 550 * 12 * inch * pound},
		{"lbf", NPerLbf, pound},
		{"lb-ft", NmPerLbFt, 12 * inch * pound},
		{"pound", KgPerLb, pound / Gravity},
		{"turn", RadPerTurn, 2 * math.Pi},
		{"0 °F", KelvinAt0F, 273.15 - 32*5.0/9},
	} {
		if c.got != c.want {
			t.Errorf("%s: %.17g, by definition %.17g", c.name, c.got, c.want)
		}
	}
}

func TestThereAndBack(t *testing.T) {
	for _, v := range []float64{-14.7, 0, 0.001, 1, 50, 134.8, 2150, 1e6} {
		for _, c := range []struct {
			name string
			got  float64
		}{
			{"psi", float64(PSIOf(PSI(v).Pa()))},
			{"gpm", float64(GPMOf(GPM(v).M3S()))},
			{"gal", float64(GallonsOf(Gallons(v).M3()))},
			{"°F", float64(FahrenheitOf(Fahrenheit(v).K()))},
		} {
			if math.Abs(c.got-v) > 1e-12*math.Abs(v)+1e-12 {
				t.Errorf("%v %s comes back as %v", v, c.name, c.got)
			}
		}
	}
}

func TestFixedPoints(t *testing.T) {
	near := func(name string, got, want, within float64) {
		t.Helper()
		if math.Abs(got-want) > within {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
	near("water freezes", Fahrenheit(32).K(), 273.15, 1e-12)
	near("water boils", Fahrenheit(212).K(), 373.15, 1e-12)
	near("standard atmosphere, psi", float64(PSIOf(PaAtm)), 14.696, 0.0005) // [C]
	near("standard atmosphere, inHg", PaAtm/PaPerInHg, 29.921, 0.0005)      // [M]
	near("one turn a second", RPM(60).RadS(), 2*math.Pi, 1e-15)             // definition
	near("a mile run", Feet(5280).M(), 1609.344, 1e-9)                      // definition
	near("a hundred gallons of 2½ in hose", Inches(2.5).M(), 0.0635, 1e-15) // definition
	near("400 hp", Horsepower(400).W(), 298279.9, 0.1)                      // [C]
	near("1200 lb-ft", LbFt(1200).Nm(), 1626.98, 0.01)                      // [C]
}
