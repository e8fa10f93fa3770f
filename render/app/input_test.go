package app

import (
	"math"
	"testing"

	"steadyneedle/render/control"
	"steadyneedle/render/draw"
	"steadyneedle/render/input"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// atPanel stands at the panel of the shipped drill.
func atPanel(t testing.TB, pad string) *App {
	t.Helper()
	a := begin(t, false)
	m, err := input.ParseMap(pad)
	if err != nil {
		t.Fatal(err)
	}
	a.pad = newPad(m)
	a.walk(world.Panel)
	a.seconds(8)
	if a.screen.key() != "panel" {
		t.Fatalf("after the walk the screen is %s", a.screen.key())
	}
	return a
}

func (a *App) value(t testing.TB, name string) float64 {
	t.Helper()
	id, ok := a.eyes.Control(name)
	if !ok {
		t.Fatalf("no control %s", name)
	}
	return a.eyes.Value(id)
}

// TestTwoFingers: two fingers pull two valves at the same time, and neither lets go when the other does.
func TestTwoFingers(t *testing.T) {
	a := atPanel(t, "")
	names := [2]string{"discharge1", "discharge3"}
	var x, y [2]float64
	for i, n := range names {
		it := a.find(n)
		x[i], y[i] = it.Box.Center().X*a.scale, (it.Box.Y+15)*a.scale
		a.Input(input.Event{Kind: input.Press, Finger: i + 1, X: x[i], Y: y[i]})
	}
	for n := range 46 { // the one to half, the other to a quarter
		a.Input(input.Event{Kind: input.Move, Finger: 1, X: x[0], Y: y[0] + float64(n)})
		a.Input(input.Event{Kind: input.Move, Finger: 2, X: x[1], Y: y[1] + float64(n)/2})
		a.seconds(0.04)
	}
	a.Input(input.Event{Kind: input.Release, Finger: 1, X: x[0], Y: y[0] + 46})
	a.seconds(0.5)
	if one, three := a.value(t, "discharge1"), a.value(t, "discharge3"); math.Abs(one-0.5) > 0.04 || math.Abs(three-0.25) > 0.04 {
		t.Errorf("pulled to %.2f and %.2f, want 0.50 and 0.25", one, three)
	}
	a.Input(input.Event{Kind: input.Move, Finger: 2, X: x[1], Y: y[1] + 92})
	a.seconds(1)
	if v := a.value(t, "discharge3"); v < 0.99 {
		t.Errorf("the second finger lost its valve when the first let go: %.2f", v)
	}
	a.Input(input.Event{Kind: input.Release, Finger: 2, X: x[1], Y: y[1] + 92})
}

// TestOneValveOneFinger: what one finger holds stays with it.
func TestOneValveOneFinger(t *testing.T) {
	a := atPanel(t, "")
	it := a.find("discharge1")
	x, y := it.Box.Center().X*a.scale, (it.Box.Y+15)*a.scale
	a.Input(input.Event{Kind: input.Press, Finger: 1, X: x, Y: y})
	a.Input(input.Event{Kind: input.Press, Finger: 2, X: x, Y: y})
	a.Input(input.Event{Kind: input.Move, Finger: 2, X: x, Y: y + 90})
	a.seconds(1)
	if v := a.value(t, "discharge1"); v != 0 {
		t.Errorf("the second finger moved it to %.2f", v)
	}
}

// TestHandSpeed: a valve pulled fast opens fast, and one pulled slowly opens slowly.
func TestHandSpeed(t *testing.T) {
	took := func(steps int) float64 {
		a := atPanel(t, "")
		it := a.find("discharge1")
		x, y := it.Box.Center().X*a.scale, (it.Box.Y+15)*a.scale
		a.Input(input.Event{Kind: input.Press, X: x, Y: y})
		from := a.eyes.Now.At
		for n := 1; a.value(t, "discharge1") < 0.98; n++ {
			if n > 2000 {
				t.Fatal("it never opened")
			}
			a.Input(input.Event{Kind: input.Move, X: x, Y: y + 94*min(1, float64(n)/float64(steps))})
			a.Advance(1.0 / 60)
		}
		return (a.eyes.Now.At - from).Seconds()
	}
	fast, slow := took(3), took(360)
	if fast > 0.6 || math.Abs(slow-6) > 0.3 { // full travel takes a hand at least 0.4 s
		t.Errorf("a jerk opened it in %.2f s, a pull of 6 s in %.2f s", fast, slow)
	}
}

// TestLever: a wired lever takes hold of its control where that stands, works it over its range, and
// gives it up to another hand.
func TestLever(t *testing.T) {
	a := atPanel(t, "axis 2 throttle dead=0.05; axis 3 discharge1 invert")
	axis := func(n int, v float64) {
		a.Input(input.Event{Kind: input.Axis, Number: n, Value: v})
		a.seconds(0.1)
	}
	axis(2, 0.5) // far from the throttle, which stands at idle
	a.seconds(3)
	if v := a.value(t, "throttle"); v != 0 {
		t.Fatalf("the throttle jumped to %.2f", v)
	}
	axis(2, -1)
	for r := -1.0; r <= 0.001; r += 0.05 {
		axis(2, r)
	}
	a.seconds(3)
	if v := a.value(t, "throttle"); math.Abs(v-0.5) > 0.03 {
		t.Errorf("lever in the middle: throttle at %.3f, want 0.5", v)
	}
	a.focus = "throttle"
	for range 10 {
		a.keyPress("Down")
	}
	a.seconds(2)
	down := a.value(t, "throttle")
	axis(2, 0.02)
	a.seconds(2)
	if v := a.value(t, "throttle"); v != down {
		t.Errorf("the lever tore the throttle from %.3f to %.3f after keys had moved it", down, v)
	}
	axis(2, 2*down-1.1)
	axis(2, -0.97)
	a.seconds(3)
	if v := a.value(t, "throttle"); v != 0 {
		t.Errorf("the dead zone at the lower end: %.3f", v)
	}
	axis(3, 1)
	axis(3, 0)
	a.seconds(1)
	if v := a.value(t, "discharge1"); math.Abs(v-0.5) > 0.01 {
		t.Errorf("inverted lever in the middle: %.2f", v)
	}
}

// TestPadButtons: a button holds a push-button, throws a switch, or is a key of the keyboard.
func TestPadButtons(t *testing.T) {
	a := atPanel(t, "button 0 primer; button 1 panel_lights; button 2 key=Tab; button 3 horn")
	button := func(n int, v float64) {
		a.Input(input.Event{Kind: input.Button, Number: n, Value: v})
		a.seconds(0.1)
	}
	button(0, 1)
	if a.value(t, "primer") != 1 {
		t.Error("the primer is not held")
	}
	button(0, 0)
	if a.value(t, "primer") != 0 {
		t.Error("the primer was not let go")
	}
	lights := a.value(t, "panel_lights")
	button(1, 1)
	button(1, 0)
	if a.value(t, "panel_lights") == lights {
		t.Error("the lights' switch was not thrown")
	}
	button(2, 1)
	if a.focus == "" {
		t.Error("the button that is Tab moved no focus")
	}
	button(3, 1) // the horn is in the cab
	if a.value(t, "horn") != 0 {
		t.Error("the horn was worked from the panel")
	}
}

// TestUnknownControlOnPad: a map that names what the apparatus lacks says so.
func TestUnknownControlOnPad(t *testing.T) {
	a := begin(t, false)
	m, err := input.ParseMap("axis 0 discharge9")
	if err != nil {
		t.Fatal(err)
	}
	a.pad = newPad(m)
	a.Take(a.attempt)
	if a.flash.text != "The game-pad's map names discharge9, which this apparatus does not have." {
		t.Errorf("said %q", a.flash.text)
	}
}

// TestEveryOptionCanBeClicked: each option of each choice has a part of its own on the screen, and a click on
// it chooses it.
func TestEveryOptionCanBeClicked(t *testing.T) {
	for _, name := range apparatus(t) {
		everyOption(t, beginOn(t, false, unit.US, name))
	}
}

func everyOption(t *testing.T, a *App) {
	t.Helper()
	for _, p := range world.Places() {
		for _, s := range []screen{a.placeScreen(p), a.streetScreen(p)} {
			a.show(s)
			a.collect()
			for i := range a.items {
				w := a.items[i].Widget
				if w == nil || w.Def.Kind != world.Choice {
					continue
				}
				if toggle, ok := w.Face.(control.Toggle); ok && len(w.Def.Options) == 2 {
					if v, _ := toggle.Click(toggle.At, 0); v != 1 {
						t.Errorf("%s: a click does not throw %s", s.key(), w.Def.Name)
					}
					continue
				}
				c, ok := w.Face.(interface{ Parts() []draw.Rect })
				if !ok || len(c.Parts()) != len(w.Def.Options) {
					t.Errorf("%s: %s has no part for each of its options", s.key(), w.Def.Name)
					continue
				}
				for k, b := range c.Parts() {
					share, chosen := w.Click(b.Center(), 0.37)
					if v := w.Value(share); !chosen || v != w.Def.Min+float64(k) {
						t.Errorf("%s: a click on option %d of %s gives %g, %v", s.key(), k, w.Def.Name, v, chosen)
					}
				}
			}
		}
	}
}
