package attempt

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"steadyneedle/sim/judge"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// Sorts of notes that an evaluator's ruling is kept in. They follow the recording's end.
const (
	waived = "waive" // RULE TICK REASON
	signed = "sign"  // NAME
)

func ruling(about string) bool { return about == waived || about == signed }

// Waiver is a finding that the evaluator does not hold against the candidate. It stays on the sheet.
type Waiver struct {
	Rule   string
	Title  string     // of the rule
	From   world.Tick // onset of the finding
	Reason string
}

// Ruling is what the evaluator has made of a finished attempt, beside what the judge found.
type Ruling struct {
	Waivers  []Waiver
	SignedBy string  // empty: not signed
	Score    float64 // without the findings that are waived
	Passed   bool
}

// Waive takes a finding off the score of an attempt that is over, for a reason. from is its onset.
func (a *Attempt) Waive(rule string, from world.Tick, reason string) error {
	reason = strings.TrimSpace(reason)
	if err := a.mayRule(); err != nil {
		return err
	}
	if reason == "" {
		return fmt.Errorf("a finding is waived for a reason, expected one")
	}
	if a.finding(rule, from) == nil {
		return fmt.Errorf("the sheet has no finding of rule %s at %.1f s", rule, from.Seconds())
	}
	for _, w := range a.waivers() {
		if w.Rule == rule && w.From == from {
			return fmt.Errorf("the finding of rule %s at %.1f s is waived already", rule, from.Seconds())
		}
	}
	a.rule(waived, fmt.Sprintf("%s %d %s", rule, int64(from), reason))
	return nil
}

// TakeBack takes a waiver back: the finding counts again.
func (a *Attempt) TakeBack(rule string, from world.Tick) error {
	if err := a.mayRule(); err != nil {
		return err
	}
	for i := range a.rulings {
		if w, ok := waiverOf(a.rulings[i].text); ok && a.rulings[i].about == waived && w.Rule == rule && w.From == from {
			a.rulings = slices.Delete(a.rulings, i, i+1)
			return nil
		}
	}
	return fmt.Errorf("the finding of rule %s at %.1f s is not waived", rule, from.Seconds())
}

// WriteRuling writes the ruling's lines, which follow a recording's end line.
func (a *Attempt) WriteRuling(w io.Writer) error {
	t := tape.NewTail(w)
	for i := range a.rulings {
		a.rulings[i].to(t)
	}
	t.Flush()
	return t.Err()
}

// Sign ends the evaluator's ruling with their name; after that nothing can be waived.
func (a *Attempt) Sign(name string) error {
	if err := a.mayRule(); err != nil {
		return err
	}
	if name = strings.TrimSpace(name); name == "" {
		return fmt.Errorf("a sheet is signed with a name, expected one")
	}
	a.rule(signed, name)
	return nil
}

// Ruling is the evaluator's, as it stands.
func (a *Attempt) Ruling() Ruling {
	r := Ruling{Waivers: a.waivers(), SignedBy: a.signature()}
	var left []judge.Finding
	for _, f := range a.Sheet().Findings {
		if !r.waives(&f) {
			left = append(left, f)
		}
	}
	r.Score, r.Passed = a.Drill.Scale.Rate(left)
	r.Passed = r.Passed && !a.Early()
	return r
}

// Made reports whether the evaluator has ruled at all.
func (r *Ruling) Made() bool { return len(r.Waivers) > 0 || r.SignedBy != "" }

func (r *Ruling) waives(f *judge.Finding) bool {
	for _, w := range r.Waivers {
		if w.Rule == f.Rule && w.From == f.From {
			return true
		}
	}
	return false
}

func (a *Attempt) mayRule() error {
	switch {
	case !a.closed:
		return fmt.Errorf("the attempt is not over yet")
	case a.signature() != "":
		return fmt.Errorf("the sheet is signed by %s already", a.signature())
	}
	return nil
}

func (a *Attempt) finding(rule string, from world.Tick) *judge.Finding {
	list := a.Sheet().Findings
	for i := range list {
		if list[i].Rule == rule && list[i].From == from {
			return &list[i]
		}
	}
	return nil
}

func (a *Attempt) rule(about, text string) {
	a.rulings = append(a.rulings, entry{kind: tape.Note, action: world.Action{At: a.Now()}, about: about, text: text})
}

func (a *Attempt) waivers() []Waiver {
	var list []Waiver
	for i := range a.rulings {
		if a.rulings[i].about == waived {
			w, _ := waiverOf(a.rulings[i].text)
			w.Title = a.title(w.Rule)
			list = append(list, w)
		}
	}
	return list
}

func (a *Attempt) signature() string {
	for i := range a.rulings {
		if a.rulings[i].about == signed {
			return a.rulings[i].text
		}
	}
	return ""
}

func waiverOf(text string) (Waiver, bool) {
	rule, rest, _ := strings.Cut(text, " ")
	tick, reason, _ := strings.Cut(rest, " ")
	at, err := strconv.ParseInt(tick, 10, 64)
	return Waiver{Rule: rule, From: world.Tick(at), Reason: reason}, err == nil && rule != "" && reason != ""
}

// takeRuling takes a line that follows a recording's end, as it would be taken from an evaluator.
func (a *Attempt) takeRuling(l *tape.Line) error {
	if err := a.Close(); err != nil {
		return err
	}
	switch l.About {
	case waived:
	case signed:
		return a.Sign(l.Text)
	default:
		return fmt.Errorf("a note of %s follows the end, expected %s or %s", l.About, waived, signed)
	}
	w, ok := waiverOf(l.Text)
	if !ok {
		return fmt.Errorf("%q waives nothing, expected a rule, a tick and a reason", l.Text)
	}
	return a.Waive(w.Rule, w.From, w.Reason)
}
