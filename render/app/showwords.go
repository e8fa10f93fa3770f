package app

import (
	"fmt"
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
		return "Type how many hands go up for each answer, then run it."
	case p.Phase() == demo.Waiting && p.Step().Ask != nil:
		text = p.Step().Ask.Because
	case p.Phase() == demo.Ended:
		text = p.Demonstration.Teaches
	}
	return a.eyes.Units.Prose(text)
}

// captionRows is how many lines of large type fit below the panes.
const captionRows = 3

// captionLines breaks a caption into lines.
func (s *show) captionLines(a *App, text string) []string {
	return draw.Style{Size: s.text}.Wrap(a.scale, s.caption.W-36, text)
}

// words puts the caption, in large type.
func (s *show) words(a *App) {
	text, box := s.captionText(a), s.caption
	art := a.shelf.Once("show/words", "show/words/"+text+fmt.Sprint(box), box, func(cv *draw.Canvas) {
		cv.Fill(draw.Round(box, 10), draw.Solid(theme.Paper.Board))
		st := draw.Style{Size: s.text, Color: theme.Paper.Chalk}
		lines := s.captionLines(a, text)
		if len(lines) > captionRows {
			lines = lines[:captionRows]
			lines[captionRows-1] = st.Fit(cv.Scale, box.W-36, lines[captionRows-1]+" …")
		}
		y := box.Y + s.text*1.05
		if len(lines) < captionRows {
			y += s.text * 0.58 * float64(captionRows-len(lines))
		}
		for _, l := range lines {
			cv.Text(draw.Pt(box.X+18, y), draw.Left, st, l)
			y += s.text * 1.16
		}
	})
	a.frame.Put(art, draw.Point{})
}

// title puts the demonstration's name on the upper strip; while a fault is set, that it is simulated.
func (s *show) title(a *App) {
	text, col := a.attempt.Info().Title, theme.Paper.Chalk
	if faults := s.simulated(); len(faults) > 0 {
		text, col = "Simulated: "+strings.Join(faults, ", "), theme.Paper.Alarm
	}
	st := draw.Style{Size: s.text, Weight: draw.Bold, Color: col}
	a.shelf.Text(&a.frame, draw.Pt(16, s.top()*0.71), draw.Left, st, st.Fit(a.scale, s.leaveBox(a).X-9*s.text, text))
}

// simulated lists the faults that are set.
func (s *show) simulated() []string { return simulated(s.stage) }

func simulated(s view.Stage) []string {
	return view.Simulated(s.Player().Attempt.Scene.World, s.Info().Units)
}

// saidS is how long a word stands before the class, s of the world's time.
const saidS = 8.0

// said is the last word that officer or crew gave, for as long as it stands before the class.
func (s *show) said() (text string, ok bool) {
	p := s.stage.Player()
	now := p.Attempt.Now()
	words := p.Attempt.Said(now + 1)
	if len(words) == 0 || (now-words[len(words)-1].At).Seconds() > saidS || !s.warned {
		return "", false
	}
	last := words[len(words)-1]
	c := &s.stage.Controls()[last.Control]
	text = view.Who(c.Speaker) + ": " + c.Label
	if c.CarriesNumber() {
		text += " " + s.numberText(c, last.Value)
	}
	return text, true
}
