package app

import (
	"steadyneedle/render/draw"
	"steadyneedle/sim/world"
)

// Key is one key press, or its release.
type Key struct {
	Name  string // Tab, Enter, Space, Up, Down, Left, Right, PageUp, PageDown, Home, End, Escape, Backspace, F1 …; letters and figures as themselves
	Down  bool
	Shift bool
	Ctrl  bool
}

// OnKey takes one key.
func (a *App) OnKey(k Key) {
	a.collect()
	if a.evaluatorKey(k) || a.scaleKey(k) {
		return
	}
	if s, ok := a.screen.(keyed); ok && s.onKey(a, k) {
		return
	}
	it := a.find(a.focus)
	if k.Name == "Enter" || k.Name == "Space" {
		if it != nil {
			a.hands.act(it, k.Down)
		}
		return
	}
	if !k.Down {
		return
	}
	switch k.Name {
	case "Tab":
		if k.Shift {
			a.moveFocus(-1)
		} else {
			a.moveFocus(1)
		}
	case "F1":
		a.help = !a.help
	case "F4":
		a.mute()
	case "Escape":
		a.help = false
	default:
		if it != nil && it.Widget != nil {
			a.adjust(it, k)
		} else if it != nil {
			a.travel(it, k.Name)
		}
	}
}

// adjust moves the focused control by a key.
func (a *App) adjust(it *Item, k Key) {
	w := it.Widget
	if w.Def.Kind == world.Push {
		return
	}
	up := 1.0
	if w.Def.Kind == world.Handle { // down pulls, as the hand does
		up = -1
	}
	big := 5.0
	if w.Def.Kind == world.Choice || w.Def.Kind == world.Switch {
		big = 1
	}
	switch k.Name {
	case "Up", "Right":
		if k.Name == "Right" {
			up = 1
		}
		a.hands.step(it, up, k.Shift)
	case "Down", "Left":
		if k.Name == "Left" {
			up = 1
		}
		a.hands.step(it, -up, k.Shift)
	case "PageUp":
		a.hands.step(it, big*up, false)
	case "PageDown":
		a.hands.step(it, -big*up, false)
	case "Home":
		a.hands.want(w.ID, w.Def.Min)
	case "End":
		a.hands.want(w.ID, w.Def.Max)
	}
}

// travel moves the focus from a button toward the arrow.
func (a *App) travel(from *Item, arrow string) {
	var dir draw.Point
	switch arrow {
	case "Left":
		dir = draw.Pt(-1, 0)
	case "Right":
		dir = draw.Pt(1, 0)
	case "Up":
		dir = draw.Pt(0, -1)
	case "Down":
		dir = draw.Pt(0, 1)
	default:
		return
	}
	var best *Item
	least := 0.0
	c := from.Box.Center()
	for i := range a.items {
		it := &a.items[i]
		d := it.Box.Center().Sub(c)
		ahead := d.X*dir.X + d.Y*dir.Y
		aside := d.X*dir.Y - d.Y*dir.X
		if it.Key == from.Key || ahead < 4 {
			continue
		}
		cost := ahead + 2.5*max(aside, -aside)
		if best == nil || cost < least {
			best, least = it, cost
		}
	}
	if best != nil {
		a.setFocus(best)
	}
}
