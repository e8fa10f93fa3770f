package crew

import (
	"fmt"

	"steadyneedle/sim/board"
	"steadyneedle/sim/cond"
	"steadyneedle/sim/state"
	"steadyneedle/sim/world"
)

// Runner lets the people act. It looks at the board ten times a second, each cue on its own tick.
type Runner struct {
	cues  []Cue
	state []progress
	store []float64
	deeds int // most that one tick can bring
}

// progress is where one cue stands.
type progress struct {
	dice    state.Dice
	memory  [][]float64 // When, Until, then each deed's value
	held    bool        // When held at the last look
	pending bool        // it will be done at the tick due
	due     world.Tick
	again   bool // what is pending is a repetition
	done    bool // at least once
}

// NewRunner makes people of the drill's cues. Each cue has its own dice, named by its ID.
func NewRunner(cues []Cue, seed uint64) (*Runner, error) {
	r := &Runner{cues: cues, state: make([]progress, len(cues))}
	slots := 0
	for i := range cues {
		c := &cues[i]
		if c.When == nil {
			return nil, fmt.Errorf("cue %s: it has no when", c.ID)
		}
		r.state[i].dice.Seed(seed, "cue "+c.ID)
		for _, p := range c.programs() {
			slots += slotsOf(p)
		}
		r.deeds += len(c.Do)
	}
	r.store = make([]float64, slots)
	rest := r.store
	for i := range cues {
		for _, p := range cues[i].programs() {
			n := slotsOf(p)
			r.state[i].memory = append(r.state[i].memory, rest[:n:n])
			rest = rest[n:]
		}
	}
	return r, nil
}

// programs lists a cue's programs in the order in which their memory lies.
func (c *Cue) programs() []*cond.Program {
	list := []*cond.Program{c.When, c.Until}
	for _, d := range c.Do {
		list = append(list, d.Value)
	}
	return list
}

func slotsOf(p *cond.Program) int {
	if p == nil {
		return 0
	}
	return p.Slots
}

// Deeds is the largest number of actions that one Step can append.
func (r *Runner) Deeds() int { return r.deeds }

// Step looks at the board as the last tick left it and appends what people do in tick now.
func (r *Runner) Step(now world.Tick, b *board.Board, out []world.Action) []world.Action {
	for i := range r.cues {
		s := &r.state[i]
		if (now+world.Tick(i))%board.Beat == 0 {
			r.look(i, now, b)
		}
		if s.pending && now >= s.due {
			out = r.act(i, now, b, out)
		}
	}
	return out
}

// look notices that a cue's moment has come.
func (r *Runner) look(i int, now world.Tick, b *board.Board) {
	c, s := &r.cues[i], &r.state[i]
	c.When.Refresh(b.V, s.memory[0])
	if c.Until != nil {
		c.Until.Refresh(b.V, s.memory[1])
	}
	for k := range c.Do {
		if p := c.Do[k].Value; p != nil {
			p.Refresh(b.V, s.memory[2+k])
		}
	}
	holds := c.When.True(b.V, s.memory[0])
	if holds && !s.held && !s.pending && !(c.Once && s.done) {
		s.pending, s.again = true, false
		s.due = now + world.TicksIn(c.Delay.draw(&s.dice)) + c.Extra
	}
	s.held = holds
}

// act does a cue's deeds, unless their reason has gone meanwhile, and settles whether they come again:
// until Until holds; without Until, while When does.
func (r *Runner) act(i int, now world.Tick, b *board.Board, out []world.Action) []world.Action {
	c, s := &r.cues[i], &r.state[i]
	s.pending = false
	if c.Until.True(b.V, s.memory[1]) || s.again && c.Until == nil && !s.held {
		return out
	}
	for k := range c.Do {
		d := &c.Do[k]
		v := 1.0
		if d.Value != nil {
			v = d.Value.Value(b.V, s.memory[2+k])
		}
		out = append(out, world.Action{At: now, By: c.By, From: world.Walking, Control: d.Control, Value: v})
	}
	s.done = true
	if c.Again > 0 {
		s.pending, s.again, s.due = true, true, now+c.Again
	}
	return out
}

// Walk visits where each cue stands.
func (r *Runner) Walk(w *state.Walker) {
	w.Floats(r.store)
	for i := range r.state {
		s := &r.state[i]
		s.dice.Walk(w)
		w.Bool(&s.held)
		w.Bool(&s.pending)
		w.Bool(&s.again)
		w.Int64((*int64)(&s.due))
		w.Bool(&s.done)
	}
}
