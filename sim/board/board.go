package board

import (
	"fmt"

	"steadyneedle/sim/cond"
	"steadyneedle/sim/state"
	"steadyneedle/sim/world"
)

// Beat is the number of ticks between two refreshes of one program: 10 Hz.
const Beat world.Tick = 6

// Value is a number of the drill's own, computed from the cells before it.
type Value struct {
	Name, Unit, Doc string
	Is              *cond.Program
}

// ValueCell is the name of the cell that holds the value of the action being judged.
const ValueCell = "value"

// Board is the table: world signals by SignalID, then ValueCell, then the drill's values in order.
type Board struct {
	At     world.Tick
	V      []float64
	names  []string
	units  []string
	n      int // world signals
	values []Value
	memory [][]float64 // of each value's program
	store  []float64
}

// New makes a board for a world with these signals. Its cells are 0 until See.
func New(signals []world.Signal, values []Value) *Board {
	b := &Board{At: -1, n: len(signals), values: values, V: make([]float64, len(signals)+1+len(values))}
	for _, s := range signals {
		b.names, b.units = append(b.names, s.Name), append(b.units, s.Unit)
	}
	b.names, b.units = append(b.names, ValueCell), append(b.units, "")
	slots := 0
	for _, v := range values {
		b.names, b.units = append(b.names, v.Name), append(b.units, v.Unit)
		slots += v.Is.Slots
	}
	b.store = make([]float64, slots)
	rest := b.store
	for _, v := range values {
		b.memory = append(b.memory, rest[:v.Is.Slots:v.Is.Slots])
		rest = rest[v.Is.Slots:]
	}
	return b
}

// See takes over the signals of tick at, unless it has them already, and works out the drill's values.
// A beat's tick also refreshes their time words, so See is to be called every tick.
func (b *Board) See(at world.Tick, signals []float64) {
	if at == b.At {
		return
	}
	b.At = at
	copy(b.V[:b.n], signals)
	b.V[b.n] = 0
	beat := at%Beat == 0
	for i := range b.values {
		p := b.values[i].Is
		if beat {
			p.Refresh(b.V, b.memory[i])
		}
		b.V[b.n+1+i] = p.Value(b.V, b.memory[i])
	}
}

// SetValue fills the cell of the action at hand.
func (b *Board) SetValue(v float64) { b.V[b.n] = v }

// Signals is the part of the table that See copies.
func (b *Board) Signals() []float64 { return b.V[:b.n] }

// Cell finds a cell by name.
func (b *Board) Cell(name string) (int, bool) {
	for i, n := range b.names {
		if n == name {
			return i, true
		}
	}
	return 0, false
}

// NeedCell finds a cell that must be there.
func (b *Board) NeedCell(name string) (int, error) {
	if i, ok := b.Cell(name); ok {
		return i, nil
	}
	return 0, fmt.Errorf("no signal or value is named %q", name)
}

// Unit is a cell's unit; empty for a bare number.
func (b *Board) Unit(cell int) string { return b.units[cell] }

// Names lists the cells' names.
func (b *Board) Names() []string { return b.names }

// Walk visits the memory of the time words in the values. The cells themselves follow from the truth:
// after a load they are to be filled again by Restore.
func (b *Board) Walk(w *state.Walker) {
	w.Int64((*int64)(&b.At))
	w.Floats(b.store)
}

// Restore fills the cells again after a load, from the truth of the tick that was saved.
func (b *Board) Restore(signals []float64) {
	copy(b.V[:b.n], signals)
	for i := range b.values {
		b.V[b.n+1+i] = b.values[i].Is.Value(b.V, b.memory[i])
	}
}
