package demo

import (
	"steadyneedle/sim/cond"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/operator"
)

// Demonstration is one prepared demonstration, ready to play. Its script sees the truth and acts as the
// instructor, so that it need not walk about.
type Demonstration struct {
	Drill   *drill.Drill // setup, values and people; it has no rules and no steps
	Teaches string       // in a sentence or two
	Caution string       // shown before it begins: what must not be reproduced on apparatus
	Prepare operator.Script
	Plot    []string // names of what is plotted against time
	Below   Below    // what stands below that plot at first
	Steps   []Step
	Kept    int  // the drill's last so many values are the numbers that steps keep
	Free    bool // it has no script: the instructor works it, for as long as the class looks on
}

// Below is what stands below the plot against time.
type Below uint8

const (
	Curve   Below = iota // the pump's curve, and what the lines ask for
	Suction              // suction head at hand and needed
	Both
	Belows // how many there are
)

// BelowNamed finds what stands below by its name in files.
func BelowNamed(name string) (Below, bool) {
	for b, n := range [Belows]string{"curve", "suction", "both"} {
		if n == name {
			return Below(b), true
		}
	}
	return 0, false
}

// OfDrill makes a free demonstration of a drill: one step that waits, nobody judged.
func OfDrill(d *drill.Drill) *Demonstration {
	free := *d
	free.Rules, free.Ends = nil, nil
	return &Demonstration{
		Drill: &free, Free: true, Teaches: d.Objective, Caution: "Nothing is judged here.", Plot: []string{"engine_rpm", "discharge_psi", "intake_psi"},
		Steps: []Step{{ID: "drill", Caption: d.Objective, Moves: idle("drill"), Stop: true}}, Prepare: idle("prepare"),
	}
}

// idle is a script that does nothing.
func idle(id string) operator.Script {
	return operator.Script{Name: id, Steps: []operator.Step{{ID: id}}}
}

// Step is one part: what is said about it, what is done, and what is claimed at its end.
type Step struct {
	ID      string
	Caption string
	Ask     *Question // put before it is done
	Moves   operator.Script
	Keep    []Keep // taken when it has been done, before the claims
	Claims  []Claim
	Limit   *Limit // drawn into the plot against time while the step is done, and at its stop
	Stop    bool   // wait for the instructor when it has been done
}

// Keep holds a number for the claims of this step and later ones.
type Keep struct {
	Name string
	Unit string
	Cell int // of the board
	Is   *cond.Program
}

// Claim is what a caption says happens.
type Claim struct {
	Text     string
	Measured *cond.Program // the number that it is about
	Unit     string
	Span     bool // the number is a difference: of a temperature that is another thing in other units
	Holds    *cond.Program
	Answer   bool // it is what makes the question's right option right
}

// Limit is a level that a plotted line is to be seen against. It may rest on kept numbers, not on time.
type Limit struct {
	Name string
	Unit string
	Is   *cond.Program // without time words: it has no memory
}

// Question is put to the class before a step; while the step is done, the signals in Hide are covered.
type Question struct {
	Text    string
	Options []string
	Right   int // index into Options
	Because string
	Hide    []string
}

// Result is how a claim came out.
type Result struct {
	Step      string
	Text      string
	Measured  float64
	Unit      string
	Span      bool // Measured is a difference
	Answer    bool // of the question
	Holds     bool
	Disturbed bool // the instructor had acted, so it may fail with good reason
}
