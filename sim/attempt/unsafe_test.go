package attempt

import (
	"bytes"
	"strings"
	"testing"

	"steadyneedle/sim/drill"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// begunOn is an attempt at the exercise, in which an unsafe act is done, under terms.
func begunOn(t *testing.T, terms drill.OnUnsafe, into *bytes.Buffer) (*Attempt, *operator.Operator) {
	t.Helper()
	d, script := exercise(t)
	o := Options{OnUnsafe: terms, Keys: true}
	if into != nil {
		o.Record, o.Keys = into, false
	}
	a, err := New(d, o)
	if err != nil {
		t.Fatal(err)
	}
	op, err := a.Operator(script, operator.Hands{Seed: 3})
	if err != nil {
		t.Fatal(err)
	}
	return a, op
}

// untilActed works on until the attempt is over or stands.
func untilActed(a *Attempt, op *operator.Operator) {
	var r world.Reading
	acts := make([]world.Action, 0, 16)
	for !a.Finished() && a.Undecided() == nil && a.Now() < 7200 {
		acts = a.Hand(op, &r, acts)
		a.Tick()
	}
}

// replayedAs is what a recording gives when it is worked again.
func replayedAs(t *testing.T, text []byte) *Attempt {
	t.Helper()
	reader, err := tape.NewReader(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	d, _ := exercise(t)
	b, err := Replay(reader, d, Options{})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestUnsafeActStopsTheAttempt(t *testing.T) {
	var text bytes.Buffer
	a, op := begunOn(t, drill.Stop, &text)
	untilActed(a, op)
	f := a.Sheet().Findings
	if !a.Finished() || len(f) != 1 || a.Now() != f[0].Seen || a.Halted() != AtUnsafe {
		t.Fatalf("ended at %d, halted %v, with %+v", a.Now(), a.Halted(), f)
	}
	b := replayedAs(t, text.Bytes())
	d := b.Decisions()
	if b.Now() != a.Now() || b.Halted() != AtUnsafe || b.UnsafeTerms() != drill.Stop || len(d) != 1 || d[0].Rule != "chocks" || d[0].Asked {
		t.Errorf("replayed: ended at %d, %v, %+v", b.Now(), b.Halted(), d)
	}
}

// While the evaluator decides the world stands, and nothing can be done in it.
func TestEvaluatorDecidesOnAnUnsafeAct(t *testing.T) {
	for _, goOn := range []bool{true, false} {
		var text bytes.Buffer
		a, op := begunOn(t, drill.Ask, &text)
		untilActed(a, op)
		f := a.Undecided()
		if f == nil || f.Rule != "chocks" {
			t.Fatalf("undecided: %+v", f)
		}
		hash, _ := a.Scene.Hash()
		for range 100 {
			a.Tick()
		}
		if again, _ := a.Scene.Hash(); again != hash || a.Now() != f.Seen {
			t.Errorf("the world went on to %d while the evaluator decided", a.Now())
		}
		if err := a.Do(world.Action{By: world.Candidate}); err == nil || !strings.Contains(err.Error(), "evaluator") {
			t.Errorf("hands still work: %v", err)
		}
		if err := a.Decide(goOn); err != nil {
			t.Fatal(err)
		}
		if a.Decide(goOn) == nil {
			t.Error("decided twice")
		}
		untilActed(a, op)
		a.Close()
		if ended := a.Halted() == AtUnsafe; ended == goOn || a.Undecided() != nil || (a.Now() == f.Seen) == goOn {
			t.Errorf("go on %v: ended at %d, %v", goOn, a.Now(), a.Halted())
		}
		b := replayedAs(t, text.Bytes())
		if d := b.Decisions(); b.Now() != a.Now() || b.Hash() != a.Hash() || len(d) != 1 || d[0].Ended == goOn || !d[0].Asked || d[0].Title != "No chocks" {
			t.Errorf("replayed: ended at %d, want %d; %+v", b.Now(), a.Now(), d)
		}
	}
}

// What was decided is not asked again by one who goes back to a later moment, and is by one who goes back
// to before the act.
func TestDecisionsAndRewind(t *testing.T) {
	a, op := begunOn(t, drill.Ask, nil)
	untilActed(a, op)
	at := a.Undecided().Seen
	if err := a.Decide(true); err != nil {
		t.Fatal(err)
	}
	for range 300 {
		a.Tick()
	}
	if err := a.Rewind(at + 120); err != nil {
		t.Fatal(err)
	}
	a.Tick()
	if a.Undecided() != nil || len(a.Decisions()) != 1 {
		t.Errorf("after the act: asked again, %+v", a.Decisions())
	}
	log := a.log
	if err := a.Rewind(at - 120); err != nil {
		t.Fatal(err)
	}
	if len(a.Decisions()) != 0 {
		t.Errorf("before the act: %+v", a.Decisions())
	}
	for n := 0; a.Undecided() == nil && a.Now() < at+60; a.Tick() {
		for ; n < len(log) && log[n].action.At <= a.Now(); n++ {
			if log[n].kind == tape.Action && log[n].action.At == a.Now() {
				a.queue = append(a.queue, log[n].action)
			}
		}
	}
	if a.Undecided() == nil {
		t.Error("the act was done again, and nobody was asked")
	}
}

// What was decided on a strand is not asked again by one who returns to it.
func TestDecisionsAndStrands(t *testing.T) {
	a, op := begunOn(t, drill.Ask, nil)
	untilActed(a, op)
	at := a.Now()
	if err := a.Decide(true); err != nil {
		t.Fatal(err)
	}
	for range 300 {
		a.Tick()
	}
	hash, _ := a.Scene.Hash()
	left, err := a.Leave(at - 120)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := a.Return(&left); err != nil {
		t.Fatal(err)
	}
	if back, _ := a.Scene.Hash(); back != hash || a.Now() != at+300 || a.Undecided() != nil || len(a.Decisions()) != 1 {
		t.Errorf("back at %d, want %d; %+v", a.Now(), at+300, a.Decisions())
	}
}

// An operator whom nobody watches does not wait for a word that never comes.
func TestNobodyDecides(t *testing.T) {
	a, op := begunOn(t, drill.Ask, nil)
	if err := a.Run("test", op); err == nil || !strings.Contains(err.Error(), "nobody decides on the unsafe act chocks") || !a.Finished() {
		t.Errorf("%v, over %v", err, a.Finished())
	}
}
