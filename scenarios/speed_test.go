package scenarios_test

import (
	"io"
	"testing"

	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/operator"
)

// BenchmarkRun works the reverse lay with judge, tests on copies, and recording; times real is how much
// faster than the clock that is.
func BenchmarkRun(b *testing.B) {
	s := scenarios.Open(nil)
	simulated := 0.0
	for b.Loop() {
		d, err := s.Drill("reverse-lay", scenarios.Options{Seed: 1})
		if err != nil {
			b.Fatal(err)
		}
		script, err := s.Script(d, "clean")
		if err != nil {
			b.Fatal(err)
		}
		a, err := attempt.New(d, attempt.Options{Record: io.Discard})
		if err != nil {
			b.Fatal(err)
		}
		o, err := a.Operator(script, operator.Hands{Speed: 1, Seed: 1})
		if err != nil {
			b.Fatal(err)
		}
		if err := a.Run("clean", o); err != nil {
			b.Fatal(err)
		}
		simulated += a.Now().Seconds()
	}
	b.ReportMetric(simulated/b.Elapsed().Seconds(), "×real")
}
