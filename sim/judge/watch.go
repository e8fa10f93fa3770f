package judge

import (
	"fmt"

	"steadyneedle/sim/board"
	"steadyneedle/sim/cond"
	"steadyneedle/sim/state"
	"steadyneedle/sim/world"
)

// needleSamples is the length of a displayed needle's average: one second of beats.
const needleSamples = int(world.TicksPerSecond / board.Beat)

// ask is a program with its share of the judge's memory.
type ask struct {
	p      *cond.Program
	memory []float64
}

func (a *ask) given() bool               { return a.p != nil }
func (a *ask) true(v []float64) bool     { return a.p != nil && a.p.Result(v, a.memory) != 0 }
func (a *ask) value(v []float64) float64 { return a.p.Result(v, a.memory) }

// watch is one rule being watched: its programs and where it stands.
type watch struct {
	rule  *Rule
	index int

	when, need, first, while, unless, from, by, done, at, number, target, tolerance, show, mended ask
	grace, found                                                                                  []ask
	fresh                                                                                         []*ask // those with time words
	expected                                                                                      text
	cell                                                                                          int     // of the control of a rate rule
	travel                                                                                        float64 // its full travel
	unit                                                                                          string  // of what is measured, unless the rule says
	needle                                                                                        bool    // answer: Target is a signal itself, which may shiver, not a number worked out

	held     bool       // the rule's condition held at the last look
	ok       bool       // what it needs was so: Need at the beginning, First or Done at any time
	byHeld   bool       // By held at the last look
	open     bool       // due: From has come and the judgment has not
	closed   bool       // no more to judge
	began    world.Tick // when the condition began to hold
	outside  world.Tick // band: time spent outside since began
	last     world.Tick // last moment of the last finding's episode
	count    int        // findings so far
	spoken   bool       // answer: a number has been said
	wrong    bool       // answer: the last one was wrong
	spokenAt world.Tick
	stated   float64
	ring     ring
}

// ring is the last few samples of a number.
type ring struct {
	v    []float64
	next int
	n    int
}

func (r *ring) add(x float64) {
	r.v[r.next] = x
	r.next++
	if r.next == len(r.v) {
		r.next = 0
	}
	if r.n < len(r.v) {
		r.n++
	}
}

// mean is the average of the samples; there must be one.
func (r *ring) mean() float64 {
	sum := 0.0
	for _, x := range r.v[:r.n] {
		sum += x
	}
	return sum / float64(r.n)
}

// back is the sample of k steps ago; k = 0 is the newest.
func (r *ring) back(k int) float64 {
	i := r.next - 1 - k
	if i < 0 {
		i += len(r.v)
	}
	return r.v[i]
}

// programs lists a rule's programs in the order in which their memory lies.
func (r *Rule) programs() []*cond.Program {
	list := []*cond.Program{r.When, r.Need, r.First, r.While, r.Unless, r.From, r.By, r.Done, r.At,
		r.Value, r.Target, r.Tolerance, r.Show, r.Mended}
	for _, g := range r.Grace {
		list = append(list, g.When)
	}
	for _, f := range r.Found {
		list = append(list, f.When)
	}
	return list
}

// add sets up the watch of rule i; it takes its memory from rest and returns what is left.
func (j *Judge) add(i int, r *Rule, controls []world.Control, rest []float64) ([]float64, error) {
	w := &j.watches[i]
	w.rule, w.index, w.last = r, i, -1
	w.grace, w.found = make([]ask, len(r.Grace)), make([]ask, len(r.Found))
	asks := []*ask{&w.when, &w.need, &w.first, &w.while, &w.unless, &w.from, &w.by, &w.done, &w.at,
		&w.number, &w.target, &w.tolerance, &w.show, &w.mended}
	for k := range w.grace {
		asks = append(asks, &w.grace[k])
	}
	for k := range w.found {
		asks = append(asks, &w.found[k])
	}
	for k, p := range r.programs() {
		if p == nil {
			continue
		}
		asks[k].p, asks[k].memory = p, rest[:p.Slots:p.Slots]
		rest = rest[p.Slots:]
		if len(p.Fresh) > 0 {
			w.fresh = append(w.fresh, asks[k])
		}
	}
	if err := r.check(j.fork != nil); err != nil {
		return nil, err
	}
	var err error
	if w.expected, err = parseText(r.Expected, j.board); err != nil {
		return nil, err
	}
	for _, id := range r.On {
		if int(id) >= len(controls) {
			return nil, fmt.Errorf("control %d is not one of this world's", id)
		}
		if r.Kind == Guard || r.Kind == Answer || r.Kind == Said {
			j.byControl[id] = append(j.byControl[id], i)
		}
	}
	w.unit = j.unitOf(r, controls)
	switch r.Kind {
	case Band, Answer:
		w.ring.v = make([]float64, needleSamples)
		w.needle = r.Kind == Answer && j.signalItself(r.Target)
	case Rate:
		return rest, j.addRate(w, controls)
	}
	return rest, nil
}

// unitOf is the unit of what a rule measures, as far as it can be known without ShowUnit.
func (j *Judge) unitOf(r *Rule, controls []world.Control) string {
	shown := r.Show
	switch {
	case shown == nil && r.Kind == Answer:
		return controls[r.On[0]].Unit
	case shown == nil && r.Kind == Outcome:
		return "psi"
	case shown == nil:
		shown = r.Value
	}
	if shown != nil {
		if cell, ok := j.board.Cell(shown.Text); ok {
			return j.board.Unit(cell)
		}
	}
	return ""
}

// signalItself reports whether a program is one of the world's signals as it is.
func (j *Judge) signalItself(p *cond.Program) bool {
	cell, ok := j.board.Cell(p.Text)
	return ok && cell < len(j.board.Signals())
}

// check says what a rule of its kind lacks.
func (r *Rule) check(canFork bool) error {
	lacks := func(ok bool, what string) error {
		if ok {
			return nil
		}
		return fmt.Errorf("it needs %s", what)
	}
	if len(r.Found) > maxFound {
		return fmt.Errorf("it has %d things that may be found, expected %d at most", len(r.Found), maxFound)
	}
	if r.Mended != nil && r.Severity != Error {
		return fmt.Errorf("only an error can be put right and count as minor")
	}
	switch r.Kind {
	case Order:
		return lacks(r.When != nil && r.First != nil, "when and first")
	case Guard:
		return lacks(len(r.On) > 0 || r.When != nil, "on or when")
	case Never:
		return lacks(r.When != nil, "when")
	case Band:
		return lacks(r.Value != nil && r.Target != nil && r.Tolerance != nil, "value, target and tolerance")
	case Rate:
		return lacks(r.When != nil || len(r.On) == 1 && r.MinTravelS > 0 && r.Span > 0, "when, or on with min_travel_s and span")
	case Due:
		return lacks(r.Done != nil && (r.By != nil || r.Within > 0), "done, and within or by")
	case Answer:
		return lacks(len(r.On) == 1 && r.Target != nil && r.Tolerance != nil, "one phrase in on, target and tolerance")
	case Outcome:
		if r.At == nil || r.Test == nil || !canFork {
			return lacks(false, "at and a test, and a world that can be copied")
		}
		return checkTest(r.Test)
	case Said:
		return lacks(r.By != nil && r.Need != nil || len(r.On) > 0, "by and need, or on")
	}
	return fmt.Errorf("there is no kind %d", r.Kind)
}

func (w *watch) walk(k *state.Walker) {
	k.Bool(&w.held)
	k.Bool(&w.ok)
	k.Bool(&w.byHeld)
	k.Bool(&w.open)
	k.Bool(&w.closed)
	k.Int64((*int64)(&w.began))
	k.Int64((*int64)(&w.outside))
	k.Int64((*int64)(&w.last))
	k.Int(&w.count)
	k.Bool(&w.spoken)
	k.Bool(&w.wrong)
	k.Int64((*int64)(&w.spokenAt))
	k.Float(&w.stated)
	k.Floats(w.ring.v)
	k.Int(&w.ring.next)
	k.Int(&w.ring.n)
}
