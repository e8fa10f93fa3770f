package app

import (
	"fmt"
	"testing"
)

// TestManyDrills: more drills than the window holds are reached by arrows and by the wheel, and each that
// is shown lies above the caution.
func TestManyDrills(t *testing.T) {
	var drills []Drill
	for i := range 14 {
		drills = append(drills, Drill{Name: fmt.Sprint(i), Title: fmt.Sprintf("Drill %d", i), About: "What it is about."})
	}
	a := New(Options{Drills: drills})
	m := a.screen.(*menu)
	check := func() {
		t.Helper()
		a.collect()
		first, last := m.shown(a)
		if last-first != m.rows {
			t.Fatalf("%d to %d are shown, the window holds %d", first, last, m.rows)
		}
		for i := first; i < last; i++ {
			if a.find(fmt.Sprint("drill-", i)) == nil {
				t.Errorf("drill %d can't be chosen", i)
			}
			if m.row(i).Bottom() > m.cautionBox(a).Y {
				t.Errorf("drill %d lies over the caution", i)
			}
		}
	}
	check()
	a.focus = "drill-0"
	for range 13 {
		a.OnKey(Key{Name: "Down", Down: true})
		check()
	}
	if a.focus != "drill-13" {
		t.Errorf("thirteen steps down lead to %s", a.focus)
	}
	a.Scroll(1, false)
	check()
	for range 20 {
		a.Scroll(1, false)
	}
	if first, _ := m.shown(a); first != 0 {
		t.Errorf("scrolled up all the way, the list begins with %d", first)
	}
}

// Enter goes to the first drill where nothing is chosen yet; the next one begins it.
func TestEnterOnTheFirstScreen(t *testing.T) {
	a := New(Options{Drills: []Drill{{Name: "one"}, {Name: "two"}}})
	a.keyPress("Enter")
	if a.focus != "drill-one" {
		t.Errorf("the focus is on %q", a.focus)
	}
	if it := a.find(a.focus); it == nil || it.Do == nil {
		t.Error("the next Enter has nothing to begin")
	}
}
