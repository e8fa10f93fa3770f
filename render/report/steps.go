package report

import (
	"slices"

	"steadyneedle/sim/attempt"
	"steadyneedle/sim/judge"
)

// steps says what became of every step of the drill. In an attempt that was ended early, what had not
// been done by then was not missed.
func steps(a *attempt.Attempt, s *judge.Sheet, early bool) []Step {
	var list []Step
	for i, o := range a.Outcomes(s) {
		d := &a.Drill.Steps[i]
		missed := o.Missed() && (o.Done || !early || len(o.Faults) > 0)
		list = append(list, Step{ID: d.ID, Phase: d.Phase, Text: d.Hint, Done: o.Done, At: o.At, Rank: o.Rank,
			Early: o.Early, Late: o.Late, Missed: missed, Hinted: o.Hinted})
	}
	return list
}

// phaseOf is the phase that a finding belongs to: that of the step its rule speaks of; else that of the
// first step done from its onset on.
func phaseOf(a *attempt.Attempt, list []Step, f *judge.Finding) string {
	for i := range a.Drill.Steps {
		if slices.Contains(a.Drill.Steps[i].Rules, f.Rule) {
			return list[i].Phase
		}
	}
	best := -1
	for i := range list {
		if list[i].Done && list[i].At >= f.From && (best < 0 || list[i].At < list[best].At) {
			best = i
		}
	}
	switch {
	case best >= 0:
		return list[best].Phase
	case len(list) > 0:
		return list[len(list)-1].Phase
	}
	return ""
}

// hints lists what the prompter said, and how much it was to say.
func hints(a *attempt.Attempt) (help string, list []Hint) {
	for _, n := range a.Notes(attempt.HelpNote) {
		help = n.Text
	}
	for _, h := range a.Hints() {
		list = append(list, Hint{At: h.At, Cause: h.Cause.String(), About: h.About, Text: h.Text})
	}
	return help, list
}
