package scenarios

import (
	"errors"
	"fmt"
	"slices"

	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/operator"
)

// ErrApart is what a pair wraps of which no attempt can have both mistakes.
var ErrApart = errors.New("cannot be made in one attempt")

// PairScript makes the script of a person who makes two operators' mistakes in one attempt: the edits of
// both, on the operator that both are based on. Where both change the same step the changes are joined,
// move by move. ErrApart says that they cannot be: one leaves out what the other does wrong, or both do
// the same move wrong in different ways.
func (s *Shelf) PairScript(d *drill.Drill, one, other string) (*operator.Script, error) {
	l := s.loading()
	both, err := l.together(d.Name, one, other)
	if err != nil {
		return nil, err
	}
	w := writer{loading: l, drill: d, scope: newScope(&d.Setup)}
	for _, v := range d.Values {
		w.scope.add(v)
	}
	out := &operator.Script{Name: one + "+" + other, Drill: d.Name, Steps: w.steps(both, 0)}
	count(out)
	return out, l.faults.Err()
}

// CanPair gives, without reading the drill, what two operators ask of it together; an error that wraps
// ErrApart says that their mistakes cannot be made in one attempt.
func (s *Shelf) CanPair(drill, one, other string) (Options, error) {
	o, err := s.PairConditions(drill, one, other, Options{})
	if err == nil {
		_, err = s.loading().together(drill, one, other)
	}
	return o, err
}

// together is the file of an operator who does what two do wrong.
func (l *loading) together(drill, one, other string) (*operatorFile, error) {
	var files [2]*operatorFile
	for i, name := range []string{one, other} {
		f, err := l.operatorFile(drill, name, nil)
		if err != nil {
			return nil, err
		}
		if f == nil {
			return nil, l.faults.Err()
		}
		files[i] = f
	}
	a, b := files[0], files[1]
	if a.apartFrom(b) || b.apartFrom(a) {
		return nil, fmt.Errorf("the mistake of operator %s leaves no room for that of %s: %w", one, other, ErrApart)
	}
	if a.BasedOn.Value != b.BasedOn.Value || !a.BasedOn.Given() {
		return nil, fmt.Errorf("operators %s and %s are not based on the same one: %w", one, other, ErrApart)
	}
	base, err := l.operatorFile(drill, a.BasedOn.Value, nil)
	if base == nil || err != nil {
		return nil, errors.Join(err, l.faults.Err())
	}
	left, step := joined(base, a, b)
	if step != "" {
		return nil, fmt.Errorf("operators %s and %s both change step %s: %w", one, other, step, ErrApart)
	}
	a.Edits = slices.Concat(a.Edits, left)
	slices.SortStableFunc(a.Edits, func(x, y editFile) int { // what is added to a step stays when the step is done otherwise
		return adds(&x.V) - adds(&y.V)
	})
	return a, nil
}

func (f *operatorFile) apartFrom(other *operatorFile) bool {
	for _, t := range f.Apart {
		if t.Value == other.Name.Value {
			return true
		}
	}
	return false
}

// joined puts changes of the same step together in the first file's edits, and gives what is left of the
// second's. step is one of which both changes cannot be had.
func joined(base, a, b *operatorFile) (left []editFile, step string) {
	for i := range b.Edits {
		e := &b.Edits[i].V
		done := false
		for k := range a.Edits {
			f := &a.Edits[k].V
			switch {
			case own(e) == "" || own(e) != own(f): // one of them only adds to it
			case e.Skip.Given() && f.Skip.Given():
				done = true
			case e.Replace.Given() && f.Replace.Given():
				moves, ok := merged(movesOf(base, own(e)), f.Moves, e.Moves)
				if !ok {
					return nil, own(e)
				}
				f.Moves, done = moves, true
			case e.Replace.Given() && f.Shift.Given(), e.Shift.Given() && f.Replace.Given():
			default:
				return nil, own(e)
			}
		}
		if !done {
			left = append(left, b.Edits[i])
		}
	}
	for i := range left { // what the other one leaves out has nothing beside it
		e := &left[i].V
		for k := range a.Edits {
			f := &a.Edits[k].V
			for _, gone := range [][2]*edit{{e, f}, {f, e}} {
				if t := gone[0].Skip.Value; t != "" && (gone[1].Before.Value == t || gone[1].After.Value == t) {
					return nil, t
				}
			}
		}
	}
	return left, ""
}

// adds is 1 for an edit that adds moves beside a step, 0 for one that changes a step.
func adds(e *edit) int {
	if own(e) == "" {
		return 1
	}
	return 0
}

// own is the step that an edit changes itself; empty for one that adds something beside a step.
func own(e *edit) string {
	switch {
	case e.Skip.Given():
		return e.Skip.Value
	case e.Replace.Given():
		return e.Replace.Value
	}
	return e.Shift.Value
}

func movesOf(f *operatorFile, step string) []moveFile {
	for i := range f.Steps {
		if f.Steps[i].V.Step.Value == step {
			return f.Steps[i].V.Moves
		}
	}
	return nil
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
		return o, fmt.Errorf("operators %s and %s ask for different seeds or variants: %w", one, other, ErrApart)
	}
	for c, v := range a.Start {
		if w, both := b.Start[c]; both && v != w {
			return o, fmt.Errorf("operators %s and %s begin with %s at different places: %w", one, other, c, ErrApart)
		}
	}
	if o, err = s.Conditions(drill, one, o); err != nil {
		return o, err
	}
	return s.Conditions(drill, other, o)
}

// Touches lists the steps that an operator's edits change, or add something to.
func (s *Shelf) Touches(drill, name string) ([]string, error) {
	l := s.loading()
	f, err := l.operatorFile(drill, name, nil)
	if f == nil || err != nil {
		return nil, errors.Join(err, l.faults.Err())
	}
	var list []string
	for i := range f.Edits {
		e := &f.Edits[i].V
		for _, t := range []reader.Text{e.Skip, e.Replace, e.Shift, e.Before, e.After} {
			if t.Given() {
				list = append(list, t.Value)
			}
		}
	}
	return list, nil
}
