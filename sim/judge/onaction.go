package judge

import (
	"math"

	"steadyneedle/sim/world"
)

// guardAction: an action on one of On, with When true of it, while Need does not hold.
func (j *Judge) guardAction(w *watch, a *world.Action) {
	v := j.board.V
	if w.when.given() && !w.when.true(v) || w.need.true(v) || w.unless.true(v) {
		return
	}
	j.report(w, a.At, a.At, cause{place: a.From, hasPlace: true})
}

// saidAction: a phrase of On is said while When holds. A rule without By may say with Need what must
// hold when the phrase is said.
func (j *Judge) saidAction(w *watch, a *world.Action) {
	v := j.board.V
	if w.when.given() && !w.when.true(v) || w.unless.true(v) {
		return
	}
	if !w.by.given() && w.need.true(v) {
		return
	}
	if w.by.given() && !w.when.given() {
		return // On names the phrases for reports only; By judges
	}
	j.report(w, a.At, a.At, cause{place: a.From, hasPlace: true})
}

// answerAction takes down a number that is said, and whether it was right at that moment. Without By
// that is the judgment.
func (j *Judge) answerAction(w *watch, a *world.Action) {
	if w.closed {
		return
	}
	v := j.board.V
	const whisker = 1e-9 // so that a number on the very limit is right whatever the rounding
	within := w.tolerance.value(v) + whisker
	w.spoken, w.spokenAt, w.stated = true, a.At, a.Value
	w.wrong = !(math.Abs(a.Value-w.target.value(v)) <= within)
	if w.wrong && w.needle && w.ring.n > 0 { // a needle that shivers is read as its mean
		w.wrong = !(math.Abs(a.Value-w.ring.mean()) <= within)
	}
	if w.wrong && !w.by.given() && !w.unless.true(v) {
		j.report(w, a.At, a.At, cause{place: a.From, hasPlace: true, number: a.Value, hasNumber: true})
	}
}

// answer keeps the last second of the needle that Target reads, and judges when By becomes true. A rule
// with By is judged once.
func (j *Judge) answer(w *watch, now world.Tick) {
	v := j.board.V
	w.ring.add(w.target.value(v))
	by := w.by.true(v)
	rises := by && !w.byHeld
	w.byHeld = by
	if !rises || w.closed {
		return
	}
	w.closed = true
	switch {
	case w.unless.true(v):
	case !w.spoken:
		j.report(w, now, now, cause{how: notSaid})
	case w.wrong:
		j.report(w, w.spokenAt, now, cause{number: w.stated, hasNumber: true})
	}
}
