package proof

import "slices"

// Matrix adds up the cases of one drill.
type Matrix struct {
	Rules      int // of the drill
	Unproved   []string
	Faults     int // operators that break one rule
	Caught     int // of these, whose mistake was found, at whatever time
	Pairs      int // attempts with two mistakes
	PairsRight int
	Legal      int // variations without a mistake
	LegalRight int
	Wrong      int // findings without a cause, wherever
	Failures   []Verdict

	broken, found int // mistakes made, mistakes found
}

// NewMatrix begins a drill's matrix with its rules and those that operators break. A rule that no
// operator breaks is unproved, and the proof fails.
func NewMatrix(rules, broken []string) *Matrix {
	m := &Matrix{Rules: len(rules)}
	for _, r := range rules {
		if !slices.Contains(broken, r) {
			m.Unproved = append(m.Unproved, r)
		}
	}
	return m
}

// Add takes in what came of a case.
func (m *Matrix) Add(v Verdict) {
	right := v.Right()
	switch v.Kind {
	case Fault:
		m.Faults++
		if len(v.Missed) == 0 && v.Err == nil {
			m.Caught++
		}
	case Pair:
		m.Pairs++
		if right {
			m.PairsRight++
		}
	default:
		m.Legal++
		if right {
			m.LegalRight++
		}
	}
	m.Wrong += len(v.Wrong)
	m.broken += len(v.Breaks)
	m.found += len(v.Breaks) - len(v.Missed)
	if !right {
		m.Failures = append(m.Failures, v)
	}
}

// Recall is the share of the mistakes made that were found; 1 where none were made.
func (m *Matrix) Recall() float64 { return share(m.found, m.broken) }

// Precision is the share of the findings that had a cause; 1 where nothing was found.
func (m *Matrix) Precision() float64 { return share(m.found, m.found+m.Wrong) }

// Holds reports whether the judge is proved: every rule broken by an operator, every mistake found at
// its time, and nothing else.
func (m *Matrix) Holds() bool { return len(m.Unproved) == 0 && len(m.Failures) == 0 }

func share(part, whole int) float64 {
	if whole == 0 {
		return 1
	}
	return float64(part) / float64(whole)
}
