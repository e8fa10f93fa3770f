package app

import (
	"fmt"
	"image"
	"math"
	"slices"
	"strings"
	"testing"

	"steadyneedle/render/input"
	"steadyneedle/render/play"
	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/demo"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

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
	if len(simulated(s.stage)) != 0 {
		t.Error("the fault came too soon")
	}
	a.seconds(2)
	if got := simulated(s.stage); len(got) != 1 || s.handOf(id) != 40 {
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
	if s.stage.Truth("engine_rpm") > 1500 || s.handOf(id) != 0 || len(simulated(s.stage)) != 0 {
		t.Fatalf("at %.0f rpm the fault has come", s.stage.Truth("engine_rpm"))
	}
	before := p.Attempt.Now()
	throttle(1)
	a.seconds(8)
	if s.handOf(id) != 1 || len(simulated(s.stage)) != 1 {
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

// The list is worked by the pointer alone: the wheel and a drag move it to its end, a click chooses, a
// second one does what Enter does, and the buttons below do the rest. What is chosen is always in sight.
func TestListByPointer(t *testing.T) {
	a, s := present(t, "dead-head", unit.US)
	s.stage.Player().Interrupt()
	a.clickOn(t, fmt.Sprint("show-", buttonNamed(t, s, a, "Faults")))
	r, ok := a.screen.(*rigging)
	if !ok {
		t.Fatalf("screen %s, want the list", a.screen.key())
	}
	last := len(r.rows) - 1
	inSight := func(what string) {
		t.Helper()
		if a.collect(); r.at < r.top || r.at >= r.top+r.fits(a) || a.find(rowKey(r.at)) == nil {
			t.Errorf("%s: row %d is chosen, %d to %d show", what, r.at, r.top, r.top+r.fits(a)-1)
		}
	}
	for range 40 {
		a.Scroll(-1, false)
	}
	if inSight("wheel"); a.find(rowKey(last)) == nil {
		t.Errorf("the wheel does not reach row %d", last)
	}
	for range 9 { // a touch-pad tells thirds of a notch
		a.Scroll(1.0/3, false)
	}
	if want := last - r.fits(a) + 1 - 9; r.top != want {
		t.Errorf("nine thirds of a notch lead to row %d, want %d", r.top, want)
	}

	top, at := r.top, r.at
	x, y := a.mid(t, rowKey(r.top+1))
	a.Input(input.Event{Kind: input.Press, Finger: 1, X: x, Y: y})
	for by := range 5*int(riggingRowH) + 1 {
		a.Input(input.Event{Kind: input.Move, Finger: 1, X: x, Y: y + float64(by)})
	}
	a.Input(input.Event{Kind: input.Release, Finger: 1, X: x, Y: y + 5*riggingRowH})
	if inSight("drag"); r.top != top-5 {
		t.Errorf("a drag over five rows leads from row %d to %d", top, r.top)
	}
	if r.at > at || len(simulated(s.stage)) != 0 {
		t.Errorf("the drag was taken for a click: row %d, was %d, %v", r.at, at, simulated(s.stage))
	}

	id, _ := a.eyes.Control("hydrant_loss")
	n := slices.Index(r.rows, id)
	for r.top > 0 {
		a.Scroll(1, false)
	}
	a.clickOn(t, rowKey(n))
	if r.at != n || s.handOf(id) != 0 {
		t.Fatalf("a click chooses row %d and sets it to %g, want row %d chosen alone", r.at, s.handOf(id), n)
	}
	a.clickOn(t, rowKey(n))
	c := r.control(n)
	if s.handOf(id) != c.Max {
		t.Errorf("a second click sets it to %g, want %g", s.handOf(id), c.Max)
	}
	a.clickOn(t, "now")
	if s.handOf(id) != c.Start {
		t.Errorf("Now sets it back to %g, want %g", s.handOf(id), c.Start)
	}
	a.clickOn(t, "more")
	a.clickOn(t, "more")
	a.clickOn(t, "less")
	if want := c.Start + 0.1*(c.Max-c.Min); math.Abs(s.handOf(id)-want) > 1e-9 {
		t.Errorf("more, more, less: at %g, want %g", s.handOf(id), want)
	}
	a.clickOn(t, "now")
	a.clickOn(t, "arm-later")
	if _, ok := a.screen.(*arming); !ok {
		t.Fatalf("screen %s, want what it is armed for", a.screen.key())
	}
	x, y = a.mid(t, "arm-2-0") // the level's arrow
	a.PointTo(x+60, y)
	a.Scroll(2, false)
	a.clickOn(t, "arm")
	if on, ok := s.stage.Player().Armed(id); !ok || math.Abs((on.At-s.stage.Player().Attempt.Now()).Seconds()-25) > 1 {
		t.Errorf("armed %v for %+v, want in 25 s", ok, on)
	}
	a.clickOn(t, "disarm")
	if _, ok := s.stage.Player().Armed(id); ok {
		t.Error("it is armed still")
	}
	a.clickOn(t, "back")
	if a.screen != screen(s) {
		t.Errorf("screen %s, want the show", a.screen.key())
	}
}

// What is announced lies over list and card, whichever is on top.
func TestAnnouncedOverTheList(t *testing.T) {
	a, s := present(t, "relief-valve", unit.US)
	r := newRigging(s)
	for _, sc := range []screen{s, r, newArming(r, r.rows[0])} {
		a.show(sc)
		a.say("A word that the instructor is to see.")
		var said image.Rectangle
		sprites := a.Frame().Sprites
		for i := range sprites {
			b := sprites[i].Bounds()
			if len(sprites[i].Art.Words) > 0 && strings.HasPrefix(sprites[i].Art.Words[0].Text, "A word that") {
				said = b
			} else if b.Overlaps(said) {
				t.Errorf("%s: what is announced is covered by %v", sc.key(), b)
			}
		}
		if said.Empty() {
			t.Errorf("%s: it is not announced", sc.key())
		}
	}
}

// At every size and in both systems list and arming keep clear of themselves: what lies below them is
// veiled.
func TestRiggingLayout(t *testing.T) {
	for _, sys := range []unit.System{unit.US, unit.SI} {
		a, s := present(t, "relief-valve", sys)
		a.shelf.Dry = true
		atEverySize(a, func(size string) {
			r := newRigging(s)
			for top := 0; top < len(r.rows); top += r.fits(a) {
				a.show(r)
				r.slide(a, float64(top-r.top)*riggingRowH)
				where := fmt.Sprintf("%v %s from row %d", sys, size, top)
				itemsKeepClear(t, a, where)
				keepsClearOver(t, a, where, func() { s.picture(a) })
				g := newArming(r, r.rows[top])
				a.show(g)
				itemsKeepClear(t, a, where+", arming")
				keepsClearOver(t, a, where+", arming", func() { r.picture(a) })
			}
		})
	}
}
