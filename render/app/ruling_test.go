package app

import (
	"fmt"
	"strings"
	"testing"

	"steadyneedle/render/play"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/unit"
)

// ratedBy is a rated attempt that an operator has worked to its end.
func ratedBy(t testing.TB, name string, sys unit.System) *play.Play {
	t.Helper()
	d, script := shelfDrill(t, name)
	a, err := attempt.New(d, attempt.Options{Keys: true})
	if err != nil {
		t.Fatal(err)
	}
	op, err := a.Operator(script, operator.Hands{Speed: 1, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	if err := a.Run(name, op); err != nil {
		t.Fatal(err)
	}
	return play.New(a, "Engine 41 · rated", true).In(sys)
}

// typeIn writes a line by keys.
func (a *App) typeIn(text string) {
	for _, r := range text {
		if r == ' ' {
			a.keyPress("Space")
		}
		a.OnChar(r)
	}
}

// The evaluator waives a finding for a reason, takes it back, waives it again, and signs; then nothing
// changes any more. Each ruling is kept.
func TestEvaluatorRulesInTheDebrief(t *testing.T) {
	s := &shelfStore{}
	a := storeApp(s)
	p := ratedBy(t, "charges-unasked", unit.US)
	a.debriefOf(p, nil)
	d := a.screen.(*debrief)
	a.clickOn(t, "waive")
	a.keyPress("Enter")
	if !shows(a, "expected one") || s.ruled != 0 {
		t.Error("waived without a reason")
	}
	a.typeIn("The crew asked by hand")
	a.keyPress("Enter")
	if a.screen != screen(d) || s.ruled != 1 || !shows(a, "The crew asked by hand") || !shows(a, "unsafe, waived") || !shows(a, "passed with 100 points, 1 finding waived, not signed yet") {
		t.Fatalf("screen %s, kept %d times, ruling %+v", a.screen.key(), s.ruled, d.sheet.Ruling)
	}
	a.clickOn(t, "waive") // now: take back
	if passed, _ := d.sheet.Stands(); passed || d.sheet.Ruling != nil || s.ruled != 2 {
		t.Errorf("taken back: %+v", d.sheet.Ruling)
	}
	a.clickOn(t, "waive")
	a.clickOn(t, "ready-1")
	a.clickOn(t, "take")
	a.clickOn(t, "sign")
	a.typeIn("Lt. Brook")
	a.clickOn(t, "take")
	if passed, score := d.sheet.Stands(); !passed || score != 100 || !shows(a, "signed by Lt. Brook") || s.ruled != 4 {
		t.Errorf("signed: %+v", d.sheet.Ruling)
	}
	a.collect()
	if a.find("waive") != nil || a.find("sign") != nil {
		t.Error("a signed sheet can still be ruled on")
	}
	if d.sheet.Passed || d.sheet.Score != 75 || len(d.sheet.Findings) != 1 {
		t.Errorf("the judge's own word has changed: %v, %.0f, %d findings", d.sheet.Passed, d.sheet.Score, len(d.sheet.Findings))
	}
}

// A rehearsal has nobody who rules, nor has a recording that does not prove itself.
func TestWhoMayNotRule(t *testing.T) {
	a := storeApp(&shelfStore{})
	for name, open := range map[string]func(){
		"rehearsal": func() { a.debriefOf(worked(t, "charges-unasked"), nil) },
		"doubtful":  func() { a.debriefOf(ratedBy(t, "charges-unasked", unit.US), fmt.Errorf("line 9: it differs")) },
	} {
		open()
		a.collect()
		if a.find("waive") != nil || a.find("sign") != nil {
			t.Errorf("%s: it can be ruled on", name)
		}
	}
}

// Escape leaves a sheet, but not one that the evaluator may still rule on.
func TestEscapeLeavesTheSheet(t *testing.T) {
	a := storeApp(&shelfStore{})
	a.debriefOf(ratedBy(t, "charges-unasked", unit.US), nil)
	a.keyPress("Escape")
	if _, ok := a.screen.(*debrief); !ok || !shows(a, "Back to the drills") {
		t.Errorf("%s: one key has ended the ruling", a.screen.key())
	}
	a.debriefOf(worked(t, "charges-unasked"), nil)
	a.keyPress("Escape")
	if _, ok := a.screen.(*menu); !ok {
		t.Errorf("%s, want the first screen", a.screen.key())
	}
}

// TestLayoutOfARuledSheet is TestLayout for the debrief of a rated attempt with a finding, before and
// after the ruling, with what is wrong with a recording, and for the cards that are written on.
func TestLayoutOfARuledSheet(t *testing.T) {
	for _, sys := range []unit.System{unit.US, unit.SI} {
		a := storeApp(&shelfStore{})
		a.shelf.Dry = true
		p := ratedBy(t, "charges-unasked", sys)
		look := func(what string) {
			atEverySize(a, func(size string) {
				where := fmt.Sprintf("%v %s, %s", sys, size, what)
				itemsKeepClear(t, a, where)
				keepsClear(t, a, where)
			})
		}
		a.debriefOf(p, nil)
		look("not ruled")
		a.clickOn(t, "waive")
		w := a.screen.(*writing)
		w.text = []rune(strings.Repeat("wide ", longestLine/5))
		look("waive")
		a.keyPress("Enter")
		look("waived")
		a.clickOn(t, "sign")
		look("sign")
		a.typeIn("Battalion Chief M. Brook, Alder Ferry")
		a.keyPress("Enter")
		look("signed")
		a.debriefOf(p, fmt.Errorf("line 1: recorded in another format: physics 5; this program has 6 and cannot prove it; "+
			"line 803: the replay first differs within the second before 12 s: recorded hash 0123456789abcdef, replayed fedcba9876543210"))
		a.screen.(*debrief).doubt = "The recording was made with another physics: it was worked again, and proves nothing."
		look("doubtful")
	}
}
