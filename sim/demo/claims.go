package demo

import (
	"steadyneedle/sim/board"
	"steadyneedle/sim/cond"
	"steadyneedle/sim/state"
)

// claims follows every claim's conditions from the beginning, for some look back over time, and settles
// each when its step is done.
type claims struct {
	demo   *Demonstration
	v      []float64 // the board's cells, with the numbers kept so far
	first  int       // cell of the first kept number
	memory [][]float64
	store  []float64

	done     []bool // by step
	measured []float64
	holds    []bool
	touched  []bool
}

// programs visits all programs in the order in which their memory lies.
func (d *Demonstration) programs(visit func(p *cond.Program)) {
	for i := range d.Steps {
		s := &d.Steps[i]
		for k := range s.Keep {
			visit(s.Keep[k].Is)
		}
		for k := range s.Claims {
			visit(s.Claims[k].Measured)
			visit(s.Claims[k].Holds)
		}
	}
}

func newClaims(d *Demonstration) claims {
	c := claims{demo: d, done: make([]bool, len(d.Steps))}
	slots, n := 0, 0
	d.programs(func(p *cond.Program) { slots += p.Slots })
	c.store = make([]float64, slots)
	rest := c.store
	d.programs(func(p *cond.Program) {
		c.memory = append(c.memory, rest[:p.Slots:p.Slots])
		rest = rest[p.Slots:]
	})
	for i := range d.Steps {
		n += len(d.Steps[i].Claims)
	}
	c.measured, c.holds, c.touched = make([]float64, n), make([]bool, n), make([]bool, n)
	return c
}

// look lets time words see the present, ten times a second.
func (c *claims) look(b *board.Board) {
	if b.At%board.Beat != 0 {
		return
	}
	c.see(b)
	n := 0
	c.demo.programs(func(p *cond.Program) {
		p.Refresh(c.v, c.memory[n])
		n++
	})
}

// see takes over the board's cells, but for the kept numbers.
func (c *claims) see(b *board.Board) {
	if c.v == nil {
		c.v = append(c.v, b.V...)
		c.first = len(c.v) - c.demo.Kept
	}
	copy(c.v[:c.first], b.V)
}

// settle keeps step i's numbers and judges its claims.
func (c *claims) settle(i int, b *board.Board, touched bool) {
	c.see(b)
	program, claim := 0, 0
	for k := range c.demo.Steps[:i] {
		program += len(c.demo.Steps[k].Keep) + 2*len(c.demo.Steps[k].Claims)
		claim += len(c.demo.Steps[k].Claims)
	}
	s := &c.demo.Steps[i]
	for k := range s.Keep {
		c.v[s.Keep[k].Cell] = s.Keep[k].Is.Value(c.v, c.memory[program])
		program++
	}
	for k := range s.Claims {
		c.measured[claim] = s.Claims[k].Measured.Value(c.v, c.memory[program])
		c.holds[claim] = s.Claims[k].Holds.True(c.v, c.memory[program+1])
		c.touched[claim] = touched
		program += 2
		claim++
	}
	c.done[i] = true
}

// limit is the level of step i's limit, by the numbers kept so far; ok: it has one.
func (c *claims) limit(i int) (v float64, ok bool) {
	l := c.demo.Steps[i].Limit
	if l == nil || c.v == nil {
		return 0, false
	}
	return l.Is.Value(c.v, nil), true
}

func (c *claims) results(d *Demonstration) []Result {
	var list []Result
	n := 0
	for i := range d.Steps {
		s := &d.Steps[i]
		for k := range s.Claims {
			if c.done[i] {
				list = append(list, Result{Step: s.ID, Text: s.Claims[k].Text, Measured: c.measured[n], Unit: s.Claims[k].Unit, Span: s.Claims[k].Span, Answer: s.Claims[k].Answer, Holds: c.holds[n], Disturbed: c.touched[n]})
			}
			n++
		}
	}
	return list
}

func (c *claims) walk(w *state.Walker) {
	w.Floats(c.store)
	w.Floats(c.v)
	for i := range c.done {
		w.Bool(&c.done[i])
	}
	w.Floats(c.measured)
	for i := range c.holds {
		w.Bool(&c.holds[i])
		w.Bool(&c.touched[i])
	}
}
