package operator

import (
	"steadyneedle/sim/cond"
	"steadyneedle/sim/world"
)

// Script is what one operator does in one drill: for each step of the drill, its moves.
type Script struct {
	Name   string
	Drill  string
	Breaks string        // the rule this operator is meant to break; empty for a clean one
	Onset  *cond.Program // of the drill's board, not of readings: when it first holds the rule is broken; nil: not stated
	Steps  []Step        // in the order of the drill's file, which is one legal order
	Slots  int           // memory of all its programs together
}

// Step is one step's moves, and the steps that must be finished before.
type Step struct {
	ID    string
	After []string
	Soon  bool // it has a deadline: hands that shuffle put it off for one other step at the most
	Moves []Move
}

// Verb is what a move does.
type Verb uint8

const (
	Go    Verb = iota // walk to Place
	Set               // bring Control to the value To, at the pace of OverS for full travel
	Turn              // move Control toward To at the pace of OverS until Until holds, or it is there if there is no Until
	Bring             // work Control in small corrections until Watch stays within Within of To for a second
	Wait              // until Until holds; WaitS alone: for that long
	Tell              // say or show Control, with the number To
	Press             // hold Control at 1 until Until holds or for OverS, then let go
)

// Move is one thing done by hand, foot or mouth.
type Move struct {
	Verb    Verb
	Place   world.Place
	Control world.ControlID
	To      *cond.Program
	OverS   float64       // s for full travel (Set, Turn, Bring); length of a Press
	Until   *cond.Program // of readings
	Watch   *cond.Program // the needle that is being brought to To
	Within  float64
	WaitS   float64
	If      *cond.Program // the move is left out unless this holds when its turn comes
	GiveUpS float64       // the longest a wait may last; 120 unless given. Then the operator is stuck.
	Line    int           // in the file, for reports
}

// Hands is how one person differs from the next.
type Hands struct {
	Speed    float64 // 1 normal; 0.5 to 2. Moves marked with OverS below 3 s keep their own pace
	PauseS   float64 // longest hesitation between moves
	Overturn float64 // share of a Bring's first correction that goes too far
	Eyes     float64 // reading error, in half divisions, −1 to 1
	Shuffle  bool    // take steps in any order the drill allows, by the seed
	Seed     uint64
}
