package view

import (
	"strings"
	"testing"

	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/world"
)

// sentences counts what ends like a sentence.
func sentences(text string) int {
	n := strings.Count(text, ". ")
	if strings.HasSuffix(text, ".") {
		n++
	}
	return n
}

// TestEverythingIsExplained: every control that a candidate works and every gauge and lamp of every
// shipped apparatus has two sentences.
func TestEverythingIsExplained(t *testing.T) {
	shelf := scenarios.Open(nil)
	list, err := shelf.List()
	if err != nil {
		t.Fatal(err)
	}
	for _, apparatus := range list.Apparatus {
		d, err := shelf.Drill("reverse-lay", scenarios.Options{Seed: 1, Apparatus: apparatus.Name})
		if err != nil {
			continue // an apparatus that this drill cannot use
		}
		a, err := attempt.New(d, attempt.Options{})
		if err != nil {
			t.Fatal(err)
		}
		w := a.Scene.World
		for _, c := range w.Controls() {
			if c.By == world.Nowhere || c.Kind == world.Speech || c.Kind == world.Gesture || c.Kind == world.Walk {
				continue
			}
			if text := About(c.Name); sentences(text) != 2 {
				t.Errorf("%s: %s has %d sentences, want 2: %q", apparatus.Name, c.Name, sentences(text), text)
			}
		}
		for _, s := range w.Signals() {
			if !strings.HasSuffix(s.Name, "_gauge") && !strings.HasSuffix(s.Name, "_lamp") {
				continue
			}
			if text := Gauge(s.Name); sentences(text) != 2 {
				t.Errorf("%s: %s has %d sentences, want 2: %q", apparatus.Name, s.Name, sentences(text), text)
			}
		}
	}
	for name, text := range gauges {
		if sentences(text) != 2 {
			t.Errorf("%s has %d sentences, want 2", name, sentences(text))
		}
	}
}

func TestNobodyDescribes(t *testing.T) {
	if About("nothing9") != "" || Gauge("line_of_nothing") != "" {
		t.Error("something that is not there is described")
	}
	if About("discharge3") != About("discharge1") || Gauge("line2_gauge") == "" {
		t.Error("numbered controls and gauges do not share their words")
	}
}
