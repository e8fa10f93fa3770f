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
	case "F2":
		a.show(&keysPage{back: a.screen})
	case "F3":
		a.nextLook()
	case "F4":
		a.mute()
	case "Escape":
		a.help = false
	default:
		if it != nil && k.Ctrl {
			a.travel(it, k.Name)
		} else if it != nil && it.Widget != nil {
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

// arrows are the ways that arrow keys point.
var arrows = map[string]draw.Point{"Left": {X: -1}, "Right": {X: 1}, "Up": {Y: -1}, "Down": {Y: 1}}

// travel moves the focus from an item toward the arrow.
func (a *App) travel(from *Item, arrow string) {
	dir, ok := arrows[arrow]
	if !ok {
		return
	}
	boxes := make([]draw.Rect, len(a.items))
	at := 0
	for i := range a.items {
		boxes[i] = a.items[i].Box
		if a.items[i].Key == from.Key {
			at = i
		}
	}
	if next := Toward(boxes, at, dir); next >= 0 {
		a.setFocus(&a.items[next])
	}
}

// Toward is the box that an arrow key leads to from one of them: the nearest in that direction, where
// way to the side counts more than way ahead; −1 if none lies there.
func Toward(boxes []draw.Rect, from int, dir draw.Point) int {
	best, least := -1, 0.0
	c := boxes[from].Center()
	for i := range boxes {
		d := boxes[i].Center().Sub(c)
		ahead := d.X*dir.X + d.Y*dir.Y
		aside := d.X*dir.Y - d.Y*dir.X
		if i == from || ahead < 4 {
			continue
		}
		if cost := ahead + 2.5*max(aside, -aside); best < 0 || cost < least {
			best, least = i, cost
		}
	}
	return best
}
