package card

import (
	"steadyneedle/render/control"
	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
	"steadyneedle/sim/world"
)

// Deck is cards in columns.
type Deck struct {
	widgets []*control.Widget
	cards   []placed
	heads   []head
	Bottom  float64 // where the longest column ends
	Columns int     // that hold cards, counted with those left free
}

type placed struct {
	box   draw.Rect
	title string
	lines []string
	at    draw.Point
}

type head struct {
	at   draw.Point
	text string
}

// Group is a heading with the names of its controls.
type Group struct {
	Title string
	Names []string
}

// Gap is the space between two cards.
const Gap = 8.0

const (
	pad     = 8.0
	gap     = Gap
	headH   = 24.0
	titleH  = 21.0
	flipW   = 58.0
	wheelR  = 40.0
	lineGap = 18.0
)

// Lay sets groups out in columns columns over area. A control that the table lacks is left out, and a
// group without any has no heading.
func Lay(t *view.Table, scale float64, area draw.Rect, columns int, groups []Group) *Deck {
	return LayUnder(t, scale, area, columns, 0, groups)
}

// LayUnder is Lay with the top of the first column left free.
func LayUnder(t *view.Table, scale float64, area draw.Rect, columns int, free float64, groups []Group) *Deck {
	d := lay(t, scale, area, columns, free, groups, true)
	if d.Bottom > area.Bottom()+gap { // parting groups takes less room
		if parted := lay(t, scale, area, columns, free, groups, false); parted.Bottom < d.Bottom {
			return parted
		}
	}
	return d
}

func lay(t *view.Table, scale float64, area draw.Rect, columns int, free float64, groups []Group, whole bool) *Deck {
	d := &Deck{}
	if free > 0 {
		d.Columns = 1
	}
	w := (area.W - gap*float64(columns-1)) / float64(columns)
	x, y := area.X, area.Y+free
	column := 0
	next := func() {
		column++
		x, y = area.X+float64(column)*(w+gap), area.Y
	}
	for _, g := range groups {
		if h := Height(t, scale, g, w); whole && y+h > area.Bottom() && h <= area.H && y > area.Y && column+1 < columns {
			next()
		}
		first := true
		for _, name := range g.Names {
			id, ok := t.Control(name)
			if !ok {
				continue
			}
			p, wd := build(t, scale, id, w)
			need := p.box.H
			if first {
				need += headH
			}
			if y+need > area.Bottom() && column+1 < columns && y > area.Y {
				next()
			}
			if first && g.Title != "" {
				d.heads = append(d.heads, head{draw.Pt(x, y+headH/2-2), g.Title})
				y += headH
			}
			first = false
			d.place(p, wd, draw.Pt(x, y))
			y += p.box.H + gap
			d.Bottom = max(d.Bottom, y)
			d.Columns = column + 1
		}
		if !first {
			y += gap
		}
	}
	return d
}

// Height is what a group needs if it is not parted.
func Height(t *view.Table, scale float64, g Group, w float64) float64 {
	h := 0.0
	for _, name := range g.Names {
		if id, ok := t.Control(name); ok {
			p, _ := build(t, scale, id, w)
			h += p.box.H + gap
		}
	}
	if h > 0 && g.Title != "" {
		h += headH
	}
	return h - gap
}

func (d *Deck) place(p placed, w *control.Widget, at draw.Point) {
	p.box = p.box.Move(at)
	p.at = p.at.Add(at)
	switch f := w.Face.(type) {
	case Chips:
		f.Area = f.Area.Move(at)
		boxes := make([]draw.Rect, len(f.boxes))
		for i, b := range f.boxes {
			boxes[i] = b.Move(at)
		}
		f.boxes = boxes
		w.Face = f
	case Slide:
		f.Area = f.Area.Move(at)
		w.Face = f
	case Flip:
		f.Area = f.Area.Move(at)
		w.Face = f
	case Press:
		f.Area = f.Area.Move(at)
		w.Face = f
	case control.Wheel:
		f.At = f.At.Add(at)
		w.Face = f
	}
	d.cards = append(d.cards, p)
	d.widgets = append(d.widgets, w)
}

// build makes a card at the origin.
func build(t *view.Table, scale float64, id world.ControlID, w float64) (placed, *control.Widget) {
	def := &t.Controls[id]
	wd := &control.Widget{ID: id, Def: def, Units: t.Units}
	st := draw.Style{Size: textSize, Weight: draw.Bold}
	p := placed{title: def.Label, at: draw.Pt(pad, pad+6)}
	under := titleH + 8
	switch def.Kind {
	case world.Choice:
		c := NewChips(scale, draw.Pt(pad, under), w-2*pad, def.Options)
		wd.Face, p.lines = c, []string{def.Label}
		p.box = draw.Rect{W: w, H: under + c.Area.H + pad}
	case world.Measure:
		wd.Face, p.lines = Slide{Area: draw.Rect{X: pad, Y: under - 4, W: w - 2*pad, H: 32}, Def: def, Units: t.Units}, []string{def.Label}
		p.box = draw.Rect{W: w, H: under + 32}
	case world.Push:
		wd.Face = Press{Area: draw.Rect{X: pad, Y: pad, W: w - 2*pad, H: 32}, Text: def.Label}
		p.box = draw.Rect{W: w, H: 32 + 2*pad}
	case world.Wheel, world.Knob, world.Handle, world.Lever:
		wd.Face = control.Wheel{At: draw.Pt(w-pad-wheelR-4, pad+wheelR+2), R: wheelR, Turns: -4}
		p.lines = append(st.Wrap(scale, w-3*pad-2*wheelR-8, def.Label), "", "counter-clockwise", "opens")
		p.box = draw.Rect{W: w, H: 2*wheelR + 2*pad + 6}
	default:
		p.lines = st.Wrap(scale, w-3*pad-flipW, def.Label)
		h := max(28, float64(len(p.lines))*lineGap) + 2*pad - 2
		wd.Face = Flip{Area: draw.Rect{X: w - pad - flipW, Y: (h - 28) / 2, W: flipW, H: 28}}
		p.box = draw.Rect{W: w, H: h}
		p.at.Y = h/2 - float64(len(p.lines)-1)*lineGap/2
	}
	return p, wd
}

// Add takes another deck's cards in.
func (d *Deck) Add(o *Deck) {
	d.widgets = append(d.widgets, o.widgets...)
	d.cards = append(d.cards, o.cards...)
	d.heads = append(d.heads, o.heads...)
	d.Bottom = max(d.Bottom, o.Bottom)
}

// Widgets are the deck's controls.
func (d *Deck) Widgets() []*control.Widget { return d.widgets }

// Still paints the cards.
func (d *Deck) Still(cv *draw.Canvas, th *theme.Theme) {
	for _, h := range d.heads {
		cv.Middle(h.at, draw.Left, draw.Style{Size: 15, Weight: draw.Bold, Color: th.Heading, Track: 1.2}, h.text)
	}
	for i, c := range d.cards {
		cv.Fill(draw.Round(c.box, 8), draw.Down(c.box, draw.Lighter(th.CardHi, 0.03), th.CardHi))
		cv.Fill(draw.Frame(c.box, 8, 1), draw.Solid(th.Rule))
		p := c.at
		for _, line := range c.lines {
			cv.Middle(p, draw.Left, draw.Style{Size: textSize, Weight: draw.Bold, Color: th.CardText}, line)
			p.Y += lineGap
		}
		d.widgets[i].Still(cv, th)
	}
}

// Moving puts where every card stands.
func (d *Deck) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, e *view.Eyes) {
	for _, w := range d.widgets {
		w.Moving(sh, f, th, e.Share(w.ID))
	}
}
