package scenarios

import (
	"slices"

	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/rig"
)

// parts are what an apparatus may have or not; only_with names one of them.
var parts = []struct {
	name string
	on   func(*rig.Def) bool
}{
	{"relief", func(d *rig.Def) bool { return d.Relief != nil }},
	{"throttle", func(d *rig.Def) bool { return d.Governor == nil }}, // a hand throttle
	{"governor", func(d *rig.Def) bool { return d.Governor != nil }},
	{"transfer", func(d *rig.Def) bool { return d.Pump.Transfer != nil }},
}

// applies reports whether a step or rule that is only_with a part has a meaning on the apparatus.
func (b *builder) applies(part reader.Text) bool { return b.has(&b.rig, part) }

// has reports whether an apparatus has the part that only_with names; true where none is named.
func (l *loading) has(def *rig.Def, part reader.Text) bool {
	if !part.Given() {
		return true
	}
	var names []string
	for _, p := range parts {
		if p.name == part.Value {
			return p.on(def)
		}
		names = append(names, p.name)
	}
	l.at(part, 0, "only_with: unknown part %q, %s", part.Value, reader.DidYouMean(part.Value, names))
	return true
}

// waitFor adds to a list of steps to be waited for step i, or where that does not apply, what it would
// have waited for.
func (b *builder) waitFor(list []string, all map[string]int, i int) []string {
	s := &b.file.Steps[i].V
	if b.applies(s.OnlyWith) {
		if !slices.Contains(list, s.ID.Value) {
			list = append(list, s.ID.Value)
		}
		return list
	}
	for _, a := range s.After {
		if j, known := all[a.Value]; known && j < i {
			list = b.waitFor(list, all, j)
		}
	}
	return list
}
