package judge

import (
	"strings"
	"testing"

	"steadyneedle/sim/world"
)

// supplyWorld is a hydrant, a tank, a line and two free outlets in a few lines of algebra. Its numbers
// are made up for the test.
type supplyWorld struct {
	now                    world.Tick
	static, perGPM2        float64 // of the hydrant
	loss, tank, tankValve  float64 // psi lost; gal; open
	out                    [2]float64
	throttle, psi, flow    float64
	intake                 float64
	said                   float64
	truth                  world.Truth
	noHydrant, noFreeValve bool
}

var supplySignals = []string{"amber", "relief_gpm", "relief_lift", "engine_rpm", "discharge_psi", "throttle",
	"line1_gpm", "line1_psi", "line1_gauge", "nozzle1", "line2_gpm", "line3_gpm", "intake_psi", "say_like_lines_value"}

var supplyControls = []string{"throttle", "nozzle1", "discharge1", "discharge2", "discharge3", "tank_to_pump", "hydrant_loss"}

func (w *supplyWorld) Now() world.Tick          { return w.now }
func (w *supplyWorld) Truth() *world.Truth      { return &w.truth }
func (w *supplyWorld) Check(world.Action) error { return nil }

func (w *supplyWorld) Control(name string) (world.ControlID, bool) {
	i, ok := index(supplyControls, name)
	if w.noHydrant && name == "hydrant_loss" || w.noFreeValve && name == "discharge2" {
		return 0, false
	}
	return world.ControlID(i), ok
}

func (w *supplyWorld) Signal(name string) (world.SignalID, bool) {
	i, ok := index(supplySignals, name)
	return world.SignalID(i), ok
}

func (w *supplyWorld) Step(due []world.Action) {
	unused := 0.0
	for _, a := range due {
		*[]*float64{&w.throttle, &unused, &unused, &w.out[0], &w.out[1], &w.tankValve, &w.loss}[a.Control] = a.Value
	}
	total := w.flow + 800*w.out[0] + 800*w.out[1]
	w.intake = w.static - w.loss - w.perGPM2*total*total
	want := 250.0
	if w.intake < -10 { // the hydrant is gone: what comes, comes from the tank
		want = 0
		if w.tankValve > 0.5 && w.tank > 0 {
			want = 200
			w.tank -= want / 3600
		}
	}
	w.flow += (want - w.flow) * 0.05
	w.psi = 90*w.throttle + max(0, w.intake) + 50
	w.now++
	w.truth = world.Truth{At: w.now, V: []float64{0, 0, 0, 1300, w.psi, w.throttle, w.flow, w.psi, w.psi, 1,
		800 * w.out[0], 800 * w.out[1], w.intake, w.said}}
}

func supplied(said float64, change func(*supplyWorld)) *supplyWorld {
	w := &supplyWorld{static: 65, perGPM2: 5e-5, tank: 400, said: said, throttle: 0.4, flow: 250}
	if change != nil {
		change(w)
	}
	for range 300 {
		w.Step(nil)
	}
	return w
}

// trySupply judges one test on that world: what was measured, or "", and whether it could be made.
func trySupply(t *testing.T, w *supplyWorld, test string) (string, error) {
	t.Helper()
	j := judgeByTest(t, test, func() (Bench, error) {
		c := *w
		return &c, nil
	})
	if err := j.Settle(); err != nil {
		return "", err
	}
	if s := j.Sheet(); len(s.Findings) > 0 {
		return s.Findings[0].Measured, nil
	}
	return "", nil
}

func TestSupplyTests(t *testing.T) {
	for _, c := range []struct {
		what  string
		w     *supplyWorld
		test  string
		finds string
	}{
		{"two lines that are there", supplied(2, nil), "further-lines", ""}, // 750 gpm take 28 of 65 psi
		{"three lines that are there", supplied(3, nil), "further-lines", ""},
		{"three lines that are not", supplied(3, func(w *supplyWorld) { w.perGPM2 = 9e-5 }), "further-lines", "psi would be left at the intake"}, // 1000 gpm take 90
		{"none are claimed", supplied(0, func(w *supplyWorld) { w.perGPM2 = 5e-4 }), "further-lines", ""},
		{"a full tank", supplied(0, nil), "hydrant-lost", ""},
		{"an empty tank", supplied(0, func(w *supplyWorld) { w.tank = 0 }), "hydrant-lost", "gpm came from the tank"},
		{"a tank for three seconds", supplied(0, func(w *supplyWorld) { w.tank = 10 }), "hydrant-lost", "gpm came from the tank"},
	} {
		got, err := trySupply(t, c.w, c.test)
		if err != nil || c.finds == "" && got != "" || !strings.Contains(got, c.finds) {
			t.Errorf("%s, %s: found %q, %v; want %q", c.test, c.what, got, err, c.finds)
		}
	}
}

// A world that cannot be put to the test says so, and names the rule.
func TestTestsThatCannotBeMade(t *testing.T) {
	for _, c := range []struct {
		test string
		w    *supplyWorld
		says string
	}{
		{"hydrant-lost", supplied(0, func(w *supplyWorld) { w.noHydrant = true }), "rule tested: this world has no hydrant"},
		{"further-lines", supplied(2, func(w *supplyWorld) { w.noFreeValve = true }), "rule tested: this world has no discharge free"},
	} {
		if _, err := trySupply(t, c.w, c.test); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want %q", c.test, err, c.says)
		}
	}
}
