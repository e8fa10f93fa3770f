package scenarios

import (
	"testing"

	"steadyneedle/sim/fidelity"
)

// Every shipped apparatus that has a hand's throttle stands the service test of its rated flow [M].
func TestServiceOfShippedApparatus(t *testing.T) {
	tried := 0
	list, err := Open(nil).List()
	if err != nil {
		t.Fatal(err)
	}
	for _, item := range list.Apparatus {
		def, err := Open(nil).Apparatus(item.Name)
		if err != nil {
			t.Fatal(err)
		}
		if def.Governor != nil {
			continue
		}
		for _, trial := range fidelity.ServiceTest(def) {
			for _, r := range trial.Run(fidelity.Model{}) {
				tried++
				t.Logf("%-44s %10s  %s %s", r.ID, r.MeasuredText(), r.ExpectedText(), r.Unit)
				if !r.Pass {
					t.Errorf("%s: measured %s, expected %s %s (%s) %s", r.ID, r.MeasuredText(), r.ExpectedText(), r.Unit, r.Source, r.Problem)
				}
			}
		}
	}
	if tried < 60 {
		t.Errorf("%d results only", tried)
	}
}
