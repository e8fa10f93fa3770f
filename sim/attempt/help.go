package attempt

import (
	"strings"

	"steadyneedle/sim/board"
	"steadyneedle/sim/judge"
	"steadyneedle/sim/prompter"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// Sorts of notes.
const (
	HelpNote = "help" // how much the prompter was to tell
	hinted   = "hint" // what it told
)

// work is the attempt as its prompter sees it.
type work struct{ *Attempt }

func (w work) Place() world.Place        { return w.Scene.World.Place() }
func (w work) Found() int                { return w.Judge.Found() }
func (w work) Findings() []judge.Finding { return w.Judge.Sheet().Findings }

// help lets the prompter look on, on the beat, and notes what it says.
func (a *Attempt) help(acted bool) {
	if a.coach == nil {
		return
	}
	if acted {
		a.coach.Acted(a.Now())
	}
	if a.Now()%board.Beat == 0 {
		for _, h := range a.coach.Look(a.Now(), work{a}) {
			a.hint(h)
		}
	}
}

func (a *Attempt) hint(h prompter.Hint) {
	a.Note(hinted, h.Cause.String()+" "+h.About+" "+h.Text)
}

// Ask asks the prompter for the next step; what it says is noted. ok is false where there is no help.
func (a *Attempt) Ask() (h prompter.Hint, ok bool) {
	if a.coach == nil || a.over {
		return h, false
	}
	if h, ok = a.coach.Ask(a.Now(), work{a}); ok {
		a.hint(h)
	}
	return h, ok
}

// Prompter is the one who helps; nil where nobody does.
func (a *Attempt) Prompter() *prompter.Prompter { return a.coach }

// hear takes in a line of the log, if it is a hint.
func (a *Attempt) hear(e *entry) {
	if e.kind != tape.Note || e.about != hinted {
		return
	}
	word, rest, _ := strings.Cut(e.text, " ")
	about, text, _ := strings.Cut(rest, " ")
	if c, ok := prompter.CauseNamed(word); ok {
		a.told = append(a.told, prompter.Hint{At: e.action.At, Cause: c, About: about, Text: text})
	}
}

// Hints lists everything that was said to the candidate by the prompter, then or as recorded. The list
// is the attempt's own.
func (a *Attempt) Hints() []prompter.Hint { return a.told }
