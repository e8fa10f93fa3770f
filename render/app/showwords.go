package app

import (
	"strings"

	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
	"steadyneedle/sim/demo"
)

// captionText is what stands below the panes: a word of officer or crew while it is fresh; else what is
// taught, before the first step and after the last, the step's caption, and the reason after a question.
func (s *show) captionText(a *App) string {
	p := s.stage.Player()
	if word, ok := s.said(); ok {
		return word
	}
	text := p.Step().Caption
	switch {
	case p.Phase() == demo.Stuck:
		return "The demonstration cannot go on: " + p.Err().Error()
	case !s.warned:
		text = p.Demonstration.Teaches
	case p.Phase() == demo.Asking:
		return "How many hands for each answer? Type or click them, then run it."
	case p.Phase() == demo.Waiting && p.Step().Ask != nil:
		text = p.Step().Ask.Because
	case p.Phase() == demo.Ended:
		text = p.Demonstration.Teaches
	}
	return a.eyes.Units.Prose(text)
}

// title puts the demonstration's name on the upper strip; while a fault is set, that it is simulated.
func (s *show) title(a *App) {
	text, col := a.attempt.Info().Title, theme.Paper.Chalk
	if faults := simulated(s.stage); len(faults) > 0 {
		text, col = "Simulated: "+strings.Join(faults, ", "), theme.Paper.Alarm
	}
	st := draw.Style{Size: s.text, Weight: draw.Bold, Color: col}
	a.shelf.Text(&a.frame, draw.Pt(16, s.top()*0.71), draw.Left, st, st.Fit(a.scale, s.leaveBox(a).X-9*s.text, text))
}

// simulated lists the faults that are set, in words. What a drill has planted is part of it, to be found by the
// class as by a candidate.
func simulated(s view.Stage) []string {
	p := s.Player()
	var planted map[string]float64
	if p.Demonstration.Free {
		planted = p.Attempt.Drill.Setup.Start
	}
	return view.Simulated(p.Attempt.Scene.World, s.Info().Units, planted)
}

// saidS is how long a word stands before the class, s of the world's time.
const saidS = 8.0

// said is the last word that others gave, for as long as it stands before the class. What has no words of its own
// is the evaluator's objective, which is the caption itself.
func (s *show) said() (text string, ok bool) {
	p := s.stage.Player()
	now := p.Attempt.Now()
	words := p.Attempt.Said(now + 1)
	if len(words) == 0 || (now-words[len(words)-1].At).Seconds() > saidS || !s.warned {
		return "", false
	}
	last := words[len(words)-1]
	c := &s.stage.Controls()[last.Control]
	if c.Label == "" {
		return "", false
	}
	text = view.Who(c.Speaker) + ": " + c.Label
	if c.CarriesNumber() {
		text += " " + s.numberText(c, last.Value)
	}
	return text, true
}
