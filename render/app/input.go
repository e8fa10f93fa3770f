package app

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/input"
	"steadyneedle/sim/world"
)

// Input takes one thing that hands did: the one way in for pointer, fingers, wheel, keys and game-pad.
func (a *App) Input(e input.Event) {
	a.events++
	a.changed = true
	if e.Kind == input.Press || e.Kind == input.KeyDown {
		a.closeBubble()
	}
	switch e.Kind {
	case input.Move:
		a.point(e.Finger, a.place(e))
	case input.Press:
		a.press(e.Finger, a.place(e))
	case input.Release:
		a.release(e.Finger, a.place(e))
	case input.Wheel:
		a.scroll(e.Notches, e.Shift)
	case input.KeyDown, input.KeyUp:
		a.OnKey(Key{Name: e.Key, Down: e.Kind == input.KeyDown, Shift: e.Shift, Ctrl: e.Ctrl})
	case input.Char:
		a.OnChar(e.Rune)
	case input.Axis:
		a.pad.axis(a, e.Number, e.Value)
	case input.Button:
		a.pad.button(a, e.Number, e.Value >= 0.5)
	}
}

// place is an event's place in units.
func (a *App) place(e input.Event) draw.Point { return draw.Pt(e.X/a.scale, e.Y/a.scale) }

// point follows a finger, or the pointer, which also shows what it hovers over.
func (a *App) point(finger int, p draw.Point) {
	if finger != input.Mouse {
		a.hands.drag(finger, p)
		return
	}
	if p == a.pointer {
		return
	}
	a.pointer, a.stirred = p, a.wall
	if a.hands.grip(finger) != nil {
		a.hands.drag(finger, p)
		return
	}
	a.collect()
	a.hover = ""
	if it := a.under(p); it != nil {
		a.hover = it.Key
	}
}

// press takes hold of what lies under a finger.
func (a *App) press(finger int, p draw.Point) {
	a.collect()
	it := a.under(p)
	if finger == input.Mouse {
		jump := p.Sub(a.pointer).Len()*a.scale > 8 // the pointer flew on between the press and this frame
		if before := a.find(a.hover); jump && before != nil && a.hands.grip(finger) == nil {
			it = before
		}
	}
	a.pointer, a.stirred = p, a.wall-hintRestS
	if it == nil {
		return
	}
	a.setFocus(it)
	a.hands.press(finger, it, p)
}

// release lets go of what a finger holds.
func (a *App) release(finger int, p draw.Point) {
	a.hands.drag(finger, p)
	a.hands.release(finger, p)
	if finger == input.Mouse {
		a.pointer = p
	}
}

// scroll is the wheel: notches up are positive.
func (a *App) scroll(notches float64, fine bool) {
	a.collect()
	if s, ok := a.screen.(interface{ scroll(*App, float64) bool }); ok && s.scroll(a, notches) {
		return
	}
	it := a.under(a.pointer)
	if it == nil || it.Widget == nil || it.Widget.Def.Kind == world.Push {
		return
	}
	a.setFocus(it)
	switch it.Widget.Def.Kind {
	case world.Handle: // a handle comes out toward the hand: wheel down pulls
		notches = -notches
	case world.Switch, world.Choice:
		notches = float64(sign(notches))
	}
	a.hands.step(it, notches, fine)
}

func sign(x float64) int {
	switch {
	case x > 0:
		return 1
	case x < 0:
		return -1
	}
	return 0
}
