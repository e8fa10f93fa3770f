package judge

import (
	"testing"

	"steadyneedle/sim/board"
	"steadyneedle/sim/cond"
	"steadyneedle/sim/world"
)

// The hand-written world of these tests: five bare numbers, a place, a wheel and a phrase.
const (
	cellA = iota
	cellB
	cellC
	cellNeedle
	cellPlace
	cellWheel
	cellValue
	cellWanted
)

var (
	testSignals  = []world.Signal{{Name: "a"}, {Name: "b"}, {Name: "c"}, {Name: "needle", Unit: "psi"}, {Name: "place"}, {Name: "wheel"}}
	testControls = []world.Control{
		{Name: "wheel", Max: 1},
		{Name: "say_set", Kind: world.Speech, Max: 1},
		{Name: "say_reading", Kind: world.Speech, Max: 400, Unit: "psi"},
	}
)

func num(f func(s []float64) float64) *cond.Program {
	return &cond.Program{Result: func(s, _ []float64) float64 { return f(s) }}
}

func yes(f func(s []float64) bool) *cond.Program {
	return num(func(s []float64) float64 {
		if f(s) {
			return 1
		}
		return 0
	})
}

func flag(cell int) *cond.Program   { return yes(func(s []float64) bool { return s[cell] != 0 }) }
func read(cell int) *cond.Program   { return num(func(s []float64) float64 { return s[cell] }) }
func fixed(v float64) *cond.Program { return num(func([]float64) float64 { return v }) }

// stage is a judge on a hand-written sequence.
type stage struct {
	t     *testing.T
	j     *Judge
	board *board.Board
	v     []float64
	now   world.Tick
}

func newStage(t *testing.T, grace world.Tick, rules ...Rule) *stage {
	t.Helper()
	b := board.New(testSignals, []board.Value{{Name: "wanted", Unit: "psi", Is: fixed(134.8)}})
	s := &stage{t: t, board: b, v: make([]float64, len(testSignals))}
	j, err := New(Options{Rules: rules, Board: b, Controls: testControls, Grace: grace,
		Scale: Scale{Full: 100, Minor: 2, Error: 10, Unsafe: 30, Pass: 70, UnsafeFails: true}})
	if err != nil {
		t.Fatal(err)
	}
	s.j = j
	b.See(0, s.v)
	return s
}

// run lets so many ticks pass with the numbers as they are, after actions in the first of them.
func (s *stage) run(ticks int, acts ...world.Action) {
	for range ticks {
		for i := range acts {
			acts[i].At, acts[i].From = s.now, world.Panel
		}
		s.j.Before(acts)
		acts = nil
		s.now++
		s.board.See(s.now, s.v)
		s.j.After()
	}
}

func (s *stage) set(cell int, v float64) { s.v[cell] = v }

// found checks the rules found, in order of onset, and the first one's onset (give or take a beat).
func (s *stage) found(onset world.Tick, rules ...string) *Sheet {
	s.t.Helper()
	sheet := s.j.Sheet()
	var got []string
	for _, f := range sheet.Findings {
		got = append(got, f.Rule)
	}
	if len(got) != len(rules) {
		s.t.Fatalf("found %v, want %v", got, rules)
	}
	for i := range got {
		if got[i] != rules[i] {
			s.t.Fatalf("found %v, want %v", got, rules)
		}
	}
	if len(rules) > 0 {
		if from := sheet.Findings[0].From; from < onset || from > onset+board.Beat {
			s.t.Errorf("onset at tick %d, want %d to %d", from, onset, onset+board.Beat)
		}
	}
	return sheet
}
