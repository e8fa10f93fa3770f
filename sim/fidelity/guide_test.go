package fidelity

import (
	"runtime"
	"strings"
	"sync"
	"testing"
)

// results runs every trial once, on all processors.
var results = sync.OnceValue(func() []Result {
	trials := Guide()
	out := make([][]Result, len(trials))
	var next sync.Mutex
	n := 0
	var wg sync.WaitGroup
	for range runtime.NumCPU() {
		wg.Go(func() {
			for {
				next.Lock()
				i := n
				n++
				next.Unlock()
				if i >= len(trials) {
					return
				}
				out[i] = trials[i].Run(Model{})
			}
		})
	}
	wg.Wait()
	var all []Result
	for _, r := range out {
		all = append(all, r...)
	}
	return all
})

func TestGuide(t *testing.T) {
	failed := 0
	for _, r := range results() {
		if testing.Verbose() {
			t.Logf("%-28s %-12s %12s  %s %s", r.ID, map[bool]string{true: "", false: "FAILED"}[r.Pass], r.MeasuredText(), r.ExpectedText(), r.Unit)
		}
		if !r.Pass {
			failed++
			t.Errorf("%s: measured %s, expected %s %s (%s) %s", r.ID, r.MeasuredText(), r.ExpectedText(), r.Unit, r.Source, r.Problem)
		}
	}
	t.Logf("%d tests, %d failed", len(results()), failed)
}

// Every record must be complete, and no tolerance wider than its tier allows.
func TestRecords(t *testing.T) {
	seen := map[string]bool{}
	for _, trial := range Guide() {
		for _, r := range trial.Tests() {
			if seen[r.ID] {
				t.Errorf("%s is there twice", r.ID)
			}
			seen[r.ID] = true
			for _, text := range []string{r.ID, r.Title, r.Objective, r.Initial, r.Steps, r.Compared, r.Source.Text} {
				if strings.TrimSpace(text) == "" {
					t.Errorf("%s: a field is empty", r.ID)
				}
			}
			if w, ok := r.Tolerance.Tier.widest(r.Unit); ok && r.Tolerance.At(r.Expected) > w.At(r.Expected)*(1+1e-9) {
				t.Errorf("%s: tolerance %v is wider than tier %s allows", r.ID, r.Tolerance.At(r.Expected), r.Tolerance.Tier)
			}
		}
	}
}
