package report

import (
	"fmt"
	"math"

	"steadyneedle/sim/attempt"
	"steadyneedle/sim/sums"
	"steadyneedle/sim/unit"
)

// Sums is the calculation sheet: each term as written down beside the right one, and what the simulated
// lay makes of the result.
type Sums struct {
	Lines    []Sum     `json:"terms"`
	Total    Sum       `json:"total"`
	RoundPSI float64   `json:"rounded_to"`
	RoundKPA float64   `json:"rounded_to_kpa,omitempty"` // where the department reckons in SI
	Rounded  float64   `json:"right_rounded"`
	Said     bool      `json:"said"`
	Stated   float64   `json:"stated"`
	Limit    float64   `json:"hose_limit"` // 0: not given
	Unit     string    `json:"unit"`       // of pressures
	Proofs   []Proving `json:"proofs"`
}

// Sum is one term.
type Sum struct {
	ID      string  `json:"id"`
	Title   string  `json:"title"`
	Unit    string  `json:"unit,omitempty"`
	Adds    bool    `json:"adds,omitempty"`
	Given   bool    `json:"given"`
	Answer  float64 `json:"answer"`
	Right   float64 `json:"right"`
	OK      bool    `json:"ok"`
	Working string  `json:"working,omitempty"`
	SI      string  `json:"working_si,omitempty"` // with the method's constants in SI
}

// Proving is what a pressure on the line's gauge gives at the nozzle of the simulated lay.
type Proving struct {
	Of         string  `json:"of"` // whose pressure it is, in words
	Psi        float64 `json:"gauge"`
	Nozzle     float64 `json:"nozzle"`
	Flow       float64 `json:"flow"`
	FlowUnit   string  `json:"flow_unit"`
	Impossible string  `json:"impossible,omitempty"` // why it could not be tried
}

// SumsCaution stands on every calculation sheet.
const SumsCaution = "Training aid only: the coefficients, limits and figures are of invented hose. On the street use your department's tables, the hose's own marking and the maker's limits."

// SumsOf draws up the calculation sheet and has the simulated lay prove it, which takes some tenths of a
// second; nil for a drill without one.
func SumsOf(a *attempt.Attempt) *Sums {
	c, ok := sums.Of(a)
	if !ok {
		return nil
	}
	s := &Sums{RoundPSI: c.RoundPSI, RoundKPA: c.RoundKPA, Said: !math.IsNaN(c.Stated), Limit: c.LimitPSI, Unit: "psi", Total: sumOf(&c.Total)}
	s.round()
	for i := range c.Lines {
		s.Lines = append(s.Lines, sumOf(&c.Lines[i]))
	}
	prove := func(of string, psi float64) {
		p := Proving{Of: of, Psi: psi, FlowUnit: "gpm"}
		got, err := sums.Prove(a.Drill.Setup, c.Laid, psi)
		if err != nil {
			p.Impossible = err.Error()
		}
		p.Nozzle, p.Flow = got.NozzlePSI, got.GPM
		s.Proofs = append(s.Proofs, p)
	}
	prove("the right pressure", c.Total.Right)
	if s.Said {
		s.Stated = c.Stated
		if math.Abs(c.Stated-c.Total.Right) >= 1 && c.Stated > 0 {
			prove("the pressure that you stated", c.Stated)
		}
	}
	return s
}

func sumOf(l *sums.Line) Sum {
	return Sum{ID: l.ID, Title: l.Title, Unit: l.Unit, Adds: l.Adds, Given: l.Given, Answer: l.Answer, Right: l.Right, OK: l.OK(), Working: l.Working, SI: l.SI}
}

// round rounds the result as the department does in the units that the sheet is in.
func (s *Sums) round() {
	s.Rounded = s.Total.Right
	if s.RoundPSI > 0 {
		s.Rounded = math.Round(s.Total.Right/s.RoundPSI) * s.RoundPSI
	}
}

// In writes the sheet in a system of units, with the working and the rounding that the department's
// method has there; where it has none, they are turned.
func (s *Sums) In(sys unit.System) *Sums {
	if s == nil || sys == unit.US {
		return s
	}
	t := *s
	t.Lines = append([]Sum(nil), s.Lines...)
	for _, l := range append(pointers(t.Lines), &t.Total) {
		l.Answer, l.Right, l.Unit = sys.From(l.Answer, l.Unit), sys.From(l.Right, l.Unit), sys.Unit(l.Unit)
		l.Title = sys.Prose(l.Title)
		if l.Working = sys.Prose(l.Working); l.SI != "" {
			l.Working = l.SI
		}
	}
	for _, v := range []*float64{&t.RoundPSI, &t.Stated, &t.Limit} {
		*v = sys.From(*v, "psi")
	}
	if t.RoundKPA > 0 {
		t.RoundPSI = t.RoundKPA
	}
	t.round()
	t.Unit = sys.Unit("psi")
	t.Proofs = append([]Proving(nil), s.Proofs...)
	for i := range t.Proofs {
		p := &t.Proofs[i]
		p.Psi, p.Nozzle = sys.From(p.Psi, "psi"), sys.From(p.Nozzle, "psi")
		p.Flow, p.FlowUnit = sys.From(p.Flow, p.FlowUnit), sys.Unit(p.FlowUnit)
		p.Impossible = sys.Prose(p.Impossible)
	}
	return &t
}

func pointers(list []Sum) []*Sum {
	var all []*Sum
	for i := range list {
		all = append(all, &list[i])
	}
	return all
}

// Words says what the simulated lay gave, in a sentence.
func (p *Proving) Words(pressure string) string {
	if p.Impossible != "" {
		return fmt.Sprintf("With %s, %.0f %s, nothing could be proved: %s.", p.Of, p.Psi, pressure, p.Impossible)
	}
	return fmt.Sprintf("With %s, %.0f %s on the line's gauge, the simulated lay gives %.0f %s at the nozzle and %.0f %s in the line.",
		p.Of, p.Psi, pressure, p.Nozzle, pressure, p.Flow, p.FlowUnit)
}

// OverLimit warns of a pressure above the hose's limit; empty where it is not.
func (s *Sums) OverLimit(v float64) string {
	if s.Limit <= 0 || v <= s.Limit {
		return ""
	}
	return fmt.Sprintf("above the hose's limit of %.0f %s", s.Limit, s.Unit)
}

// Number writes a term's number.
func (l *Sum) Number(v float64) string {
	text := fmt.Sprintf("%.1f", v)
	if v == math.Trunc(v) || math.Abs(v) >= 100 {
		text = fmt.Sprintf("%.0f", v)
	}
	if l.Unit != "" {
		text += " " + l.Unit
	}
	return text
}
