// Package board is the one table that conditions are asked over: the world's signals, a cell for the
// value of the action at hand, and the drill's own numbers.
//
// Rules, crew cues and steps share one board, filled once a tick from the truth. Scripted operators
// have a board of their own, filled from what they can see. Nothing is decided here.
package board
