package fidelity

import (
	"fmt"
	"math"

	"steadyneedle/sim/plant"
)

const tick = 1.0 / 60

// bench is a plant on trial and the hands that work it. Once something has gone wrong that makes the
// rest meaningless, problem says what, and the remaining tests of the trial fail.
type bench struct {
	model          Model
	setup          plant.Setup
	p              *plant.Plant
	in             plant.In
	o              *plant.Out
	s              float64 // s since the beginning
	problem        string
	plot           *Curve        // of the test that is being measured
	ref            *referenceNet // where a network is on trial instead of a plant
	before         float64       // a pressure noted by one test for the next, psi
	rung           []float64     // the peaks of a line that was stopped, psi
	peak           float64       // the highest rise over it, psi
	speed          float64       // of the pump's shaft, noted by one test for the next, rpm
	btu            float64       // warmth that is bound for the tank
	holds, keeps20 float64       // further lines that a hydrant gives
	watch          func()        // looks on after every tick; nil: nobody
}

// set builds a plant from a setup.
func set(m Model, s plant.Setup) *bench {
	if m.Substeps > 0 {
		s.Substeps = m.Substeps
	}
	s.Without = m.Without
	b := &bench{model: m, setup: s}
	p, err := plant.New(s)
	if err != nil {
		b.problem = err.Error()
		return b
	}
	b.p, b.in, b.o = p, p.NewIn(), p.Out()
	return b
}

// fails notes the first problem.
func (b *bench) fails(format string, args ...any) {
	if b.problem == "" {
		b.problem = fmt.Sprintf(format, args...)
	}
}

// run lets seconds pass.
func (b *bench) run(seconds float64) {
	if b.p == nil {
		return
	}
	for range ticks(seconds) {
		b.p.Step(&b.in)
		b.s += tick
		if b.watch != nil {
			b.watch()
		}
	}
}

// until lets time pass until ok; it returns the time taken, and notes a problem if that takes longer
// than limit seconds.
func (b *bench) until(what string, limit float64, ok func() bool) float64 {
	if b.p == nil {
		return limit
	}
	for n := 0; float64(float64(n)*tick) < limit; n++ {
		if ok() {
			return float64(float64(n) * tick)
		}
		b.run(tick)
	}
	b.fails("%s: not within %s s", what, Number(limit, 0))
	return limit
}

// waits lets time pass until ok or for limit seconds, and returns the time taken.
func (b *bench) waits(limit float64, ok func() bool) float64 {
	n := 0
	for ; float64(float64(n)*tick) < limit && b.p != nil && !ok(); n++ {
		b.run(tick)
	}
	return float64(float64(n) * tick)
}

// turn moves a control evenly to a value over seconds.
func (b *bench) turn(c *float64, to, seconds float64) {
	n := ticks(seconds)
	from := *c
	for i := range n {
		*c = from + float64((to-from)*float64(i+1))/float64(n)
		b.run(tick)
	}
	*c = to
}

// highest runs for seconds and returns the highest of a value.
func (b *bench) highest(seconds float64, value func() float64) float64 {
	top := math.Inf(-1)
	b.span(seconds, value, nil, &top)
	return top
}

// span runs for seconds and keeps the least and the greatest of a value where they are asked for.
func (b *bench) span(seconds float64, value func() float64, lo, hi *float64) {
	for range ticks(seconds) {
		b.run(tick)
		v := value()
		if lo != nil {
			*lo = min(*lo, v)
		}
		if hi != nil {
			*hi = max(*hi, v)
		}
	}
}

// swing is the difference of greatest and least of a value over seconds.
func (b *bench) swing(seconds float64, value func() float64) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	b.span(seconds, value, &lo, &hi)
	return hi - lo
}

// ticks is the number of ticks nearest to seconds.
func ticks(seconds float64) int { return int(math.Round(float64(seconds * 60))) }

// takes makes another bench's problem this one's.
func (b *bench) takes(other *bench) {
	if b.problem == "" {
		b.problem = other.problem
	}
}

// root is √x, 0 below zero.
func root(x float64) float64 { return math.Sqrt(max(x, 0)) }
