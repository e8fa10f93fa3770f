package world

// Reading is what a person perceives at one place and moment, by SignalID. What cannot be seen or
// heard from there is NaN.
type Reading struct {
	At    Tick
	Place Place
	V     []float64
}

// Truth is what is so, by SignalID: one table for rules, plots and files. It belongs to the world and
// is overwritten by the next step.
type Truth struct {
	At Tick
	V  []float64
}
