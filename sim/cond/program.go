package cond

// Program is one compiled expression. It never allocates and never fails.
//
// Its time words (since, held, count, max, min, first, answered) keep Slots numbers in the owner's
// memory, which belongs to the owner's snapshot: a rewind must not fire a rule again. The owner calls
// Refresh at a steady beat (10 Hz), so that they see every moment, and Value whenever it wants to know.
type Program struct {
	Text   string // as written, for reports
	Slots  int    // numbers of memory needed
	Fresh  []func(signals, memory []float64)
	Result func(signals, memory []float64) float64 // 0 and 1 for no and yes
}

// Refresh lets the time words see the present. memory holds this program's Slots.
func (p *Program) Refresh(signals, memory []float64) {
	for _, f := range p.Fresh {
		f(signals, memory)
	}
}

// Value is the expression's number.
func (p *Program) Value(signals, memory []float64) float64 { return p.Result(signals, memory) }

// True reports whether a condition holds. A missing program (nil) never holds.
func (p *Program) True(signals, memory []float64) bool {
	return p != nil && p.Result(signals, memory) != 0
}
