package judge

import (
	"math"

	"steadyneedle/sim/world"
)

// spanMargin keeps a hand that turns at exactly the permitted pace from being found by rounding.
const spanMargin = 0.005

// addRate prepares the watch on a control's speed: it holds as many positions as a lawful hand needs
// ticks for the rule's span.
func (j *Judge) addRate(w *watch, controls []world.Control) error {
	r := w.rule
	if len(r.On) == 0 {
		return nil
	}
	c := &controls[r.On[0]]
	cell, err := j.board.NeedCell(c.Name)
	if err != nil {
		return err
	}
	w.cell, w.travel = cell, c.Max-c.Min
	ticks := int(world.TicksIn(float64(r.MinTravelS * min(1, r.Span))))
	w.ring.v = make([]float64, max(1, ticks)+1)
	j.rates = append(j.rates, w.index)
	return nil
}

// speed: the control went through at least Span of its travel in less time than MinTravelS allows.
func (j *Judge) speed(w *watch, now world.Tick) {
	w.ring.add(j.board.V[w.cell])
	if w.ring.n < 2 {
		return
	}
	oldest := w.ring.back(w.ring.n - 1)
	moved := math.Abs(w.ring.back(0) - oldest)
	if moved <= float64((w.rule.Span+spanMargin)*w.travel) || w.unless.true(j.board.V) {
		return
	}
	still := w.ring.n - 1 // steps back to the last position before the movement
	for still > 1 && w.ring.back(still-1) == oldest {
		still--
	}
	full := float64(world.Tick(still).Seconds()*w.travel) / moved
	j.report(w, now-world.Tick(still), now, cause{number: full, hasNumber: true})
}
