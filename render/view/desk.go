package view

import (
	"math"

	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// Desk is an attempt as hands and eyes meet it.
type Desk interface {
	Controls() []world.Control
	Signals() []world.Signal
	// Reading is what is seen from where the candidate stands; it is overwritten by the next step.
	Reading() *world.Reading
	// Heard is everything that was said or shown so far, oldest first.
	Heard() []Line
	// Clock is the drill's clock in seconds and whether it runs.
	Clock() (seconds float64, running bool)
	// Act does one thing as the candidate. An error says in one line why it can't be done.
	Act(c world.ControlID, v float64) error
}

// Line is one thing said or shown.
type Line struct {
	At    world.Tick
	Who   string // "Nozzle crew", "You" …
	Text  string
	Mine  bool   // the candidate's own
	Shown bool   // a gesture
	Sign  string // of a gesture: its control's name
}

// Table finds controls and signals by name.
type Table struct {
	Controls []world.Control
	Signals  []world.Signal
	Units    unit.System // what numbers are shown and typed in
	control  map[string]world.ControlID
	signal   map[string]world.SignalID
}

// NewTable indexes a desk's controls and signals.
func NewTable(controls []world.Control, signals []world.Signal) *Table {
	t := &Table{
		Controls: controls, Signals: signals,
		control: make(map[string]world.ControlID, len(controls)),
		signal:  make(map[string]world.SignalID, len(signals)),
	}
	for i := range controls {
		t.control[controls[i].Name] = world.ControlID(i)
	}
	for i := range signals {
		t.signal[signals[i].Name] = world.SignalID(i)
	}
	return t
}

// Control finds a control.
func (t *Table) Control(name string) (world.ControlID, bool) {
	c, ok := t.control[name]
	return c, ok
}

// Signal finds a signal.
func (t *Table) Signal(name string) (world.SignalID, bool) {
	s, ok := t.signal[name]
	return s, ok
}

// Eyes looks at a reading by name. Last remembers where controls stood when they were last seen.
type Eyes struct {
	*Table
	Now *world.Reading
	// Cover tells what a class must not read yet, though it is seen; nil: nothing.
	Cover func(signal string) bool
	last  []float64
}

// NewEyes looks through a table.
func NewEyes(t *Table) *Eyes {
	e := &Eyes{Table: t, last: make([]float64, len(t.Controls))}
	for i := range t.Controls {
		e.last[i] = t.Controls[i].Start
	}
	return e
}

// See takes in a reading.
func (e *Eyes) See(r *world.Reading) {
	e.Now = r
	for i := range e.Controls {
		if v := e.Signal(e.Controls[i].Name); !math.IsNaN(v) {
			e.last[i] = v
		}
	}
}

// Signal is what is seen under that name; NaN where nothing is.
func (e *Eyes) Signal(name string) float64 {
	s, ok := e.signal[name]
	if !ok || e.Now == nil || int(s) >= len(e.Now.V) {
		return math.NaN()
	}
	return e.Now.V[s]
}

// Covered reports whether a class must not read a signal yet.
func (e *Eyes) Covered(name string) bool { return e.Cover != nil && e.Cover(name) }

// Lit reports whether a lamp is seen to be lit, or a flag to be set.
func (e *Eyes) Lit(name string) bool { return e.Signal(name) >= 0.5 }

// Value is where a control stands, or stood when it was last seen.
func (e *Eyes) Value(c world.ControlID) float64 { return e.last[c] }

// Share is Value as a share of the control's travel.
func (e *Eyes) Share(c world.ControlID) float64 {
	k := &e.Controls[c]
	if k.Max == k.Min {
		return 0
	}
	return (e.last[c] - k.Min) / (k.Max - k.Min)
}

// Named is the value of a control found by name; 0 where there is none.
func (e *Eyes) Named(name string) float64 {
	if c, ok := e.control[name]; ok {
		return e.last[c]
	}
	return 0
}

// Place is where the candidate stands.
func (e *Eyes) Place() world.Place {
	if e.Now == nil {
		return world.Cab
	}
	return e.Now.Place
}

// Who is what a speaker is called.
func Who(s world.Source) string {
	switch s {
	case world.Candidate:
		return "You"
	case world.Crew:
		return "Nozzle crew"
	case world.Officer:
		return "Captain"
	case world.Evaluator:
		return "Evaluator"
	}
	return "Instructor"
}
