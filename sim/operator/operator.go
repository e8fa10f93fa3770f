package operator

import (
	"fmt"

	"steadyneedle/sim/board"
	"steadyneedle/sim/cond"
	"steadyneedle/sim/state"
	"steadyneedle/sim/world"
)

// Operator works through a script.
type Operator struct {
	script   *Script
	hands    Hands
	controls []world.Control
	position []int   // board cell that tells where each control is; −1: none
	after    [][]int // steps before each step
	eyes     eyes
	ids      [][]moveAsks
	fresh    []*ask // programs with time words
	store    []float64

	dice       state.Dice
	done       []bool
	passedOver []bool // ready with a deadline, and another was taken
	step       int    // under way; −1: none
	move       int
	began      bool       // the move has begun
	since      world.Tick // it began then
	pause      world.Tick // idle until then
	hand       float64    // where the hand has brought the control
	goal       float64    // where it is going
	moving     bool
	let        world.Tick // Set: the control may still be travelling until then
	bring      bringing
	stuck      string
	stuckM     int // line of the move that is stuck
}

// ask is a program with its share of the operator's memory.
type ask struct {
	p      *cond.Program
	memory []float64
}

func (a *ask) given() bool               { return a.p != nil }
func (a *ask) true(v []float64) bool     { return a.p.True(v, a.memory) }
func (a *ask) value(v []float64) float64 { return a.p.Value(v, a.memory) }

// moveAsks are one move's programs.
type moveAsks struct{ to, until, watch, cond ask }

// New readies an operator. It fails where the script names what is not there, or cannot be finished.
func New(s *Script, h Hands, k Known) (*Operator, error) {
	if h.Speed == 0 {
		h.Speed = 1
	}
	o := &Operator{script: s, hands: h, controls: k.Controls, eyes: newEyes(&k, h.Eyes), step: -1}
	o.dice.Seed(h.Seed, "operator "+s.Name)
	o.done, o.passedOver = make([]bool, len(s.Steps)), make([]bool, len(s.Steps))
	for i := range k.Controls {
		cell, ok := o.eyes.board.Cell(k.Controls[i].Name)
		if !ok {
			cell = -1
		}
		o.position = append(o.position, cell)
	}
	if err := o.order(); err != nil {
		return nil, err
	}
	return o, o.remember()
}

// order resolves the names in After, and makes sure that every step can be reached.
func (o *Operator) order() error {
	number := map[string]int{}
	for i := range o.script.Steps {
		number[o.script.Steps[i].ID] = i
	}
	for i := range o.script.Steps {
		var list []int
		for _, id := range o.script.Steps[i].After {
			n, ok := number[id]
			if !ok {
				return fmt.Errorf("step %s comes after %s, which is not in the script", o.script.Steps[i].ID, id)
			}
			list = append(list, n)
		}
		o.after = append(o.after, list)
	}
	trial := make([]bool, len(o.done))
	for left := len(trial); left > 0; left-- {
		n := o.ready(trial, nil)
		if n < 0 {
			return fmt.Errorf("the steps wait for one another in a circle")
		}
		trial[n] = true
	}
	return nil
}

// remember gives each program its memory.
func (o *Operator) remember() error {
	slots := 0
	each := func(visit func(p *cond.Program, a *ask)) {
		for i := range o.script.Steps {
			for m := range o.script.Steps[i].Moves {
				mv, a := &o.script.Steps[i].Moves[m], &o.ids[i][m]
				visit(mv.To, &a.to)
				visit(mv.Until, &a.until)
				visit(mv.Watch, &a.watch)
				visit(mv.If, &a.cond)
			}
		}
	}
	for i := range o.script.Steps {
		o.ids = append(o.ids, make([]moveAsks, len(o.script.Steps[i].Moves)))
		for m := range o.script.Steps[i].Moves {
			if err := o.check(&o.script.Steps[i].Moves[m]); err != nil {
				return err
			}
		}
	}
	each(func(p *cond.Program, a *ask) {
		if p != nil {
			slots += p.Slots
		}
	})
	o.store = make([]float64, slots)
	rest := o.store
	each(func(p *cond.Program, a *ask) {
		if p == nil {
			return
		}
		a.p, a.memory = p, rest[:p.Slots:p.Slots]
		rest = rest[p.Slots:]
		if len(p.Fresh) > 0 {
			o.fresh = append(o.fresh, a)
		}
	})
	return nil
}

// check says what a move lacks.
func (o *Operator) check(m *Move) error {
	lacks := ""
	switch {
	case (m.Verb == Set || m.Verb == Turn) && m.To == nil:
		lacks = "where to"
	case m.Verb == Bring && (m.To == nil || m.Watch == nil || m.Within <= 0):
		lacks = "where to, what to watch, or within what"
	case m.Verb == Wait && m.Until == nil && m.WaitS <= 0:
		lacks = "what to wait for"
	case m.Verb == Press && m.Until == nil && m.OverS <= 0:
		lacks = "how long to press"
	case m.Verb > Press:
		lacks = "a verb"
	case m.Verb != Go && m.Verb != Wait && int(m.Control) >= len(o.controls):
		lacks = "a control of this world"
	}
	if lacks != "" {
		return fmt.Errorf("line %d: the move lacks %s", m.Line, lacks)
	}
	return nil
}

// ready picks a step whose forerunners are done: the first in the file, or with dice any of them. A
// step with a deadline that has been passed over once is not passed over again.
func (o *Operator) ready(done []bool, dice *state.Dice) int {
	pick, n := -1, 0
	for i := range done {
		if done[i] || !o.free(i, done) {
			continue
		}
		if dice == nil || o.passedOver[i] {
			return i
		}
		o.passedOver[i] = o.script.Steps[i].Soon
		n++
		if dice.Pick(n) == 0 {
			pick = i
		}
	}
	return pick
}

func (o *Operator) free(i int, done []bool) bool {
	for _, n := range o.after[i] {
		if !done[n] {
			return false
		}
	}
	return true
}

// Done reports whether the script has been worked through, or cannot go on.
func (o *Operator) Done() bool { return o.stuck != "" || o.step < 0 && o.ready(o.done, nil) < 0 }

// Stuck says why the operator cannot go on, and the line of the script; empty while all is well.
func (o *Operator) Stuck() (why string, line int) { return o.stuck, o.stuckM }

// Refused tells the operator that what it tried is impossible. It gives up.
func (o *Operator) Refused(err error) { o.giveUp("refused: " + err.Error()) }

func (o *Operator) giveUp(why string) {
	if o.stuck != "" {
		return
	}
	o.stuck = why
	if o.step >= 0 {
		s := &o.script.Steps[o.step]
		o.stuck = "step " + s.ID + ": " + why
		if o.move < len(s.Moves) {
			o.stuckM = s.Moves[o.move].Line
		}
	}
}

// Step gives the hands tick now. r is the newest reading; it is looked at ten times a second, on the
// beat. What the operator does is appended to out.
func (o *Operator) Step(now world.Tick, r *world.Reading, out []world.Action) []world.Action {
	if o.stuck != "" {
		return out
	}
	looked := r.At == now && now%board.Beat == 0
	if looked {
		o.eyes.look(r)
		for _, a := range o.fresh {
			a.p.Refresh(o.eyes.board.V, a.memory)
		}
	}
	if now < o.pause {
		return out
	}
	if o.step < 0 && !o.take() {
		return out
	}
	if o.move >= len(o.script.Steps[o.step].Moves) {
		o.done[o.step], o.step = true, -1
		return out
	}
	m, a := &o.script.Steps[o.step].Moves[o.move], &o.ids[o.step][o.move]
	over := false
	if out, over = o.work(m, a, now, looked, out); over {
		o.move++
		o.began = false
		o.pause = now + world.TicksIn(o.dice.Between(0, o.hands.PauseS))
	}
	return out
}

// take begins the next step.
func (o *Operator) take() bool {
	var dice *state.Dice
	if o.hands.Shuffle {
		dice = &o.dice
	}
	o.step = o.ready(o.done, dice)
	o.move, o.began = 0, false
	return o.step >= 0
}

// Walk visits what the operator remembers and is about.
func (o *Operator) Walk(w *state.Walker) {
	w.Floats(o.store)
	w.Floats(o.eyes.seen)
	o.eyes.board.Walk(w)
	place := uint64(o.eyes.place)
	w.Word(&place)
	o.eyes.place = world.Place(place)
	o.dice.Walk(w)
	for i := range o.done {
		w.Bool(&o.done[i])
		w.Bool(&o.passedOver[i])
	}
	w.Int(&o.step)
	w.Int(&o.move)
	w.Bool(&o.began)
	w.Int64((*int64)(&o.since))
	w.Int64((*int64)(&o.pause))
	w.Float(&o.hand)
	w.Float(&o.goal)
	w.Bool(&o.moving)
	w.Int64((*int64)(&o.let))
	o.bring.walk(w)
	if w.Loading() {
		o.stuck, o.stuckM = "", 0
		o.eyes.board.Restore(o.eyes.seen)
	}
}
