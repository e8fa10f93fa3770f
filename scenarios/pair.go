package scenarios

import (
	"fmt"

	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/operator"
)

// PairScript makes the script of a person who makes two operators' mistakes in one attempt: the edits of
// both, on the operator that both are based on. It fails where one takes away what the other changes, or
// where both change the same step.
func (s *Shelf) PairScript(d *drill.Drill, one, other string) (*operator.Script, error) {
	l := s.loading()
	w := writer{loading: l, drill: d, scope: newScope(&d.Setup)}
	for _, v := range d.Values {
		w.scope.add(v)
	}
	var files [2]*operatorFile
	for i, name := range []string{one, other} {
		f, err := l.operatorFile(d.Name, name, nil)
		if err != nil {
			return nil, err
		}
		if f == nil {
			return nil, l.faults.Err()
		}
		files[i] = f
	}
	a, b := files[0], files[1]
	if a.BasedOn.Value != b.BasedOn.Value || !a.BasedOn.Given() {
		return nil, fmt.Errorf("operators %s and %s are not based on the same one", one, other)
	}
	for _, step := range touched(a) {
		for _, same := range touched(b) {
			if step == same {
				return nil, fmt.Errorf("operators %s and %s both change step %s", one, other, step)
			}
		}
	}
	out := &operator.Script{Name: one + "+" + other, Drill: d.Name}
	list := w.steps(a, 0)
	for i := range b.Edits {
		list = w.edit(list, &b.Edits[i])
	}
	out.Steps = list
	count(out)
	return out, l.faults.Err()
}

// PairConditions are what both operators' files ask of the drill. It fails where they ask for different
// things.
func (s *Shelf) PairConditions(drill, one, other string, o Options) (Options, error) {
	a, err := s.Conditions(drill, one, Options{})
	if err != nil {
		return o, err
	}
	b, err := s.Conditions(drill, other, Options{})
	if err != nil {
		return o, err
	}
	if a.Seed != 0 && b.Seed != 0 && a.Seed != b.Seed || a.Variant != "" && b.Variant != "" && a.Variant != b.Variant {
		return o, fmt.Errorf("operators %s and %s ask for different seeds or variants", one, other)
	}
	if o, err = s.Conditions(drill, one, o); err != nil {
		return o, err
	}
	return s.Conditions(drill, other, o)
}

// touched lists the steps that an operator's edits change or move.
func touched(f *operatorFile) []string {
	var list []string
	for i := range f.Edits {
		e := &f.Edits[i].V
		for _, t := range []reader.Text{e.Skip, e.Replace, e.Shift, e.Before, e.After} {
			if t.Given() {
				list = append(list, t.Value)
			}
		}
	}
	return list
}
