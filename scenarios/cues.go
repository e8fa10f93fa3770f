package scenarios

import (
	"steadyneedle/scenarios/expression"
	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/crew"
	"steadyneedle/sim/world"
)

var delays = map[string]crew.Delay{"at-once": crew.AtOnce, "radio": crew.Radio, "task": crew.Task}

// cues compiles the habits of the people on the ground.
func (b *builder) cues() []crew.Cue {
	var list []crew.Cue
	lines := map[string]int{}
	for i := range b.file.Crew {
		c := &b.file.Crew[i].V
		if line, twice := lines[c.ID.Value]; twice && c.ID.Given() {
			b.at(c.ID, 0, "cue %q stands twice, expected different ids (the first is on line %d)", c.ID.Value, line)
		}
		lines[c.ID.Value] = b.file.Crew[i].Node.Line
		out := crew.Cue{
			ID:    c.ID.Value,
			By:    b.person(c.By),
			When:  b.compile(c.When, expression.Condition, b.scope.truth),
			Until: b.compile(c.Until, expression.Condition, b.scope.truth),
			Extra: world.TicksIn(c.ExtraS), Again: world.TicksIn(c.AgainS), Once: c.Once,
		}
		if c.Delay.Given() {
			d, ok := delays[c.Delay.Value]
			if !ok {
				b.at(c.Delay, 0, "delay: found %q, expected at-once, radio or task", c.Delay.Value)
			}
			out.Delay = d
		}
		for k := range c.Do {
			if deed, ok := b.deed(&c.Do[k], out.By); ok {
				out.Do = append(out.Do, deed)
			}
		}
		list = append(list, out)
	}
	return list
}

func (b *builder) person(t reader.Text) world.Source {
	by, ok := world.SourceNamed(t.Value)
	if t.Given() && (!ok || by == world.Candidate) {
		b.at(t, 0, "by: found %q, expected crew, officer, evaluator, instructor or fault", t.Value)
	}
	return by
}

// deed reads one thing done: a control that is set, or a phrase or gesture that is given.
func (b *builder) deed(f *deedFile, by world.Source) (crew.Deed, bool) {
	d := &f.V
	if d.Set.Given() == d.Say.Given() {
		b.fail(f.Node, "do: expected either set or say")
		return crew.Deed{}, false
	}
	t := d.Set
	if d.Say.Given() {
		t = d.Say
	}
	id, c, ok := b.fitted(b.scope, t)
	if !ok {
		return crew.Deed{}, false
	}
	spoken := c.Kind == world.Speech || c.Kind == world.Gesture
	switch {
	case d.Set.Given() && (spoken || c.Kind == world.Walk):
		b.at(t, 0, "set: %s is not a thing that is set, expected a control (or use say)", c.Name)
		return crew.Deed{}, false
	case d.Say.Given() && !spoken:
		b.at(t, 0, "say: %s is not said or shown, expected a phrase or gesture (or use set)", c.Name)
		return crew.Deed{}, false
	case d.Say.Given() && c.Speaker != by && by != world.Candidate: // who is faulted already
		b.at(t, 0, "say: %s is for the %s, expected something for the %s", c.Name, c.Speaker, by)
		return crew.Deed{}, false
	case d.Say.Given() && c.CarriesNumber() != d.Value.Given():
		b.at(t, 0, "say: %s", numberNeed(c))
		return crew.Deed{}, false
	case d.Set.Given() && !d.Value.Given():
		b.fail(f.Node, "set: expected a value beside it")
		return crew.Deed{}, false
	}
	return crew.Deed{Control: id, Value: b.setting(d.Value, c, b.scope.truth)}, true
}

// numberNeed says whether a number goes with a phrase.
func numberNeed(c *world.Control) string {
	if c.CarriesNumber() {
		return c.Name + " needs a number, expected a value beside it"
	}
	return c.Name + " takes no number, expected no value"
}
