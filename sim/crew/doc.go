// Package crew is the people who act on their own: nozzle crew, officer, evaluator. What they do is a
// list of cues from the drill's file; how long they take is drawn from the seed.
package crew
