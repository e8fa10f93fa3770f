package app

import (
	"fmt"
	"strings"
	"testing"

	"steadyneedle/render/input"
	"steadyneedle/scenarios"
	"steadyneedle/sim/unit"
)

// demoList is the list with all that ships, so many times over.
func demoList(t *testing.T, times int, sys unit.System) *App {
	t.Helper()
	var shows []Drill
	for n := range times {
		for _, name := range shippedShows(t) {
			d, err := scenarios.Open(nil).Demonstration(name)
			if err != nil {
				t.Fatal(err)
			}
			shows = append(shows, Drill{Name: fmt.Sprint(name, n), Title: sys.Prose(d.Drill.Title), About: sys.Prose(d.Teaches)})
		}
	}
	a := New(Options{Shows: shows})
	a.show(&demos{})
	return a
}

// What each demonstration teaches can be read whole in the list, at every size and in both systems, also where
// there are more than the window holds.
func TestDemosLayout(t *testing.T) {
	for _, sys := range []unit.System{unit.US, unit.SI} {
		for _, times := range []int{1, 3} {
			a := demoList(t, times, sys)
			a.shelf.Dry = true
			atEverySize(a, func(size string) {
				where := fmt.Sprintf("%v %s, %d times", sys, size, times)
				itemsKeepClear(t, a, where)
				keepsClear(t, a, where)
				for _, s := range a.opt.Shows[:2] {
					words := strings.Fields(s.About)
					if !shows(a, words[len(words)-1]) {
						t.Errorf("%s: %q is not shown to its end", where, s.About)
					}
				}
			})
		}
	}
}

// A long list is reached to its end by wheel, by a finger and by keys.
func TestDemosScroll(t *testing.T) {
	a := demoList(t, 3, unit.US)
	d := a.screen.(*demos)
	last := "show-" + a.opt.Shows[len(a.opt.Shows)-1].Name
	first := "show-" + a.opt.Shows[0].Name
	in := func(key string) bool { a.collect(); return a.find(key) != nil }
	if !in(first) || in(last) {
		t.Fatal("the whole list shows")
	}
	for range 20 {
		a.Scroll(-1, false)
	}
	if !in(last) || in(first) {
		t.Error("the wheel does not reach the end")
	}
	for d.up > 0 {
		up := d.up
		x, y := a.mid(t, "show-"+a.opt.Shows[2*d.up].Name)
		a.Input(input.Event{Kind: input.Press, Finger: 1, X: x, Y: y})
		for n := range 300 {
			a.Input(input.Event{Kind: input.Move, Finger: 1, X: x, Y: y + float64(n)})
		}
		a.Input(input.Event{Kind: input.Release, Finger: 1, X: x, Y: y + 300})
		if d.up >= up {
			t.Fatalf("a drag of 300 leaves row %d first", up)
		}
	}
	if a.screen != screen(d) {
		t.Fatal("a drag was taken for a click")
	}
	a.collect()
	a.focus = first
	for range len(a.opt.Shows) / 2 {
		a.keyPress("Down")
	}
	if want := "show-" + a.opt.Shows[len(a.opt.Shows)-2].Name; a.focus != want || !in(want) {
		t.Errorf("the keys lead to %s, want %s", a.focus, want)
	}
}

// On the list nothing moves by itself: the window can rest.
func TestDemosRest(t *testing.T) {
	a := demoList(t, 1, unit.US)
	a.Frame()
	a.Advance(1.0 / 60)
	if !a.Still() {
		t.Error("the list is drawn again though nothing has happened")
	}
}
