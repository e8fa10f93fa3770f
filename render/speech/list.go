package speech

import (
	"strings"
	"unicode"

	"steadyneedle/render/view"
	"steadyneedle/sim/world"
)

// Phrase is one line of the list.
type Phrase struct {
	ID    world.ControlID
	Def   *world.Control
	Group int // index into Groups
}

// Groups are the columns of the list.
var Groups = [...]string{"To the crew", "To the officer", "To the evaluator", "Gauges, named to the evaluator", "Gestures"}

// The groups by number.
const (
	Crew = iota
	Officer
	Evaluator
	Gauges
	Gestures
)

// List is every phrase and gesture of the candidate, in the table's order.
func List(t *view.Table) []Phrase {
	var all []Phrase
	for i := range t.Controls {
		c := &t.Controls[i]
		if c.By == world.Nowhere || c.Speaker != world.Candidate || c.Kind != world.Speech && c.Kind != world.Gesture {
			continue
		}
		p := Phrase{ID: world.ControlID(i), Def: c, Group: Evaluator}
		switch {
		case c.Kind == world.Gesture:
			p.Group = Gestures
		case strings.HasPrefix(c.Name, "read_"):
			p.Group = Gauges
		case c.To == "crew":
			p.Group = Crew
		case c.To == "officer":
			p.Group = Officer
		}
		all = append(all, p)
	}
	return all
}

// Number reports whether a number goes with the phrase.
func (p *Phrase) Number() bool { return p.Def.Kind == world.Speech && p.Def.Max > 1 }

// Match reports whether every word of the filter begins a word of the phrase.
func (p *Phrase) Match(filter string) bool {
	words := letters(p.Def.Label)
	for _, f := range letters(filter) {
		found := false
		for _, w := range words {
			found = found || strings.HasPrefix(w, f)
		}
		if !found {
			return false
		}
	}
	return true
}

// letters are the words of a text in small letters, without what parts them.
func letters(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

// Short is a gesture's name without its description.
func (p *Phrase) Short() string {
	if i := strings.Index(p.Def.Label, " ("); i > 0 {
		return p.Def.Label[:i]
	}
	return p.Def.Label
}
