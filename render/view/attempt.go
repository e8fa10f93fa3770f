package view

import (
	"steadyneedle/render/report"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/prompter"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// Info is what stays the same during an attempt.
type Info struct {
	Drill, Title string // the drill's name and its title
	Under        string // apparatus and mode, in a few words
	Objective    string
	Street       string // of the plan
	FireAt       string
	HydrantAt    string
	Load         string  // the line as it was ordered, in words: hose, nozzle
	LineIn       float64 // size of hose ordered for it; 0: no line is laid
	Lines        []rig.DischargeDef
	Gauges       rig.InstrumentsDef
	Rated        bool
	Night        bool
	Units        unit.System // all texts and numbers are written in
	FireAcross   bool
	People       []world.Person // in the street
}

// Attempt is a desk that time passes at.
type Attempt interface {
	Desk
	Info() *Info
	// Tick makes one step of 1/60 s.
	Tick()
	// Walk is where the candidate is walking to and the share of the way that lies behind; ok is false
	// for one who stands.
	Walk() (from, to world.Place, share float64, ok bool)
	// Over reports whether the drill has ended; what remains is the debrief.
	Over() bool
	// Mark notes an evaluator's remark at this moment.
	Mark(text string)
	// Halt ends the attempt on an evaluator's word.
	Halt(why attempt.Halt)
	// OnUnsafe sets what an unsafe act does from now on.
	OnUnsafe(drill.OnUnsafe)
	// Undecided is the unsafe act at which the attempt stands until Decide; nil: it does not stand.
	Undecided() *report.Finding
	// Decide is the evaluator's word: the attempt goes on, or ends here.
	Decide(goOn bool)
	// End stops the attempt where it stands.
	End()
	// Sheet is the debrief as it stands now.
	Sheet() *report.Sheet
	// Help is how much help there is: 0 none.
	Help() int
	// Prompt is the step that was told and is not done yet; empty if there is none.
	Prompt() string
	// Hints is everything that the prompter has said, oldest first.
	Hints() []prompter.Hint
	// Ask asks the prompter for the next step; ok is false where there is no help, or nothing left to do.
	Ask() (text string, ok bool)
	// Sums is the calculation sheet as written down so far; empty for a drill without one.
	Sums() []Sum
	// SumsMethod says how the department rounds.
	SumsMethod() string
	// WriteSum writes a term down, in the unit that is shown; NaN takes it back.
	WriteSum(id string, v float64)
	// Waive takes a finding off the score of an attempt that is over, for a reason; TakeBack undoes it.
	Waive(rule string, from world.Tick, reason string) error
	TakeBack(rule string, from world.Tick) error
	// Sign ends the evaluator's ruling with their name.
	Sign(name string) error
	// SetOwn notes how the candidates marked themselves, for the sheet.
	SetOwn(*report.Own)
	// Stood is where the candidate was at a moment.
	Stood(at world.Tick) world.Place
	// Look replays the attempt up to a moment and gives what was seen from a place then.
	Look(at world.Tick, from world.Place) *world.Reading
	// Simulated lists the faults that were set at a moment, in words; none of a rated attempt.
	Simulated(at world.Tick) []string
}
