package judge

import (
	"fmt"

	"steadyneedle/sim/board"
	"steadyneedle/sim/state"
	"steadyneedle/sim/world"
)

// Options is what a judge is made of.
type Options struct {
	Rules    []Rule
	Board    *board.Board // the scene's; the judge reads it and uses its value cell
	Controls []world.Control
	Grace    world.Tick // one budget for the whole attempt
	Scale    Scale
	Fork     func() (Bench, error) // a copy of the world as it is now; needed by outcome rules only
}

// Judge watches one attempt. Call Before with the actions of a tick, step the scene, call After; at the
// end Finalize.
type Judge struct {
	board     *board.Board
	scale     Scale
	fork      func() (Bench, error)
	watches   []watch
	byControl [][]int // for each control the watches that judge actions on it
	rates     []int   // watches of a control's speed, which look every tick
	placeCell int

	store     []float64 // memory of all programs
	graceLeft world.Tick
	graceTo   world.Tick // up to here grace has been paid for
	records   []record
	trials    []*trial
	fault     error // a fork that could not be made
}

// New makes a judge. It fails with one error that names the rule that cannot be judged.
func New(o Options) (*Judge, error) {
	j := &Judge{board: o.Board, scale: o.Scale, fork: o.Fork, graceLeft: o.Grace}
	j.watches = make([]watch, len(o.Rules))
	j.byControl = make([][]int, len(o.Controls))
	cell, err := o.Board.NeedCell("place")
	if err != nil {
		return nil, err
	}
	j.placeCell = cell
	slots := 0
	for i := range o.Rules {
		for _, p := range o.Rules[i].programs() {
			if p != nil {
				slots += p.Slots
			}
		}
	}
	j.store = make([]float64, slots)
	rest := j.store
	for i := range o.Rules {
		if rest, err = j.add(i, &o.Rules[i], o.Controls, rest); err != nil {
			return nil, fmt.Errorf("rule %s: %w", o.Rules[i].ID, err)
		}
	}
	return j, nil
}

// Before judges the actions of the coming tick against the state they find. Only the candidate is judged.
func (j *Judge) Before(due []world.Action) {
	for i := range due {
		a := &due[i]
		if a.By != world.Candidate || int(a.Control) >= len(j.byControl) || len(j.byControl[a.Control]) == 0 {
			continue
		}
		j.board.SetValue(a.Value)
		for _, n := range j.byControl[a.Control] {
			j.onAction(&j.watches[n], a)
		}
		j.board.SetValue(0)
	}
}

// After looks at what the tick has brought: each rule ten times a second on its own tick, speeds of
// controls every tick. The board must have seen the tick.
func (j *Judge) After() {
	now := j.board.At
	for _, n := range j.rates {
		j.speed(&j.watches[n], now)
	}
	for n := int(now % board.Beat); n < len(j.watches); n += int(board.Beat) {
		j.look(&j.watches[n], now)
	}
}

// look refreshes one rule's time words and judges it.
func (j *Judge) look(w *watch, now world.Tick) {
	v := j.board.V
	for _, a := range w.fresh {
		a.p.Refresh(v, a.memory)
	}
	if w.count > 0 && w.mended.true(v) {
		j.mend(w, now)
	}
	switch w.rule.Kind {
	case Order:
		j.order(w, now)
	case Guard:
		j.guard(w, now)
	case Never:
		j.never(w, now)
	case Band:
		j.band(w, now)
	case Rate:
		j.surge(w, now)
	case Due:
		j.due(w, now)
	case Answer:
		j.answer(w, now)
	case Outcome:
		j.outcome(w, now)
	case Said:
		j.said(w, now)
	}
}

// onAction judges one action of the candidate under one rule.
func (j *Judge) onAction(w *watch, a *world.Action) {
	switch w.rule.Kind {
	case Guard:
		j.guardAction(w, a)
	case Answer:
		j.answerAction(w, a)
	case Said:
		j.saidAction(w, a)
	}
}

// Finalize judges the last moment under every rule and ends all tests on copies of the world.
func (j *Judge) Finalize() error {
	for n := range j.watches {
		if n%int(board.Beat) != int(j.board.At%board.Beat) {
			j.look(&j.watches[n], j.board.At)
		}
	}
	return j.Settle()
}

// Walk visits everything the judge remembers, so that a rewind neither forgets a finding nor makes it
// twice. Tests on copies must have been settled.
func (j *Judge) Walk(w *state.Walker) {
	w.Floats(j.store)
	w.Int64((*int64)(&j.graceLeft))
	w.Int64((*int64)(&j.graceTo))
	for i := range j.watches {
		j.watches[i].walk(w)
	}
	n := len(j.records)
	w.Int(&n)
	if w.Loading() {
		j.trials = j.trials[:0]
		n = max(0, min(n, maxRecords))
		j.records = j.records[:min(n, len(j.records))]
		for len(j.records) < n {
			j.records = append(j.records, record{})
		}
	}
	for i := range j.records {
		j.records[i].walk(w)
	}
}
