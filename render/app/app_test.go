package app

import (
	"fmt"
	"math"
	"testing"

	"steadyneedle/render/input"
	"steadyneedle/render/play"
	"steadyneedle/render/stage"
	"steadyneedle/render/view"
	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// begin starts the shipped drill on the real world.
func begin(t testing.TB, rated bool) *App { t.Helper(); return beginIn(t, rated, unit.US) }

func beginIn(t testing.TB, rated bool, sys unit.System) *App {
	t.Helper()
	return beginOn(t, rated, sys, "")
}

// beginOn is begin on another apparatus than the drill's own.
func beginOn(t testing.TB, rated bool, sys unit.System, apparatus string) *App {
	t.Helper()
	a := New(Options{Drills: []Drill{{Name: "reverse-lay", Title: "Reverse lay"}}, Start: func(name string, rated bool) (view.Attempt, error) {
		d, err := scenarios.Open(nil).Drill(name, scenarios.Options{Seed: 1, Apparatus: apparatus})
		if err != nil {
			return nil, err
		}
		at, err := attempt.New(d, attempt.Options{Live: true, Keys: true})
		if err != nil {
			return nil, err
		}
		return play.New(at, "test", rated).In(sys), nil
	}})
	if err := a.Begin("reverse-lay", rated); err != nil {
		t.Fatal(err)
	}
	return a
}

// seconds lets time pass in frames.
func (a *App) seconds(s float64) {
	for range int(s * 60) {
		a.Advance(1.0 / 60)
	}
	a.collect()
}

func (a *App) mid(t testing.TB, key string) (x, y float64) {
	t.Helper()
	a.collect()
	it := a.find(key)
	if it == nil {
		t.Fatalf("nothing is called %q on screen %s", key, a.screen.key())
	}
	c := it.Box.Center()
	return c.X * a.scale, c.Y * a.scale
}

func (a *App) clickOn(t testing.TB, key string) {
	t.Helper()
	x, y := a.mid(t, key)
	a.PointTo(x, y)
	a.Press(x, y)
	a.Release(x, y)
	a.seconds(0.1)
}

func (a *App) keyPress(names ...string) {
	for _, n := range names {
		a.OnKey(Key{Name: n, Down: true})
		a.seconds(0.05)
		a.OnKey(Key{Name: n})
		a.seconds(0.05)
	}
}

var screens = []string{"menu", "cab", "panel", "wheels", "rear-step", "hydrant", "tank-top", "round", "speech", "debrief", "order", "positions", "calculation", "sums", "moment", "own-marks", "unsafe", "decide", "gallery", "keys", "caution", "street-cab", "street-panel"}

// TestEveryControlHasAPlace: whatever the candidate can work in the world can be worked in the window,
// from every place from which it is in reach.
func TestEveryControlHasAPlace(t *testing.T) {
	a := begin(t, false)
	has := map[string]map[string]bool{}
	for _, p := range world.Places() {
		has[p.String()] = map[string]bool{}
		screens := []screen{a.placeScreen(p), a.streetScreen(p)}
		for _, s := range screens {
			a.show(s)
			a.collect()
			for i := range a.items {
				has[p.String()][a.items[i].Key] = true
			}
		}
	}
	a.Open("speech")
	a.collect()
	said := map[string]bool{}
	for i := range a.items {
		said[a.items[i].Key] = true
	}
	for i := range a.eyes.Controls {
		c := &a.eyes.Controls[i]
		switch {
		case c.By == world.Nowhere || c.Kind == world.Walk || c.Name == "look_round": // others', or buttons of the strip and the plan
		case c.Kind == world.Speech || c.Kind == world.Gesture:
			if c.Speaker == world.Candidate && !said[c.Name] {
				t.Errorf("%s cannot be said", c.Name)
			}
		default:
			for _, p := range world.Places() {
				if c.By.Has(p) && !has[p.String()][c.Name] {
					t.Errorf("%s is in reach at %s but cannot be worked there", c.Name, p)
				}
			}
		}
	}
}

// TestTabReachesEverything: Tab alone goes to every item once and comes back, and Shift-Tab goes the
// other way round.
func TestTabReachesEverything(t *testing.T) {
	a := begin(t, false)
	for _, s := range screens {
		a.Open(s)
		a.focus = ""
		a.collect()
		seen := map[string]bool{}
		var order []string
		for range a.items {
			a.OnKey(Key{Name: "Tab", Down: true})
			if seen[a.focus] {
				t.Fatalf("%s: %s comes twice", s, a.focus)
			}
			seen[a.focus] = true
			order = append(order, a.focus)
		}
		a.OnKey(Key{Name: "Tab", Down: true})
		if len(order) > 0 && a.focus != order[0] {
			t.Errorf("%s: after the last comes %s, not the first, %s", s, a.focus, order[0])
		}
		a.OnKey(Key{Name: "Tab", Down: true, Shift: true})
		if len(order) > 0 && a.focus != order[len(order)-1] {
			t.Errorf("%s: Shift-Tab went to %s", s, a.focus)
		}
	}
}

// TestHands: a click, a drag, the wheel and keys bring controls of the real world where they say.
func TestHands(t *testing.T) {
	a := begin(t, false)
	value := func(name string) float64 {
		id, ok := a.eyes.Control(name)
		if !ok {
			t.Fatalf("no control %s", name)
		}
		return a.eyes.Value(id)
	}
	a.clickOn(t, "headlights")
	if value("headlights") != 1 {
		t.Error("a click did not throw the headlights' switch")
	}
	a.focus = "flashers"
	a.keyPress("Enter")
	if value("flashers") != 1 {
		t.Error("Enter did not throw the flashers' switch")
	}
	a.focus = "lay_offset"
	a.keyPress("Up", "Up", "Up")
	if value("lay_offset") != 7 {
		t.Errorf("three steps up: %g ft off the curb, want 7", value("lay_offset"))
	}
	x, y := a.mid(t, "stop_at_hydrant")
	a.PointTo(x, y)
	a.Scroll(2, false)
	a.seconds(0.2)
	if value("stop_at_hydrant") != 2 {
		t.Errorf("two notches: %g ft, want 2", value("stop_at_hydrant"))
	}
	a.walk(world.Panel)
	a.seconds(8)
	if a.screen.key() != "panel" {
		t.Fatalf("after the walk the screen is %s", a.screen.key())
	}
	it := *a.find("discharge1")
	px := func(dy float64) (float64, float64) {
		return it.Box.Center().X * a.scale, (it.Box.Y + 15 + dy) * a.scale
	}
	x, y = px(0)
	a.PointTo(x, y)
	a.Press(x, y)
	for n := range 47 {
		x, y = px(float64(n))
		a.PointTo(x, y)
		a.seconds(0.05)
	}
	a.Release(x, y)
	a.seconds(0.5)
	if v := value("discharge1"); v < 0.45 || v > 0.55 {
		t.Errorf("pulled half way: %.2f", v)
	}
	turnWheel(a, "intake", -180) // counter-clockwise, a quarter of its two turns
	a.seconds(1)
	if v := value("intake"); v < 0.24 || v > 0.26 {
		t.Errorf("half a turn of two: %.3f, want 0.25", v)
	}
}

// turnWheel drags round a wheel by an angle.
func turnWheel(a *App, key string, deg float64) {
	it := a.find(key)
	c, r := it.Box.Center(), it.Box.W*0.4
	for n := 0; n <= 30; n++ {
		p := c.Polar(r, deg*float64(n)/30)
		x, y := p.X*a.scale, p.Y*a.scale
		if n == 0 {
			a.PointTo(x, y)
			a.Press(x, y)
		}
		a.PointTo(x, y)
		a.seconds(0.04)
		if n == 30 {
			a.Release(x, y)
		}
	}
}

// TestSpeech: the list narrows as one types, a phrase with a number wants it, and what was said is heard.
func TestSpeech(t *testing.T) {
	a := begin(t, false)
	a.seconds(1)
	a.keyPress("S")
	for _, r := range "stat" {
		a.OnChar(r)
	}
	a.keyPress("Enter")
	if a.screen.key() != "talk" || a.flash.text == "" {
		t.Fatal("a phrase without its number was said")
	}
	for _, r := range "64" {
		a.OnChar(r)
	}
	a.keyPress("Enter")
	a.seconds(0.5)
	heard := a.attempt.Heard()
	if len(heard) == 0 || heard[len(heard)-1].Text != "Static pressure is 64 psi." {
		t.Errorf("heard %+v", heard)
	}
	if a.screen.key() != "cab" {
		t.Errorf("after saying it the screen is %s", a.screen.key())
	}
}

// TestRatedHidesHelp: a rated attempt shows no positions of valves, no way of the water, and no pause.
func TestRatedHidesHelp(t *testing.T) {
	a := begin(t, true)
	a.show(a.newPause(a.placeScreen(world.Cab)))
	before := a.eyes.Now.At
	a.seconds(1)
	if a.eyes.Now.At == before {
		t.Error("the world stood still in a rated attempt")
	}
	b := begin(t, false)
	b.show(b.newPause(b.placeScreen(world.Cab)))
	before = b.eyes.Now.At
	b.seconds(1)
	if b.eyes.Now.At != before {
		t.Error("the world went on in a pause")
	}
}

// TestWallTime: the world runs on wall time whatever the frame rate, and catches up within bounds.
func TestWallTime(t *testing.T) {
	for _, fps := range []float64{10, 30, 60, 144} {
		a := begin(t, false)
		for range int(3 * fps) {
			a.Advance(1 / fps)
		}
		if got := a.eyes.Now.At.Seconds(); math.Abs(got-3) > 0.05 {
			t.Errorf("at %g frames/s 3 s of wall time made %.2f s", fps, got)
		}
	}
	a := begin(t, false)
	a.Advance(10)
	if got := a.eyes.Now.At.Seconds(); got > 0.3 {
		t.Errorf("a hitch of 10 s made the world jump %.2f s", got)
	}
}

// TestNothingMovesNothingDrawn: two frames of a still screen are the same, so that the window can rest.
func TestNothingMovesNothingDrawn(t *testing.T) {
	a := begin(t, false)
	a.Open("menu")
	first := *a.Frame()
	first.Sprites = append(first.Sprites[:0:0], first.Sprites...)
	if boxes := stage.Changed(&first, a.Frame(), nil); len(boxes) > 0 {
		t.Errorf("the first screen changes by itself in %v", boxes)
	}
}

func BenchmarkFrame(b *testing.B) {
	a := begin(b, false)
	a.Open("panel")
	a.Frame()
	for b.Loop() {
		a.Advance(1.0 / 60)
		a.Frame()
	}
}

func ExampleApp_Input() {
	a := New(Options{Drills: []Drill{{Name: "reverse-lay", Title: "Reverse lay"}}})
	a.Input(input.Event{Kind: input.KeyDown, Key: "Tab"})
	fmt.Println(a.focus)
	// Output: rehearse
}
