package crew

import (
	"steadyneedle/sim/cond"
	"steadyneedle/sim/world"
)

// Delay is how long people take.
type Delay uint8

const (
	AtOnce Delay = iota
	Radio        // log-normal about a median of 3 s
	Task         // log-normal about a median of 5 s
)

// Cue is one habit of the people on the ground: when When becomes true, and after a human delay, they
// do Do. While Again is set and Until does not hold, they do it again every Again.
type Cue struct {
	ID    string
	By    world.Source
	When  *cond.Program
	Until *cond.Program
	Delay Delay
	Extra world.Tick // added to the delay: the time a task takes
	Again world.Tick
	Once  bool
	Do    []Deed
}

// Deed is one action of a cue.
type Deed struct {
	Control world.ControlID
	Value   *cond.Program // number to set or say; nil: 1
}
