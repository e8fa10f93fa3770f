// Package world is everything that is at the drill: the plant, the cab and its switches, what lies on
// the ground, where the candidate stands, and what has been said. It is built from a Setup, takes
// actions, steps sixty times a second, and gives two views that are kept apart: a Reading (what can be
// seen and heard from a place) and the Truth.
//
// People who act on their own live in packages crew and scene; nothing here decides anything.
package world
