package app

import (
	"strings"
	"testing"

	"steadyneedle/render/play"
	"steadyneedle/render/sound"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/world"
)

// ears keeps the last state it was given.
type ears struct {
	st    sound.State
	fault string
}

func (e *ears) Set(st sound.State) { e.st = st }
func (e *ears) Mute() bool         { return true }
func (e *ears) Fault() string      { f := e.fault; e.fault = ""; return f }

// TestHears: what happens where one stands is heard there, once, with a caption; and a device that goes
// away is told while everything goes on.
func TestHears(t *testing.T) {
	a := begin(t, false)
	e := &ears{}
	a.opt.Sound, a.opt.Level = e, sound.Quiet
	a.seconds(1)
	if e.st.EngineRPM < 300 || e.st.Level != sound.Quiet || !e.st.Muffled {
		t.Errorf("idling in the cab: %+v", e.st)
	}
	if e.st.Load <= 0 || e.st.Load > 1 {
		t.Errorf("an idling engine carries a load of %g", e.st.Load)
	}
	if e.st.Brake != 0 || e.st.Valves != 0 {
		t.Errorf("before anything was touched: %+v", e.st)
	}
	a.clickOn(t, "parking_brake")
	a.seconds(0.5)
	if e.st.Brake != 1 || !strings.Contains(a.caption(), "brake") {
		t.Errorf("the brake let go: %d blasts of air, caption %q", e.st.Brake, a.caption())
	}
	a.seconds(4)
	if strings.Contains(a.caption(), "brake") {
		t.Errorf("four seconds later the caption is still %q", a.caption())
	}
	a.clickOn(t, "parking_brake")
	a.walk(world.Panel)
	a.seconds(8)
	before := e.st.Valves
	a.clickOn(t, "recirculation")
	a.seconds(1)
	if e.st.Valves != before+1 {
		t.Errorf("a lever swung to its stop: %d knocks, want %d", e.st.Valves-before, 1)
	}
	e.fault = "The audio device is gone."
	tick := a.eyes.Now.At
	a.seconds(0.5)
	if a.flash.text != "The audio device is gone." || a.eyes.Now.At <= tick {
		t.Errorf("a device that went away: notice %q, at tick %d", a.flash.text, a.eyes.Now.At)
	}
}

// TestRatedCaptions: in a rated attempt a caption does not name a cause.
func TestRatedCaptions(t *testing.T) {
	for _, rated := range []bool{false, true} {
		a := begin(t, rated)
		a.seconds(0.5)
		a.ear.now.Gravel = 1
		if got := a.caption(); strings.Contains(got, "cavitates") == rated {
			t.Errorf("rated %v: caption %q", rated, got)
		}
	}
}

// Somebody who stands in the bight of the line is told of at the panel, beside what is heard, with room at
// every size; not in the cab, from where nobody sees them.
func TestInTheWayAtThePanel(t *testing.T) {
	p := worked(t, "charges-over-helper")
	a := storeApp(&shelfStore{})
	a.shelf.Dry = true
	for from, want := range map[world.Place]bool{world.Panel: true, world.Cab: false} {
		if err := p.Stand(9000, from); err != nil {
			t.Fatal(err)
		}
		a.Take(p)
		atEverySize(a, func(size string) {
			a.Open(from.String())
			keepsClear(t, a, from.String()+" "+size)
			if got := a.caption(); strings.Contains(got, "[A firefighter stands in the bight of the line]") != want {
				t.Errorf("%v: %q", from, got)
			}
		})
	}
}

// What was said before an attempt was taken over stands in its list as it was said: in order, each at its
// time, the candidate's own words too.
func TestHeardBeforeTakingOver(t *testing.T) {
	const moment world.Tick = 9000
	p := worked(t, "clean")
	b, err := p.Attempt().Branch(moment, attempt.Options{Live: true})
	if err != nil {
		t.Fatal(err)
	}
	heard := play.New(b, "taken over", false).Heard()
	mine, last := false, world.Tick(0)
	for _, l := range heard {
		mine = mine || l.Mine
		if l.At < last || l.At >= moment {
			t.Errorf("%q at %d after one at %d", l.Text, l.At, last)
		}
		last = l.At
	}
	if len(heard) < 4 || !mine || heard[0].At == last {
		t.Errorf("heard %+v", heard)
	}
}
