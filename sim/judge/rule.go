package judge

import (
	"steadyneedle/sim/cond"
	"steadyneedle/sim/world"
)

// Kind is what sort of statement a rule makes.
type Kind uint8

const (
	Order Kind = iota
	Guard
	Never
	Band
	Rate
	Due
	Answer
	Outcome
	Said
	kindCount
)

// Severity is how much a finding weighs.
type Severity uint8

const (
	Minor Severity = iota
	Error
	Unsafe
)

// String returns the severity as files and sheets write it.
func (s Severity) String() string {
	switch s {
	case Minor:
		return "minor"
	case Error:
		return "error"
	}
	return "unsafe"
}

// Rule is one statement about how the work is done. Which fields it uses depends on its kind:
//
//	order    When becomes true (its rising edge) though First has not held at any time before
//	guard    a candidate's action on one of On, with When true of it (none: always), while Need does not
//	         hold; without On: When has held for For, and Need did not hold when it began
//	never    When has held for longer than For
//	band     while While holds, Value (averaged over a second) stays within Tolerance of Target; outside
//	         for longer than For, and outside grace, is a finding
//	rate     the control On[0] went through at least Span of its travel faster than MinTravelS for full
//	         travel; or When became true
//	due      From becomes true (none: the drill begins); Within later Done must have held, or when By
//	         becomes true Done must hold; whichever comes first judges
//	answer   the last number said with On[0] differed, when it was said, from Target (and, where Target
//	         is a signal itself, from its mean of the second before) by more than Tolerance, or none has
//	         been said, when By first becomes true; without By it is judged when it is said
//	outcome  when At becomes true a forked scene is put through Test
//	said     By becomes true though Need does not hold; or a phrase of On is said while When holds (none:
//	         always) and, in a rule without By, Need does not
//
// Actions are judged by the state they find, with their number in the cell `value`. Unless suspends any
// rule while it holds. Times are in ticks. The onset of a finding is the moment When began or the action
// was taken; of a due the deadline or the moment of By; of an answer the moment it was said.
//
// A rule that several things can break lists them in Found; the finding then says which of them it was.
//
// An error that was put right later, when Mended held, counts as minor.
type Rule struct {
	ID       string
	Kind     Kind
	Severity Severity
	Title    string // what was wrong, in a few words of the trade
	Why      string // why it matters, one sentence
	Expected string // what should have been; {name} is replaced by that signal or value
	Show     *cond.Program
	ShowUnit string
	Found    []Found // what may have been amiss, where more than one thing could be

	On                       []world.ControlID
	When, Need, First, While *cond.Program
	Unless, Mended           *cond.Program
	From, By, Done, At       *cond.Program
	Value, Target, Tolerance *cond.Program
	For, Within, Merge       world.Tick // Merge: an episode that begins so soon after the last joins it; 15 s unless given
	MinTravelS, Span         float64
	Grace                    []Grace
	Test                     *ForkTest
	Absorbs                  []string   // findings that are this one's consequences
	AbsorbFor                world.Tick // how far apart in onset, before or after; 60 s unless given
	Once                     bool       // at most one finding an attempt
}

// Found is one thing that may have been amiss: the sheet says so if When held at the moment of certainty.
type Found struct {
	When *cond.Program
	Say  string
}

// maxFound is how many a rule may have.
const maxFound = 32

// Grace suspends a band while When holds, taken from the attempt's one budget.
type Grace struct {
	When *cond.Program
}

// ForkTest names a test on a copy of the scene, and its numbers.
type ForkTest struct {
	Name  string
	Limit map[string]float64
}

// Finding is one thing that was wrong, once.
type Finding struct {
	Rule               string
	Severity           Severity
	From, Seen         world.Tick // onset, and the moment of certainty
	Mended             world.Tick // when it was put right; 0: not
	Place              world.Place
	Title              string
	Expected, Measured string
	Amiss              bool // Measured says what was amiss: one at least of the rule's Found held
	Why                string
}
