package app

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"slices"
	"testing"

	"steadyneedle/render/draw"
	"steadyneedle/render/play"
	"steadyneedle/render/view"
	"steadyneedle/scenarios"
	"steadyneedle/sim/demo"
	"steadyneedle/sim/unit"
)

// present shows a shipped demonstration.
func present(t testing.TB, name string, sys unit.System) (*App, *show) {
	t.Helper()
	a := New(Options{Shows: []Drill{{Name: name, Title: "A demonstration", About: "What it teaches."}}, Present: func(name string) (view.Stage, error) {
		d, err := scenarios.Open(nil).Demonstration(name)
		if err != nil {
			return nil, err
		}
		p, err := demo.New(d)
		if err != nil {
			return nil, err
		}
		return play.NewStage(p, "test", sys), nil
	}})
	if err := a.Present(name); err != nil {
		t.Fatal(err)
	}
	s := a.screen.(*show)
	if s.warned || !a.frozen {
		t.Error("it begins before the caution has been read")
	}
	a.keyPress("f", "p", "x", "t")
	if a.screen != screen(s) || !a.frozen {
		t.Error("a key gets past the caution")
	}
	a.keyPress("Space")
	if !s.warned || a.frozen {
		t.Error("it does not begin")
	}
	return a, s
}

// What a class reads has capitals of 16 minutes of arc at 8 m on a picture 2 m wide: tan(16′) · 8 m is
// 37.2 mm of 2 m [C], 23.8 units of 1280.
func TestBackRow(t *testing.T) {
	if got := BackRow(1280) * 0.72; math.Abs(got-23.83) > 0.05 {
		t.Errorf("capitals of %.2f units, want 23.83", got)
	}
}

// At every size and in both systems nothing of the show is cut off, shortened or written over.
func TestShowLayout(t *testing.T) {
	for _, sys := range []unit.System{unit.US, unit.SI} {
		a, s := present(t, "relief-valve", sys)
		a.shelf.Dry = true
		for a.attempt.(view.Stage).Player().Phase() == demo.Playing {
			a.seconds(1)
		}
		atEverySize(a, func(size string) {
			for side := range sides {
				s.choose(a, side)
				where := fmt.Sprintf("%v %s, %s", sys, size, sides[side].name)
				itemsKeepClear(t, a, where)
				keepsClear(t, a, where)
			}
		})
	}
}

// So it is while a demonstration runs, when curve and suction head stand where claims do at a stop.
func TestShowLayoutAtWork(t *testing.T) {
	for _, name := range shippedShows(t) {
		for _, sys := range []unit.System{unit.US, unit.SI} {
			a, s := present(t, name, sys)
			a.shelf.Dry = true
			a.seconds(2)
			atEverySize(a, func(size string) {
				for side := range sides {
					s.choose(a, side)
					for range demo.Belows {
						s.nextLower(a)
						where := fmt.Sprintf("%s, %v %s, %s, %d below", name, sys, size, sides[side].name, s.lower())
						itemsKeepClear(t, a, where)
						keepsClear(t, a, where)
					}
				}
			})
		}
	}
}

func TestTimeAtWill(t *testing.T) {
	a, s := present(t, "relief-valve", unit.US)
	now := func() float64 { return s.stage.Player().Attempt.Now().Seconds() }
	passes := func(want float64, what string) {
		t.Helper()
		from := now()
		a.seconds(2)
		if got := now() - from; math.Abs(got-want) > 0.15*want+0.05 {
			t.Errorf("%s: %.2f s pass in 2 s, want %.2f", what, got, want)
		}
	}
	passes(2, "as usual")
	a.keyPress("Equal", "Equal", "Add")
	passes(16, "eight times as fast")
	a.keyPress("Minus", "Minus", "Minus", "Minus", "Subtract")
	passes(0.5, "a quarter as fast")
	a.keyPress("f")
	passes(0, "frozen")
	from := now()
	a.keyPress("Period")
	if d := now() - from; math.Abs(d-0.1) > 1e-9 {
		t.Errorf("a step makes %.3f s, want 0.1", d)
	}
	from = now()
	a.keyPress("b")
	if d := from - now(); d < 9.9 || d > 11 {
		t.Errorf("back by %.2f s, want 10", d)
	}
	if s.stage.Left() == nil {
		t.Fatal("what was left is forgotten")
	}
	a.keyPress("o")
	if math.Abs(now()-from) > 0.02 {
		t.Errorf("the other way ends at %.2f s, want %.2f", now(), from)
	}
	a.keyPress("Escape")
	if a.tempo != 1 || a.frozen {
		t.Error("time goes on as it was set for the class")
	}
}

// A question covers what it asks about until its step is done; the class's answers are counted.
func TestQuestion(t *testing.T) {
	a, s := present(t, "relief-valve", unit.US)
	p := s.stage.Player()
	a.tempo = 8
	for p.Phase() == demo.Playing {
		a.seconds(0.5)
	}
	if p.Phase() != demo.Waiting || len(s.settled()) == 0 {
		t.Fatalf("phase %d with %d claims, want a stop with its claims", p.Phase(), len(s.settled()))
	}
	a.keyPress("Space")
	if p.Phase() != demo.Asking {
		t.Fatalf("phase %d, want a question", p.Phase())
	}
	a.keyPress("1", "2", "Down", "7", "Backspace", "4")
	a.clickOn(t, "option-2")
	a.clickOn(t, "option-2")
	a.clickOn(t, "fewer-2")
	a.clickOn(t, "fewer-0")
	a.clickOn(t, "option-0")
	keepsClear(t, a, "question")
	itemsKeepClear(t, a, "question")
	a.keyPress("Space")
	if v := p.Votes(p.Index()); v[0] != 12 || v[1] != 4 || v[2] != 1 {
		t.Errorf("votes %v, want 12, 4, 1", v)
	}
	if !s.covered() {
		t.Error("the gauges are open while it runs")
	}
	for p.Phase() == demo.Playing {
		a.seconds(0.5)
	}
	if s.covered() {
		t.Error("the gauges stay covered when it is done")
	}
}

// The instructor takes the panel, works it as the instructor, and lets the script go on.
func TestTakeOver(t *testing.T) {
	a, s := present(t, "dead-head", unit.US)
	p := s.stage.Player()
	a.keyPress("t")
	if p.Phase() != demo.Interrupted {
		t.Fatal("the script goes on")
	}
	if _, ok := a.screen.(*place); !ok {
		t.Fatalf("screen %s, want the panel", a.screen.key())
	}
	id, _ := a.eyes.Control("recirculation")
	a.hands.want(id, 1)
	a.seconds(2)
	if got := s.stage.Truth("recirculation"); got < 0.99 {
		t.Errorf("recirculation at %.2f, want 1: the instructor's hand did not reach it", got)
	}
	a.keyPress("Escape")
	back, ok := a.screen.(*show)
	if !ok {
		t.Fatalf("screen %s, want the show", a.screen.key())
	}
	a.keyPress("t")
	if back.taken() {
		t.Error("the script does not go on")
	}
}

// Who comes back from the panel finds what stood side by side, below the plot, the hands counted so far and
// what was armed for last.
func TestBackFromThePanel(t *testing.T) {
	a, s := present(t, "relief-valve", unit.US)
	p := s.stage.Player()
	a.keyPress("2", "n")
	below := s.lower()
	a.tempo = 8
	for p.Phase() == demo.Playing {
		a.seconds(0.5)
	}
	a.keyPress("Space", "7", "p")
	if _, ok := a.screen.(*place); !ok {
		t.Fatalf("screen %s, want the panel", a.screen.key())
	}
	a.keyPress("Escape")
	back, ok := a.screen.(*show)
	if !ok {
		t.Fatalf("screen %s, want the show", a.screen.key())
	}
	if back.pair != 1 || back.lower() != below || back.hands().counts[0] != 7 || !back.warned {
		t.Errorf("pair %d, below %d, hands %v, warned %v", back.pair, back.lower(), back.hands().counts, back.warned)
	}
	a.keyPress("Escape")
	if a.class != nil {
		t.Error("the show is kept after it has been left")
	}
}

// Left and Right move the moment that is read off the plots within what is plotted; past the newest it goes,
// and so it does when the plot has left it behind.
func TestReadOff(t *testing.T) {
	a, s := present(t, "relief-valve", unit.US)
	s.stage.Player().Interrupt()
	a.tempo = 8
	a.seconds(10) // more of the past than is plotted
	a.keyPress("f")
	now := s.stage.Player().Attempt.Now().Seconds()
	reads := func(want float64) {
		t.Helper()
		if _, _, at := s.window(); math.IsNaN(want) != math.IsNaN(at) || math.Abs(at-want) > 1e-9 {
			t.Errorf("reads at %.2f s, want %.2f (now %.2f)", at, want, now)
		}
	}
	newest := math.NaN()
	reads(newest)
	a.keyPress("Right")
	reads(newest)
	a.keyPress("Left", "Left")
	reads(now - 2)
	a.keyPress("Right")
	reads(now - 1)
	a.keyPress("Right")
	reads(newest)
	for range 70 {
		a.keyPress("Left")
	}
	reads(now - traceS)
	a.keyPress("f")
	a.seconds(1)
	reads(newest)
	a.keyPress("Left", "b")
	reads(newest)
}

// twoStage is a demonstration on a two-stage pump, in volume or, one behind the other, in pressure.
func twoStage(t *testing.T, series int, sys unit.System) *play.Stage {
	t.Helper()
	text, err := os.ReadFile("../../scenarios/demonstrations/dead-head.yaml")
	if err != nil {
		t.Fatal(err)
	}
	shelf, _, err := scenarios.Open(nil).WithFile("dead-head.yaml", bytes.Replace(text, []byte("apparatus: engine41"), []byte("apparatus: engine43"), 1))
	if err != nil {
		t.Fatal(err)
	}
	d, err := shelf.Demonstration("dead-head")
	if err != nil {
		t.Fatal(err)
	}
	d.Drill.Setup.Start["transfer"] = float64(series)
	p, err := demo.New(d)
	if err != nil {
		t.Fatal(err)
	}
	return play.NewStage(p, "test", sys)
}

// The curve of a two-stage pump is that of its arrangement: in volume and in pressure it works on it, but for
// what cavitation takes of the head with plenty at hand, under 3 % [C].
func TestCurveOfTwoStages(t *testing.T) {
	for series := range 2 {
		s := &show{stage: twoStage(t, series, unit.US)}
		if at := s.stage.Truth("transfer_at"); at != float64(series) {
			t.Fatalf("the transfer valve is at %g, want %d", at, series)
		}
		c, net := s.curve(draw.Rect{W: 400, H: 300}), s.stage.Truth("net_psi")
		if got := c.ShutoffPSI - c.LossPSI*c.GPM*c.GPM; net < 100 || math.Abs(got-net) > 0.03*net {
			t.Errorf("series %d: the curve gives %.1f psi at %.0f gpm, the pump %.1f", series, got, c.GPM, net)
		}
	}
}

// The inside of a two-stage pump keeps clear at every size, says how its impellers stand, and explains both
// valves.
func TestInsideOfTwoStages(t *testing.T) {
	for series, word := range []string{"volume", "pressure"} {
		for _, sys := range []unit.System{unit.US, unit.SI} {
			a := New(Options{Present: func(string) (view.Stage, error) { return twoStage(t, series, sys), nil }})
			if err := a.Present("dead-head"); err != nil {
				t.Fatal(err)
			}
			a.keyPress("Space", "f")
			a.shelf.Dry = true
			atEverySize(a, func(size string) {
				for side := range sides {
					a.class.choose(a, side)
					where := fmt.Sprintf("%s, %v %s, %s", word, sys, size, sides[side].name)
					itemsKeepClear(t, a, where)
					keepsClear(t, a, where)
					if a.class.cut == nil {
						continue
					}
					if !shows(a, word) {
						t.Errorf("%s: it is not said", where)
					}
					for _, part := range []string{"First impeller", "Second impeller", "Transfer valve", "Clapper valve"} {
						if a.find("part-"+part) == nil {
							t.Errorf("%s: nothing explains the %s", where, part)
						}
					}
				}
			})
		}
	}
}

// The pointer alone leads from a demonstration to the panel and its menu, from each of these back, and out of
// the demonstration midway and before it has begun.
func TestThereAndBackByPointer(t *testing.T) {
	a, s := present(t, "relief-valve", unit.US)
	panel := func() { a.clickOn(t, fmt.Sprint("show-", buttonNamed(t, s, a, "Panel"))) }
	for _, way := range [][]string{{"tab-Class"}, {"tab-Street", "tab-Class"}, {"messages", "tab-Class"}, {"menu", "class"}} {
		panel()
		for _, key := range way {
			a.clickOn(t, key)
		}
		if a.screen != screen(s) {
			t.Fatalf("by %v: screen %s, want the show", way, a.screen.key())
		}
	}
	panel()
	a.clickOn(t, "menu")
	a.clickOn(t, "leave")
	if _, ok := a.screen.(*demos); !ok || a.class != nil {
		t.Errorf("left by the menu, the screen is %s", a.screen.key())
	}
	for _, warned := range []bool{true, false} {
		if err := a.Present("relief-valve"); err != nil {
			t.Fatal(err)
		}
		if warned {
			a.keyPress("Space", "f")
		}
		a.clickOn(t, "leave")
		if _, ok := a.screen.(*demos); !ok || a.class != nil || a.frozen {
			t.Errorf("warned %v: left, the screen is %s", warned, a.screen.key())
		}
	}
}

// buttonNamed is the number of one of the show's buttons.
func buttonNamed(t *testing.T, s *show, a *App, name string) int {
	t.Helper()
	i := slices.IndexFunc(s.buttons(a), func(b showButton) bool { return b.name == name })
	if i < 0 {
		t.Fatalf("no button %q", name)
	}
	return i
}

// Strips and panel keep clear while a class is on, at every size, with the way back to it; some demonstrations
// have a panel of their own.
func TestLayoutInClass(t *testing.T) {
	for _, show := range shippedShows(t) {
		for _, sys := range []unit.System{unit.US, unit.SI} {
			a, _ := present(t, show, sys)
			a.shelf.Dry = true
			atEverySize(a, func(size string) {
				for _, name := range []string{"panel", "street-panel"} {
					a.Open(name)
					where := fmt.Sprintf("%s, %v %s, %s", show, sys, size, name)
					itemsKeepClear(t, a, where)
					keepsClear(t, a, where)
				}
			})
		}
	}
}

// Two ways that end at the same moment are told apart on every plot when one changes over between them while
// time stands still.
func TestPlotsOfTwoWays(t *testing.T) {
	a, s := present(t, "relief-valve", unit.US)
	p := s.stage.Player()
	p.Interrupt()
	a.seconds(12)
	end := p.Attempt.Now()
	a.keyPress("b")
	throttle, _ := a.eyes.Control("throttle")
	if err := s.stage.Act(throttle, 0); err != nil {
		t.Fatal(err)
	}
	for p.Attempt.Now() < end {
		s.stage.Tick()
	}
	a.frozen = true
	if l := s.stage.Left(); l == nil || l.To != end {
		t.Fatalf("the ways do not end at the same moment: %+v, %d", l, end)
	}
	for pair := range sides {
		if sides[pair].name == "Inside + gauges" {
			continue
		}
		s.choose(a, pair)
		for range 2 {
			want := fmt.Sprintf("engine %.0f", s.stage.Truth("engine_rpm"))
			if !shows(a, want) {
				t.Errorf("%s: the plot does not end at %q", sides[pair].name, want)
			}
			a.keyPress("o")
		}
	}
}

// What a question covers is covered on the panel and in the cab too, from the question to the end of its step:
// gauges large and small, the lamp that would tell it, and the way of the water.
func TestCoveredOnThePanel(t *testing.T) {
	ask := func(a *App, s *show) {
		t.Helper()
		a.tempo = 8
		for p := s.stage.Player(); p.Phase() != demo.Asking; {
			p.Go()
			if p.Phase() != demo.Asking {
				a.seconds(0.5)
			}
		}
	}
	covers := func(a *App) (n int) {
		for _, s := range a.Frame().Sprites {
			for _, w := range s.Art.Words {
				if w.Text == "?" {
					n++
				}
			}
		}
		return n - 1 // the strip's own
	}
	a, s := present(t, "relief-valve", unit.US)
	a.keyPress("p")
	if n := covers(a); n != 0 {
		t.Errorf("before the question %d things are covered", n)
	}
	a.clickOn(t, "tab-Class")
	ask(a, s)
	a.keyPress("p")
	if n := covers(a); n != 3 { // pump discharge, line 1, the lamp of the relief valve
		t.Errorf("while it is asked %d things are covered, want 3", n)
	}
	a.keyPress("Escape", "Space", "p")
	if n := covers(a); n != 3 || s.stage.Player().Phase() != demo.Playing {
		t.Errorf("while it runs %d things are covered, want 3", n)
	}
	for s.stage.Player().Phase() == demo.Playing {
		a.seconds(0.5)
	}
	if n := covers(a); n != 0 {
		t.Errorf("when it is done %d things are covered still", n)
	}
	a, s = present(t, "dead-head", unit.US)
	ask(a, s)
	a.keyPress("p")
	if n := covers(a); n != 2 { // the small gauge, its lamp
		t.Errorf("of the pump's heat %d things are covered, want 2", n)
	}
	a, s = present(t, "governor", unit.US)
	ask(a, s)
	a.Open("cab")
	if n := covers(a); n != 1 {
		t.Errorf("in the cab %d things are covered, want the tachometer", n)
	}
}

// A click on the plot reads it off there and freezes time; one beyond the lines goes back to the newest moment.
func TestReadOffByPointer(t *testing.T) {
	a, s := present(t, "relief-valve", unit.US)
	s.stage.Player().Interrupt()
	a.tempo = 8
	a.seconds(10)
	for _, pair := range []int{0, 1, 3} {
		s.choose(a, pair)
		a.frozen = false
		box, ok := s.traceBox(a)
		if !ok {
			t.Fatalf("%s: no plot", sides[pair].name)
		}
		from, to, _ := s.window()
		click := func(x float64) {
			a.PointTo(x*a.scale, box.Center().Y*a.scale)
			a.Press(x*a.scale, box.Center().Y*a.scale)
			a.Release(x*a.scale, box.Center().Y*a.scale)
		}
		tr := s.trace(box)
		x := box.X + box.W*0.4
		want := tr.When(a.scale, x)
		if want <= from+5 || want >= to-5 {
			t.Fatalf("%s: %.1f s stand at two fifths of %.1f to %.1f s", sides[pair].name, want, from, to)
		}
		click(x)
		if math.Abs(s.readS-want) > 0.1 || !a.frozen {
			t.Errorf("%s: read off at %.2f s, want %.2f; frozen %v", sides[pair].name, s.readS, want, a.frozen)
		}
		click(box.Right() - 20)
		if s.readS != 0 {
			t.Errorf("%s: still read off at %.2f s", sides[pair].name, s.readS)
		}
	}
}

// What is said of a thing under the pointer lies over the caption no longer than it takes to read: it goes when
// the pointer rests, and when the thing is clicked.
func TestHintGoes(t *testing.T) {
	a, s := present(t, "relief-valve", unit.US)
	const help = "The whole panel"
	x, y := a.mid(t, fmt.Sprint("show-", buttonNamed(t, s, a, "Panel")))
	a.PointTo(x, y)
	if !shows(a, help) {
		t.Error("nothing is said of what is pointed at")
	}
	a.seconds(hintRestS + 0.1)
	if shows(a, help) {
		t.Error("it stays while the pointer rests")
	}
	a.PointTo(x+1, y)
	if !shows(a, help) {
		t.Error("it does not come again when the pointer moves")
	}
	a.clickOn(t, fmt.Sprint("show-", buttonNamed(t, s, a, "Freeze")))
	if shows(a, "Stop time") {
		t.Error("it stays after the click")
	}
}

// Other things side by side come at once: nothing of what lies below them is painted anew.
func TestSidesComeAtOnce(t *testing.T) {
	a, s := present(t, "relief-valve", unit.US)
	a.Frame()
	below := a.Frame().Sprites[0].Art
	for _, key := range []string{"2", "3", "4", "1"} {
		a.keyPress(key)
		if f := a.Frame(); f.Sprites[0].Art != below {
			t.Errorf("%s: the page is painted anew", sides[s.pair].name)
		}
	}
}
