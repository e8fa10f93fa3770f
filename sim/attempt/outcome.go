package attempt

import (
	"slices"

	"steadyneedle/sim/judge"
	"steadyneedle/sim/prompter"
	"steadyneedle/sim/world"
)

// Outcome is what became of one step of the drill.
type Outcome struct {
	Done   bool
	At     world.Tick // when first done
	Rank   int        // its place in the order in which steps were first done, from 1; 0: not done
	Early  bool       // done before a step that it waits for, and that was done later; one left out is told of where it is missing
	Late   bool       // one that waits for it was done first
	Faults []string   // rules that speak of it and found something
	Hinted bool       // it was told
}

// Missed reports whether the step was left out, passed over in its turn, or found faulty. Of two steps
// in the wrong order the one that should have come first was missed.
func (o *Outcome) Missed() bool { return !o.Done || o.Late || len(o.Faults) > 0 }

// Outcomes tells of every step, in the drill's order, by the sheet given.
func (a *Attempt) Outcomes(s *judge.Sheet) []Outcome {
	steps := a.Drill.Steps
	list := make([]Outcome, len(steps))
	order := make([]int, 0, len(steps))
	for i := range steps {
		o := &list[i]
		o.At, o.Done = a.StepDone(i)
		if o.Done {
			order = append(order, i)
		}
		for _, f := range s.Findings {
			if slices.Contains(steps[i].Rules, f.Rule) && !slices.Contains(o.Faults, f.Rule) {
				o.Faults = append(o.Faults, f.Rule)
			}
		}
	}
	slices.SortStableFunc(order, func(x, y int) int { return int(list[x].At - list[y].At) })
	for n, i := range order {
		list[i].Rank = n + 1
	}
	for i := range steps {
		early := list[i].Done && a.StepEarly(i)
		for _, j := range a.steps.waits[i] {
			if early && list[j].At > list[i].At+sameMoment {
				list[i].Early, list[j].Late = true, true
			}
		}
	}
	for _, h := range a.told {
		if h.Cause == prompter.Danger || h.Cause == prompter.Comment {
			continue
		}
		for i := range steps {
			if steps[i].ID == h.About {
				list[i].Hinted = true
			}
		}
	}
	return list
}
