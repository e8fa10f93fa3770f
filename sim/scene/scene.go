package scene

import (
	"steadyneedle/sim/board"
	"steadyneedle/sim/crew"
	"steadyneedle/sim/state"
	"steadyneedle/sim/world"
)

// Scene is a world with its people, and the board that they and the judge look at.
type Scene struct {
	World *world.World
	Board *board.Board
	crew  *crew.Runner

	asked   []world.Action // what people want to do this tick
	derived []world.Action // what of it the world allows
	all     []world.Action
}

// New builds a scene.
func New(s world.Setup, values []board.Value, cues []crew.Cue) (*Scene, error) {
	w, err := world.New(s)
	if err != nil {
		return nil, err
	}
	people, err := crew.NewRunner(cues, s.Seed)
	if err != nil {
		return nil, err
	}
	n := people.Deeds()
	c := &Scene{World: w, crew: people, Board: board.New(w.Signals(), values),
		asked: make([]world.Action, 0, n), derived: make([]world.Action, 0, n)}
	c.Board.See(w.Now(), w.Truth().V)
	return c, nil
}

// Step makes one tick: the actions that are due, which must have passed the world's Check, then what
// people do of their own. The latter is returned, for the record; it is good until the next Step. It
// follows from the seed, so a replay compares it and never applies it.
func (s *Scene) Step(due []world.Action) (derived []world.Action) {
	s.asked = s.crew.Step(s.World.Now(), s.Board, s.asked[:0])
	s.derived = s.derived[:0]
	for _, a := range s.asked {
		if s.World.Check(a) == nil { // what cannot be done is left undone
			s.derived = append(s.derived, a)
		}
	}
	s.all = append(append(s.all[:0], due...), s.derived...)
	s.World.Step(s.all)
	s.Board.See(s.World.Now(), s.World.Truth().V)
	return s.derived
}

// Walk visits everything that the next tick depends on.
func (s *Scene) Walk(w *state.Walker) {
	s.World.Walk(w)
	s.crew.Walk(w)
	s.Board.Walk(w)
	if w.Loading() {
		s.Board.Restore(s.World.Truth().V)
	}
}

// Hash is a number that differs as soon as anything in the scene does. ok is false when a number in
// it is not one: a fault of the model.
func (s *Scene) Hash() (hash uint64, ok bool) {
	w := state.Hasher()
	s.Walk(&w)
	return w.Sum(), w.OK()
}

// Save appends the state to buf[:0].
func (s *Scene) Save(buf []uint64) []uint64 {
	w := state.Saver(buf)
	s.Walk(&w)
	return w.Saved()
}

// Load goes back to a saved state, and reports whether it was one of such a scene.
func (s *Scene) Load(saved []uint64) bool {
	w := state.Loader(saved)
	s.Walk(&w)
	return w.OK()
}

// Fork makes into, which must have been built in the same way, a copy of s.
func (s *Scene) Fork(into *Scene) bool { return into.Load(s.Save(nil)) }

// Bench copies the world alone, people left out, for a test that may do with it as it likes.
func (s *Scene) Bench() (*world.World, error) {
	w, err := world.New(*s.World.Setup())
	if err != nil {
		return nil, err
	}
	save := state.Saver(nil)
	s.World.Walk(&save)
	load := state.Loader(save.Saved())
	w.Walk(&load)
	return w, nil
}
