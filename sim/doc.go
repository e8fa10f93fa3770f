// Package sim is the yard: physics, people, judge and recording, in the packages below it. It holds no
// code itself, only the test of what its packages may import and of how they may calculate.
//
// Everything here is pure and deterministic: no clock, no files, no goroutines, the standard library
// alone, and the same bits on every processor.
package sim
