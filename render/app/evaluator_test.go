package app

import (
	"math"
	"strings"
	"testing"

	"steadyneedle/sim/world"
)

// TestEvaluatorKeys: in a rated attempt one press drops a mark, stops for safety, or voids the attempt,
// from any screen; sheet and recording tell.
func TestEvaluatorKeys(t *testing.T) {
	for key, want := range map[string]string{"F6": "Stopped for safety", "F7": "Void: called away"} {
		a := begin(t, true)
		a.seconds(2)
		a.keyPress("F8")
		a.openSpeech(a.placeScreen(world.Cab))
		a.OnKey(Key{Name: key, Down: true})
		if a.screen.key() != "debrief" || !a.attempt.Over() {
			t.Fatalf("%s: the screen is %s", key, a.screen.key())
		}
		s := a.attempt.Sheet()
		if s.Verdict() != want || s.Passed {
			t.Errorf("%s: the sheet says %q, want %q", key, s.Verdict(), want)
		}
		marks := 0
		for _, f := range s.Facts {
			if strings.HasPrefix(f[0], "Mark at") {
				marks++
			}
		}
		if marks != 2 {
			t.Errorf("%s: %d marks on the sheet, want the evaluator's and the reason of the end", key, marks)
		}
	}
}

// TestSlowMachineIsMarked: time that a rated attempt lost because the machine could not keep up stands
// on its record.
func TestSlowMachineIsMarked(t *testing.T) {
	a := begin(t, true)
	for range 4 {
		a.Advance(1) // frames of a second each
	}
	found := ""
	for _, f := range a.attempt.Sheet().Facts {
		if strings.HasPrefix(f[0], "Mark at") {
			found = f[1]
		}
	}
	if !strings.Contains(a.flash.text, "cannot keep up") {
		t.Errorf("the screen says %q", a.flash.text)
	}
	if !strings.Contains(found, "could not keep up") || a.late == 0 {
		t.Errorf("the sheet's mark: %q; notice on the screen: %v", found, a.late > 0)
	}
}

// TestScaleKeys: the interface gets smaller and larger in steps, and never larger than the window.
func TestScaleKeys(t *testing.T) {
	a := begin(t, false)
	a.Resize(1920, 1080)
	press := func(name string) float64 {
		a.OnKey(Key{Name: name, Down: true, Ctrl: true})
		return a.scale
	}
	for i, want := range []float64{1.25, 1.1, 1, 1} {
		if got := press("Minus"); math.Abs(got-want) > 1e-9 {
			t.Errorf("smaller, press %d: %.2f, want %.2f", i+1, got, want)
		}
	}
	for i, want := range []float64{1.1, 1.25, 1.5, 1.5, 1.5} {
		if got := press("Equal"); math.Abs(got-want) > 1e-9 {
			t.Errorf("larger, press %d: %.2f, want %.2f", i+1, got, want)
		}
	}
	press("Minus")
	if got := press("0"); got != 1.5 {
		t.Errorf("filling the window: %.2f, want 1.5", got)
	}
}
