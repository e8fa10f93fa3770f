package judge

import (
	"testing"

	"steadyneedle/sim/board"
	"steadyneedle/sim/cond"
	"steadyneedle/sim/state"
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

func TestNever(t *testing.T) {
	rule := Rule{ID: "dry", Kind: Never, When: flag(cellA), For: 300, Unless: flag(cellB)}
	s := newStage(t, 0, rule)
	s.set(cellA, 1)
	s.run(290)
	s.set(cellA, 0)
	s.run(60)
	s.found(0) // shorter than allowed
	s.set(cellA, 1)
	s.run(320) // from tick 350
	s.found(350, "dry")
	s.run(600)
	s.found(350, "dry") // the same episode
	s.set(cellA, 0)
	s.run(60)
	s.set(cellA, 1)
	s.run(400)
	s.found(350, "dry") // merged: it came back within 15 s
	s.set(cellA, 0)
	s.run(16 * 60)
	s.set(cellA, 1)
	s.run(400)
	s.found(350, "dry", "dry")

	s = newStage(t, 0, rule)
	s.set(cellA, 1)
	s.set(cellB, 1)
	s.run(1000)
	s.found(0) // suspended
}

func TestGuardOnAction(t *testing.T) {
	rule := Rule{ID: "chocks", Kind: Guard, On: []world.ControlID{0}, Need: flag(cellA),
		When: yes(func(v []float64) bool { return v[cellValue] > v[cellWheel] })} // raised
	turn := func(v float64) world.Action { return world.Action{Control: 0, Value: v} }

	s := newStage(t, 0, rule)
	s.set(cellWheel, 0.5)
	s.run(60)
	s.run(60, turn(0.4)) // lowered
	s.set(cellA, 1)
	s.run(60)
	s.run(60, turn(0.6)) // raised with what it needs
	s.found(0)
	s.set(cellA, 0)
	s.run(60)
	by := turn(0.7)
	by.By = world.Evaluator
	s.run(60, by) // another's act is not judged
	s.found(0)
	s.run(1, turn(0.7))
	sheet := s.found(360, "chocks")
	if sheet.Findings[0].Place != world.Panel {
		t.Errorf("place %v, want where the action was taken", sheet.Findings[0].Place)
	}
	for range 30 {
		s.run(1, turn(0.8)) // a hand that goes on moving
	}
	s.found(360, "chocks")
}

func TestGuardOnState(t *testing.T) {
	rule := Rule{ID: "unready", Kind: Guard, When: flag(cellA), Need: flag(cellB), For: 60}
	s := newStage(t, 0, rule)
	s.run(60)
	s.set(cellA, 1)
	s.run(30)
	s.set(cellA, 0)
	s.run(30)
	s.found(0) // not for long enough
	s.set(cellB, 1)
	s.set(cellA, 1)
	s.run(6)
	s.set(cellB, 0)
	s.run(200)
	s.found(0) // what it needs held when it began
	s.set(cellA, 0)
	s.run(30)
	s.set(cellA, 1)
	s.run(30)
	s.set(cellB, 1) // too late
	s.run(200)
	s.found(60+60+206+30, "unready")
}

func TestOrder(t *testing.T) {
	rule := Rule{ID: "order", Kind: Order, When: flag(cellA), First: flag(cellB)}
	s := newStage(t, 0, rule)
	s.set(cellB, 1)
	s.run(60)
	s.set(cellB, 0) // it has been
	s.run(60)
	s.set(cellA, 1)
	s.run(60)
	s.found(0)

	s = newStage(t, 0, rule)
	s.run(120)
	s.set(cellA, 1)
	s.run(60)
	s.set(cellB, 1)
	s.run(60)
	s.found(120, "order")
}

func TestBand(t *testing.T) {
	rule := Rule{ID: "off", Kind: Band, Value: read(cellNeedle), Target: read(cellWanted), Tolerance: fixed(15),
		While: flag(cellA), For: 300, ShowUnit: "psi", Expected: "{wanted} ± 15 psi",
		Grace: []Grace{{When: flag(cellB)}}}
	start := func(grace world.Tick) *stage {
		s := newStage(t, grace, rule)
		s.set(cellNeedle, 0)
		s.run(120)
		s.set(cellNeedle, 134.8)
		s.run(60)
		s.set(cellA, 1)
		s.run(60)
		s.found(0) // not judged before While, nor for the needle's way up
		return s
	}
	s := start(0) // tick 240
	s.set(cellNeedle, 160)
	s.run(280)
	s.set(cellNeedle, 135)
	s.run(120)
	s.found(0) // back in time
	s.set(cellNeedle, 160)
	s.run(400)
	sheet := s.found(640+30, "off") // averaged over 1 s, 25 psi off passes 15 after 0.6 s
	if f := sheet.Findings[0]; f.Expected != "134.8 psi ± 15 psi" || f.Measured != "160 psi" {
		t.Errorf("expected %q, measured %q", f.Expected, f.Measured)
	}

	s = start(0) // flicker about the limit: half the time outside
	for range 20 {
		s.set(cellNeedle, 134.8+15.5)
		s.run(60)
		s.set(cellNeedle, 134.8+14.5)
		s.run(60)
	}
	s.found(240+55, "off") // the average needs its second
	s = start(0)
	for range 20 { // in and well out of it, never for long
		s.set(cellNeedle, 134.8+17)
		s.run(120)
		s.set(cellNeedle, 134.8+10)
		s.run(120)
	}
	s.found(0)

	s = start(600)
	s.set(cellB, 1)
	s.set(cellNeedle, 180)
	s.run(600)
	s.set(cellB, 0)
	s.set(cellNeedle, 135)
	s.run(120)
	s.found(0) // excused, at the budget's cost
	s.set(cellB, 1)
	s.set(cellNeedle, 180)
	s.run(600)
	s.found(960+38, "off") // the average takes a third of a second, what was left of the budget the rest
}

func TestGraceBudgetIsSharedAndPaidOnce(t *testing.T) {
	band := func(id string) Rule {
		return Rule{ID: id, Kind: Band, Value: read(cellNeedle), Target: fixed(0), Tolerance: fixed(5),
			Grace: []Grace{{When: flag(cellB)}}}
	}
	s := newStage(t, 600, band("one"), band("two"))
	s.set(cellB, 1)
	s.set(cellNeedle, 50)
	s.run(590)
	s.found(0) // both live on one budget, and pay once
	s.run(60)
	if n := len(s.j.Sheet().Findings); n != 2 {
		t.Errorf("%d findings after the budget, want both", n)
	}
}

func TestRate(t *testing.T) {
	rule := Rule{ID: "slam", Kind: Rate, On: []world.ControlID{0}, MinTravelS: 3, Span: 0.5, When: flag(cellC)}
	move := func(s *stage, from, to float64, ticks int) {
		for i := range ticks {
			s.set(cellWheel, from+(to-from)*float64(i+1)/float64(ticks))
			s.run(1)
		}
	}
	s := newStage(t, 0, rule)
	s.run(60)
	move(s, 0, 1, 180) // exactly 3 s
	move(s, 1, 0.6, 12)
	s.run(300) // fast, but short of the span
	move(s, 0.6, 0, 110)
	s.found(0)
	s.run(300)
	at := s.now
	move(s, 0, 1, 60)
	sheet := s.found(at-2, "slam")
	if m := sheet.Findings[0].Measured; m != "1 s for full travel" {
		t.Errorf("measured %q", m)
	}

	s = newStage(t, 0, rule)
	s.run(200)
	s.set(cellC, 1) // the surge
	s.run(60)
	s.found(200, "slam")
}

func TestDue(t *testing.T) {
	within := Rule{ID: "late", Kind: Due, From: flag(cellA), Within: 600, Done: flag(cellB)}
	s := newStage(t, 0, within)
	s.run(100)
	s.set(cellA, 1)
	s.run(300)
	s.set(cellB, 1)
	s.run(60)
	s.set(cellB, 0) // done in time, and undone: not this rule's business
	s.run(600)
	s.found(0)

	s = newStage(t, 0, within)
	s.run(100)
	s.set(cellA, 1)
	s.run(590)
	s.found(0)
	s.run(20)
	s.set(cellB, 1)
	s.run(20)
	s.found(700, "late")

	by := Rule{ID: "missing", Kind: Due, By: flag(cellC), Done: flag(cellB)}
	s = newStage(t, 0, by)
	s.set(cellB, 1)
	s.run(100)
	s.set(cellB, 0)
	s.run(100)
	s.set(cellC, 1)
	s.run(60)
	s.found(200, "missing") // at that moment it must hold
	s = newStage(t, 0, by)
	s.run(100)
	s.set(cellB, 1)
	s.run(100)
	s.set(cellC, 1)
	s.run(60)
	s.set(cellB, 0)
	s.run(600)
	s.found(0)

	s = newStage(t, 0, within) // the attempt ends at the deadline's very tick
	s.set(cellA, 1)
	s.run(606)
	if err := s.j.Finalize(); err != nil {
		t.Fatal(err)
	}
	s.found(600, "late")
}

func TestAnswer(t *testing.T) {
	rule := Rule{ID: "static", Kind: Answer, On: []world.ControlID{2}, Target: read(cellNeedle), Tolerance: fixed(5), By: flag(cellA)}
	say := func(v float64) world.Action { return world.Action{Control: 2, Value: v} }
	start := func(r Rule) *stage {
		s := newStage(t, 0, r)
		s.set(cellNeedle, 65)
		s.run(120)
		return s
	}
	s := start(rule)
	s.run(60, say(70)) // right, to the limit
	s.set(cellNeedle, 40)
	s.run(120) // the needle may move afterwards
	s.set(cellA, 1)
	s.run(60)
	s.found(0)

	s = start(rule)
	s.run(60, say(50))
	s.run(60, say(66)) // put right before it counts
	s.set(cellA, 1)
	s.run(60)
	s.found(0)

	s = start(rule)
	s.run(60, say(50))
	s.found(0) // not judged yet
	s.set(cellA, 1)
	s.run(60)
	if f := s.found(120, "static").Findings[0]; f.Measured != "50 psi" || f.Seen < 180 {
		t.Errorf("measured %q, seen at %d", f.Measured, f.Seen)
	}

	s = start(rule)
	s.set(cellA, 1)
	s.run(60)
	if f := s.found(120, "static").Findings[0]; f.Measured != "not said" {
		t.Errorf("measured %q", f.Measured)
	}

	rule.By = nil
	s = start(rule)
	s.run(60, say(71))
	s.found(120, "static")
}

func TestSaid(t *testing.T) {
	by := Rule{ID: "unconfirmed", Kind: Said, By: flag(cellA), Need: flag(cellB)}
	s := newStage(t, 0, by)
	s.set(cellB, 1)
	s.run(60)
	s.set(cellA, 1)
	s.run(60)
	s.set(cellB, 0)
	s.run(60)
	s.found(0)
	s = newStage(t, 0, by)
	s.run(60)
	s.set(cellA, 1)
	s.run(60)
	s.found(60, "unconfirmed")

	false_ := Rule{ID: "false", Kind: Said, On: []world.ControlID{1}, When: flag(cellA)}
	s = newStage(t, 0, false_)
	s.run(60, world.Action{Control: 1, Value: 1})
	s.found(0)
	s.set(cellA, 1)
	s.run(60)
	s.run(60, world.Action{Control: 1, Value: 1})
	s.found(120, "false")
}

func TestAbsorption(t *testing.T) {
	cause := Rule{ID: "cause", Kind: Never, Severity: Error, When: flag(cellA), Absorbs: []string{"effect"}, AbsorbFor: 600}
	effect := Rule{ID: "effect", Kind: Never, Severity: Error, When: flag(cellB), Absorbs: []string{"far"}}
	far := Rule{ID: "far", Kind: Never, Severity: Error, When: flag(cellC)}

	s := newStage(t, 0, effect, far, cause)
	s.run(60)
	s.set(cellB, 1) // the effect is seen before its cause
	s.run(60)
	s.set(cellA, 1)
	s.set(cellC, 1)
	s.run(60)
	sheet := s.found(120, "cause")
	if len(sheet.Consequences) != 2 || sheet.Consequences[0].Of != "cause" || sheet.Consequences[1].Of != "effect" {
		t.Errorf("consequences: %+v", sheet.Consequences)
	}
	if sheet.Score != 90 {
		t.Errorf("score %g, want 90: one error", sheet.Score)
	}

	s = newStage(t, 0, effect, cause)
	s.run(60)
	s.set(cellB, 1)
	s.run(700)
	s.set(cellA, 1)
	s.run(60)
	s.found(60, "effect", "cause") // too far apart: two causes

	effect.Absorbs = []string{"cause"}
	s = newStage(t, 0, effect, cause)
	s.set(cellB, 1)
	s.run(60)
	s.set(cellA, 1)
	s.run(60)
	s.found(0, "effect") // of two that claim each other the earlier stands
}

func TestScore(t *testing.T) {
	s := newStage(t, 0,
		Rule{ID: "m", Kind: Never, Severity: Minor, When: flag(cellA)},
		Rule{ID: "e", Kind: Never, Severity: Error, When: flag(cellB)},
		Rule{ID: "u", Kind: Never, Severity: Unsafe, When: flag(cellC)})
	s.set(cellA, 1)
	s.run(12)
	if sheet := s.j.Sheet(); sheet.Score != 98 || !sheet.Passed {
		t.Errorf("a minor finding: %g, passed %v", sheet.Score, sheet.Passed)
	}
	s.set(cellB, 1)
	s.run(12)
	if sheet := s.j.Sheet(); sheet.Score != 88 || !sheet.Passed {
		t.Errorf("an error more: %g, passed %v", sheet.Score, sheet.Passed)
	}
	s.v[cellB] = 0
	s.set(cellC, 1)
	s.run(12)
	if sheet := s.j.Sheet(); sheet.Score != 58 || sheet.Passed || !s.j.UnsafeFound() {
		t.Errorf("an unsafe act more: %g, passed %v", sheet.Score, sheet.Passed)
	}
}

// A rewind must neither forget a finding nor make it twice.
func TestRewind(t *testing.T) {
	rules := []Rule{
		{ID: "n", Kind: Never, When: flag(cellA), For: 120, Once: true, Expected: "below {needle}", Show: read(cellNeedle)},
		{ID: "d", Kind: Due, From: flag(cellA), Within: 300, Done: flag(cellB)},
	}
	s := newStage(t, 0, rules...)
	s.set(cellA, 1)
	s.set(cellNeedle, 12)
	s.run(200)
	w := state.Saver(nil)
	s.board.Walk(&w)
	s.j.Walk(&w)
	at := s.now
	s.run(300)
	want := s.j.Sheet()

	r := newStage(t, 0, rules...)
	l := state.Loader(w.Saved())
	r.board.Walk(&l)
	r.j.Walk(&l)
	if !l.OK() {
		t.Fatal("the load does not fit")
	}
	r.now = at
	copy(r.v, s.v)
	r.board.Restore(r.v)
	r.run(300)
	got := r.j.Sheet()
	if len(got.Findings) != 2 || len(want.Findings) != 2 {
		t.Fatalf("%d findings, want 2 and %d", len(got.Findings), len(want.Findings))
	}
	for i := range want.Findings {
		if got.Findings[i] != want.Findings[i] {
			t.Errorf("%+v\nwant %+v", got.Findings[i], want.Findings[i])
		}
	}
}

func TestBadRulesAreRefused(t *testing.T) {
	b := board.New(testSignals, nil)
	for _, r := range []Rule{
		{ID: "x", Kind: Order, When: flag(cellA)},
		{ID: "x", Kind: Guard},
		{ID: "x", Kind: Never},
		{ID: "x", Kind: Band, Value: read(cellA)},
		{ID: "x", Kind: Rate, On: []world.ControlID{0}},
		{ID: "x", Kind: Due, Done: flag(cellA)},
		{ID: "x", Kind: Answer, Target: fixed(1), Tolerance: fixed(1)},
		{ID: "x", Kind: Outcome, At: flag(cellA), Test: &ForkTest{Name: "relief-shut"}}, // no world to copy
		{ID: "x", Kind: Said},
		{ID: "x", Kind: kindCount, When: flag(cellA)},
		{ID: "x", Kind: Never, When: flag(cellA), Expected: "{nobody}"},
		{ID: "x", Kind: Guard, On: []world.ControlID{99}},
	} {
		if _, err := New(Options{Rules: []Rule{r}, Board: b, Controls: testControls}); err == nil {
			t.Errorf("kind %d with %+v was taken", r.Kind, r)
		}
	}
}
