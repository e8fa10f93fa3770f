package main

import (
	"testing"
	"time"

	"steadyneedle/cmd/internal/store"
	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/operator"
)

// A step that was passed over is missed, and not the one that was done in its stead.
func TestStepsOfErringOperators(t *testing.T) {
	for name, want := range map[string]string{"unbled": "bleed", "hydrant-first": "engine-end", "line-before-throttle": "idle", "starves-shutdown": "tank-source"} {
		a := keptRun(t, name)
		var missed []string
		for i, out := range a.Outcomes(a.Sheet()) {
			if out.Missed() {
				missed = append(missed, a.Drill.Steps[i].ID)
			}
		}
		if len(missed) != 1 || missed[0] != want {
			t.Errorf("%s missed %v, want %s", name, missed, want)
		}
	}
}

// keptRun is an operator's attempt.
func keptRun(t *testing.T, name string) *attempt.Attempt {
	t.Helper()
	s, err := store.Open(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	return keep(t, s, name, time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC))
}

// Whoever works the drill right, in any legal order, has missed no step and done none too soon; who errs
// has missed the step that the broken rule speaks of.
func TestStepsOfLegalRuns(t *testing.T) {
	shelf := scenarios.Open(nil)
	for seed := uint64(1); seed <= 6; seed++ {
		o, err := shelf.Conditions("reverse-lay", "clean", scenarios.Options{Seed: seed})
		if err != nil {
			t.Fatal(err)
		}
		d, err := shelf.Drill("reverse-lay", o)
		if err != nil {
			t.Fatal(err)
		}
		script, err := shelf.Script(d, "clean")
		if err != nil {
			t.Fatal(err)
		}
		a, err := attempt.New(d, attempt.Options{})
		if err != nil {
			t.Fatal(err)
		}
		op, err := a.Operator(script, operator.Hands{Speed: 0.7 + 0.2*float64(seed), Shuffle: seed > 1, Seed: seed})
		if err != nil {
			t.Fatal(err)
		}
		if err := a.Run("clean", op); err != nil {
			t.Fatal(err)
		}
		for i, out := range a.Outcomes(a.Sheet()) {
			if out.Missed() || out.Early || out.Rank == 0 {
				t.Errorf("seed %d, %s: step %s: %+v", seed, d.Variant, d.Steps[i].ID, out)
			}
		}
	}
}
