package operator

import (
	"math"

	"steadyneedle/sim/board"
	"steadyneedle/sim/state"
	"steadyneedle/sim/world"
)

// A needle is brought to a number the way people do it: move the control a little, wait for the needle
// to stand, see what the move was good for, move again by what should be missing. Nothing is known of
// the machine beforehand, not even which way it answers.

const (
	looks     = 10   // looks that make one judgment of a needle: one second
	reactS    = 0.7  // before the needle is looked at again: hand to eye, and the needle's own lag
	impatient = 6.0  // s after which a needle that will not stand is taken as it is
	firstTry  = 0.02 // of full travel, when nothing is known of the answer
	mostMove  = 0.15 // of full travel, in one correction
	boldness  = 0.9  // of what should be missing, in one correction
)

// bringing is where a Bring stands.
type bringing struct {
	want, last float64
	needle     [looks]float64
	n          int        // looks since the hand stopped
	stopped    world.Tick // when it did
	answer     float64    // needle for full travel, as learned; 0: nothing yet
	try        float64    // size of the next blind try, share of travel
	hand0      float64    // before the last correction: hand and needle
	needle0    float64
	corrected  bool
	overturned bool // the first correction has had its excess
}

func (b *bringing) walk(w *state.Walker) {
	w.Float(&b.want)
	w.Float(&b.last)
	w.Floats(b.needle[:])
	w.Int(&b.n)
	w.Int64((*int64)(&b.stopped))
	w.Float(&b.answer)
	w.Float(&b.try)
	w.Float(&b.hand0)
	w.Float(&b.needle0)
	w.Bool(&b.corrected)
	w.Bool(&b.overturned)
}

func (o *Operator) bringTo(m *Move, a *moveAsks, first bool, now world.Tick, looked bool, out []world.Action) ([]world.Action, bool) {
	b := &o.bring
	if first {
		*b = bringing{stopped: now - world.TicksIn(reactS), try: firstTry}
		o.grasp(m.Control)
	}
	if o.moving {
		out = o.reach(m, now, out)
		b.n, b.stopped = 0, now
		return out, false
	}
	if !looked || now < b.stopped+world.TicksIn(reactS) {
		return out, false
	}
	b.want, b.last = a.to.value(o.eyes.board.V), a.watch.value(o.eyes.board.V)
	b.needle[b.n%looks] = b.last
	b.n++
	stands, mean := b.stands(m.Within)
	if !stands && now < b.stopped+world.TicksIn(impatient) || b.n < looks {
		return out, false
	}
	if math.Abs(b.want-mean) <= m.Within {
		return out, stands
	}
	b.learn(o, m, mean)
	o.correct(m, mean)
	return out, false
}

// stands reports whether the needle has come to rest, and its mean of the last second.
func (b *bringing) stands(within float64) (bool, float64) {
	if b.n < looks {
		return false, 0
	}
	var early, late float64
	for i := range looks {
		x := b.needle[(b.n+i)%looks] // from the oldest
		if i < looks/2 {
			early += x
		} else {
			late += x
		}
	}
	early, late = early/(looks/2), late/(looks/2)
	return math.Abs(late-early) <= max(float64(0.4*within), 0.3), float64((early + late) / 2)
}

// learn takes from the last correction how the needle answers.
func (b *bringing) learn(o *Operator, m *Move, mean float64) {
	if !b.corrected {
		return
	}
	c := &o.controls[m.Control]
	moved := (o.hand - b.hand0) / (c.Max - c.Min)
	if moved == 0 {
		return
	}
	came := mean - b.needle0
	seen := float64(0.5 * m.Within)
	switch {
	case math.Abs(came) < seen: // it hardly answered: bolder next time
		b.try = min(mostMove, float64(2*b.try))
		b.answer = float64(b.answer / 2)
	case b.answer != 0 && (came/moved < 0) != (b.answer < 0) && math.Abs(came) < float64(3*m.Within):
		// something else has moved the needle
	case b.answer == 0:
		b.answer = came / moved
	default:
		b.answer += float64(0.7 * (came/moved - b.answer))
	}
}

// correct aims the hand at what should be missing.
func (o *Operator) correct(m *Move, mean float64) {
	b, c := &o.bring, &o.controls[m.Control]
	missing := b.want - mean
	var share float64
	if math.Abs(b.answer) < 1e-9 {
		share = b.try
		if missing < 0 {
			share = -share
		}
		if share < 0 && o.hand <= c.Min || share > 0 && o.hand >= c.Max {
			share = -share // at its end: perhaps it answers the other way
		}
	} else {
		share = float64(boldness*missing) / b.answer
	}
	if math.Abs(share) > mostMove {
		share = max(-mostMove, min(mostMove, share))
	} else if b.answer != 0 && !b.overturned { // the first one that should have been enough
		share += float64(share * o.hands.Overturn)
		b.overturned = true
	}
	b.hand0, b.needle0, b.corrected = o.hand, mean, true
	o.aim(m.Control, o.hand+float64(share*(c.Max-c.Min)))
	b.n, b.stopped = 0, o.lookedAt()
}

func (o *Operator) lookedAt() world.Tick { return o.eyes.board.At / board.Beat * board.Beat }
