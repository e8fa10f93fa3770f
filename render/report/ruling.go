package report

import (
	"fmt"

	"steadyneedle/sim/attempt"
	"steadyneedle/sim/world"
)

// Ruling is what the evaluator has made of the judge's findings, which stay on the sheet as they are.
type Ruling struct {
	Passed   bool     `json:"passed"`
	Score    float64  `json:"score"` // without what is waived
	SignedBy string   `json:"signed_by,omitempty"`
	Waived   []Waived `json:"waived,omitempty"`
}

// Waived is a finding that is not held against the candidate.
type Waived struct {
	Rule   string     `json:"rule"`
	At     world.Tick `json:"tick"` // onset of the finding
	Title  string     `json:"title"`
	Reason string     `json:"reason"`
}

// RulingOf is the evaluator's ruling on an attempt; nil where there is none.
func RulingOf(a *attempt.Attempt) *Ruling {
	r := a.Ruling()
	if !r.Made() {
		return nil
	}
	v := &Ruling{Passed: r.Passed, Score: r.Score, SignedBy: r.SignedBy}
	for _, w := range r.Waivers {
		v.Waived = append(v.Waived, Waived{w.Rule, w.From, w.Title, w.Reason})
	}
	return v
}

// WaivedFor is the reason for which a finding is waived; empty: it is not.
func (s *Sheet) WaivedFor(f *Finding) string {
	if s.Ruling == nil {
		return ""
	}
	for _, w := range s.Ruling.Waived {
		if w.Rule == f.Rule && w.At == f.At {
			return w.Reason
		}
	}
	return ""
}

// Decided is what became of the attempt at an unsafe finding; empty: nothing was decided.
func (s *Sheet) Decided(f *Finding) string {
	for _, d := range s.Decisions {
		if d.Rule == f.Rule && d.At >= f.At {
			return d.Was
		}
	}
	return ""
}

// Words say the ruling in a line, and whose it is.
func (r *Ruling) Words() string { return "Evaluator: " + r.Verdict() }

// Verdict says the ruling in a few words.
func (r *Ruling) Verdict() string {
	verdict, by := "not passed", "not signed yet"
	if r.Passed {
		verdict = "passed"
	}
	if r.SignedBy != "" {
		by = "signed by " + r.SignedBy
	}
	waived := ""
	if n := len(r.Waived); n == 1 {
		waived = ", 1 finding waived"
	} else if n > 1 {
		waived = fmt.Sprintf(", %d findings waived", n)
	}
	return fmt.Sprintf("%s with %.0f points%s, %s", verdict, r.Score, waived, by)
}

// Stands is what the sheet says in the end: the evaluator's ruling where there is one, else the judge's.
func (s *Sheet) Stands() (passed bool, score float64) {
	if s.Ruling != nil {
		return s.Ruling.Passed, s.Ruling.Score
	}
	return s.Passed, s.Score
}
