package app

import (
	"strings"
	"testing"

	"steadyneedle/sim/world"
)

// TestHelp: F1 explains what is pointed at, says less in a rated attempt, and marks all that it can
// explain; F2 shows the keys and goes back to where one was.
func TestHelp(t *testing.T) {
	for _, rated := range []bool{false, true} {
		a := begin(t, rated)
		a.walk(world.Panel)
		a.seconds(8)
		plain := a.pixels()
		a.keyPress("F1")
		a.focus = "bleeder"
		note := a.noteFor()
		if note == nil || !strings.Contains(note.Text, "How: ") {
			t.Fatalf("rated %v: the bleeder is explained as %+v", rated, note)
		}
		if told := strings.Contains(note.Text, "air"); told == rated {
			t.Errorf("rated %v: %q", rated, note.Text)
		}
		if d := differ(plain, a.pixels()); d < 0.01 {
			t.Errorf("the explanation changes %.2f %% of the picture", d*100)
		}
		a.keyPress("F2")
		if a.screen.key() != "keys" {
			t.Errorf("F2 shows %s", a.screen.key())
		}
		a.keyPress("Escape")
		if a.screen.key() != "panel" {
			t.Errorf("after the keys the screen is %s", a.screen.key())
		}
	}
}

// TestHint: the first hint stays ten seconds, once.
func TestHint(t *testing.T) {
	a := begin(t, false)
	a.opt.First = true
	if err := a.Begin("reverse-lay", false); err != nil {
		t.Fatal(err)
	}
	if a.hintUntil-a.wall != hintS {
		t.Errorf("the hint stays %g s", a.hintUntil-a.wall)
	}
	with := a.pixels()
	a.seconds(hintS + 0.5)
	if d := differ(with, a.pixels()); d < 0.01 {
		t.Errorf("after ten seconds %.2f %% of the picture has changed", d*100)
	}
	if err := a.Begin("reverse-lay", false); err != nil {
		t.Fatal(err)
	}
	if a.hintUntil > a.wall {
		t.Error("the hint comes a second time")
	}
}

// TestCautionFirst: a rated attempt begins only when the caution has been acknowledged.
func TestCautionFirst(t *testing.T) {
	a := begin(t, false)
	a.attempt = nil
	a.show(&menu{})
	if err := a.Offer("reverse-lay", true); err != nil {
		t.Fatal(err)
	}
	if a.attempt != nil || a.screen.key() != "beforehand" {
		t.Fatalf("before the caution the screen is %s", a.screen.key())
	}
	a.keyPress("Enter")
	if a.attempt == nil || !a.attempt.Info().Rated || a.screen.key() != "cab" {
		t.Errorf("after it the screen is %s", a.screen.key())
	}
}
