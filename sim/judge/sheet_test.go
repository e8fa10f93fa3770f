package judge

import (
	"testing"

	"steadyneedle/sim/board"
	"steadyneedle/sim/state"
	"steadyneedle/sim/world"
)

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
	if len(sheet.Consequences) != 2 || sheet.Consequences[0].Of != "cause" || sheet.Consequences[1].Of != "cause" { // what follows from a consequence is the cause's too
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

// A finding says which of several things was amiss, as it stood when the judge was certain, and then the
// number.
func TestFound(t *testing.T) {
	rule := Rule{ID: "n", Kind: Never, When: flag(cellA), For: 60, Show: read(cellNeedle), ShowUnit: "psi",
		Found: []Found{{flag(cellB), "valve open"}, {flag(cellC), "cap off"}, {flag(cellA), "door open"}}}
	s := newStage(t, 0, rule)
	s.set(cellNeedle, 12)
	s.set(cellB, 1)
	s.set(cellA, 1)
	s.run(30)
	s.set(cellB, 0) // shut again before the judge is certain
	s.set(cellC, 1)
	s.run(120)
	s.set(cellC, 0)
	s.run(60)
	if f := s.j.Sheet().Findings; len(f) != 1 || f[0].Measured != "cap off; door open; 12 psi" || !f[0].Amiss {
		t.Errorf("%+v", f)
	}
	rule.Found = make([]Found, maxFound+1)
	if rule.check(true) == nil {
		t.Error("more things than a finding can hold are taken")
	}
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
	if sheet := s.j.Sheet(); sheet.Score != 58 || sheet.Passed {
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

// An error that is put right counts as minor, and the sheet says when; a rewind forgets it.
func TestMended(t *testing.T) {
	s := newStage(t, 0, Rule{ID: "left", Kind: Never, Severity: Error, When: flag(cellA), Mended: flag(cellB)})
	s.set(cellB, 1) // before there is anything to put right
	s.run(60)
	s.set(cellB, 0)
	s.set(cellA, 1)
	s.run(60)
	if f := s.found(60, "left").Findings[0]; f.Severity != Error || f.Mended != 0 || f.Measured != "" {
		t.Errorf("before it is put right: %+v", f)
	}
	w := state.Saver(nil)
	s.j.Walk(&w)
	saved := w.Saved()
	s.run(3540)
	s.set(cellB, 1)
	s.run(60)
	sheet := s.found(60, "left")
	if f := sheet.Findings[0]; f.Severity != Minor || f.Mended.Seconds() < 61 || f.Measured != "put right at 01:01" || f.Amiss || sheet.Score != 98 {
		t.Errorf("after: %+v, score %g", f, sheet.Score)
	}
	l := state.Loader(saved)
	s.j.Walk(&l)
	if f := s.j.Sheet().Findings[0]; f.Severity != Error || f.Mended != 0 {
		t.Errorf("after a rewind: %+v", f)
	}
	if _, err := New(Options{Rules: []Rule{{ID: "u", Kind: Never, Severity: Unsafe, When: flag(cellA), Mended: flag(cellB)}}, Board: s.j.board, Controls: testControls}); err == nil {
		t.Error("an unsafe act that can be put right was taken")
	}
}
