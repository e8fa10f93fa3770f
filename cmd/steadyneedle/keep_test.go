package main

import (
	"testing"

	"steadyneedle/cmd/internal/store"
	"steadyneedle/render/play"
	"steadyneedle/render/report"
	"steadyneedle/render/view"
	"steadyneedle/scenarios"
	"steadyneedle/sim/world"
)

// keeping is a front door with a store of its own.
func keeping(t *testing.T) *front {
	t.Helper()
	s, err := store.Open(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	return &front{o: options{seed: 1}, shelf: scenarios.Open(nil), keeper: keeper{store: s, ids: map[*play.Play]string{}}}
}

func begun(t *testing.T, f *front, rated bool) view.Attempt {
	t.Helper()
	at, err := f.start("reverse-lay", rated)
	if err != nil {
		t.Fatal(err)
	}
	return at
}

func (f *front) listed(t *testing.T) []store.Item {
	t.Helper()
	list, err := f.store.List()
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// What is ended is kept, with the candidate's own marks, and opens again as it was; a rehearsal has its
// prompter, a rated attempt none.
func TestKept(t *testing.T) {
	f := keeping(t)
	at := begun(t, f, false)
	for range 700 {
		at.Tick()
	}
	if at.Help() == 0 || len(at.Hints()) == 0 {
		t.Error("nobody helps in a first rehearsal")
	}
	at.End()
	if err := f.Finish(at); err != nil {
		t.Fatal(err)
	}
	if err := f.SetOwn(at, &report.Own{Phases: map[string]string{"Line": "clean"}}); err != nil {
		t.Fatal(err)
	}
	kept, err := f.Kept("reverse-lay")
	if err != nil || len(kept) != 1 || kept[0].Sheet.Verdict() != "Ended early" || kept[0].Sheet.Mode != rehearsal {
		t.Fatalf("%+v, %v", kept, err)
	}
	o, err := f.Open(kept[0].ID)
	if err != nil || !o.Work() {
		t.Fatalf("not at once: %v", err)
	}
	again, err := o.Attempt()
	if err != nil || again.Reading().At != at.Reading().At || !again.Over() || len(again.Hints()) != len(at.Hints()) {
		t.Errorf("%v", err)
	}
	if s := again.Sheet(); s.Own == nil || s.Own.Phases["Line"] != "clean" || s.Verdict() != "Ended early" {
		t.Errorf("%+v", s.Own)
	}
	if r := begun(t, f, true); r.Help() != 0 {
		t.Error("somebody helps in a rated attempt")
	}
	if err := f.settle(); err != nil {
		t.Fatal(err)
	}
	if list := f.listed(t); len(list) != 2 || list[1].Sheet.Mode != rated {
		t.Errorf("%+v", list)
	}
}

// Taking over from an attempt that is over leaves it as it is; from one under way gives that one up, and
// the new one is recorded from the beginning.
func TestTakeOver(t *testing.T) {
	f := keeping(t)
	at := begun(t, f, false)
	for range 1500 {
		at.Tick()
	}
	next, err := f.TakeOver(at, 700)
	if err != nil || next.Reading().At != 700 || next.Over() {
		t.Fatalf("%v", err)
	}
	for range 100 {
		next.Tick()
	}
	next.End()
	if err := f.Finish(next); err != nil {
		t.Fatal(err)
	}
	list := f.listed(t)
	if len(list) != 1 || !list[0].Sheet.TakenOver || list[0].Sheet.Length != 800 {
		t.Fatalf("%d kept", len(list))
	}
	third, err := f.TakeOver(next, 400)
	if err != nil || third.Reading().At != 400 {
		t.Fatalf("%v", err)
	}
	if err := f.settle(); err != nil {
		t.Fatal(err)
	}
	if list = f.listed(t); len(list) != 2 {
		t.Errorf("%d kept", len(list))
	}
	for _, it := range list { // each is whole
		o, err := f.Open(it.ID)
		if err != nil {
			t.Fatal(err)
		}
		for !o.Work() {
		}
		if _, err := o.Attempt(); err != nil {
			t.Error(err)
		}
	}
}

// Practice goes to where the step's turn came.
func TestPractice(t *testing.T) {
	f := keeping(t)
	at := begun(t, f, false)
	for range 60 * 60 {
		at.Tick()
	}
	at.End()
	sheet := at.(*play.Play).Kept()
	for i := range sheet.Steps {
		sheet.Steps[i].Missed = sheet.Steps[i].ID == "belts" // waits for the doors, which are shut from the beginning
	}
	j := f.journal
	f.journal = nil
	if err := f.store.Finish(j, sheet, at.(*play.Play).Attempt().WriteFrames); err != nil {
		t.Fatal(err)
	}
	o, from, err := f.Practice("reverse-lay", "belts")
	if err != nil || !o.Work() {
		t.Fatalf("%v", err)
	}
	opened, err := o.Attempt()
	if err != nil {
		t.Fatal(err)
	}
	if at := from(opened); at < 0 || at > 2*world.TicksPerSecond {
		t.Errorf("from tick %d", at)
	}
	if _, _, err := f.Practice("reverse-lay", "static"); err == nil {
		t.Error("a step that nobody missed was found")
	}
}
