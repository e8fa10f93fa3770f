package report

import "steadyneedle/sim/world"

// Sheet is the debrief of one attempt, ready to be shown, printed or saved.
type Sheet struct {
	Title, Under string
	Passed       bool
	Early        bool   // ended before the drill was over: no verdict
	Ended        string // how it ended where it has no verdict: "Ended early", "Stopped for safety" …
	Score, Full  float64
	Pass         float64
	ClockS       float64 // the drill's clock
	ParS         float64
	Findings     []Finding
	Series       []Series
	Band         *Band
	Length       world.Tick
	Facts        [][2]string // seed, hash, apparatus …
	Caution      string
}

// Finding is one thing that was wrong.
type Finding struct {
	Rule               string
	At                 world.Tick
	Severity           string // unsafe, error, minor
	Place              string
	From               world.Place
	Title              string
	Expected, Measured string
	Why                string
	Follows            []string // what was found as its consequence
}

// Series is one plotted line: one value a second from the drill's beginning.
type Series struct {
	Name, Unit string
	V          []float64
}

// Band is where the line pressure should have been, and from when to when it applied.
type Band struct {
	Lo, Hi   float64
	From, To world.Tick
}

// Caution stands on the first screen, before every rated attempt, and on every sheet.
const Caution = "Training aid only. Your department's procedures, the apparatus maker's manual, local codes and a qualified instructor come first. A score certifies nothing, and the numbers are those of an invented apparatus."

// Verdict is the sheet's first word.
func (s *Sheet) Verdict() string {
	switch {
	case s.Early:
		return s.Ended
	case s.Passed:
		return "Passed"
	}
	return "Not passed"
}
