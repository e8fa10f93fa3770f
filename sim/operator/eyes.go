package operator

import (
	"math"

	"steadyneedle/sim/board"
	"steadyneedle/sim/world"
)

// Known is what an operator knows of the place: its controls, what can be perceived, and how the drill
// works out its numbers.
type Known struct {
	Controls  []world.Control
	Signals   []world.Signal
	Values    []board.Value
	Divisions map[string]float64 // smallest mark of each dial, by the needle's signal
}

// eyes turn readings into what a person takes from them: needles to half a division, and what cannot
// be seen from here as it was when last seen. Of what was never seen he believes that controls stand as
// usual, and that all else is 0.
type eyes struct {
	seen  []float64
	half  []float64 // half a division of each needle; 0: not a dial
	error float64   // in half divisions
	board *board.Board
	place world.Place
}

func newEyes(k *Known, reading float64) eyes {
	e := eyes{board: board.New(k.Signals, k.Values), error: reading}
	e.seen, e.half = make([]float64, len(k.Signals)), make([]float64, len(k.Signals))
	for i, s := range k.Signals {
		e.half[i] = float64(k.Divisions[s.Name] / 2)
	}
	for i := range k.Controls {
		if cell, ok := e.board.Cell(k.Controls[i].Name); ok && !said(&k.Controls[i]) {
			e.seen[cell] = k.Controls[i].Start
		}
	}
	e.board.Restore(e.seen)
	return e
}

func said(c *world.Control) bool { return c.Kind == world.Speech || c.Kind == world.Gesture }

// look takes in a reading.
func (e *eyes) look(r *world.Reading) {
	e.place = r.Place
	for i, v := range r.V {
		if v != v {
			continue
		}
		if h := e.half[i]; h > 0 {
			v = float64(math.Round(v/h+e.error) * h)
		}
		e.seen[i] = v
	}
	e.board.See(r.At, e.seen)
}
