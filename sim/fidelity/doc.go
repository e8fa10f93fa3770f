// Package fidelity is the objective test guide of the model: published and computed values, each held
// against what the simulated machine does when it is worked as a person would work it.
//
// A Trial is one run of the model with the tests taken on it, one after another. A Test is the record of
// one comparison: conditions, steps, what is compared, its source and tolerance. Trials are independent
// of each other and of time, so that a caller may spread them over processors.
//
// It shows that the model behaves as its sources say. It certifies nothing, and the figures are of an
// invented apparatus.
package fidelity
