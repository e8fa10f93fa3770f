package attempt

import (
	"fmt"
	"strings"

	"steadyneedle/sim/drill"
	"steadyneedle/sim/judge"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// Sorts of notes about unsafe acts.
const (
	unsafeTerms = "unsafe-acts" // what they do in this attempt
	unsafeAct   = "unsafe"      // WORD RULE: what became of the attempt at one
)

// Words of a note of what became of the attempt at an unsafe act.
const (
	stoppedAt = "stopped" // by the terms
	endedAt   = "ended"   // by the evaluator
	allowedAt = "allowed" // likewise: it went on
)

// acts is what an attempt knows of the unsafe acts in it.
type acts struct {
	terms   drill.OnUnsafe
	found   int             // findings of the judge's when it was last asked
	known   []act           // of all so far
	waiting []judge.Finding // for the evaluator's word
}

// act names one unsafe act.
type act struct {
	rule string
	from world.Tick
}

// OnUnsafe sets what an unsafe act does from now on, and notes it.
func (a *Attempt) OnUnsafe(terms drill.OnUnsafe) {
	a.acts.terms = terms
	a.Note(unsafeTerms, terms.String())
}

// UnsafeTerms is what an unsafe act did in this attempt, as its recording tells.
func (a *Attempt) UnsafeTerms() drill.OnUnsafe {
	terms := drill.GoOn
	for _, n := range a.Notes(unsafeTerms) {
		if t, ok := drill.OnUnsafeNamed(n.Text); ok {
			terms = t
		}
	}
	return terms
}

// heedUnsafe looks for unsafe acts that were found since it last looked. What follows from another
// finding is no act of its own.
func (a *Attempt) heedUnsafe() {
	n := a.Judge.Found()
	if n == a.acts.found {
		return
	}
	a.acts.found = n
	for _, f := range a.Sheet().Findings {
		if f.Severity != judge.Unsafe || a.acts.knows(&f) {
			continue
		}
		a.acts.known = append(a.acts.known, act{f.Rule, f.From})
		switch {
		case a.following || a.acts.terms == drill.GoOn:
		case a.acts.terms == drill.Ask:
			a.acts.waiting = append(a.acts.waiting, f)
		case !a.over:
			a.Note(unsafeAct, stoppedAt+" "+f.Rule)
			a.over = true
		}
	}
}

func (s *acts) knows(f *judge.Finding) bool {
	for _, k := range s.known {
		if k.rule == f.Rule && k.from == f.From {
			return true
		}
	}
	return false
}

// forget is for an attempt that goes to another moment: what is found there is known there.
func (s *acts) forget() { s.found, s.known, s.waiting = 0, s.known[:0], s.waiting[:0] }

// Undecided is the unsafe act at which the attempt stands until the evaluator has decided; nil: it does
// not stand.
func (a *Attempt) Undecided() *judge.Finding {
	if len(a.acts.waiting) == 0 || a.over {
		return nil
	}
	return &a.acts.waiting[0]
}

// Decide is the evaluator's word on the act of Undecided: the attempt goes on, or ends here.
func (a *Attempt) Decide(goOn bool) error {
	f := a.Undecided()
	if f == nil {
		return fmt.Errorf("there is nothing to decide")
	}
	word := endedAt
	if goOn {
		word = allowedAt
	}
	a.Note(unsafeAct, word+" "+f.Rule)
	a.acts.waiting = a.acts.waiting[1:]
	if goOn {
		return nil
	}
	return a.Close()
}

// Decision is what became of the attempt at an unsafe act.
type Decision struct {
	At    world.Tick
	Rule  string
	Title string // of the rule
	Ended bool   // the attempt ended there
	Asked bool   // the evaluator decided; otherwise the terms did
}

// Words say what was decided.
func (d *Decision) Words() string {
	switch {
	case d.Ended && d.Asked:
		return "the evaluator ended the attempt"
	case d.Ended:
		return "it ended the attempt, as had been set"
	}
	return "the evaluator let the attempt go on"
}

// Decisions lists what became of the attempt at its unsafe acts, where that was more than a finding.
func (a *Attempt) Decisions() []Decision {
	var list []Decision
	for i := range a.log {
		e := &a.log[i]
		if e.kind != tape.Note || e.about != unsafeAct {
			continue
		}
		word, rule, _ := strings.Cut(e.text, " ")
		d := Decision{At: e.action.At, Rule: rule, Title: a.title(rule), Ended: word != allowedAt, Asked: word != stoppedAt}
		list = append(list, d)
	}
	return list
}

// title is a rule's; its ID where the drill has no such rule.
func (a *Attempt) title(rule string) string {
	for i := range a.Drill.Rules {
		if a.Drill.Rules[i].ID == rule {
			return a.Drill.Rules[i].Title
		}
	}
	return rule
}
