package proof

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"steadyneedle/sim/attempt"
	"steadyneedle/sim/board"
	"steadyneedle/sim/cond"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/judge"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/world"
)

// Kind is what sort of attempt a case is.
type Kind uint8

const (
	Fault Kind = iota // one mistake
	Pair              // two mistakes
	Legal             // none, by one of the many ways that the drill allows
)

// Case is one attempt of which the outcome is known beforehand.
type Case struct {
	Kind   Kind
	Name   string // for reports
	Drill  *drill.Drill
	Script *operator.Script
	Hands  operator.Hands
	Breaks []string // rules that must be found; empty for a legal run
}

// OnsetS is how far a finding's onset may lie from the operator's act, s (a requirement of the design).
const OnsetS = 0.5

// Verdict is what came of a case.
type Verdict struct {
	Kind   Kind
	Name   string
	Breaks []string
	Missed []string        // rules that were broken and not found
	Wrong  []judge.Finding // findings without a cause
	OffS   float64         // how far the onset lies from the act, s; NaN where the operator does not state it
	Err    error           // why the attempt did not come to its end
}

// Right reports whether the judge found what it had to, when it had to, and nothing else.
func (v *Verdict) Right() bool {
	return v.Err == nil && len(v.Missed) == 0 && len(v.Wrong) == 0 && !(math.Abs(v.OffS) > OnsetS)
}

// Try works the case.
func (c *Case) Try() Verdict {
	v := Verdict{Kind: c.Kind, Name: c.Name, Breaks: c.Breaks, OffS: math.NaN()}
	a, err := attempt.New(c.Drill, attempt.Options{})
	if err != nil {
		v.Err = err
		return v
	}
	who, err := a.Operator(c.Script, c.Hands)
	if err != nil {
		v.Err = err
		return v
	}
	onset := newOnset(c.Script.Onset)
	v.Err = a.RunWatched(c.Name, who, func() { onset.look(a.Scene.Board) })
	sheet := a.Sheet()
	v.judge(sheet)
	if c.Kind == Fault && v.Err == nil {
		v.Err = c.unsaid(sheet)
	}
	if c.Kind != Fault || c.Script.Onset == nil || len(v.Missed) > 0 || v.Err != nil {
		return v
	}
	if onset.at < 0 {
		v.Err = errors.New("the moment that it names as onset never came")
		return v
	}
	for i := range sheet.Findings {
		if f := &sheet.Findings[i]; f.Rule == c.Breaks[0] {
			v.OffS = (f.From - onset.at).Seconds()
			break
		}
	}
	return v
}

// unsaid names a rule that lists what may have been amiss, and said nothing of it.
func (c *Case) unsaid(s *judge.Sheet) error {
	for i := range s.Findings {
		f := &s.Findings[i]
		k := slices.IndexFunc(c.Drill.Rules, func(r judge.Rule) bool { return r.ID == f.Rule })
		if k < 0 || len(c.Drill.Rules[k].Found) == 0 {
			continue
		}
		if !f.Amiss {
			return fmt.Errorf("rule %s does not say what was amiss: none of its `found` held", f.Rule)
		}
	}
	return nil
}

// judge compares a sheet with what was broken. Of two mistakes one may count as the other's consequence
// where a rule says so.
func (v *Verdict) judge(s *judge.Sheet) {
	for i := range s.Findings {
		if !slices.Contains(v.Breaks, s.Findings[i].Rule) {
			v.Wrong = append(v.Wrong, s.Findings[i])
		}
	}
	for _, rule := range v.Breaks {
		if !found(s, rule) && !(len(v.Breaks) > 1 && follows(s, rule, v.Breaks)) {
			v.Missed = append(v.Missed, rule)
		}
	}
}

func found(s *judge.Sheet, rule string) bool {
	return slices.ContainsFunc(s.Findings, func(f judge.Finding) bool { return f.Rule == rule })
}

// follows reports whether a broken rule was found as the consequence of another broken one.
func follows(s *judge.Sheet, rule string, breaks []string) bool {
	return slices.ContainsFunc(s.Consequences, func(c judge.Consequence) bool {
		return c.Rule == rule && c.Of != rule && slices.Contains(breaks, c.Of)
	})
}

// onset waits for the moment at which a condition first holds.
type onset struct {
	p      *cond.Program
	memory []float64
	at     world.Tick // −1: not yet
}

func newOnset(p *cond.Program) *onset {
	o := &onset{p: p, at: -1}
	if p != nil {
		o.memory = make([]float64, p.Slots)
	}
	return o
}

func (o *onset) look(b *board.Board) {
	if o.p == nil || o.at >= 0 {
		return
	}
	if b.At%board.Beat == 0 {
		o.p.Refresh(b.V, o.memory)
	}
	if o.p.True(b.V, o.memory) {
		o.at = b.At
	}
}

// LegalHands are those of the seed's legal variation: steps in any order that the drill allows, half to
// twice the usual speed, hesitations, wheels that go too far and come back, needles read half a division
// high or low.
func LegalHands(seed uint64) operator.Hands {
	return operator.Hands{
		Speed:  []float64{0.5, 0.8, 1, 1.4, 2}[seed%5],
		PauseS: float64(seed % 3), Overturn: float64(seed%4) / 10, Eyes: float64(seed/3%3) - 1,
		Shuffle: true, Seed: seed,
	}
}
