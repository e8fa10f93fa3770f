package app

import (
	"testing"

	"steadyneedle/sim/world"
)

// TestFocusComesBack: who looks at the street plan and comes back to the panel finds the focus where it was;
// so does one who walks away and returns.
func TestFocusComesBack(t *testing.T) {
	a := atPanel(t, "")
	a.focus = "throttle"
	a.keyPress("3")
	if a.screen.key() != "street-panel" || a.focus == "throttle" {
		t.Fatalf("on screen %s the focus is %q", a.screen.key(), a.focus)
	}
	a.keyPress("2")
	if a.focus != "throttle" {
		t.Errorf("back at the panel the focus is %q", a.focus)
	}
	a.keyPress("S", "Escape")
	if a.focus != "throttle" {
		t.Errorf("after the phrases the focus is %q", a.focus)
	}
	a.walk(world.Wheels)
	a.seconds(8)
	a.walk(world.Panel)
	a.seconds(8)
	if a.screen.key() != "panel" || a.focus != "throttle" {
		t.Errorf("after a walk, on screen %s, the focus is %q", a.screen.key(), a.focus)
	}
}

// TestArrowsGoByGeometry: Ctrl with an arrow moves the focus that way on every place, whatever is focused,
// and leaves controls as they are.
func TestArrowsGoByGeometry(t *testing.T) {
	a := atPanel(t, "")
	a.focus = "discharge1"
	a.OnKey(Key{Name: "Right", Down: true, Ctrl: true})
	if a.focus != "discharge2" {
		t.Errorf("right of discharge 1 the focus is %q", a.focus)
	}
	a.OnKey(Key{Name: "Down", Down: true, Ctrl: true})
	if a.focus != "cap2" {
		t.Errorf("below discharge 2 the focus is %q", a.focus)
	}
	a.seconds(0.5)
	if a.value(t, "discharge2") != 0 || a.value(t, "discharge1") != 0 {
		t.Error("moving the focus moved a valve")
	}
}
