package attempt

import (
	"slices"

	"steadyneedle/sim/board"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/state"
	"steadyneedle/sim/world"
)

// steps notices when each of the drill's steps is done, ten times a second, each on its own tick.
//
// A step is done when its condition holds and the steps that it waits for are done. Many conditions hold
// from the beginning (a valve is shut before anybody has opened it): that is not yet doing it. One that
// becomes true before its turn is done out of order, as long as it stays true; or for good, if it stays
// so long that it was no mere try.
type steps struct {
	list   []drill.Step
	waits  [][]int
	memory [][]float64
	store  []float64
	at     []step
}

// step is how far one step has come.
type step struct {
	looked bool       // it has been looked at before
	now    bool       // its condition holds
	edge   world.Tick // since when, if it has not held from the beginning; 0 otherwise
	done   bool       // in its turn, or out of order and its turn has come since
	early  bool
	when   world.Tick
}

func newSteps(list []drill.Step) steps {
	s := steps{list: list, at: make([]step, len(list))}
	slots := 0
	for i := range list {
		if list[i].Done != nil {
			slots += list[i].Done.Slots
		}
		var waits []int
		for j := range list[:i] {
			if slices.Contains(list[i].After, list[j].ID) {
				waits = append(waits, j)
			}
		}
		s.waits = append(s.waits, waits)
	}
	s.store = make([]float64, slots)
	rest := s.store
	for i := range list {
		n := 0
		if list[i].Done != nil {
			n = list[i].Done.Slots
		}
		s.memory = append(s.memory, rest[:n:n])
		rest = rest[n:]
	}
	return s
}

func (s *steps) look(b *board.Board) {
	for i := int(b.At % board.Beat); i < len(s.list); i += int(board.Beat) {
		p := s.list[i].Done
		if p == nil {
			continue
		}
		p.Refresh(b.V, s.memory[i])
		s.at[i].see(p.True(b.V, s.memory[i]), s.list[i].State, b.At)
		s.settle(i, b.At)
	}
}

// see takes in whether the condition holds. A mere state has no moment at which it was done too soon.
func (s *step) see(holds, state bool, now world.Tick) {
	switch {
	case !holds:
		if s.edge > 0 && !s.done && now-s.edge >= noTry {
			s.done, s.early, s.when = true, true, s.edge
		}
		s.edge = 0
	case s.looked && !s.now && !state:
		s.edge = now
	}
	s.now, s.looked = holds, true
}

const (
	noTry      = 10 * world.TicksPerSecond // assumption
	sameMoment = 2 * world.TicksPerSecond  // two steps so near to each other have no order (assumption)
)

// settle decides whether step i is done.
func (s *steps) settle(i int, now world.Tick) {
	k := &s.at[i]
	if k.done || !k.now {
		return
	}
	turn := world.Tick(0)
	for _, j := range s.waits[i] {
		when, ok := s.at[j].when, s.at[j].done
		if !ok {
			if when, ok = s.at[j].edge, s.at[j].edge > 0; !ok {
				return
			}
		}
		turn = max(turn, when)
	}
	k.done, k.when = true, now
	if k.edge > 0 && k.edge+sameMoment < turn {
		k.early, k.when = true, k.edge
	}
}

func (s *steps) walk(w *state.Walker) {
	w.Floats(s.store)
	for i := range s.at {
		k := &s.at[i]
		w.Bool(&k.looked)
		w.Bool(&k.now)
		w.Int64((*int64)(&k.edge))
		w.Bool(&k.done)
		w.Bool(&k.early)
		w.Int64((*int64)(&k.when))
	}
}

// StepDone is when a step of the drill was first done, in its turn or out of order; done is false while
// it has not been.
func (a *Attempt) StepDone(i int) (at world.Tick, done bool) {
	k := &a.steps.at[i]
	if k.done {
		return k.when, true
	}
	return k.edge, k.edge > 0
}

// StepEarly reports whether a step was done out of order: before one that it waits for.
func (a *Attempt) StepEarly(i int) bool {
	k := &a.steps.at[i]
	return k.early || !k.done && k.edge > 0
}

// StepHolds reports whether a step's condition holds now.
func (a *Attempt) StepHolds(i int) bool { return a.steps.at[i].now }
