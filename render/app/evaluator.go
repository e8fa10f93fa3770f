package app

import (
	"fmt"

	"steadyneedle/sim/attempt"
)

// evaluatorKey takes the keys of one who stands by: they act from every screen of an attempt under way,
// in one press. Before a class nobody is rated, and there is no sheet to end with. It reports whether the key was
// one of them.
func (a *App) evaluatorKey(k Key) bool {
	if a.attempt == nil || a.class != nil || a.attempt.Over() || !k.Down || k.Ctrl {
		return false
	}
	switch k.Name {
	case "F6":
		a.halt(attempt.Safety)
	case "F7":
		a.halt(attempt.CalledOff)
	case "F8":
		a.attempt.Mark("evaluator's mark")
		a.say("Marked at " + clockText(a.eyes.Now.At.Seconds()) + " from the start.")
	default:
		return false
	}
	return true
}

// halt ends the attempt at once and opens its sheet, which says why.
func (a *App) halt(why attempt.Halt) {
	a.hands.letGo()
	a.attempt.Halt(why)
	a.ended()
}

// fellBehind says that the world could not keep up, and puts it on a rated attempt's record: times that
// were stretched are not the candidate's.
func (a *App) fellBehind(seconds float64) {
	a.late = 4
	if !a.attempt.Info().Rated {
		a.say("This machine cannot keep up: time is stretched.")
	} else {
		a.say("This machine cannot keep up: time is stretched. The record says so.")
		a.attempt.Mark(fmt.Sprintf("the machine could not keep up: %.1f s of time left out", seconds))
	}
}
