package main

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/operator"
)

// These tests hold the judge against the shipped operators: each error is found, and nothing else is.

// attemptOf lets an operator work the reverse lay, and gives the rules that were found broken.
func attemptOf(t *testing.T, name string, o scenarios.Options, h operator.Hands) (found []string, breaks string) {
	t.Helper()
	s := scenarios.Open(nil)
	o, err := s.Conditions("reverse-lay", name, o)
	if err != nil {
		t.Fatal(err)
	}
	d, err := s.Drill("reverse-lay", o)
	if err != nil {
		t.Fatal(err)
	}
	script, err := s.Script(d, name)
	if err != nil {
		t.Fatal(err)
	}
	a, err := attempt.New(d, attempt.Options{})
	if err != nil {
		t.Fatal(err)
	}
	who, err := a.Operator(script, h)
	if err != nil {
		t.Fatal(err)
	}
	if err := a.Run(name, who); err != nil {
		t.Error(err)
	}
	for _, f := range a.Sheet().Findings {
		found = append(found, f.Rule)
	}
	return found, script.Breaks
}

func TestEveryOperatorGetsItsFinding(t *testing.T) {
	list, err := scenarios.Open(nil).List()
	if err != nil {
		t.Fatal(err)
	}
	faulty := 0
	for i, o := range list.Operators {
		if o.Breaks != "" {
			faulty++
		}
		variant := []string{"one-line", "wye"}[i%2]
		t.Run(o.Name, func(t *testing.T) {
			t.Parallel()
			found, breaks := attemptOf(t, o.Name, scenarios.Options{Seed: 1, Variant: variant}, operator.Hands{Speed: 1, Seed: 1})
			if got := strings.Join(found, ", "); got != breaks {
				t.Errorf("%s: found %q, want %q", variant, got, breaks)
			}
		})
	}
	if faulty < 20 {
		t.Errorf("%d operators who err, want at least 20", faulty)
	}
}

// TestLegalVariations works the drill in fifty legal ways: steps in any order that the drill allows,
// hands at half to twice the usual speed, pauses, wheels that go too far and come back, needles read
// half a division high or low. A handful of seeds is the day's own.
func TestLegalVariations(t *testing.T) {
	day := uint64(time.Now().Unix() / 86400)
	t.Logf("seeds 1 to 44, and %d to %d", day, day+5)
	var seeds []uint64
	for s := range uint64(44) {
		seeds = append(seeds, s+1)
	}
	for s := range uint64(6) {
		seeds = append(seeds, day+s)
	}
	for i, seed := range seeds {
		h := operator.Hands{
			Speed: []float64{0.5, 0.8, 1, 1.4, 2}[i%5], PauseS: float64(i % 3), Overturn: float64(i%4) / 10,
			Eyes: float64(i%3) - 1, Shuffle: true, Seed: seed,
		}
		t.Run(fmt.Sprintf("seed %d", seed), func(t *testing.T) {
			t.Parallel()
			if found, _ := attemptOf(t, "clean", scenarios.Options{Seed: seed}, h); len(found) > 0 {
				t.Errorf("%+v: found %v", h, found)
			}
		})
	}
}
