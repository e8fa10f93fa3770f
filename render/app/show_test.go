package app

import (
	"math"
	"slices"
	"testing"

	"steadyneedle/render/draw"
	"steadyneedle/render/play"
	"steadyneedle/render/view"
	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/demo"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
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

// A fault can be armed and comes by itself, labeled as simulated; the list throws it, and arms
// it for later.
func TestArmed(t *testing.T) {
	a, s := present(t, "dead-head", unit.US)
	p := s.stage.Player()
	p.Interrupt()
	id, ok := a.eyes.Control("hydrant_loss")
	if !ok {
		t.Fatal("no hydrant_loss")
	}
	if err := p.Arm(id, 40, demo.Trigger{At: p.Attempt.Now() + world.TicksIn(5)}); err != nil {
		t.Fatal(err)
	}
	a.seconds(4)
	if len(s.simulated()) != 0 {
		t.Error("the fault came too soon")
	}
	a.seconds(2)
	if got := s.simulated(); len(got) != 1 || s.handOf(id) != 40 {
		t.Errorf("simulated %v, hand at %g, want the hydrant weaker by 40 psi", got, s.handOf(id))
	}
	a.keyPress("x")
	r, ok := a.screen.(*rigging)
	if !ok {
		t.Fatalf("screen %s, want the list", a.screen.key())
	}
	for r.rows[r.at] != id {
		a.keyPress("Down")
	}
	a.keyPress("Enter")
	a.seconds(0.1)
	if s.handOf(id) != 0 {
		t.Errorf("hand at %g, want the hydrant whole again", s.handOf(id))
	}
	a.keyPress("a", "Down", "Right", "Right", "Enter") // the level: from 15 s to 25 s
	if on, ok := p.Armed(id); !ok || math.Abs((on.At-p.Attempt.Now()).Seconds()-25) > 1 {
		t.Errorf("armed %v for %v, want in 25 s", ok, on)
	}
	a.keyPress("d")
	if _, ok := p.Armed(id); ok {
		t.Error("it is armed still")
	}
	if err := p.Arm(id, 1e9, demo.Trigger{At: p.Attempt.Now()}); err == nil {
		t.Error("a value that cannot be was armed")
	}
}

// A fault is armed for a reading by choosing from a list; unseen it is armed for the same with one key. It
// comes when the reading stands beyond the level, and again after a going back.
func TestArmedForAReading(t *testing.T) {
	a, s := present(t, "dead-head", unit.US)
	p := s.stage.Player()
	p.Interrupt()
	id, ok := a.eyes.Control("second_line")
	if !ok {
		t.Fatal("no second_line")
	}
	a.keyPress("x")
	r := a.screen.(*rigging)
	for r.rows[r.at] != id {
		a.keyPress("Down")
	}
	a.keyPress("a", "Right", "Down", "Right", "Right", "Down", "PageUp", "Right", "Down", "Enter") // engine speed, above, 1500 rpm
	on, ok := p.Armed(id)
	if !ok || on != (demo.Trigger{Signal: "engine_rpm", Level: 1500}) {
		t.Fatalf("armed %v for %+v, want an engine speed above 1500", ok, on)
	}
	a.keyPress("Escape")
	throttle := func(v float64) {
		id, _ := a.eyes.Control("throttle")
		if err := s.stage.Act(id, v); err != nil {
			t.Fatal(err)
		}
	}
	throttle(0)
	a.seconds(8)
	if s.stage.Truth("engine_rpm") > 1500 || s.handOf(id) != 0 || len(s.simulated()) != 0 {
		t.Fatalf("at %.0f rpm the fault has come", s.stage.Truth("engine_rpm"))
	}
	before := p.Attempt.Now()
	throttle(1)
	a.seconds(8)
	if s.handOf(id) != 1 || len(s.simulated()) != 1 {
		t.Fatalf("at %.0f rpm the fault has not come", s.stage.Truth("engine_rpm"))
	}
	if err := s.stage.Back(before); err != nil {
		t.Fatal(err)
	}
	if _, ok := p.Armed(id); !ok || s.handOf(id) != 0 {
		t.Error("after going back it is armed no more")
	}
	if err := s.stage.Swap(); err != nil {
		t.Fatal(err)
	}
	if _, ok := p.Armed(id); ok || s.handOf(id) != 1 {
		t.Error("back on the other way it has not come")
	}
	if err := p.Arm(id, 0, demo.Trigger{Signal: "no_such"}); err == nil {
		t.Error("a reading that is not there was armed for")
	}
	a.OnKey(Key{Name: "2", Down: true, Ctrl: true})
	leak, _ := a.eyes.Control("line_leak")
	if on, ok := p.Armed(leak); !ok || on.Signal != "engine_rpm" {
		t.Errorf("unseen: armed %v for %+v, want what was picked last", ok, on)
	}
}

// At every stop of every shipped demonstration answer and claims fit beside the inside of the pump, and the
// caption fits below it.
func TestClaimsFit(t *testing.T) {
	for _, name := range shippedShows(t) {
		for _, sys := range []unit.System{unit.US, unit.SI} {
			a, s := present(t, name, sys)
			p := s.stage.Player()
			for p.Phase() != demo.Ended {
				if p.Phase() == demo.Asking {
					s.hands().counts[p.Step().Ask.Right] = 12
					s.vote()
				}
				p.Go()
				for p.Phase() == demo.Playing {
					s.stage.Tick()
				}
				if p.Phase() == demo.Stuck {
					t.Fatal(p.Err())
				}
				for _, size := range pairs {
					a.zoom, a.w = size.zoom, 0
					a.Resize(size.w, size.h)
					if h := s.claimsHeight(a, s.right.W, s.settled()); h > s.right.H {
						t.Errorf("%s, %s, %dx%d, step %s: the claims take %.0f of %.0f", name, sys, size.w, size.h, p.Step().ID, h, s.right.H)
					} else if l, _ := p.Limit(); l != nil {
						if tr := s.trace(s.right); h > s.right.H-10-tr.Least() {
							t.Errorf("%s, %s, %dx%d, step %s: beside claims of %.0f no plot shows the limit", name, sys, size.w, size.h, p.Step().ID, h)
						}
					}
					for _, text := range []string{p.Step().Caption, p.Demonstration.Teaches, s.captionText(a)} {
						if n := len(s.captionLines(a, sys.Prose(text))); n > captionRows {
							t.Errorf("%s, %s, %dx%d, step %s: %d lines: %s", name, sys, size.w, size.h, p.Step().ID, n, text)
						}
					}
				}
			}
		}
	}
}

func shippedShows(t *testing.T) []string {
	t.Helper()
	list, err := scenarios.Open(nil).List()
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, d := range list.Demonstrations {
		names = append(names, d.Name)
	}
	return names
}

// A fault is labeled as simulated: before the class, on the panel, and when an attempt is looked at again; a
// rated attempt never says so.
func TestSimulatedIsSaid(t *testing.T) {
	a, s := present(t, "dead-head", unit.US)
	id, _ := a.eyes.Control("relief_stuck")
	if err := s.stage.Act(id, 3); err != nil {
		t.Fatal(err)
	}
	a.seconds(0.2)
	if !shows(a, "Simulated: Relief valve sticks: shut") {
		t.Error("the class is not told")
	}
	a.keyPress("p")
	a.seconds(0.2)
	if _, ok := a.screen.(*place); !ok || !shows(a, "Relief valve sticks: shut") {
		t.Errorf("screen %s does not tell it", a.screen.key())
	}

	d, err := scenarios.Open(nil).Drill("reverse-lay", scenarios.Options{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	for _, rated := range []bool{false, true} {
		at, err := attempt.New(d, attempt.Options{Keys: true})
		if err != nil {
			t.Fatal(err)
		}
		p := play.New(at, "", rated)
		for i := range 180 {
			if i == 60 {
				if err := at.Do(world.Action{By: world.Instructor, From: world.Panel, Control: id, Value: 3}); err != nil {
					t.Fatal(err)
				}
			}
			p.Tick()
		}
		const stuck = "Relief valve sticks: shut"
		if early, late := p.Simulated(30), p.Simulated(150); slices.Contains(early, stuck) || slices.Contains(late, stuck) == rated {
			t.Errorf("rated %v: %v, then %v", rated, early, late)
		}
		if rated && len(p.Simulated(150)) > 0 {
			t.Error("a rated attempt tells what was planted in it")
		}
	}
}

// The instructor speaks as officer and crew, with a number where the phrase has one, and works the nozzle; the
// class reads what was said for some seconds, also while time stands still.
func TestInstructorSpeaks(t *testing.T) {
	a, s := present(t, "dead-head", unit.US)
	a.keyPress("t", "Escape", "f", "x")
	r := a.screen.(*rigging)
	row := func(name string) {
		t.Helper()
		id, ok := a.eyes.Control(name)
		if !ok {
			t.Fatalf("no %s", name)
		}
		for r.rows[r.at] != id {
			at := r.at
			if a.keyPress("Down"); r.at == at {
				t.Fatalf("%s is not on the list", name)
			}
		}
	}
	row("nozzle1")
	a.keyPress("Enter")
	if id, _ := a.eyes.Control("nozzle1"); s.handOf(id) != 0 {
		t.Errorf("the nozzle is at %g, want it shut", s.handOf(id))
	}
	row("officer_pressure")
	a.keyPress("Right", "Right", "Enter", "Escape")
	const word = "Captain: Make your pressure 140 psi"
	if got := s.captionText(a); got != word || !a.frozen {
		t.Errorf("the class reads %q, want %q", got, word)
	}
	a.keyPress("f")
	a.seconds(saidS + 1)
	if got := s.captionText(a); got == word {
		t.Error("it stands there still")
	}
}

// Everything that a shipped demonstration says can be written in the program's typeface.
func TestShowTexts(t *testing.T) {
	for _, name := range shippedShows(t) {
		d, err := scenarios.Open(nil).Demonstration(name)
		if err != nil {
			t.Fatal(err)
		}
		texts := []string{d.Drill.Title, d.Teaches, d.Caution}
		for i := range d.Steps {
			s := &d.Steps[i]
			texts = append(texts, s.Caption)
			for k := range s.Claims {
				texts = append(texts, s.Claims[k].Text, s.Claims[k].Unit)
			}
			if s.Limit != nil {
				texts = append(texts, s.Limit.Name)
			}
			if s.Ask != nil {
				texts = append(append(texts, s.Ask.Text, s.Ask.Because), s.Ask.Options...)
			}
		}
		for _, text := range texts {
			if list := draw.Missing(text); len(list) > 0 {
				t.Errorf("%s: %q has signs that cannot be written: %q", name, text, list)
			}
		}
	}
	if got := draw.Missing("ρaΔV ≤ 5"); string(got) != "ρΔ" {
		t.Errorf("missing %q, want ρ and Δ", got)
	}
}

// A peak of a tenth of a second is drawn wherever it falls among the samples.
func TestPeaksAreDrawn(t *testing.T) {
	for at := 2; at < 8; at++ {
		v := make([]float64, 10)
		v[at] = 300
		found := false
		for k := 0; k < len(v); k += 2 {
			found = found || v[sharper(v, k)] == 300
		}
		if !found {
			t.Errorf("a peak at sample %d is not drawn", at)
		}
	}
}
