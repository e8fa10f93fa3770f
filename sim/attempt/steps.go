package attempt

import (
	"steadyneedle/sim/board"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/state"
	"steadyneedle/sim/world"
)

// steps notices when each of the drill's steps is done, ten times a second, each on its own tick.
type steps struct {
	list   []drill.Step
	memory [][]float64
	store  []float64
	first  []world.Tick // done for the first time; −1: not yet
	now    []bool       // its condition holds
}

func newSteps(list []drill.Step) steps {
	s := steps{list: list, first: make([]world.Tick, len(list)), now: make([]bool, len(list))}
	slots := 0
	for i := range list {
		s.first[i] = -1
		if list[i].Done != nil {
			slots += list[i].Done.Slots
		}
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
		s.now[i] = p.True(b.V, s.memory[i])
		if s.now[i] && s.first[i] < 0 {
			s.first[i] = b.At
		}
	}
}

func (s *steps) walk(w *state.Walker) {
	w.Floats(s.store)
	for i := range s.first {
		w.Int64((*int64)(&s.first[i]))
		w.Bool(&s.now[i])
	}
}

// StepDone is when a step of the drill was first done; done is false while it has not been.
func (a *Attempt) StepDone(i int) (at world.Tick, done bool) {
	return a.steps.first[i], a.steps.first[i] >= 0
}

// StepHolds reports whether a step's condition holds now.
func (a *Attempt) StepHolds(i int) bool { return a.steps.now[i] }
