package attempt

import (
	"io"

	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// entry is one line of the recording, kept.
type entry struct {
	kind   tape.Kind
	action world.Action
	hash   uint64
	about  string // of a note
	text   string
}

// write keeps a line of the recording, and sends it out.
func (a *Attempt) write(e entry) {
	a.log = append(a.log, e)
	a.hear(&a.log[len(a.log)-1])
	if a.tape != nil {
		e.to(a.tape)
		if e.kind == tape.Hash {
			a.note(a.tape.Err())
		}
	}
}

// flush sends out the lines of a second that is not yet full.
func (a *Attempt) flush() {
	if a.tape != nil {
		a.tape.Flush()
	}
}

func (e *entry) to(t *tape.Writer) {
	switch e.kind {
	case tape.Action:
		t.Action(&e.action)
	case tape.Derived:
		t.Derived(&e.action)
	case tape.Hash:
		t.Hash(e.action.At, e.hash)
	case tape.Mark:
		t.Mark(e.action.At, e.text)
	case tape.Note:
		t.Note(e.action.At, e.about, e.text)
	}
}

// WriteTape writes the whole recording so far; an attempt that is over gets its end line.
func (a *Attempt) WriteTape(w io.Writer) error {
	t, err := tape.NewWriter(w, a.Header(), a.Scene.World.Controls())
	if err != nil {
		return err
	}
	for i := range a.log {
		a.log[i].to(t)
	}
	if a.closed {
		t.End(a.Now(), a.hash)
		for i := range a.rulings {
			a.rulings[i].to(t)
		}
		t.Flush()
	}
	return t.Err()
}

// Said lists what has been said and shown, by anybody, before a moment.
func (a *Attempt) Said(before world.Tick) []world.Action {
	var list []world.Action
	controls := a.Scene.World.Controls()
	for i := range a.log {
		e := &a.log[i]
		if e.kind != tape.Action && e.kind != tape.Derived || e.action.At >= before {
			continue
		}
		if k := controls[e.action.Control].Kind; k == world.Speech || k == world.Gesture {
			list = append(list, e.action)
		}
	}
	return list
}

// Marks lists the evaluator's remarks.
func (a *Attempt) Marks() []Mark {
	var list []Mark
	for i := range a.log {
		if e := &a.log[i]; e.kind == tape.Mark {
			list = append(list, Mark{e.action.At, e.text})
		}
	}
	return list
}

// Mark is a remark of the evaluator's at a moment.
type Mark struct {
	At   world.Tick
	Text string
}
