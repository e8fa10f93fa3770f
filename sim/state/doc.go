// Package state lets each part of the simulation list its state once.
//
// One method, Walk(*Walker), names every value that a later tick depends on; the same list then
// serves saving, loading and hashing, so that none of the three can forget a value the others know.
// Dice is a source of chance whose position is part of that state.
package state
