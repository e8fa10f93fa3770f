package app

import (
	"math"
	"strings"
	"testing"

	"steadyneedle/sim/unit"
)

// TestSpeechInSI: what is typed in SI reaches the world in the trade's unit, turned once, and is heard as it
// was said; limits are told in SI; vacuum is told in kPa below zero.
func TestSpeechInSI(t *testing.T) {
	a := beginIn(t, false, unit.SI)
	a.seconds(1)
	say := func(words, number string) string {
		a.keyPress("S")
		for _, r := range words + number {
			a.OnChar(r)
		}
		a.keyPress("Enter")
		a.seconds(0.5)
		heard := a.attempt.Heard()
		return heard[len(heard)-1].Text
	}
	for _, c := range []struct {
		words, number, heard, signal string
		value                        float64 // [C] from the factors of package unit
	}{
		{"static", "441", "Static pressure is 441 kPa.", "say_static_value", 63.962},
		{"intake gauge", "-30", "Intake gauge reads -30 kPa.", "read_intake_value", -8.859},
		{"coolant", "85", "Coolant reads 85 °C.", "read_coolant_value", 185},
		{"sections", "6", "Sections laid: 6.", "say_sections_value", 6},
	} {
		if got := say(c.words, c.number); got != c.heard {
			t.Errorf("%s %s: heard %q, want %q", c.words, c.number, got, c.heard)
		}
		if got := a.eyes.Signal(c.signal); math.Abs(got-c.value) > 0.001 {
			t.Errorf("%s %s: the world has %.3f, want %.3f", c.words, c.number, got, c.value)
		}
	}
	a.keyPress("S")
	for _, r := range "static9999" {
		a.OnChar(r)
	}
	a.keyPress("Enter")
	if want := "A number between −207 and 2758 is wanted."; strings.ReplaceAll(a.flash.text, "-", "−") != want {
		t.Errorf("said %q, want %q", a.flash.text, want)
	}
}

// TestMeasureInSI: a length set on the plan is shown and stepped in tenths of a meter, and stays a length of
// the world's within its range.
func TestMeasureInSI(t *testing.T) {
	a := beginIn(t, false, unit.SI)
	a.focus = "lay_offset"
	for range 3 {
		a.keyPress("Up")
	}
	it := a.find("lay_offset")
	if pos := it.Widget.Position(a.value(t, "lay_offset")); pos != "2.4 m" { // 4 ft are 1.22 m, and three steps of 0.4 m
		t.Errorf("three steps up show %q", pos)
	}
	for range 30 {
		a.keyPress("Up")
	}
	if v := a.value(t, "lay_offset"); v != 16 {
		t.Errorf("at the end of its range it stands at %g ft, want 16", v)
	}
}

// TestNothingSpeaksUSInSI: no control, lamp or place that shows in SI names psi, gpm, feet, inches of
// mercury or Fahrenheit.
func TestNothingSpeaksUSInSI(t *testing.T) {
	a := beginIn(t, false, unit.SI)
	a.shelf.Dry = true
	a.seconds(8) // the evaluator has told the objective
	trade := func(text string) bool {
		for _, w := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '.' || r == ',' || r == ')' || r == ';' }) {
			switch w {
			case "psi", "gpm", "ft", "inHg", "°F", "gal", "mph", "lbf":
				return true
			}
		}
		return false
	}
	for _, s := range []string{"cab", "panel", "wheels", "rear-step", "hydrant", "tank-top", "round", "speech", "messages"} {
		a.Open(s)
		a.help = true
		for _, sprite := range a.Frame().Sprites {
			for _, w := range sprite.Art.Words {
				if trade(w.Text) {
					t.Errorf("%s: %q", s, w.Text)
				}
			}
		}
		for i := range a.items {
			if n := a.noteOf(&a.items[i]); trade(n.Title) || trade(n.Text) {
				t.Errorf("%s, what is this: %s: %s", s, n.Title, n.Text)
			}
		}
		if p, ok := a.screen.(*place); ok {
			for _, n := range p.notes() {
				if trade(n.Title) || trade(n.Text) {
					t.Errorf("%s, what is this: %s: %s", s, n.Title, n.Text)
				}
			}
		}
	}
}
