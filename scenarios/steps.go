package scenarios

import (
	"strings"

	"steadyneedle/scenarios/expression"
	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/world"
)

// steps compiles the drill's partial order. The file's own order must be a legal one.
func (b *builder) steps() []drill.Step {
	all := map[string]int{}
	for i := range b.file.Steps {
		id := b.file.Steps[i].V.ID
		if at, twice := all[id.Value]; twice && id.Given() {
			b.at(id, 0, "step %q stands twice, expected different ids (the first is on line %d)", id.Value, b.file.Steps[at].Node.Line)
			continue
		}
		all[id.Value] = i
	}
	var list []drill.Step
	for i := range b.file.Steps {
		s := &b.file.Steps[i].V
		out := drill.Step{ID: s.ID.Value, Hint: s.Hint, Phase: s.Phase, Place: b.place(s.Place), Soon: s.Soon, State: s.State}
		for _, a := range s.After {
			if b.after(all, i, a) {
				out.After = b.waitFor(out.After, all, all[a.Value])
			}
		}
		if !b.applies(s.OnlyWith) {
			continue
		}
		out.Done = b.compile(s.Done, expression.Condition, b.scope.truth)
		list = append(list, out)
	}
	return list
}

// stepRules ties steps to the rules that speak of them.
func (b *builder) stepRules(d *drill.Drill) {
	if len(b.faults) > 0 { // of the rules themselves, perhaps
		return
	}
	known := map[string]bool{}
	var names []string
	for i := range d.Rules {
		known[d.Rules[i].ID] = true
		names = append(names, d.Rules[i].ID)
	}
	at := map[string]int{}
	for i := range d.Steps {
		at[d.Steps[i].ID] = i
	}
	for i := range b.file.Steps {
		s := &b.file.Steps[i].V
		k, there := at[s.ID.Value]
		for _, r := range s.Rules {
			switch {
			case !known[r.Value] && len(d.Unjudged) > 0: // one of those, perhaps
			case !known[r.Value] && !b.dropped[r.Value]:
				b.at(r, 0, "unknown rule %q, %s", r.Value, reader.DidYouMean(r.Value, names))
			case there && known[r.Value]:
				d.Steps[k].Rules = append(d.Steps[k].Rules, r.Value)
			}
		}
	}
}

// after checks one constraint of step i.
func (b *builder) after(all map[string]int, i int, a reader.Text) bool {
	j, known := all[a.Value]
	switch {
	case !known:
		b.at(a, 0, "unknown step %q, %s", a.Value, reader.DidYouMean(a.Value, b.stepNames()))
		return false
	case j >= i && len(b.faults) < maxFaults:
		if circle := b.circle(all, i, j); circle != "" {
			b.at(a, 0, "steps wait for each other: %s, expected an order that can be worked", circle)
		} else {
			b.at(a, 0, "step %q comes later in the file, expected the steps in an order that can be worked", a.Value)
		}
		return false
	}
	return true
}

// circle follows what step j waits for; if that leads back to step i it says how.
func (b *builder) circle(all map[string]int, i, j int) string {
	seen := map[int]bool{}
	var walk func(at int) []string
	walk = func(at int) []string {
		id := b.file.Steps[at].V.ID.Value
		if at == i {
			return []string{id}
		}
		if seen[at] {
			return nil
		}
		seen[at] = true
		for _, a := range b.file.Steps[at].V.After {
			if next, ok := all[a.Value]; ok {
				if rest := walk(next); rest != nil {
					return append([]string{id}, rest...)
				}
			}
		}
		return nil
	}
	way := walk(j)
	if way == nil {
		return ""
	}
	return strings.Join(append([]string{b.file.Steps[i].V.ID.Value}, way...), " after ")
}

func (b *builder) stepNames() []string {
	var list []string
	for i := range b.file.Steps {
		list = append(list, b.file.Steps[i].V.ID.Value)
	}
	return list
}

// place reads a place's name; where none is given it is Walking, which means anywhere.
func (l *loading) place(t reader.Text) world.Place {
	if !t.Given() {
		return world.Walking
	}
	p, ok := world.PlaceNamed(t.Value)
	if !ok {
		var names []string
		for _, p := range world.Places() {
			names = append(names, p.String())
		}
		l.at(t, 0, "unknown place %q, %s", t.Value, reader.DidYouMean(t.Value, names))
	}
	return p
}
