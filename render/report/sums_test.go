package report

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/sums"
	"steadyneedle/sim/unit"
)

// worked is an attempt of the shipped drill's variant, with what was written on the calculation sheet.
func worked(t *testing.T, variant, name string, wrote map[string]float64) *attempt.Attempt {
	t.Helper()
	shelf := scenarios.Open(nil)
	d, script, err := shelf.DrillFor("reverse-lay", name, scenarios.Options{Seed: 1, Variant: variant})
	if err != nil {
		t.Fatal(err)
	}
	a, err := attempt.New(d, attempt.Options{Keys: true})
	if err != nil {
		t.Fatal(err)
	}
	op, err := a.Operator(script, operator.Hands{Speed: 1, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	for id, v := range wrote {
		sums.Write(a, id, v)
	}
	if err := a.Run(name, op); err != nil {
		t.Fatal(err)
	}
	return a
}

// Each term is held against the right one, and the simulated lay proves the sum: the right pressure at
// the pump gives the nozzle's pressure and flow.
func TestSums(t *testing.T) {
	for _, c := range []struct {
		variant            string
		total, nozzle, gpm float64 // [C] by the drill's own method: NP + 15.5 q² 150/100 + C Q² L/100
	}{
		{"one-line", 50 + 2*2.658*2.658*6, 50, 265.8},
		{"wye", 100 + 15.5*1.5*1.5*1.5 + 0.8*3*3*3, 100, 300},
	} {
		a := worked(t, c.variant, "clean", map[string]float64{"nozzle": c.nozzle, "sections": 99, "attack": 0})
		s := SumsOf(a)
		if s == nil {
			t.Fatal("no calculation sheet")
		}
		if math.Abs(s.Total.Right-c.total) > 0.5 || s.Rounded != math.Round(c.total/5)*5 || !s.Said {
			t.Errorf("%s: total %.1f, rounded %.0f, want %.1f", c.variant, s.Total.Right, s.Rounded, c.total)
		}
		sum := 0.0
		for _, l := range s.Lines {
			if l.Adds {
				sum += l.Right
			}
			want := map[string]bool{"nozzle": true, "attack": c.variant == "one-line"}[l.ID]
			if l.OK != want || strings.ContainsAny(l.Working, "{}") {
				t.Errorf("%s, %s: ok %v, working %q", c.variant, l.ID, l.OK, l.Working)
			}
		}
		if math.Abs(sum-s.Total.Right) > 0.01 {
			t.Errorf("%s: the parts are %.2f, the sum %.2f", c.variant, sum, s.Total.Right)
		}
		p := s.Proofs[0] // within the 15 psi that the drill allows, and a tenth of the flow
		if p.Impossible != "" || math.Abs(p.Nozzle-c.nozzle) > 5 || math.Abs(p.Flow-c.gpm) > 0.05*c.gpm {
			t.Errorf("%s: the simulated lay gives %+v", c.variant, p)
		}
		t.Logf("%s: %s", c.variant, p.Words("psi"))
		if si := s.In(unit.SI); math.Abs(si.Total.Right-s.Total.Right*6.894757) > 0.1 || si.Unit != "kPa" || s.Unit != "psi" {
			t.Errorf("in SI: %+v", si.Total)
		}
		inSI(t, c.variant, s.In(unit.SI))
		var page bytes.Buffer
		sheet := Of(a, "x")
		sheet.Sums = s
		if err := HTML(&page, sheet); err != nil || !strings.Contains(page.String(), "the simulated lay gives") || !strings.Contains(page.String(), "figures are of invented hose") {
			t.Errorf("the page: %v", err)
		}
	}
}

// inSI checks a sheet in SI: its workings, worked out, give what is right there, and the result is rounded
// as one rounds there.
func inSI(t *testing.T, variant string, s *Sums) {
	t.Helper()
	if s.RoundPSI != 25 || math.Mod(s.Rounded, 25) != 0 || math.Abs(s.Rounded-s.Total.Right) > 12.5 {
		t.Errorf("%s: %.1f %s is rounded to %.1f", variant, s.Total.Right, s.Unit, s.Rounded)
	}
	for _, l := range s.Lines {
		if strings.Contains(l.Working, "psi") || strings.Contains(l.Working, "gpm") || strings.Contains(l.Working, " ft") || strings.ContainsAny(l.Working, "{}") {
			t.Errorf("%s, %s in SI: %q", variant, l.ID, l.Working)
		}
		var k, q, m, d, p float64
		plain := strings.NewReplacer(" L/min", "", " m", "").Replace(l.Working)
		worked := math.NaN()
		if n, _ := fmt.Sscanf(plain, "%f × (%f ÷ 100)² × %f ÷ 100", &k, &q, &m); n == 3 {
			worked = k * q / 100 * q / 100 * m / 100
		} else if n, _ := fmt.Sscanf(plain, "%f × %f² × √%f", &k, &d, &p); n == 3 {
			worked = k * d * d * math.Sqrt(p)
		}
		need := l.ID == "trunk" || l.ID == "attack" && variant == "wye" || l.ID == "flow" && variant == "one-line"
		if need && !(math.Abs(worked-l.Right) <= 0.01*l.Right) {
			t.Errorf("%s, %s: %q gives %.1f, right is %.1f %s", variant, l.ID, l.Working, worked, l.Right, l.Unit)
		}
	}
}

// A wrong pressure gives a wrong nozzle pressure, and one that the pump cannot reach is said to be so.
func TestProofTellsThemApart(t *testing.T) {
	a := worked(t, "one-line", "clean", nil)
	low, err := sums.Prove(a.Drill.Setup, sums.Laid{Ft: 600}, 90)
	if err != nil || low.NozzlePSI > 40 {
		t.Errorf("%+v, %v", low, err)
	}
	if _, err := sums.Prove(a.Drill.Setup, sums.Laid{Ft: 600}, 900); err == nil || !strings.Contains(err.Error(), "900 psi") {
		t.Errorf("%v", err)
	}
	s := Sums{Limit: 200, Unit: "psi"}
	if s.OverLimit(200) != "" || s.OverLimit(210) != "above the hose's limit of 200 psi" {
		t.Errorf("%q", s.OverLimit(210))
	}
}

func BenchmarkProve(b *testing.B) {
	var t testing.T
	a := worked(&t, "one-line", "clean", nil)
	for b.Loop() {
		if _, err := sums.Prove(a.Drill.Setup, sums.Laid{Ft: 600}, 134); err != nil {
			b.Fatal(err)
		}
	}
}
