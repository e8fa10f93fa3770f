package app

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/sim/world"
)

// timeItems are the timeline itself, and what chooses its view.
func (d *debrief) timeItems(a *App) []Item {
	p := d.plot(a)
	return []Item{
		{Key: "timeline", Box: p.Area(), Label: "Timeline", Help: "A click shows the world at that moment. With the keyboard: ← and → move the mark by 5 s, with Shift by 1 s; Enter shows the moment.",
			Do: func() { d.goTo(a) }},
		{Key: "view", Box: d.viewBox(a), Label: "Show " + d.view.Next().String(), Help: "What the timeline shows: pressures and speed, flow and heat, lamps and valves. Key V.", Do: func() { d.turnView(a) }},
	}
}

func (d *debrief) viewBox(a *App) draw.Rect {
	p := d.plot(a)
	return draw.Rect{X: p.Box.Right() - 276, Y: p.Box.Y + 5, W: 196, H: 24} // the markers stand below it
}

func (d *debrief) turnView(a *App) {
	d.view = d.view.Next()
	if f, ok := d.leaves[0].(*findings); ok { // the list has another height now
		if n := f.rowOf(f.chosen); n >= 0 {
			f.reveal(a, d, n)
		}
	}
	a.redraw()
}

// nudge moves the mark by a key.
func (d *debrief) nudge(a *App, k Key) {
	by := 5 * world.Tick(world.TicksPerSecond)
	if k.Shift {
		by = world.TicksPerSecond
	}
	if k.Name == "Left" {
		by = -by
	}
	d.cursor = max(0, min(d.sheet.Length, d.cursor+by))
}

// goTo shows the world at the moment under the pointer, or, from the keyboard, at the mark.
func (d *debrief) goTo(a *App) {
	p := d.plot(a)
	if p.Area().Has(a.pointer) && a.hover == "timeline" {
		d.cursor = p.At(a.pointer.X)
	}
	a.show(newMoment(a, d, d.cursor, nil))
}

// putCursor puts the mark, and below the plot what stood at it, or at the pointer.
func (d *debrief) putCursor(a *App) {
	th, p := a.theme, d.plot(a)
	area := p.Area()
	mark := a.shelf.Get(fmt.Sprintf("plotmark/%s/%v", th.Name, area.H), draw.Rect{X: -1, W: 2, H: area.H}, func(cv *draw.Canvas) {
		cv.Fill(draw.Box(draw.Rect{X: -1, W: 2, H: area.H}), draw.Solid(th.Focus))
	})
	at := d.cursor
	a.frame.Put(mark, draw.Pt(p.X(at), area.Y))
	if a.hover == "timeline" {
		at = p.At(a.pointer.X)
		a.frame.Thin(mark, draw.Pt(p.X(at), area.Y), 0.5)
	}
	a.button(d.viewBox(a), "Show "+d.view.Next().String(), false)
	y := p.Box.Bottom() + 16
	x := 18 + a.shelf.Text(&a.frame, draw.Pt(18, y+5), draw.Left, draw.Style{Size: 16, Weight: draw.Bold, Color: th.Focus}, clockText(at.Seconds())) + 14
	st := draw.Style{Size: 15, Color: th.Text}
	for i, line := range st.Wrap(a.scale, a.size.X-x-16, p.Values(at)) { // two at most
		a.shelf.Text(&a.frame, draw.Pt(x, y+5+17*float64(i)), draw.Left, st, line)
	}
}
