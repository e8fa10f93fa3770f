package scenarios

import (
	"slices"

	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/operator"
)

// edit changes a script. Steps that waited for one that is skipped or shifted then wait for what that
// one had waited for.
func (w *writer) edit(list []operator.Step, f *editFile) []operator.Step {
	e := &f.V
	given := 0
	for _, t := range []reader.Text{e.Skip, e.Replace, e.Shift} {
		if t.Given() {
			given++
		}
	}
	target, beside := e.Before, e.After
	if beside.Given() {
		target = beside
	}
	switch {
	case given > 1, e.Before.Given() && e.After.Given(), given == 0 && !target.Given(),
		target.Given() && (e.Skip.Given() || e.Replace.Given()), e.Shift.Given() && !target.Given():
		w.fail(f.Node, "edit: expected one of skip, replace, before, after, or shift with before or after")
		return list
	case (e.Skip.Given() || e.Shift.Given()) == (len(e.Moves) > 0):
		w.fail(f.Node, "edit: expected moves with replace, before and after, and none with skip and shift")
		return list
	}
	moves := w.moves(e.Moves)
	switch {
	case e.Skip.Given():
		return w.skip(list, e.Skip)
	case e.Shift.Given():
		return w.shift(list, e.Shift, target, beside.Given())
	case e.Replace.Given():
		target = e.Replace
	}
	i := w.find(list, target)
	if i < 0 {
		return list
	}
	list = slices.Clone(list)
	switch {
	case e.Replace.Given():
		list[i].Moves = moves
	case e.Before.Given():
		list[i].Moves = slices.Concat(moves, list[i].Moves)
	default:
		list[i].Moves = slices.Concat(list[i].Moves, moves)
	}
	return list
}

func (w *writer) find(list []operator.Step, t reader.Text) int {
	for i := range list {
		if list[i].ID == t.Value {
			return i
		}
	}
	var names []string
	for i := range list {
		names = append(names, list[i].ID)
	}
	w.at(t, 0, "the script has no step %q, %s", t.Value, reader.DidYouMean(t.Value, names))
	return -1
}

func (w *writer) skip(list []operator.Step, t reader.Text) []operator.Step {
	i := w.find(list, t)
	if i < 0 {
		return list
	}
	list, _ = without(list, i)
	return list
}

// without takes a step out.
func without(list []operator.Step, i int) ([]operator.Step, operator.Step) {
	out := list[i]
	rest := make([]operator.Step, 0, len(list)-1)
	for k, s := range list {
		if k == i {
			continue
		}
		if at := slices.Index(s.After, out.ID); at >= 0 {
			after := slices.Concat(s.After[:at], s.After[at+1:])
			for _, a := range out.After {
				if !slices.Contains(after, a) {
					after = append(after, a)
				}
			}
			s.After = after
		}
		rest = append(rest, s)
	}
	return rest, out
}

// shift does one step's moves right before, or right after, another step.
func (w *writer) shift(list []operator.Step, from, to reader.Text, after bool) []operator.Step {
	i, j := w.find(list, from), w.find(list, to)
	if i < 0 || j < 0 {
		return list
	}
	if i == j {
		w.at(to, 0, "shift: %q cannot stand beside itself, expected another step", to.Value)
		return list
	}
	list, moved := without(list, i)
	j = w.find(list, to)
	target := list[j]
	if after {
		moved.After = []string{target.ID}
		return slices.Insert(list, j+1, moved)
	}
	moved.After = slices.Clone(target.After)
	list[j].After = append(slices.Clone(target.After), moved.ID)
	return slices.Insert(list, j, moved)
}
