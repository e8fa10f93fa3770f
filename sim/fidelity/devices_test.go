package fidelity

import (
	"slices"
	"testing"

	"steadyneedle/sim/plant"
)

// With an effect left out, the tests named for it fail; TestGuide proves that they pass with it.
func TestDevices(t *testing.T) {
	var all plant.Effects
	for _, d := range Devices() {
		all |= d.Effect
		if len(d.Fails) == 0 {
			t.Errorf("%s: no test fails without it", d.Effect)
		}
		t.Run(d.Effect.String(), func(t *testing.T) {
			t.Parallel()
			found := 0
			for _, trial := range Guide() {
				if !slices.ContainsFunc(trial.Tests(), func(r Test) bool { return slices.Contains(d.Fails, r.ID) }) {
					continue
				}
				for _, r := range trial.Run(Model{Without: d.Effect}) {
					if !slices.Contains(d.Fails, r.ID) {
						continue
					}
					if found++; r.Pass {
						t.Errorf("%s passes: %s %s, expected %s", r.ID, r.MeasuredText(), r.Unit, r.ExpectedText())
					}
				}
			}
			if found != len(d.Fails) {
				t.Errorf("%d of the %d tests named are there", found, len(d.Fails))
			}
		})
	}
	if all != plant.EveryEffect {
		t.Errorf("no tests are named for %s", plant.EveryEffect&^all)
	}
}
