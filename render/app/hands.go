package app

import (
	"steadyneedle/render/draw"
	"steadyneedle/sim/world"
)

// hands keeps what the pointer holds and where it wants each control to be. Positions go to the world
// once a tick, so that a fast mouse does not flood the record.
type hands struct {
	app     *App
	held    *Item
	from    draw.Point // where the pointer was last
	pressed draw.Point // where it went down
	moved   bool
	aim     float64 // share of travel, while something is held
	wanted  map[world.ControlID]float64
	order   []world.ControlID
	pushed  world.ControlID // a Push held by key
	pushing bool
	target  map[world.ControlID]float64 // last value asked for, for steps faster than the control follows
	asked   map[world.ControlID]float64 // wall time of that
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

// at is where the hand believes the control to be: where it was just asked to go, or where it is.
func (h *hands) at(c world.ControlID) float64 {
	if v, ok := h.target[c]; ok && h.app.wall-h.asked[c] < 1.5 {
		return v
	}
	return h.app.eyes.Value(c)
}

// press takes hold of what is under the pointer.
func (h *hands) press(it *Item, p draw.Point) {
	h.held, h.from, h.pressed, h.moved = it, p, p, false
	if it.Widget == nil {
		return
	}
	d := it.Widget.Def
	h.aim = (h.at(it.Widget.ID) - d.Min) / (d.Max - d.Min)
	if d.Kind == world.Push {
		h.want(it.Widget.ID, 1)
	}
}

// drag moves what is held.
func (h *hands) drag(p draw.Point) {
	it := h.held
	if it == nil || it.Widget == nil || p == h.from {
		return
	}
	if p.Sub(h.pressed).Len() > 4 {
		h.moved = true
	}
	w := it.Widget
	next := max(0, min(1, w.Drag(h.from, p, h.aim)))
	h.from = p
	if next == h.aim {
		return
	}
	before := w.Value(h.aim)
	h.aim = next
	if v := w.Value(next); v != before {
		h.want(w.ID, v)
	}
}

// release lets go; without a move it is a click.
func (h *hands) release(p draw.Point) {
	it := h.held
	h.held = nil
	switch {
	case it == nil:
	case it.Widget == nil:
		if it.Box.Inset(-3).Has(p) && it.Do != nil {
			it.Do()
		}
	case it.Widget.Def.Kind == world.Push:
		h.want(it.Widget.ID, 0)
	case !h.moved:
		d := it.Widget.Def
		share := (h.at(it.Widget.ID) - d.Min) / (d.Max - d.Min)
		if v, ok := it.Widget.Click(p, share); ok {
			h.want(it.Widget.ID, it.Widget.Value(v))
		}
	}
}

// letGo releases everything that acts only while it is held.
func (h *hands) letGo() {
	if h.held != nil && h.held.Widget != nil && h.held.Widget.Def.Kind == world.Push {
		h.want(h.held.Widget.ID, 0)
	}
	h.held = nil
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
