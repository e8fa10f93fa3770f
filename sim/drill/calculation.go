package drill

import "steadyneedle/sim/cond"

// Calculation is the department's way to the pump pressure: the terms of its sheet, and its rounding.
type Calculation struct {
	Stated   string  // the phrase that states the result
	RoundPSI float64 // the result is rounded to this, psi; 0: not at all
	RoundKPA float64 // the same where the department reckons in SI, kPa; 0: to what RoundPSI is there
	Total    *cond.Program
	Terms    []Term
}

// Term is one line of the calculation.
type Term struct {
	ID, Title, Unit string
	Adds            bool // it is a part of the sum; the others are what the parts are made from
	Is              *cond.Program
	Working         string  // how it is found; {name} is replaced by that signal or value
	WorkingSI       string  // the same with the constants of the method in SI, and {name} in SI; empty: Working, turned
	Within          float64 // an answer so far off is right
}
