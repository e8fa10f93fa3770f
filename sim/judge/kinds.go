package judge

import (
	"math"

	"steadyneedle/sim/board"
	"steadyneedle/sim/world"
)

// This file has the kinds that look ten times a second, in the words of Rule's comment.

// hysteresisPSI is how far inside the tolerance a needle must come back for its time outside to be
// forgotten; of a tolerance below twice that, half.
const hysteresisPSI = 2.0

// never: When has held for longer than For.
func (j *Judge) never(w *watch, now world.Tick) {
	if !w.when.true(j.board.V) || w.unless.true(j.board.V) {
		w.held = false
		return
	}
	if !w.held {
		w.held, w.began = true, now
	}
	if now-w.began > w.rule.For || w.rule.For == 0 {
		j.report(w, w.began, now, cause{})
	}
}

// guard without On: When has held for For, and Need did not hold when it began.
func (j *Judge) guard(w *watch, now world.Tick) {
	if len(w.rule.On) > 0 {
		return
	}
	v := j.board.V
	if !w.when.true(v) || w.unless.true(v) {
		w.held = false
		return
	}
	if !w.held {
		w.held, w.began, w.ok = true, now, w.need.true(v)
	}
	if !w.ok && now-w.began >= w.rule.For {
		j.report(w, w.began, now, cause{})
	}
}

// order: When becomes true though First has not held at any time before.
func (j *Judge) order(w *watch, now world.Tick) {
	v := j.board.V
	w.ok = w.ok || w.first.true(v)
	holds := w.when.true(v)
	if holds && !w.held && !w.ok && !w.unless.true(v) {
		j.report(w, now, now, cause{})
	}
	w.held = holds
}

// surge is the second half of rate: When became true.
func (j *Judge) surge(w *watch, now world.Tick) {
	holds := w.when.true(j.board.V)
	if holds && !w.held && !w.unless.true(j.board.V) {
		j.report(w, now, now, cause{})
	}
	w.held = holds
}

// band: Value, averaged over a second, is outside Tolerance of Target for longer than For while While
// holds and no grace runs. Time outside adds up until the needle is well inside again, so that one who
// stands on the very limit is not excused by its flicker, nor condemned for time spent inside.
func (j *Judge) band(w *watch, now world.Tick) {
	v := j.board.V
	w.ring.add(w.number.value(v))
	applies := (!w.while.given() || w.while.true(v)) && !w.unless.true(v)
	if !applies {
		w.held = false
		return
	}
	off := math.Abs(w.ring.mean() - w.target.value(v))
	within := w.tolerance.value(v)
	outside := off > within
	if outside && j.graced(w, now) {
		w.held = false
		return
	}
	switch {
	case outside && !w.held:
		w.held, w.began, w.outside = true, now, 0
	case outside:
		w.outside += board.Beat
	case off <= max(within-hysteresisPSI, float64(within/2)):
		w.held = false
	}
	if outside && (w.outside > w.rule.For || w.rule.For == 0) {
		j.report(w, w.began, now, cause{number: w.ring.mean(), hasNumber: true})
	}
}

// graced reports whether a band is excused now, and takes the time from the attempt's one budget. Two
// bands excused in the same beat pay once.
func (j *Judge) graced(w *watch, now world.Tick) bool {
	for i := range w.grace {
		if !w.grace[i].true(j.board.V) {
			continue
		}
		if now < j.graceTo {
			return true
		}
		if j.graceLeft < board.Beat {
			return false
		}
		j.graceLeft -= board.Beat
		j.graceTo = now + board.Beat
		return true
	}
	return false
}

// due: From becomes true; Within later Done must have held, or when By becomes true Done must hold.
// A due without From begins with the drill.
func (j *Judge) due(w *watch, now world.Tick) {
	v := j.board.V
	from := !w.from.given() || w.from.true(v)
	if from && !w.held && !w.closed {
		w.open, w.ok, w.began = true, false, now
	}
	w.held = from
	by := w.by.true(v)
	rises := by && !w.byHeld
	w.byHeld = by
	if !w.open {
		return
	}
	done := w.done.true(v)
	w.ok = w.ok || done
	late := w.rule.Within > 0 && now >= w.began+w.rule.Within
	switch {
	case rises:
		j.judgeDue(w, done, now, now)
	case late:
		j.judgeDue(w, w.ok, w.began+w.rule.Within, now)
	case done && !w.by.given():
		w.open = false
	}
}

func (j *Judge) judgeDue(w *watch, done bool, onset, now world.Tick) {
	w.open = false
	if !w.from.given() {
		w.closed = true
	}
	if !done && !w.unless.true(j.board.V) {
		j.report(w, onset, now, cause{})
	}
}

// outcome: when At becomes true a copy of the world is put through the test.
func (j *Judge) outcome(w *watch, now world.Tick) {
	holds := w.at.true(j.board.V)
	if holds && !w.held && !w.unless.true(j.board.V) {
		j.startTrial(w, now)
	}
	w.held = holds
}

// said: By becomes true though Need does not hold.
func (j *Judge) said(w *watch, now world.Tick) {
	v := j.board.V
	by := w.by.true(v)
	if by && !w.byHeld && !w.need.true(v) && !w.unless.true(v) {
		j.report(w, now, now, cause{})
	}
	w.byHeld = by
}
