package attempt

import "steadyneedle/sim/tape"

// Halt is why an evaluator ended an attempt before its drill did.
type Halt uint8

const (
	NotHalted Halt = iota
	Safety         // stopped because going on was not safe
	CalledOff      // void through nobody's fault: a real call came in
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
	}
	return ""
}

// Halt notes why the evaluator ends the attempt now, and ends it.
func (a *Attempt) Halt(why Halt) error {
	if why != NotHalted && int(why) < len(haltMarks) {
		a.Mark(haltMarks[why])
	}
	return a.Close()
}

// Halted is why an evaluator ended the attempt, as its recording tells.
func (a *Attempt) Halted() Halt {
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
