package app

import (
	"steadyneedle/render/draw"
	"steadyneedle/sim/world"
)

// hands keeps what pointer and fingers hold and where they want each control to be. Positions go to the
// world once a tick, so that a fast mouse does not flood the record.
type hands struct {
	app     *App
	grips   []grip // one for each finger that holds something
	wanted  map[world.ControlID]float64
	order   []world.ControlID
	pushed  world.ControlID // a Push held by key
	pushing bool
	target  map[world.ControlID]float64 // last value asked for, for steps faster than the control follows
	asked   map[world.ControlID]float64 // wall time of that
}

// grip is what one finger holds.
type grip struct {
	finger  int
	it      Item
	from    draw.Point // where the finger was last
	pressed draw.Point // where it went down
	moved   bool
	aim     float64 // share of travel
}

// grip finds what a finger holds; nil where it holds nothing.
func (h *hands) grip(finger int) *grip {
	for i := range h.grips {
		if h.grips[i].finger == finger {
			return &h.grips[i]
		}
	}
	return nil
}

// holds reports whether any finger holds an item.
func (h *hands) holds(key string) bool {
	for i := range h.grips {
		if h.grips[i].it.Key == key {
			return true
		}
	}
	return false
}

// want asks for a value at the next tick.
func (h *hands) want(c world.ControlID, v float64) {
	if h.wanted == nil {
		h.wanted = map[world.ControlID]float64{}
		h.target, h.asked = map[world.ControlID]float64{}, map[world.ControlID]float64{}
	}
	if _, ok := h.wanted[c]; !ok {
		h.order = append(h.order, c)
	}
	h.wanted[c] = v
	h.target[c], h.asked[c] = v, h.app.wall
}

// tick gives the world what was asked for since the last one, in the order of asking.
func (h *hands) tick() {
	for _, c := range h.order {
		if err := h.app.attempt.Act(c, h.wanted[c]); err != nil {
			h.app.say(sentence(err.Error()))
			delete(h.target, c)
		}
	}
	clear(h.wanted)
	h.order = h.order[:0]
}

// lastAsked reports whether v is the last thing that any hand asked of a control.
func (h *hands) lastAsked(c world.ControlID, v float64) bool {
	last, ok := h.target[c]
	return ok && last == v
}

// at is where the hand believes the control to be: where it was just asked to go, or where it is.
func (h *hands) at(c world.ControlID) float64 {
	if v, ok := h.target[c]; ok && h.app.wall-h.asked[c] < 1.5 {
		return v
	}
	return h.app.eyes.Value(c)
}

// press takes hold of what is under a finger. What another finger holds already stays with that one.
func (h *hands) press(finger int, it *Item, p draw.Point) {
	if h.grip(finger) != nil || h.holds(it.Key) {
		return
	}
	g := grip{finger: finger, it: *it, from: p, pressed: p}
	if w := it.Widget; w != nil {
		g.aim = (h.at(w.ID) - w.Def.Min) / (w.Def.Max - w.Def.Min)
		if w.Def.Kind == world.Push {
			h.want(w.ID, 1)
		}
	}
	h.grips = append(h.grips, g)
}

// drag moves what a finger holds.
func (h *hands) drag(finger int, p draw.Point) {
	g := h.grip(finger)
	if g == nil || p == g.from {
		return
	}
	if p.Sub(g.pressed).Len() > 4 {
		g.moved = true
	}
	if g.it.Pull != nil && g.moved {
		g.it.Pull(p.Y - g.from.Y)
		g.from = p
	}
	if g.it.Widget == nil {
		return
	}
	w := g.it.Widget
	next := max(0, min(1, w.Drag(g.from, p, g.aim)))
	g.from = p
	if next == g.aim {
		return
	}
	before := w.Value(g.aim)
	g.aim = next
	if v := w.Value(next); v != before {
		h.want(w.ID, v)
	}
}

// release lets go; without a move it is a click.
func (h *hands) release(finger int, p draw.Point) {
	g := h.grip(finger)
	if g == nil {
		return
	}
	let := *g
	h.drop(finger)
	w := let.it.Widget
	switch {
	case w == nil:
		pulled := let.it.Pull != nil && let.moved
		if let.it.Box.Inset(-3).Has(p) && let.it.Do != nil && !pulled {
			let.it.Do()
		}
	case w.Def.Kind == world.Push:
		h.want(w.ID, 0)
	case !let.moved:
		share := (h.at(w.ID) - w.Def.Min) / (w.Def.Max - w.Def.Min)
		if v, ok := w.Click(p, share); ok {
			h.want(w.ID, w.Value(v))
		}
	}
}

func (h *hands) drop(finger int) {
	for i := range h.grips {
		if h.grips[i].finger == finger {
			h.grips = append(h.grips[:i], h.grips[i+1:]...)
			return
		}
	}
}

// letGo releases everything that acts only while it is held.
func (h *hands) letGo() {
	for i := range h.grips {
		if w := h.grips[i].it.Widget; w != nil && w.Def.Kind == world.Push {
			h.want(w.ID, 0)
		}
	}
	h.grips = h.grips[:0]
	h.letGoKey()
}

// letGoKey releases what a key holds.
func (h *hands) letGoKey() {
	if h.pushing {
		h.want(h.pushed, 0)
		h.pushing = false
	}
}

// step moves a control by keys or wheel.
func (h *hands) step(it *Item, steps float64, fine bool) {
	w := it.Widget
	v := h.at(w.ID) + steps*w.Step(fine)
	h.want(w.ID, w.Value((v-w.Def.Min)/(w.Def.Max-w.Def.Min)))
}

// act is Enter or Space on an item; down false is the key let go.
func (h *hands) act(it *Item, down bool) {
	switch {
	case it.Widget == nil:
		if down && it.Do != nil {
			it.Do()
		}
		return
	case it.Widget.Def.Kind == world.Push:
		if down != h.pushing {
			h.pushing, h.pushed = down, it.Widget.ID
			v := 0.0
			if down {
				v = 1
			}
			h.want(it.Widget.ID, v)
		}
		return
	case !down:
		return
	}
	w := it.Widget
	switch w.Def.Kind {
	case world.Switch, world.Lever:
		v := w.Def.Min
		if h.at(w.ID) < (w.Def.Min+w.Def.Max)/2 {
			v = w.Def.Max
		}
		h.want(w.ID, v)
	case world.Choice:
		v := h.at(w.ID) + 1
		if v > w.Def.Max {
			v = w.Def.Min
		}
		h.want(w.ID, v)
	}
}
