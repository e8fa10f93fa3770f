package judge

import (
	"steadyneedle/sim/state"
	"steadyneedle/sim/world"
)

const (
	// maxRecords bounds what one attempt can gather; a sheet of this length has long said enough.
	maxRecords = 2000
	// maxNames is how many {name}s an Expected may hold.
	maxNames = 6
	// mergeTicks joins episodes of one rule that begin so soon after the last one's end, unless the rule
	// says otherwise (the drills' rule table: 15 s; assumption).
	mergeTicks = 15 * world.TicksPerSecond
)

// how says what was measured where it is not a number.
type how uint8

const (
	nothing how = iota
	notSaid
	number
	noLift
	earlyLift
	lateLift
	lampOn
	seated
	notReached
	tooLittle
	fewerLines
	lostFlow
	howCount
)

// cause is what a kind knows of a finding beyond its rule and time.
type cause struct {
	place     world.Place
	hasPlace  bool
	how       how
	number    float64
	hasNumber bool
	unit      string
}

// record is a finding as kept: numbers only, so that it is part of the walked state. Words are made
// when a sheet is asked for.
type record struct {
	rule       int
	from, seen world.Tick
	mended     world.Tick // when it was put right; 0: not
	place      world.Place
	how        how
	shown      bool // measured is the rule's Show, in its unit
	measured   float64
	amiss      uint64            // which of the rule's Found held
	names      [maxNames]float64 // what Expected names, at the moment of certainty
}

// report makes a finding, unless it belongs to the episode of the last one.
func (j *Judge) report(w *watch, from, now world.Tick, c cause) {
	merge := w.rule.Merge
	if merge == 0 {
		merge = mergeTicks
	}
	if w.count > 0 && (w.rule.Once || from-w.last <= merge) {
		w.last = now
		return
	}
	w.last = now
	if len(j.records) == maxRecords {
		return
	}
	w.count++
	v := j.board.V
	r := record{rule: w.index, from: from, seen: now, place: world.Place(v[j.placeCell]), how: c.how}
	if c.hasPlace {
		r.place = c.place
	}
	switch {
	case w.show.given() && r.how == nothing:
		r.how, r.shown, r.measured = number, true, w.show.value(v)
	case c.hasNumber:
		r.measured = c.number
		if r.how == nothing {
			r.how = number
		}
	}
	if r.measured != r.measured {
		r.how, r.measured = nothing, 0 // not a number: nothing that could be shown, nor be state
	}
	for i := range w.found {
		if w.found[i].true(v) {
			r.amiss |= 1 << i
		}
	}
	for i, cell := range w.expected.cells {
		if x := v[cell]; x == x {
			r.names[i] = x
		}
	}
	j.records = append(j.records, r)
}

// mend notes that what a rule found has been put right.
func (j *Judge) mend(w *watch, now world.Tick) {
	for i := range j.records {
		if r := &j.records[i]; r.rule == w.index && r.mended == 0 {
			r.mended = now
		}
	}
}

func (r *record) walk(w *state.Walker) {
	w.Int(&r.rule)
	w.Int64((*int64)(&r.from))
	w.Int64((*int64)(&r.seen))
	w.Int64((*int64)(&r.mended))
	place, kind := uint64(r.place), uint64(r.how)
	w.Word(&place)
	w.Word(&kind)
	r.place, r.how = world.Place(place), how(kind)
	w.Word(&r.amiss)
	w.Bool(&r.shown)
	w.Float(&r.measured)
	w.Floats(r.names[:])
}
