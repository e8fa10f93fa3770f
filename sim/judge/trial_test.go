package judge

import (
	"fmt"
	"strings"
	"testing"

	"steadyneedle/sim/board"
	"steadyneedle/sim/world"
)

// reliefWorld is a pump, one line and a relief valve in a few lines of algebra: enough to tell a valve
// that is set from one that is not. Its numbers are made up for the test.
type reliefWorld struct {
	now                      world.Tick
	setPSI                   float64 // the valve lifts here
	stuck                    bool    // it never lifts
	throttle, nozzle         float64
	rpm, psi, lift, gpm      float64
	engaged                  bool
	drive, shift, tankToPump float64
	truth                    world.Truth
}

var reliefSignals = []string{"amber", "relief_gpm", "relief_lift", "engine_rpm", "discharge_psi", "throttle",
	"line1_gpm", "line1_psi", "line1_gauge", "nozzle1"}

var reliefControls = []string{"throttle", "nozzle1", "pump_shift", "transmission", "tank_to_pump"}

func index(list []string, name string) (int, bool) {
	for i, n := range list {
		if n == name {
			return i, true
		}
	}
	return 0, false
}

func (w *reliefWorld) Now() world.Tick          { return w.now }
func (w *reliefWorld) Truth() *world.Truth      { return &w.truth }
func (w *reliefWorld) Check(world.Action) error { return nil }
func (w *reliefWorld) Control(name string) (world.ControlID, bool) {
	i, ok := index(reliefControls, name)
	return world.ControlID(i), ok
}
func (w *reliefWorld) Signal(name string) (world.SignalID, bool) {
	i, ok := index(reliefSignals, name)
	return world.SignalID(i), ok
}

func (w *reliefWorld) Step(due []world.Action) {
	for _, a := range due {
		*[]*float64{&w.throttle, &w.nozzle, &w.shift, &w.drive, &w.tankToPump}[a.Control] = a.Value
	}
	w.rpm += (700 + 1450*w.throttle - w.rpm) * 0.1
	w.gpm = 266 * w.nozzle
	pressure := 0.0
	if w.shift == 1 && w.drive == 1 && w.tankToPump == 1 {
		pressure = 195*w.rpm*w.rpm/1520/1520 + 25*(1-w.nozzle) // shutting the line raises it
	}
	want := max(0, min(1, (pressure-w.setPSI)/80))
	if w.stuck {
		want = 0
	}
	w.lift += (want - w.lift) * 0.05
	w.psi = pressure - 60*w.lift
	amber := 0.0
	if w.lift > 0.03 {
		amber = 1
	}
	w.now++
	w.truth = world.Truth{At: w.now, V: []float64{amber, 500 * w.lift, w.lift, w.rpm, w.psi, w.throttle, w.gpm, w.psi, w.psi, w.nozzle}}
}

// pumping is such a world at 135 psi on its line.
func pumping(setPSI float64) *reliefWorld {
	w := &reliefWorld{setPSI: setPSI, throttle: 0.39, nozzle: 1, rpm: 1265, drive: 1, shift: 1, tankToPump: 1}
	for range 600 {
		w.Step(nil)
	}
	return w
}

// judgeByTest is a judge at the moment at which one test on copies of a world has begun.
func judgeByTest(t *testing.T, test string, fork func() (Bench, error)) *Judge {
	t.Helper()
	b := board.New(testSignals, nil)
	j, err := New(Options{Board: b, Controls: testControls, Fork: fork,
		Rules: []Rule{{ID: "tested", Kind: Outcome, At: flag(cellA), Test: &ForkTest{Name: test}}}})
	if err != nil {
		t.Fatal(err)
	}
	v := make([]float64, len(testSignals))
	v[cellA] = 1
	for at := range world.Tick(12) {
		b.See(at, v)
		j.After()
	}
	return j
}

// try judges one test on that world and gives what was measured, or "".
func try(t *testing.T, w *reliefWorld, test string) string {
	t.Helper()
	j := judgeByTest(t, test, func() (Bench, error) {
		c := *w
		return &c, nil
	})
	slices := 0
	for ; j.Pending(); slices++ {
		j.Work(100)
		if slices > maxTrialTicks/100 {
			t.Fatal("the test does not end")
		}
	}
	if slices < 2 {
		t.Error("the test was not run in slices")
	}
	s := j.Sheet()
	if len(s.Findings) == 0 {
		return ""
	}
	if s.Findings[0].From > board.Beat {
		t.Errorf("onset %d, want the moment of judgment", s.Findings[0].From)
	}
	return s.Findings[0].Measured
}

func TestReliefTests(t *testing.T) {
	line := pumping(1000).psi // with the valve out of the way
	stuck := pumping(1000)
	stuck.stuck = true
	shut := pumping(line + 4) // the crew has shut down: the test opens the nozzle
	shut.nozzle = 0
	for range 300 {
		shut.Step(nil)
	}
	standby := func(set float64) *reliefWorld {
		w := pumping(set)
		w.throttle, w.drive, w.shift, w.tankToPump = 0, 0, 0, 0
		return w
	}
	for _, c := range []struct {
		what  string
		w     *reliefWorld
		test  string
		finds string // words of the finding; empty: passes
	}{
		{"set a little above the line", pumping(line + 4), "relief-shut", ""},
		{"set below the line", pumping(line - 12), "relief-shut", "by-passing"},
		{"set a little above the line", pumping(line + 4), "relief-holds", ""},
		{"nozzle shut before", shut, "relief-holds", ""},
		{"wound fully in", pumping(line + 120), "relief-holds", "did not lift within 15 psi"},
		{"a valve that is stuck", stuck, "relief-holds", "did not lift within 15 psi"},
		{"standby", standby(150), "relief-standby", ""},
		{"left at the drill's setting", standby(120), "relief-standby", "12"},
		{"left far above", standby(200), "relief-standby", "did not lift by 16"},
	} {
		t.Run(fmt.Sprintf("%s, %s", c.test, c.what), func(t *testing.T) {
			got := try(t, c.w, c.test)
			if c.finds == "" && got != "" || !strings.Contains(got, c.finds) || c.finds != "" && got == "" {
				t.Errorf("found %q, want %q", got, c.finds)
			}
		})
	}
}

func TestTestsAreChecked(t *testing.T) {
	if err := checkTest(&ForkTest{Name: "relief-holds", Limit: map[string]float64{"over_psi": 10}}); err != nil {
		t.Error(err)
	}
	for _, bad := range []ForkTest{{Name: "none"}, {Name: "relief-shut", Limit: map[string]float64{"over_psi": 10}}} {
		if checkTest(&bad) == nil {
			t.Errorf("%+v was taken", bad)
		}
	}
}
