package prompter

import (
	"fmt"
	"testing"

	"steadyneedle/sim/drill"
	"steadyneedle/sim/state"
)

func steps(n int) []drill.Step {
	var list []drill.Step
	for i := range n {
		s := drill.Step{ID: fmt.Sprintf("s%d", i), Hint: fmt.Sprintf("Do %d.", i), Phase: fmt.Sprintf("phase %d", i/4)}
		if i > 0 {
			s.After = []string{fmt.Sprintf("s%d", i-1)}
		}
		list = append(list, s)
	}
	return list
}

func TestHelpFades(t *testing.T) {
	missed := func(ids ...string) Tried { return Tried{Missed: ids} }
	told := func(ids ...string) Tried { return Tried{Hinted: ids} }
	clean := Tried{}
	for _, c := range []struct {
		h    History
		want Stage
	}{
		{nil, Full},
		{History{missed("s1")}, Weak},
		{History{told("s1")}, Asked},
		{History{clean}, Asked},
		{History{missed("s1"), clean}, Asked},
		{History{clean, told("s1")}, Asked},
		{History{clean, clean}, Nothing},
		{History{clean, clean, missed("s0")}, Weak},
	} {
		if got := c.h.Stage(); got != c.want {
			t.Errorf("%+v: %v, want %v", c.h, got, c.want)
		}
	}
	h := History{missed("s1"), clean}
	if !h.Weak("s1") || h.Weak("s0") {
		t.Error("a step missed once is weak until it was right twice without help")
	}
	if h = append(h, told("s1"), clean); h.Weak("s1") {
		t.Error("right twice without help: no longer weak")
	}
	if h = append(h, missed("s1")); !h.CameBack("s1") || h.CameBack("s0") {
		t.Error("missed again: it came back")
	}
}

// learner knows each step with a chance that practice raises and time lowers, some steps more slowly.
type learner struct {
	dice  state.Dice
	known []float64 // chance to do the step right today
	slow  []bool
}

func newLearner(n int, seed uint64) *learner {
	l := &learner{known: make([]float64, n), slow: make([]bool, n)}
	l.dice.Seed(seed, "learner")
	for i := range n {
		l.known[i], l.slow[i] = 0.9, i%4 == 1
		if l.slow[i] {
			l.known[i] = 0.3
		}
	}
	return l
}

func (l *learner) practice(i int) {
	gain := 0.5
	if l.slow[i] {
		gain = 0.35
	}
	l.known[i] += gain * (1 - l.known[i])
}

// forget is what three days take.
func (l *learner) forget() {
	for i := range l.known {
		loss := 0.02
		if l.slow[i] {
			loss = 0.12
		}
		l.known[i] *= 1 - loss
	}
}

// attempt works the whole drill: what is done right is practice too.
func (l *learner) attempt(list []drill.Step) Tried {
	var t Tried
	for i := range list {
		if l.dice.Float64() < l.known[i] {
			l.known[i] += 0.05 * (1 - l.known[i])
		} else {
			t.Missed = append(t.Missed, list[i].ID)
		}
	}
	return t
}

// whole is the chance to do the whole drill without a miss.
func (l *learner) whole() float64 {
	p := 1.0
	for _, k := range l.known {
		p *= k
	}
	return p
}

// A learner who forgets is given the weak steps first, and is likelier to do the whole drill right in
// the end than one who practices as much in the drill's order.
func TestWeakStepsArePracticedFirst(t *testing.T) {
	const n, times, each = 16, 12, 3
	list := steps(n)
	index := map[string]int{}
	for i := range list {
		index[list[i].ID] = i
	}
	better, firstWeak, first := 0, 0, 0
	for seed := range uint64(40) {
		led, alone := newLearner(n, seed), newLearner(n, seed)
		var h History
		next := 0
		for day := range times {
			for i := range h {
				h[i].AgoDays += 3
			}
			plan := h.Practice(list)
			for k, e := range plan[:min(each, len(plan))] {
				i := index[e.Step.ID]
				if k == 0 && day <= 4 { // later they are no longer weak
					first++
					if led.slow[i] {
						firstWeak++
					}
				}
				led.practice(i)
			}
			for range each {
				alone.practice(next % n)
				next++
			}
			h = append(h, led.attempt(list))
			alone.attempt(list)
			led.forget()
			alone.forget()
		}
		if led.whole() > alone.whole() {
			better++
		}
	}
	t.Logf("a weak step led the plan %d times of %d, where chance gives 1 in 4; the led learner was better in %d of 40", firstWeak, first, better)
	if firstWeak*10 < first*8 || better < 38 {
		t.Errorf("a weak step led the plan %d times of %d; the led learner was better in %d of 40", firstWeak, first, better)
	}
}
