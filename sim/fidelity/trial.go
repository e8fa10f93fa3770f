package fidelity

import (
	"math"

	"steadyneedle/sim/plant"
)

// Trial is one run of the model with the tests that are taken on it, in this order.
type Trial struct {
	initial string
	begin   func(Model) *bench // nil where no machine is needed
	checks  []check
}

// check is a test and how it is measured: one number, or a sweep whose worst point decides.
type check struct {
	Test
	measure func(*bench) float64
	sweep   func(*bench) *Curve
}

// Model says which model is tested.
type Model struct {
	Substeps int           // of a tick; the plant's own when 0
	Without  plant.Effects // left out, to prove that tests of them can fail
}

// Tests lists the records of a trial, without results.
func (t *Trial) Tests() []Test {
	list := make([]Test, len(t.checks))
	for i := range t.checks {
		list[i] = t.checks[i].Test
		list[i].Initial = t.initial
	}
	return list
}

// Has reports whether a test of the trial belongs to an area.
func (t *Trial) Has(a Area) bool {
	for i := range t.checks {
		if t.checks[i].Area == a {
			return true
		}
	}
	return false
}

// Run works the trial and returns a result for each of its tests.
func (t *Trial) Run(m Model) []Result {
	var b *bench
	if t.begin != nil {
		b = t.begin(m)
	}
	results := make([]Result, len(t.checks))
	for i, test := range t.Tests() {
		results[i] = Result{Test: test, Measured: math.NaN()}
		results[i].take(&t.checks[i], b)
	}
	return results
}

// take measures one test.
func (r *Result) take(c *check, b *bench) {
	if b != nil && b.problem == "" {
		b.plot = nil
	}
	if b == nil || b.problem == "" {
		if c.sweep != nil {
			r.Curve = c.sweep(b)
			if p, ok := r.Curve.worst(); ok {
				r.Expected, r.Measured = p.Expected, p.Measured
				r.Tolerance = Tolerance{Tier: r.Tolerance.Tier, Width: p.Tolerance}
			}
		} else {
			r.Measured = c.measure(b)
		}
	}
	if b != nil {
		r.Problem = b.problem
		if r.Curve == nil {
			r.Curve = b.plot
		}
	}
	r.Pass = r.Problem == "" && math.Abs(r.Measured-r.Expected) <= r.Width()
}
