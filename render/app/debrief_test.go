package app

import (
	"errors"
	"strings"
	"testing"

	"steadyneedle/render/draw"
	"steadyneedle/render/play"
	"steadyneedle/render/report"
	"steadyneedle/render/view"
	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/prompter"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// shelfDrill is the shipped drill as an operator wants it.
func shelfDrill(t testing.TB, name string) (*drill.Drill, *operator.Script) {
	t.Helper()
	shelf := scenarios.Open(nil)
	d, script, err := shelf.DrillFor("reverse-lay", name, scenarios.Options{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	return d, script
}

// worked is an attempt that an operator has worked to its end.
func worked(t testing.TB, name string) *play.Play {
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
	return play.New(a, "test", false)
}

// shelfStore is a store in memory.
type shelfStore struct {
	kept  []Kept
	own   *report.Own
	taken world.Tick
	open  Opening
	ended int
	ruled int
}

func (s *shelfStore) Kept(string) ([]Kept, error) { return s.kept, nil }
func (s *shelfStore) Weak(string) []Weakness {
	return []Weakness{{Step: "bleed", Text: "Bleed until solid water, shut the bleeder.", Phase: "Supply", Misses: 3, Of: 5, CameBack: true}}
}
func (s *shelfStore) Finish(view.Attempt) error                    { s.ended++; return nil }
func (s *shelfStore) SetOwn(_ view.Attempt, own *report.Own) error { s.own = own; return nil }
func (s *shelfStore) Rule(view.Attempt) error                      { s.ruled++; return nil }
func (s *shelfStore) Open(string) (Opening, error)                 { return s.open, nil }
func (s *shelfStore) Settle(string, view.Attempt) error            { return nil }
func (s *shelfStore) Drop(string) error                            { return nil }
func (s *shelfStore) TakeOver(at view.Attempt, moment world.Tick) (view.Attempt, error) {
	s.taken = moment
	b, err := at.(*play.Play).Attempt().Branch(moment, attempt.Options{Live: true, Keys: true})
	if err != nil {
		return nil, err
	}
	return play.New(b, "taken over", false), nil
}
func (s *shelfStore) Practice(string, string) (Opening, func(view.Attempt) world.Tick, error) {
	return s.open, func(view.Attempt) world.Tick { return 6000 }, nil
}

// sliced is an opening that takes some slices.
type sliced struct {
	left int
	at   view.Attempt
	err  error
}

func (s *sliced) Work() bool                       { s.left--; return s.left <= 0 }
func (s *sliced) Reached() (now, whole world.Tick) { return 192 * 60, 724 * 60 }
func (s *sliced) Attempt() (view.Attempt, error)   { return s.at, s.err }

func storeApp(s *shelfStore) *App {
	return New(Options{Drills: []Drill{{Name: "reverse-lay", Title: "Reverse lay"}}, Store: s})
}

// The candidates mark themselves before the sheet opens, and see where they misjudged.
func TestOwnMarks(t *testing.T) {
	s := &shelfStore{}
	a := storeApp(s)
	p := worked(t, "unbled")
	a.adopt(p)
	a.ended()
	if a.screen.key() != "own-marks" || s.ended != 1 {
		t.Fatalf("after the end: %s, kept %d times", a.screen.key(), s.ended)
	}
	for i, phase := range p.Sheet().Phases() {
		if phase == "Supply" {
			a.clickOn(t, "own-"+string(rune('0'+i))+"-0") // clean, which it was not
		}
	}
	a.clickOn(t, "own-passed")
	a.clickOn(t, "open-sheet")
	d, ok := a.screen.(*debrief)
	if !ok || s.own == nil || s.own.Phases["Supply"] != "clean" || !s.own.Pass || d.sheet.Own != s.own {
		t.Fatalf("%s, %+v", a.screen.key(), s.own)
	}
	if g := d.sheet.Grade("Supply"); g != "error" {
		t.Errorf("the judge found Supply %s", g)
	}
	if !shows(a, "you said clean") {
		t.Error("the sheet does not show what the candidate thought")
	}
}

// shows reports whether a text stands on the screen.
func shows(a *App, text string) bool {
	for _, s := range a.Frame().Sprites {
		for _, w := range s.Art.Words {
			if strings.Contains(w.Text, text) {
				return true
			}
		}
	}
	return false
}

// A finding leads to the world as it stood; a few seconds before and after, and other places, are near;
// from there a rehearsal goes on.
func TestMomentAndTakeOver(t *testing.T) {
	s := &shelfStore{}
	a := storeApp(s)
	p := worked(t, "unbled")
	a.debriefOf(p, nil)
	d := a.screen.(*debrief)
	at := d.sheet.Findings[0].At
	a.clickOn(t, "moment")
	m, ok := a.screen.(*moment)
	if !ok || m.at != at || m.from != world.Panel {
		t.Fatalf("%s", a.screen.key())
	}
	before := m.eyes.Signal("intake")
	a.clickOn(t, "later")
	if m = a.screen.(*moment); m.at != at+300 || m.eyes.Signal("intake") <= before {
		t.Errorf("five seconds later: at %d the intake stands at %.2f, before at %.2f", m.at, m.eyes.Signal("intake"), before)
	}
	a.keyPress("Left", "Left")
	a.clickOn(t, "cab")
	if m = a.screen.(*moment); m.at != at-300 || m.from != world.Cab {
		t.Errorf("at %d from %s", m.at, m.from)
	}
	a.clickOn(t, "take-over")
	if _, ok := a.screen.(*place); !ok || s.taken != at-300 || a.attempt == view.Attempt(p) || a.attempt.Reading().At < at-300 {
		t.Errorf("taken over at %d: %s", s.taken, a.screen.key())
	}
	if p.Attempt().Now() == a.attempt.Reading().At {
		t.Error("the attempt on the sheet moved on")
	}
}

// A click on the timeline leads to that moment, and its views turn.
func TestTimeline(t *testing.T) {
	a := storeApp(&shelfStore{})
	a.debriefOf(worked(t, "clean"), nil)
	d := a.screen.(*debrief)
	a.keyPress("v", "v")
	a.keyPress("v")
	area := d.plot(a).Area()
	x, y := (area.X+area.W/2)*a.scale, area.Center().Y*a.scale
	a.PointTo(x, y)
	a.Press(x, y)
	a.Release(x, y)
	m, ok := a.screen.(*moment)
	if !ok || m.at < d.sheet.Length*49/100 || m.at > d.sheet.Length*51/100 {
		t.Fatalf("%s", a.screen.key())
	}
	a.keyPress("Escape")
	a.setFocus(a.find("timeline"))
	was := d.cursor
	a.keyPress("Right")
	if d.cursor != was+300 {
		t.Errorf("the mark went from %d to %d", was, d.cursor)
	}
}

// An attempt that takes time to open shows how far it is; one that does not match its recording is shown
// with what is wrong.
func TestOpening(t *testing.T) {
	p := worked(t, "clean")
	s := &shelfStore{kept: []Kept{{ID: "x", Title: "Reverse lay", When: "Monday", Sheet: p.Sheet()}}, open: &sliced{left: 3, at: p, err: errors.New("line 7: it differs")}}
	a := storeApp(s)
	a.clickOn(t, "records")
	a.clickOn(t, "record-x")
	if a.screen.key() != "opening" && a.screen.key() != "debrief" {
		t.Fatalf("%s", a.screen.key())
	}
	a.seconds(0.2)
	d, ok := a.screen.(*debrief)
	if !ok || d.doubt != "Line 7: it differs." || !shows(a, d.doubt) {
		t.Errorf("%s", a.screen.key())
	}
	a.keyPress("4")
	if !shows(a, "missed in 3 of 5, comes back") {
		t.Error("what comes back is not shown")
	}
	s.open = &sliced{left: 1, at: p}
	a.clickOn(t, "practice-bleed")
	if _, ok := a.screen.(*place); !ok || s.taken != 6000 {
		t.Errorf("practice: %s from %d", a.screen.key(), s.taken)
	}
}

// What was left of an attempt that was cut off is offered on the first screen.
func TestCutOff(t *testing.T) {
	p := worked(t, "clean")
	s := &shelfStore{kept: []Kept{{ID: "x", Title: "Reverse lay", When: "Monday", Resumable: true}}, open: &sliced{left: 1, at: p}}
	a := storeApp(s)
	if !shows(a, "An attempt was cut off") {
		t.Fatal("nothing is offered")
	}
	a.clickOn(t, "go-on-cut")
	if _, ok := a.screen.(*place); !ok || s.taken != p.Reading().At {
		t.Errorf("%s", a.screen.key())
	}
}

// In a rehearsal the next step is told, what is asked for is answered, and an unsafe act stops the world
// until it has been explained.
func TestPrompter(t *testing.T) {
	d, _ := shelfDrill(t, "clean")
	at, err := attempt.New(d, attempt.Options{Live: true, Keys: true, Help: prompter.New(d.Steps, nil)})
	if err != nil {
		t.Fatal(err)
	}
	s := &shelfStore{}
	a := storeApp(s)
	a.take(play.New(at, "test", false))
	a.seconds(0.5)
	if !shows(a, "Listen to the objective") {
		t.Error("the first step is not told")
	}
	a.keyPress("h")
	if n := len(at.Hints()); n != 2 || at.Hints()[1].Cause != prompter.Question {
		t.Errorf("%+v", at.Hints())
	}
	for _, c := range []struct { // rolls with nobody belted
		name string
		to   float64
	}{{"parking_brake", 0}, {"transmission", 1}, {"drive", 1}} {
		id, _ := a.eyes.Control(c.name)
		a.hands.want(id, c.to)
		a.seconds(1)
	}
	a.seconds(8)
	st, ok := a.screen.(*stop)
	if !ok {
		t.Fatalf("screen %s after rolling unbelted; findings %+v", a.screen.key(), at.Sheet().Findings)
	}
	was := at.Now()
	a.seconds(2)
	if at.Now() != was {
		t.Error("the world ran on")
	}
	a.clickOn(t, "go-back")
	if _, ok := a.screen.(*place); !ok || s.taken != st.at-15*60 {
		t.Errorf("%s, from %d", a.screen.key(), s.taken)
	}
}

// Every step of the drill finds room on the strip, at every size and in both systems of units.
func TestStepsFitTheStrip(t *testing.T) {
	d, _ := shelfDrill(t, "clean")
	a := storeApp(&shelfStore{})
	atEverySize(a, func(size string) {
		for _, sys := range []unit.System{unit.US, unit.SI} {
			for _, s := range d.Steps {
				if n := len((draw.Style{Size: 15}).Wrap(a.scale, a.promptBox().W-22, sys.Prose(s.Hint))); n > 3 {
					t.Errorf("%s: step %s takes %d lines", size, s.ID, n)
				}
			}
		}
	})
}

// What is written on the calculation sheet is noted, and stands beside the right terms in the debrief.
func TestCalculationSheet(t *testing.T) {
	a := begin(t, true)
	a.keyPress("c")
	w, ok := a.screen.(*sums)
	if !ok || a.focus != "sum-nozzle" {
		t.Fatalf("%s, focus %q", a.screen.key(), a.focus)
	}
	for _, r := range "1x00." {
		a.OnChar(r)
	}
	a.keyPress("Backspace", "Enter")
	for _, r := range "9999" {
		a.OnChar(r)
	}
	a.keyPress("Escape")
	if _, ok := a.screen.(*place); !ok {
		t.Fatalf("%s", a.screen.key())
	}
	again := a.attempt.Sums()
	if again[0].Value != 100 || again[1].Value != 9999 || again[2].Value == again[2].Value || len(again) != len(w.list) {
		t.Errorf("%+v", again)
	}
	a.attempt.End()
	a.ended()
	a.keyPress("3")
	if !shows(a, "9999 gpm") || !shows(a, "The simulated lay gives") && !shows(a, "the simulated lay gives") && !shows(a, "nothing could be proved") {
		t.Error("the debrief does not show what was written")
	}
}

// A step that is left out is told of once, where it is missing; what waits for it was not done too soon.
// Of two steps in the wrong order one was too soon, the other passed over.
func TestOrderTellsOfOneCauseOnce(t *testing.T) {
	for name, want := range map[string]string{
		"no-radio":      "take-radio: not done",
		"hydrant-first": "engine-end: passed over in its turn, hydrant-end: done too soon",
	} {
		var got []string
		for _, s := range worked(t, name).Sheet().Steps {
			if !s.Done || s.Late || s.Early {
				became := s.Became()
				if s.Early {
					became = "done too soon"
				}
				got = append(got, s.ID+": "+became)
			}
		}
		if strings.Join(got, ", ") != want {
			t.Errorf("%s: %v", name, got)
		}
	}
}
