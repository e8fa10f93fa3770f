package report

import (
	"time"

	"steadyneedle/sim/drill"
	"steadyneedle/sim/prompter"
)

// History is what earlier attempts at one drill tell its prompter. What was taken over, or ended soon,
// tells nothing; the sheets are oldest first.
func History(sheets []*Sheet, now time.Time) prompter.History {
	var h prompter.History
	for _, s := range sheets {
		t := prompter.Tried{Missed: s.Missed(), Hinted: s.Hinted()}
		if begun, err := time.Parse(time.RFC3339, s.Begun); err == nil {
			t.AgoDays = max(0, now.Sub(begun).Hours()/24)
		}
		if s.tells() {
			h = append(h, t)
		}
	}
	return h
}

// tells reports whether an attempt tells anything of its own: it was worked from the beginning, to the
// end or through half of the steps.
func (s *Sheet) tells() bool {
	switch {
	case s.TakenOver:
		return false
	case !s.Early:
		return true
	}
	done := 0
	for i := range s.Steps {
		if s.Steps[i].Done {
			done++
		}
	}
	return 2*done >= len(s.Steps)
}

// StepsOf are the drill's steps as the newest of its sheets knows them.
func StepsOf(sheets []*Sheet) []drill.Step {
	if len(sheets) == 0 {
		return nil
	}
	var list []drill.Step
	for _, s := range sheets[len(sheets)-1].Steps {
		list = append(list, drill.Step{ID: s.ID, Hint: s.Text, Phase: s.Phase})
	}
	return list
}
