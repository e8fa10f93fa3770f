package attempt

import "steadyneedle/sim/tape"

// Halt is why an attempt ended before its drill did, other than by the candidate.
type Halt uint8

const (
	NotHalted Halt = iota
	Safety         // stopped because going on was not safe
	CalledOff      // void through nobody's fault: a real call came in
	AtUnsafe       // at an unsafe act, by the terms or by the evaluator's decision
)

// haltMarks are the remarks by which a recording tells of it.
var haltMarks = [...]string{Safety: "stopped for safety", CalledOff: "void: called away, nobody's fault"}

// String says it in a word or two; empty for NotHalted.
func (h Halt) String() string {
	switch h {
	case Safety:
		return "stopped for safety"
	case CalledOff:
		return "void"
	case AtUnsafe:
		return "ended at an unsafe act"
	}
	return ""
}

// Halt notes why the evaluator ends the attempt now, Safety or CalledOff, and ends it.
func (a *Attempt) Halt(why Halt) error {
	if why == Safety || why == CalledOff {
		a.Mark(haltMarks[why])
	}
	return a.Close()
}

// Halted is why the attempt was ended, as its recording tells.
func (a *Attempt) Halted() Halt {
	for _, d := range a.Decisions() {
		if d.Ended {
			return AtUnsafe
		}
	}
	for i := range a.log {
		if a.log[i].kind != tape.Mark {
			continue
		}
		for h := Safety; int(h) < len(haltMarks); h++ {
			if a.log[i].text == haltMarks[h] {
				return h
			}
		}
	}
	return NotHalted
}
