package app

import (
	"fmt"
	"sort"

	"steadyneedle/render/control"
	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Item is one thing that can be focused and worked: a control of the world, or a button of ours.
type Item struct {
	Key    string
	Box    draw.Rect
	Round  bool
	Label  string
	Help   string
	Widget *control.Widget
	Do     func()
	Pull   func(by float64) // what a drag over it moves along, by so many units down; nil: nothing
	Layer  int              // higher layers are reached first and cover lower ones
}

func widgetItem(w *control.Widget) Item {
	return Item{Key: w.Def.Name, Box: w.Box(), Round: w.Face.Round(), Label: w.Def.Label, Widget: w}
}

// collect gathers the screen's items in the order of their geometry: band by band, left to right.
func (a *App) collect() {
	if !a.stale {
		return
	}
	a.stale = false
	a.items = a.screen.items(a)
	const band = 72
	sort.SliceStable(a.items, func(i, j int) bool {
		p, q := &a.items[i], &a.items[j]
		pb, qb := int(p.Box.Center().Y/band), int(q.Box.Center().Y/band)
		if pb != qb {
			return pb < qb
		}
		return p.Box.Center().X < q.Box.Center().X
	})
	if a.find(a.focus) == nil {
		a.focus = ""
	}
	if a.find(a.hover) == nil {
		a.hover = ""
	}
}

func (a *App) find(key string) *Item {
	if key == "" {
		return nil
	}
	for i := range a.items {
		if a.items[i].Key == key {
			return &a.items[i]
		}
	}
	return nil
}

// under is the item at a point: the smallest of those that hold it.
func (a *App) under(p draw.Point) *Item {
	var best *Item
	for i := range a.items {
		it := &a.items[i]
		if !it.Box.Inset(-3).Has(p) {
			continue
		}
		if best == nil || it.Box.W*it.Box.H < best.Box.W*best.Box.H {
			best = it
		}
	}
	return best
}

// move goes to the next item (by = 1) or the one before (by = −1).
func (a *App) moveFocus(by int) {
	a.collect()
	n := len(a.items)
	if n == 0 {
		return
	}
	at := -1
	for i := range a.items {
		if a.items[i].Key == a.focus {
			at = i
		}
	}
	if at < 0 && by < 0 {
		at = 0
	}
	a.setFocus(&a.items[(at+by+n)%n])
}

func (a *App) setFocus(it *Item) {
	if a.focus != it.Key {
		a.hands.letGoKey()
	}
	a.focus = it.Key
	if s, ok := a.screen.(interface{ focused(*App, *Item) }); ok {
		s.focused(a, it)
	}
}

// marks puts the rings of focus and hover, and the explanation when it is asked for.
func (a *App) marks() {
	if it := a.find(a.hover); it != nil && it.Key != a.focus {
		a.ring(it, "hover")
	}
	if it := a.find(a.focus); it != nil {
		a.ring(it, "focus")
	}
	if a.help {
		a.badges()
		a.explain()
	}
	a.putHint()
}

// ringFace lends an item's box to control.Ring.
type ringFace struct {
	control.Face
	box   draw.Rect
	round bool
}

func (r ringFace) Box() draw.Rect { return r.box }
func (r ringFace) Round() bool    { return r.round }

func (a *App) ring(it *Item, kind string) {
	putRing(a.shelf, &a.frame, a.theme, it.Box, it.Round, kind)
}

func putRing(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, box draw.Rect, round bool, kind string) {
	size := draw.Around(draw.Point{}, box.W, box.H)
	key := fmt.Sprintf("ring/%s/%s/%v/%v/%v", th.Name, kind, box.W, box.H, round)
	margin := 9.0
	if round {
		margin = max(box.W, box.H) - min(box.W, box.H) + 10
	}
	art := sh.Get(key, size.Inset(-margin), func(cv *draw.Canvas) {
		band, seat := control.Ring(ringFace{box: size, round: round})
		if kind == "focus" {
			cv.Fill(seat, draw.Solid(draw.Fade(th.FocusDark, 0.85)))
			cv.Fill(band, draw.Solid(th.Focus))
			return
		}
		cv.Fill(band, draw.Solid(draw.Fade(th.Hover, 0.5)))
	})
	f.Put(art, box.Center())
}
