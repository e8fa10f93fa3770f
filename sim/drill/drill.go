package drill

import (
	"steadyneedle/sim/board"
	"steadyneedle/sim/cond"
	"steadyneedle/sim/crew"
	"steadyneedle/sim/judge"
	"steadyneedle/sim/world"
)

// Drill is one exercise, ready to run: names resolved, variant and hydrant chosen, conditions compiled.
type Drill struct {
	Name, Title string
	Objective   string // as the evaluator says it
	Procedure   string // where the procedure comes from
	Apparatus   string
	Variant     string
	Setup       world.Setup
	Values      []Value // named numbers of the drill, computed from signals
	Steps       []Step
	Rules       []judge.Rule
	Unjudged    []string // rules of the file that were left out, each with the reason
	Cues        []crew.Cue
	Scale       Scale
	OnUnsafe    OnUnsafe
	ParS        float64 // par time, s
	GraceS      float64 // the attempt's grace budget, s
	Plan        Plan
	Calculation *Calculation  // nil: the drill asks for none
	Ends        *cond.Program // the attempt is over when it holds
}

// Value is a number that rules, crew and sheet know by name. It is appended to the signal table.
type Value = board.Value

// Step is one thing to be done; After makes the partial order.
type Step struct {
	ID    string
	Hint  string
	After []string
	Soon  bool // it has a deadline: it does not wait behind much else
	Done  *cond.Program
	State bool // things may stand so by the way, before its turn: that is not doing it too soon
	Place world.Place
	Phase string
	Rules []string // those that speak of this step: a finding of one means that the step was missed
}

// Scale turns findings into a score.
type Scale = judge.Scale

// Plan names what the street plan shows.
type Plan struct {
	Street, FireAt, HydrantAt string
}
