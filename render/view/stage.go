package view

import (
	"steadyneedle/sim/demo"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/world"
)

// Stage is an attempt that is shown to a class: whoever is at the window is the instructor, sees the
// truth, and may go back in time.
type Stage interface {
	Attempt
	// Player plays the demonstration.
	Player() *demo.Player
	// Truth is what is so, by signal; NaN where there is no such signal.
	Truth(name string) float64
	// Rig is the apparatus.
	Rig() *rig.Def
	// Back goes back to a moment; what is left stays as Left.
	Back(to world.Tick) error
	// Left is what was left by the last going back; nil: nothing.
	Left() *demo.Strand
	// Swap returns to what was left, and keeps the present in its place.
	Swap() error
}
