package app

import (
	"fmt"
	"slices"

	"steadyneedle/render/draw"
)

// What is picked for an armed thing, as it is seen and pointed at: a card over the list, one row a field.

func (g *arming) card(a *App) draw.Rect {
	return draw.Around(draw.Pt(a.size.X/2, a.size.Y/2-20), 760, 384)
}

// row is the box of the n-th field that is shown.
func (g *arming) row(a *App, field int) draw.Rect {
	c, i := g.card(a), slices.Index(g.fields(), field)
	return draw.Rect{X: c.X + 30, Y: c.Y + 84 + float64(i)*54, W: c.W - 60, H: 46}
}

// arrow is the box that takes a field one choice back, or on.
func (g *arming) arrow(a *App, i int, on bool) draw.Rect {
	b := g.row(a, i)
	if on {
		return draw.Rect{X: b.Right() - 46, Y: b.Y + 4, W: 40, H: b.H - 8}
	}
	return draw.Rect{X: b.X + 190, Y: b.Y + 4, W: 40, H: b.H - 8}
}

func (g *arming) doBox(a *App, i int) draw.Rect {
	c := g.card(a)
	return draw.Rect{X: c.Right() - 30 - 160*float64(2-i) + 10, Y: c.Bottom() - 62, W: 150, H: 42}
}

func (g *arming) items(a *App) []Item {
	items := []Item{
		{Key: "arm", Box: g.doBox(a, 0), Label: "Arm it", Help: "Arm it and go back. Enter.", Do: func() { g.arm(a) }},
		{Key: "cancel", Box: g.doBox(a, 1), Label: "Cancel", Help: "Back without arming it. Escape.", Do: func() { a.show(g.list) }},
	}
	for _, i := range g.fields() {
		for k, by := range [...]int{-1, 1} {
			items = append(items, Item{Key: fmt.Sprint("arm-", i, "-", k), Box: g.arrow(a, i, by > 0), Label: g.label(i), Help: "Up and Down choose the row, Left and Right its value.", Do: func() { g.field = i; g.change(by) }})
		}
	}
	return items
}

func (g *arming) still(a *App, cv *draw.Canvas) { g.list.still(a, cv) }

func (g *arming) moving(a *App) {
	g.list.picture(a)
	th, c := a.theme, g.card(a)
	title := draw.Style{Size: 22, Weight: draw.Bold, Color: th.Text}
	text := "Arm: " + g.list.back.stage.Controls()[g.control].Label
	a.frame.Put(a.shelf.Once("arming/card", fmt.Sprint("arming/card/", th.Name, c, text), c, func(cv *draw.Canvas) {
		cv.Fill(draw.Round(c, 12), draw.Solid(th.Room))
		cv.Fill(draw.Frame(c, 12, 2), draw.Solid(th.Focus))
		cv.Text(draw.Pt(c.X+30, c.Y+44), draw.Left, title, title.Fit(cv.Scale, c.W-60, text))
	}), draw.Point{})
	for _, i := range g.fields() {
		g.fieldRow(a, i)
	}
	a.button(g.doBox(a, 0), "Arm it", true)
	a.button(g.doBox(a, 1), "Cancel", false)
	g.list.back.announce(a)
}

func (g *arming) fieldRow(a *App, i int) {
	th, b := a.theme, g.row(a, i)
	edge := th.Rule
	if i == g.field {
		edge = th.Focus
	}
	a.frame.Put(a.shelf.Get(fmt.Sprint("arming/row/", th.Name, i == g.field, b.W), draw.Rect{W: b.W, H: b.H}, func(cv *draw.Canvas) {
		r := draw.Rect{W: b.W, H: b.H}
		cv.Fill(draw.Round(r, 8), draw.Solid(th.Card))
		cv.Fill(draw.Frame(r, 8, 2), draw.Solid(edge))
	}), draw.Pt(b.X, b.Y))
	a.shelf.Middle(&a.frame, draw.Pt(b.X+16, b.Center().Y), draw.Left, draw.Style{Size: 17, Color: th.CardSoft}, g.label(i))
	st := draw.Style{Size: 18, Weight: draw.Bold, Color: th.CardText}
	left, right := g.arrow(a, i, false), g.arrow(a, i, true)
	a.shelf.Middle(&a.frame, draw.Pt((left.Right()+right.X)/2, b.Center().Y), draw.Center, st, st.Fit(a.scale, right.X-left.Right()-12, g.text(i)))
	a.button(left, "‹", false)
	a.button(right, "›", false)
}
