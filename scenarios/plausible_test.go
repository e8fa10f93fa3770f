package scenarios

import (
	"errors"
	"math"
	"os"
	"strings"
	"testing"

	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/world"
)

// Worked by hand: 65/45 at 500 gpm and a 1⅛ tip at 50 psi (265.8 gpm, 29.7 d² √NP) give
// 20 (265.8/500)^1.852 + 0.2 × 2.658² × 0.25 = 6.21 + 0.35 = 6.56 psi, 10.09 %.
func TestDropOnTheIntakeNeedle(t *testing.T) {
	g := world.Ground{Supply: fireground.HoseDef{LossC: 0.2}}
	h := fireground.HydrantDef{StaticPSI: 65, ResidualPSI: 45, FlowGPM: 500}
	q := nozzleGPM(&fireground.NozzleDef{TipIn: 1.125, RatedPSI: 50})
	if math.Abs(q-265.8) > 0.1 {
		t.Errorf("a 1⅛ tip takes %.1f gpm, want 265.8", q)
	}
	if got := dropPSI(&h, &g, q); math.Abs(got-6.56) > 0.005 {
		t.Errorf("drop %.3f psi, want 6.56", got)
	}
	g.Supply.LossC = 0
	// doubling the flow of the test must multiply its loss by 2^1.852 = 3.61
	if got := dropPSI(&h, &g, 1000) / dropPSI(&h, &g, 500); math.Abs(got-3.61) > 0.01 {
		t.Errorf("double flow multiplies the loss by %.3f, want 3.61", got)
	}
	// 25 ft of 4 in hose, C 0.2: 0.2 × 5² × 0.25 = 1.25 psi at 500 gpm
	g.Supply.LossC = 0.2
	if got := dropPSI(&h, &g, 500) - 20; math.Abs(got-1.25) > 1e-9 {
		t.Errorf("supply hose loses %.3f psi, want 1.25", got)
	}
}

// withHydrant checks the small drill with one hydrant and like lines asked for.
func withHydrant(t *testing.T, hydrant, more string) error {
	t.Helper()
	text, err := os.ReadFile("testdata/shelf/drills/small.yaml")
	if err != nil {
		t.Fatal(err)
	}
	s := strings.Replace(string(text), "like_lines: false", more, 1)
	from, to := strings.Index(s, "hydrants:"), strings.Index(s, "variants:")
	s = s[:from] + "hydrants:\n  - " + hydrant + "\n" + s[to:]
	_, err = small(t).Check("f.yaml", []byte(s))
	return err
}

// Drops in percent with no recirculation and with 25 gpm of it stand beside each hydrant.
func TestHydrantsMustBeClearOfTheBorders(t *testing.T) {
	for _, c := range []struct{ hydrant, say string }{
		{"{static_psi: 65, residual_psi: 42, flow_gpm: 500}", ""}, // 11.53 to 13.62
		{"{static_psi: 60, residual_psi: 27, flow_gpm: 500}", ""}, // 17.66 to 20.87
		{"{static_psi: 60, residual_psi: 22, flow_gpm: 500}", ""}, // 20.25 to 23.92
		{"{static_psi: 60, residual_psi: 40, flow_gpm: 600}", "drops it by 4.8 psi in variant long, expected at least 5"},
		{"{static_psi: 65, residual_psi: 45, flow_gpm: 500}", "by 10.09 %, with 25 gpm of recirculation by 11.93 % in variant long, expected both on one side of 10 %"},
		{"{static_psi: 60, residual_psi: 40, flow_gpm: 500}", "expected both on one side of 10 %"}, // 10.93 to 12.92
		{"{static_psi: 65, residual_psi: 40, flow_gpm: 500}", "expected both on one side of 15 %"}, // 12.48 to 14.75
		{"{static_psi: 70, residual_psi: 40, flow_gpm: 500}", "expected both on one side of 15 %"}, // 13.81 to 16.31
		{"{static_psi: 60, residual_psi: 20, flow_gpm: 500}", "expected both on one side of 25 %"}, // 21.28 to 25.14
		{"{static_psi: 40, residual_psi: 1, flow_gpm: 150}", "cannot give the 266 gpm that the line takes"},
	} {
		err := withHydrant(t, c.hydrant, "gating: true")
		if c.say == "" {
			if err != nil {
				t.Errorf("%s: %v", c.hydrant, err)
			}
			continue
		}
		var faults reader.Faults
		if !errors.As(err, &faults) || !strings.Contains(faults[0].Msg, c.say) || !strings.HasPrefix(faults[0].Msg, "hydrant of") {
			t.Errorf("%s: %v, want %s", c.hydrant, err, c.say)
		}
	}
}

// Twin idles at 650: 195 (650/1520)² = 35.7 psi. The long lay wants 50 + 2 × 2.66² × 5 = 120.8 psi.
func TestAPressureBelowIdleIsRefusedUnlessGatingIsTheLesson(t *testing.T) {
	low, high := "{static_psi: 74, residual_psi: 46, flow_gpm: 500}", "{static_psi: 90, residual_psi: 56, flow_gpm: 500}"
	if err := withHydrant(t, low, "like_lines: false"); err != nil {
		t.Error(err)
	}
	err := withHydrant(t, high, "like_lines: false")
	if err == nil || !strings.Contains(err.Error(), "f.yaml:23:5: hydrant of 90 psi: with the pump at idle the gauge already shows 126 psi, more than the calculated 120.8 in variant long") {
		t.Errorf("%v", err)
	}
	if err := withHydrant(t, high, "like_lines: false\ngating: true"); err != nil {
		t.Error(err)
	}
}
