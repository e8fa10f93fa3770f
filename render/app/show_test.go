package app

import (
	"math"
	"testing"

	"steadyneedle/render/play"
	"steadyneedle/render/view"
	"steadyneedle/scenarios"
	"steadyneedle/sim/demo"
	"steadyneedle/sim/unit"
)

// present shows a shipped demonstration.
func present(t testing.TB, name string, sys unit.System) (*App, *show) {
	t.Helper()
	a := New(Options{Shows: []Drill{{Name: name, Title: "A demonstration", About: "What it teaches."}}, Present: func(name string) (view.Stage, error) {
		d, err := scenarios.Open(nil).Demonstration(name)
		if err != nil {
			return nil, err
		}
		p, err := demo.New(d)
		if err != nil {
			return nil, err
		}
		return play.NewStage(p, "test", sys), nil
	}})
	if err := a.Present(name); err != nil {
		t.Fatal(err)
	}
	s := a.screen.(*show)
	if s.warned || !a.frozen {
		t.Error("it begins before the caution has been read")
	}
	a.keyPress("f", "p", "x", "t")
	if a.screen != screen(s) || !a.frozen {
		t.Error("a key gets past the caution")
	}
	a.keyPress("Space")
	if !s.warned || a.frozen {
		t.Error("it does not begin")
	}
	return a, s
}

// What a class reads has capitals of 16 minutes of arc at 8 m on a picture 2 m wide: tan(16′) · 8 m is
// 37.2 mm of 2 m [C], 23.8 units of 1280.
func TestBackRow(t *testing.T) {
	if got := BackRow(1280) * 0.72; math.Abs(got-23.83) > 0.05 {
		t.Errorf("capitals of %.2f units, want 23.83", got)
	}
}

// At every size and in both systems nothing of the show is cut off, shortened or written over.
func TestShowLayout(t *testing.T) {
	for _, sys := range []unit.System{unit.US, unit.SI} {
		a, s := present(t, "relief-valve", sys)
		a.shelf.Dry = true
		for a.attempt.(view.Stage).Player().Phase() == demo.Playing {
			a.seconds(1)
		}
		for _, p := range pairs {
			a.zoom, a.w = p.zoom, 0
			a.Resize(p.w, p.h)
			for side := range sides {
				s.choose(a, side)
				where := sys.String() + " " + sides[side].name
				itemsKeepClear(t, a, where)
				keepsClear(t, a, where)
			}
		}
	}
}

func TestTimeAtWill(t *testing.T) {
	a, s := present(t, "relief-valve", unit.US)
	now := func() float64 { return s.stage.Player().Attempt.Now().Seconds() }
	passes := func(want float64, what string) {
		t.Helper()
		from := now()
		a.seconds(2)
		if got := now() - from; math.Abs(got-want) > 0.15*want+0.05 {
			t.Errorf("%s: %.2f s pass in 2 s, want %.2f", what, got, want)
		}
	}
	passes(2, "as usual")
	a.keyPress("Equal", "Equal", "Add")
	passes(16, "eight times as fast")
	a.keyPress("Minus", "Minus", "Minus", "Minus", "Subtract")
	passes(0.5, "a quarter as fast")
	a.keyPress("f")
	passes(0, "frozen")
	from := now()
	a.keyPress("Period")
	if d := now() - from; math.Abs(d-0.1) > 1e-9 {
		t.Errorf("a step makes %.3f s, want 0.1", d)
	}
	from = now()
	a.keyPress("b")
	if d := from - now(); d < 9.9 || d > 11 {
		t.Errorf("back by %.2f s, want 10", d)
	}
	if s.stage.Left() == nil {
		t.Fatal("what was left is forgotten")
	}
	a.keyPress("o")
	if math.Abs(now()-from) > 0.02 {
		t.Errorf("the other way ends at %.2f s, want %.2f", now(), from)
	}
	a.keyPress("Escape")
	if a.tempo != 1 || a.frozen {
		t.Error("time goes on as it was set for the class")
	}
}

// A question covers what it asks about until its step is done; the class's answers are counted.
func TestQuestion(t *testing.T) {
	a, s := present(t, "relief-valve", unit.US)
	p := s.stage.Player()
	a.tempo = 8
	for p.Phase() == demo.Playing {
		a.seconds(0.5)
	}
	if p.Phase() != demo.Waiting || len(s.settled()) == 0 {
		t.Fatalf("phase %d with %d claims, want a stop with its claims", p.Phase(), len(s.settled()))
	}
	a.keyPress("Space")
	if p.Phase() != demo.Asking {
		t.Fatalf("phase %d, want a question", p.Phase())
	}
	a.keyPress("1", "2", "Down", "7", "Backspace", "4")
	a.clickOn(t, "option-2")
	a.keyPress("Space")
	if v := p.Votes(p.Index()); v[0] != 12 || v[1] != 4 || v[2] != 1 {
		t.Errorf("votes %v, want 12, 4, 1", v)
	}
	if !s.covered() {
		t.Error("the gauges are open while it runs")
	}
	for p.Phase() == demo.Playing {
		a.seconds(0.5)
	}
	if s.covered() {
		t.Error("the gauges stay covered when it is done")
	}
}

// The instructor takes the panel, works it as the instructor, and lets the script go on.
func TestTakeOver(t *testing.T) {
	a, s := present(t, "dead-head", unit.US)
	p := s.stage.Player()
	a.keyPress("t")
	if p.Phase() != demo.Interrupted {
		t.Fatal("the script goes on")
	}
	if _, ok := a.screen.(*place); !ok {
		t.Fatalf("screen %s, want the panel", a.screen.key())
	}
	id, _ := a.eyes.Control("recirculation")
	a.hands.want(id, 1)
	a.seconds(2)
	if got := s.stage.Truth("recirculation"); got < 0.99 {
		t.Errorf("recirculation at %.2f, want 1: the instructor's hand did not reach it", got)
	}
	a.keyPress("Escape")
	back, ok := a.screen.(*show)
	if !ok {
		t.Fatalf("screen %s, want the show", a.screen.key())
	}
	a.keyPress("t")
	if back.taken() {
		t.Error("the script does not go on")
	}
}
