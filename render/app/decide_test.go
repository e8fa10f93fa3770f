package app

import (
	"strings"
	"testing"

	"steadyneedle/render/play"
	"steadyneedle/render/view"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/world"
)

// atUnsafe is a rated attempt, worked in the window up to an unsafe act.
func atUnsafe(t *testing.T, terms drill.OnUnsafe) *App {
	t.Helper()
	d, script := shelfDrill(t, "charges-unasked")
	at, err := attempt.New(d, attempt.Options{Live: true, Keys: true})
	if err != nil {
		t.Fatal(err)
	}
	op, err := at.Operator(script, operator.Hands{Speed: 1, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	a := New(Options{Drills: []Drill{{Name: "reverse-lay", Title: "Reverse lay", OnUnsafe: terms}}, Start: func(string, bool) (view.Attempt, error) {
		return play.New(at, "test", true), nil
	}})
	if err := a.Offer("reverse-lay", true); err != nil {
		t.Fatal(err)
	}
	a.clickOn(t, "begin")
	var r world.Reading
	var acts []world.Action
	for at.Now() < 240*world.TicksPerSecond && !at.Finished() && a.screen.key() != "decide" {
		acts = at.Hand(op, &r, acts)
		a.Advance(1.0 / world.TicksPerSecond)
	}
	return a
}

// When the evaluator is to decide, the world stands under one card; either answer goes on the sheet.
func TestUnsafeActWaitsForTheEvaluator(t *testing.T) {
	for key, ends := range map[string]bool{"e": true, "g": false} {
		a := atUnsafe(t, drill.Ask)
		if a.screen.key() != "decide" || !shows(a, "Line charged before the crew asked") || !shows(a, "A line that fills in an unready hand") {
			t.Fatalf("the screen is %s", a.screen.key())
		}
		now := a.attempt.Reading().At
		a.keyPress(key) // the hand was still at work
		if a.screen.key() != "decide" {
			t.Fatal("a key pressed at once has decided")
		}
		a.seconds(2)
		if at := a.attempt.Reading().At; at != now {
			t.Errorf("the world went on from %d to %d", now, at)
		}
		a.keyPress(key)
		want, said := "panel", "let the attempt go on"
		if ends {
			want, said = "debrief", "ended the attempt"
		}
		if a.screen.key() != want || a.attempt.Over() != ends {
			t.Errorf("%s: the screen is %s, over %v", key, a.screen.key(), a.attempt.Over())
		}
		a.attempt.End()
		s := a.attempt.Sheet()
		if len(s.Decisions) != 1 || !strings.Contains(s.Decisions[0].Text(), said) || s.OnUnsafe == "" || s.Passed {
			t.Errorf("%s: the sheet says %+v, %q", key, s.Decisions, s.OnUnsafe)
		}
		if ends && !shows(a, "The evaluator ended the attempt.") {
			t.Error("the finding does not say what was decided")
		}
		if ends && s.Verdict() != "Ended at an unsafe act" {
			t.Errorf("the verdict is %q", s.Verdict())
		}
	}
}

// By pointer, and with the words of the caution screen changed.
func TestTermsAreChosenBeforehand(t *testing.T) {
	a := atUnsafe(t, drill.Ask)
	a.seconds(1)
	a.clickOn(t, "end-here")
	if a.screen.key() != "debrief" {
		t.Errorf("the screen is %s", a.screen.key())
	}
	if a = atUnsafe(t, drill.Stop); !a.attempt.Over() || a.screen.key() != "debrief" || !shows(a, "Ended at an unsafe act") {
		t.Errorf("stop: the screen is %s", a.screen.key())
	}
	if a = atUnsafe(t, drill.GoOn); a.attempt.Over() || a.screen.key() == "decide" {
		t.Errorf("go on: the screen is %s", a.screen.key())
	}
	if err := a.Offer("reverse-lay", true); err != nil {
		t.Fatal(err)
	}
	a.clickOn(t, "on-unsafe-ask")
	if b := a.screen.(*beforehand); b.terms != drill.Ask {
		t.Errorf("chosen: %v", b.terms)
	}
}
