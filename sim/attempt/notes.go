package attempt

import (
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// Note is what was told to the candidate, or written down by them, at a moment. It is on the recording
// but no part of the world: it changes nothing.
type Note struct {
	At    world.Tick
	About string // one word: what sort of note
	Text  string
}

// Note keeps a note at this moment. about is one word.
func (a *Attempt) Note(about, text string) {
	if !a.over {
		a.write(entry{kind: tape.Note, action: world.Action{At: a.Now()}, about: about, text: text})
		a.flush()
	}
}

// Notes lists the notes of one sort, oldest first.
func (a *Attempt) Notes(about string) []Note {
	var list []Note
	for i := range a.log {
		if e := &a.log[i]; e.kind == tape.Note && e.about == about {
			list = append(list, Note{e.action.At, e.about, e.text})
		}
	}
	return list
}
