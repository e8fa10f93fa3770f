package app

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"steadyneedle/render/play"
	"steadyneedle/render/view"
	"steadyneedle/scenarios"
	"steadyneedle/sim/demo"
	"steadyneedle/sim/unit"
)

// presentDrill shows a shipped drill to a class.
func presentDrill(t *testing.T, name string, seed uint64, sys unit.System) (*App, *show) {
	t.Helper()
	d, err := scenarios.Open(nil).Drill(name, scenarios.Options{Seed: seed})
	if err != nil {
		t.Fatal(err)
	}
	p, err := demo.New(demo.OfDrill(d))
	if err != nil {
		t.Fatal(err)
	}
	a := New(Options{Present: func(string) (view.Stage, error) { return play.NewStage(p, "test", sys), nil }})
	if err := a.Present(name); err != nil {
		t.Fatal(err)
	}
	return a, a.screen.(*show)
}

// Of every drill that a class is shown the whole objective can be read, before it begins and while it runs,
// by pages that a click or a key turns, with nothing shortened.
func TestObjectiveInClass(t *testing.T) {
	list, err := scenarios.Open(nil).List()
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range list.Drills {
		for _, sys := range []unit.System{unit.US, unit.SI} {
			a, s := presentDrill(t, d.Name, 1, sys)
			a.shelf.Dry = true
			atEverySize(a, func(size string) {
				where := fmt.Sprintf("%s, %v, %s", d.Name, sys, size)
				want := sys.Prose(s.stage.Player().Demonstration.Teaches)
				leaves := s.captionLeaves(a, s.captionText(a))
				var all []string
				for i, leaf := range leaves {
					if len(leaf) > captionRows {
						t.Errorf("%s: %d lines on a page", where, len(leaf))
					}
					for _, l := range leaf {
						if !shows(a, l) {
							t.Errorf("%s: page %d does not show %q", where, i+1, l)
						}
						all = append(all, l)
					}
					keepsClear(t, a, where)
					itemsKeepClear(t, a, where)
					if i%2 == 0 && len(leaves) > 1 {
						a.clickOn(t, "caption")
					} else {
						a.keyPress("PageDown")
					}
				}
				if got := strings.Join(all, " "); got != want {
					t.Errorf("%s: reads %q, want %q", where, got, want)
				}
				if !shows(a, leaves[0][0]) {
					t.Errorf("%s: after the last page does not come the first", where)
				}
			})
			a.keyPress("Space")
			a.seconds(1) // the evaluator has given it by then
			objective := sys.Prose(s.stage.Player().Demonstration.Drill.Objective)
			if !s.warned || s.captionText(a) != objective || !shows(a, s.captionLeaves(a, objective)[0][0]) {
				t.Errorf("%s: it begins with %q, want its objective", d.Name, s.captionText(a))
			}
		}
	}
}

// A drill has no end in front of a class: Space lets time go on and never leaves it, the evaluator's keys do
// not end it, and there is no script to interrupt.
func TestDrillInClassStays(t *testing.T) {
	a, s := presentDrill(t, "reverse-lay", 1, unit.US)
	for range 4 {
		a.keyPress("Space", "f")
		a.seconds(1)
	}
	a.keyPress("Space")
	if a.screen != screen(s) || a.frozen || s.goWord() != "Go on" {
		t.Errorf("screen %s, frozen %v, the first button says %q", a.screen.key(), a.frozen, s.goWord())
	}
	for _, b := range s.buttons(a) {
		if b.name == "Take over" {
			t.Error("it offers to interrupt a script")
		}
	}
	a.keyPress("F6", "F7", "F8")
	if a.screen != screen(s) || a.attempt.Over() {
		t.Errorf("the evaluator's keys lead to %s", a.screen.key())
	}
	a.keyPress("t")
	if _, ok := a.screen.(*place); !ok || s.taken() {
		t.Errorf("T leads to %s", a.screen.key())
	}
}

// What a drill has planted, and where people stand, is not called simulated: the class is to find it, and its
// title stays. What the instructor sets, also over what was planted, is.
func TestPlantedIsNotSimulated(t *testing.T) {
	planted := 0
	for seed := uint64(1); seed <= 12; seed++ {
		a, s := presentDrill(t, "reverse-lay", seed, unit.US)
		a.keyPress("Space")
		a.seconds(0.2)
		if list := simulated(s.stage); len(list) != 0 {
			t.Errorf("seed %d: %v is called simulated", seed, list)
		}
		leak, _ := a.eyes.Control("line_leak")
		if s.handOf(leak) != 0 {
			planted++
			if err := s.stage.Act(leak, 30); err != nil {
				t.Fatal(err)
			}
		}
		helper, ok := a.eyes.Control("helper_at")
		if !ok {
			t.Fatal("nobody stands in the street")
		}
		if err := s.stage.Act(helper, 4); err != nil {
			t.Fatal(err)
		}
		a.seconds(0.2)
		if list := simulated(s.stage); len(list) > 1 || (s.handOf(leak) != 0) != (len(list) == 1) {
			t.Errorf("seed %d: with the leak at %g, %v is called simulated", seed, s.handOf(leak), list)
		}
		r := newRigging(s)
		if !slices.Contains(r.rows, helper) {
			t.Error("the instructor cannot move who stands in the street")
		}
	}
	if planted == 0 {
		t.Error("no seed plants a leak")
	}
}
