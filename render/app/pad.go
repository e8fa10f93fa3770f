package app

import (
	"fmt"
	"math"

	"steadyneedle/render/input"
	"steadyneedle/sim/world"
)

// pad is a game-pad, or a box of levers wired as one. A lever of such a box stands where it stands: it
// takes hold of its control only when it has been brought to where the control is, so that nothing
// jumps when one comes to the panel, or after another hand has moved the control.
type pad struct {
	axes   input.Map
	levers []lever // one for each axis of the map
}

// lever is one mapped axis.
type lever struct {
	share float64 // where it stood last, as a share of the control's travel
	known bool    // it has been read
	holds bool
	asked float64 // value that it last asked for, while it holds
}

// grasp is how near a lever must come to its control to take hold of it, as a share of travel.
const grasp = 0.02

func newPad(m input.Map) pad { return pad{axes: m, levers: make([]lever, len(m.Axes))} }

// axis takes a reading of an axis.
func (p *pad) axis(a *App, number int, reading float64) {
	for i := range p.axes.Axes {
		if m := &p.axes.Axes[i]; m.Number == number && !math.IsNaN(reading) {
			p.levers[i].move(a, m, m.Share(reading))
		}
	}
}

// move brings a lever to a share of its control's travel.
func (l *lever) move(a *App, m *input.AxisMap, share float64) {
	before, known := l.share, l.known
	l.share, l.known = share, true
	if known && share == before {
		return
	}
	id, ok := a.reachable(m.Control)
	if !ok {
		l.holds = false
		return
	}
	d := &a.eyes.Controls[id]
	at := (a.hands.at(id) - d.Min) / (d.Max - d.Min)
	if l.holds && !a.hands.lastAsked(id, l.asked) && math.Abs(at-before) > grasp {
		l.holds = false // another hand has moved it
	}
	if !l.holds {
		near := math.Abs(share-at) <= grasp || known && (before-at)*(share-at) <= 0
		if !near {
			a.say(fmt.Sprintf("The lever for %s takes hold where the control stands: bring it there.", d.Label))
			return
		}
		l.holds = true
	}
	l.asked = d.Min + share*(d.Max-d.Min)
	switch d.Kind {
	case world.Switch, world.Choice, world.Push:
		l.asked = math.Round(l.asked)
	}
	a.hands.want(id, l.asked)
}

// button takes a button that went down or came up.
func (p *pad) button(a *App, number int, down bool) {
	for i := range p.axes.Buttons {
		m := &p.axes.Buttons[i]
		if m.Number != number {
			continue
		}
		if m.Key != "" {
			a.OnKey(Key{Name: m.Key, Down: down})
			continue
		}
		id, ok := a.reachable(m.Control)
		if !ok {
			continue
		}
		d := &a.eyes.Controls[id]
		switch {
		case d.Kind == world.Push && down:
			a.hands.want(id, d.Max)
		case d.Kind == world.Push:
			a.hands.want(id, d.Min)
		case down && a.hands.at(id) < (d.Min+d.Max)/2:
			a.hands.want(id, d.Max)
		case down:
			a.hands.want(id, d.Min)
		}
	}
}

// reachable finds a control that can be worked now: an attempt is under way and it is in reach.
func (a *App) reachable(name string) (world.ControlID, bool) {
	if a.attempt == nil || a.attempt.Over() || !a.running() {
		return 0, false
	}
	id, ok := a.eyes.Control(name)
	return id, ok && a.eyes.Controls[id].By.Has(a.eyes.Place())
}

// missing names the first control of the map that an apparatus does not have; empty: none.
func (p *pad) missing(a *App) string {
	for i := range p.axes.Axes {
		if _, ok := a.eyes.Control(p.axes.Axes[i].Control); !ok {
			return p.axes.Axes[i].Control
		}
	}
	for i := range p.axes.Buttons {
		if b := &p.axes.Buttons[i]; b.Key == "" {
			if _, ok := a.eyes.Control(b.Control); !ok {
				return b.Control
			}
		}
	}
	return ""
}
