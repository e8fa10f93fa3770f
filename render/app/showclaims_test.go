package app

import (
	"fmt"
	"testing"

	"steadyneedle/render/draw"
	"steadyneedle/scenarios"
	"steadyneedle/sim/demo"
	"steadyneedle/sim/unit"
)

// At every stop of every shipped demonstration answer and claims fit beside the inside of the pump, and the
// caption fits below it; every question keeps clear.
func TestClaimsFit(t *testing.T) {
	for _, name := range shippedShows(t) {
		for _, sys := range []unit.System{unit.US, unit.SI} {
			a, s := present(t, name, sys)
			p := s.stage.Player()
			for p.Phase() != demo.Ended {
				if p.Phase() == demo.Asking {
					a.shelf.Dry = true
					atEverySize(a, func(size string) {
						where := fmt.Sprintf("%s, %s, %s, question %s", name, sys, size, p.Step().ID)
						keepsClear(t, a, where)
						itemsKeepClear(t, a, where)
					})
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
				atEverySize(a, func(size string) {
					if h := s.claimsHeight(a, s.right.W, s.settled()); h > s.right.H {
						t.Errorf("%s, %s, %s, step %s: the claims take %.0f of %.0f", name, sys, size, p.Step().ID, h, s.right.H)
					} else if l, _ := p.Limit(); l != nil {
						room := s.right
						if room.H -= 10 + h; !s.traceFits(room) {
							t.Errorf("%s, %s, %s, step %s: beside claims of %.0f no plot shows the limit", name, sys, size, p.Step().ID, h)
						}
					}
					for _, text := range []string{p.Step().Caption, p.Demonstration.Teaches, s.captionText(a)} {
						if n := len(s.captionLines(a, sys.Prose(text))); n > captionRows {
							t.Errorf("%s, %s, %s, step %s: %d lines: %s", name, sys, size, p.Step().ID, n, text)
						}
					}
				})
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
