package scenarios

import (
	"path"
	"slices"

	"steadyneedle/scenarios/expression"
	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/cond"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/operator"
)

// maxBases is how many operators may be based on one another.
const maxBases = 4

// Conditions are what an operator's file asks of its drill: seed, variant and planted faults. What o
// already says about seed and variant is kept.
func (s *Shelf) Conditions(drill, name string, o Options) (Options, error) {
	l := s.loading()
	f, err := l.operatorFile(drill, name, nil)
	if err != nil {
		return o, err
	}
	if f != nil {
		if o.Seed == 0 {
			o.Seed = f.Seed
		}
		if o.Variant == "" {
			o.Variant = f.Variant.Value
		}
		if f.Start != nil {
			err := l.conditionsStart(drill, f, &o)
			if err != nil {
				return o, err
			}
		}
	}
	return o, l.faults.Err()
}

// conditionsStart reads what the operator's file plants: that needs the drill's controls.
func (l *loading) conditionsStart(name string, f *operatorFile, o *Options) error {
	without := *o
	without.Start = nil
	d, err := l.drill(name, without)
	if d == nil || err != nil {
		return err
	}
	start := map[string]float64{}
	l.settings(f.Start, newScope(&d.Setup), start)
	for c, v := range o.Start {
		start[c] = v
	}
	o.Start = start
	return nil
}

// DrillFor makes a drill under the conditions that an operator asks for, over o, and the operator's
// script.
func (s *Shelf) DrillFor(name, who string, o Options) (*drill.Drill, *operator.Script, error) {
	o, err := s.Conditions(name, who, o)
	if err != nil {
		return nil, nil, err
	}
	d, err := s.Drill(name, o)
	if err != nil {
		return nil, nil, err
	}
	script, err := s.Script(d, who)
	return d, script, err
}

// Script makes an operator's script for a drill that Drill has made. Expressions see only what a person
// can perceive.
func (s *Shelf) Script(d *drill.Drill, name string) (*operator.Script, error) {
	l := s.loading()
	out, err := l.script(d, name)
	if err == nil {
		err = l.faults.Err()
	}
	if err != nil {
		return nil, err
	}
	return out, nil
}

func (l *loading) script(d *drill.Drill, name string) (*operator.Script, error) {
	f, err := l.operatorFile(d.Name, name, nil)
	if f == nil || err != nil {
		return nil, err
	}
	w := writer{loading: l, drill: d, scope: newScope(&d.Setup)}
	for _, v := range d.Values {
		w.scope.add(v)
	}
	out := &operator.Script{Name: f.Name.Value, Drill: d.Name, Breaks: f.Breaks.Value}
	w.breaks(f.Breaks)
	w.apart(f)
	out.Onset = w.compile(f.Onset, expression.Condition, w.scope.truth)
	out.Steps = w.steps(f, 0)
	w.settings(f.Start, w.scope, map[string]float64{})
	count(out)
	return out, nil
}

// count adds up the memory of a script's programs.
func count(s *operator.Script) {
	for i := range s.Steps {
		for k := range s.Steps[i].Moves {
			s.Slots += slots(&s.Steps[i].Moves[k])
		}
	}
}

func slots(m *operator.Move) int {
	n := 0
	for _, p := range []*cond.Program{m.To, m.Until, m.Watch, m.If} {
		if p != nil {
			n += p.Slots
		}
	}
	return n
}

// writer writes one operator's script.
type writer struct {
	*loading
	drill *drill.Drill
	scope *scope
	// allSeeing: the script sees the truth and works whatever there is, as a demonstration does
	allSeeing bool
}

// sees resolves what the script's expressions may use.
func (w *writer) sees() expression.Resolve {
	if w.allSeeing {
		return w.scope.truth
	}
	return w.scope.perceived
}

func (w *writer) breaks(t reader.Text) {
	if !t.Given() {
		return
	}
	var names []string
	for i := range w.drill.Rules {
		if names = append(names, w.drill.Rules[i].ID); w.drill.Rules[i].ID == t.Value {
			return
		}
	}
	w.at(t, 0, "breaks: the drill has no rule %q, %s", t.Value, reader.DidYouMean(t.Value, names))
}

// apart checks that those it names are there.
func (w *writer) apart(f *operatorFile) {
	for _, t := range f.Apart {
		w.named("operator", path.Join("operators", w.drill.Name), t.Value, t.Node())
	}
}

// steps are a file's own, or those of the operator it is based on with its edits.
func (w *writer) steps(f *operatorFile, depth int) []operator.Step {
	if !f.BasedOn.Given() {
		f.Steps = slices.DeleteFunc(f.Steps, func(s workFile) bool { return !w.has(&w.drill.Setup.Rig, s.V.OnlyWith) })
		return w.written(f)
	}
	if depth == maxBases || f.BasedOn.Value == f.Name.Value {
		w.at(f.BasedOn, 0, "based_on: operators are based on one another in a circle or too deeply, expected at most %d", maxBases)
		return nil
	}
	base, _ := w.operatorFile(w.drill.Name, f.BasedOn.Value, f.BasedOn.Node())
	if base == nil {
		return nil
	}
	list := w.steps(base, depth+1)
	if list == nil {
		return nil // its faults are noted, and no edit has a step to change
	}
	for i := range f.Edits {
		list = w.edit(list, &f.Edits[i])
	}
	return list
}

// written compiles a full script: every step of the drill, in an order that the drill allows.
func (w *writer) written(f *operatorFile) []operator.Step {
	after, soon := map[string][]string{}, map[string]bool{}
	for _, s := range w.drill.Steps {
		after[s.ID], soon[s.ID] = s.After, s.Soon
	}
	if w.namesOf(f, after) {
		w.orderOf(f, after)
	}
	var list []operator.Step
	for i := range f.Steps {
		s := &f.Steps[i].V
		earlier := append([]string(nil), after[s.Step.Value]...)
		list = append(list, operator.Step{ID: s.Step.Value, After: earlier, Soon: soon[s.Step.Value], Moves: w.moves(s.Moves)})
	}
	return list
}

// namesOf checks that each step is one of the drill's, and stands once.
func (w *writer) namesOf(f *operatorFile, after map[string][]string) bool {
	before := len(w.faults)
	seen := map[string]bool{}
	for i := range f.Steps {
		t := f.Steps[i].V.Step
		if _, known := after[t.Value]; !known && t.Given() {
			w.unknownStep(t)
		} else if seen[t.Value] {
			w.at(t, 0, "step %q stands twice, expected once", t.Value)
		}
		seen[t.Value] = true
	}
	return len(w.faults) == before
}

// orderOf checks that nothing is left out and nothing comes too soon.
func (w *writer) orderOf(f *operatorFile, after map[string][]string) {
	done := map[string]bool{}
	for i := range f.Steps {
		t := f.Steps[i].V.Step
		for _, a := range after[t.Value] {
			if !done[a] {
				w.at(t, 0, "step %q comes before %q, expected an order that the drill allows (edits can shift a step against it)", t.Value, a)
			}
		}
		done[t.Value] = true
	}
	for _, s := range w.drill.Steps {
		if !done[s.ID] {
			w.fail(f.node, "there is nothing for step %q, expected every step of the drill (moves: [] where nothing is to be done)", s.ID)
		}
	}
}

func (w *writer) unknownStep(t reader.Text) {
	var names []string
	for _, s := range w.drill.Steps {
		names = append(names, s.ID)
	}
	w.at(t, 0, "the drill has no step %q, %s", t.Value, reader.DidYouMean(t.Value, names))
}

// TextsOf lists the files that a drill, and an operator of it if one is named, were made of: what a
// recording keeps. apparatus is empty for the drill's own.
func (s *Shelf) TextsOf(d *drill.Drill, operator string) ([]Text, error) {
	l := s.loading()
	again, err := l.drill(d.Name, Options{Variant: d.Variant, Apparatus: d.Apparatus})
	if err != nil {
		return nil, err
	}
	if again != nil && operator != "" {
		if _, err := l.script(again, operator); err != nil {
			return nil, err
		}
	}
	for at := range l.texts {
		if path.Dir(at) == "rules" && !l.sharedUsed[at] {
			delete(l.texts, at)
		}
	}
	return l.used(), l.faults.Err()
}
