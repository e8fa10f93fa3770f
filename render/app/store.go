package app

import (
	"steadyneedle/render/report"
	"steadyneedle/render/view"
	"steadyneedle/sim/world"
)

// Kept is one attempt that the store has.
type Kept struct {
	ID        string
	Title     string
	When      string        // date and time of day, for people
	Sheet     *report.Sheet // nil: it was cut off
	Resumable bool          // cut off, and a rehearsal
}

// Opening is an attempt that is being opened; it is worked in slices, so that the window stays alive.
type Opening interface {
	// Work does a slice, and reports whether that was all.
	Work() bool
	// Reached is the moment up to which it has been worked again, and how long the attempt is.
	Reached() (now, whole world.Tick)
	// Attempt is what has been opened. With an error it may still go as far as it could be proved.
	Attempt() (view.Attempt, error)
}

// Weakness is a step that keeps going wrong.
type Weakness struct {
	Step, Text, Phase string
	Misses, Of        int
	CameBack          bool
}

// Store keeps attempts, and begins new ones from a moment of one.
type Store interface {
	// Kept lists what is kept of a drill, oldest first; of all drills where the name is empty.
	Kept(drill string) ([]Kept, error)
	// Weak lists the steps that were missed before, the likeliest to be missed again first.
	Weak(drill string) []Weakness
	// Finish keeps an attempt that is over.
	Finish(view.Attempt) error
	// SetOwn keeps how the candidates marked themselves.
	SetOwn(view.Attempt, *report.Own) error
	// Rule keeps the evaluator's ruling on an attempt that is kept.
	Rule(view.Attempt) error
	// Open opens what is kept, or what was left of an attempt that was cut off.
	Open(id string) (Opening, error)
	// Settle keeps an attempt that was cut off as it stands.
	Settle(id string, at view.Attempt) error
	// Drop throws away what was left of an attempt that was cut off.
	Drop(id string) error
	// TakeOver begins a rehearsal that goes on from a moment of an attempt.
	TakeOver(at view.Attempt, moment world.Tick) (view.Attempt, error)
	// Practice opens the newest attempt in which a step was missed, and says from when to work it again.
	Practice(drill, step string) (o Opening, from func(view.Attempt) world.Tick, err error)
}
