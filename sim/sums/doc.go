// Package sums is the calculation sheet of an attempt: what the candidate wrote down, each term beside
// the right one with its working, and a proof of the result by the simulated lay. The method and its
// rounding are the drill's.
package sums
