package app

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/report"
)

// demos is the list of prepared demonstrations, with what each teaches: two columns, which wheel and finger move
// if there are more rows than the window holds.
type demos struct {
	error string
	lines int // of what the longest teaches
	up    int // rows scrolled past
	slid  drift
}

const (
	demoW   = 594.0
	demoGap = 14.0
	demoTop = 132.0
	demoIn  = 20.0 // from a card's edge to its text
)

var demoStyle = draw.Style{Size: 16}

func (d *demos) key() string { return "demos" }

func (d *demos) layout(a *App) {
	d.lines = 1
	for _, s := range a.opt.Shows {
		d.lines = max(d.lines, len(demoStyle.Wrap(a.scale, demoW-2*demoIn, s.About)))
	}
	d.up = max(0, min(d.up, d.rows(a)-d.fits(a)))
}

func (d *demos) height() float64 { return 48 + 22*float64(d.lines) }

func (d *demos) rows(a *App) int { return (len(a.opt.Shows) + 1) / 2 }

// fits is how many rows show, above the caution.
func (d *demos) fits(a *App) int {
	return max(1, int((a.size.Y-76-demoTop+demoGap)/(d.height()+demoGap)))
}

// row is the box of the i-th demonstration, and whether it shows.
func (d *demos) row(a *App, i int) (draw.Rect, bool) {
	x, n := a.size.X/2-demoW-demoGap/2, i/2-d.up
	return draw.Rect{X: x + float64(i%2)*(demoW+demoGap), Y: demoTop + float64(n)*(d.height()+demoGap), W: demoW, H: d.height()}, n >= 0 && n < d.fits(a)
}

// left is where the columns begin.
func (d *demos) left(a *App) float64 { return a.size.X/2 - demoW - demoGap/2 }

func (d *demos) items(a *App) []Item {
	items := []Item{{Key: "back", Box: d.backBox(a), Label: "First screen", Help: "Back to the drills. Escape.", Do: func() { a.show(&menu{}) }}}
	for i := range a.opt.Shows {
		s := a.opt.Shows[i]
		if b, ok := d.row(a, i); ok {
			items = append(items, Item{Key: "show-" + s.Name, Box: b, Label: s.Title, Help: s.About, Pull: func(by float64) { d.slide(a, -by) }, Do: func() {
				if err := a.Present(s.Name); err != nil {
					d.error = sentence(err.Error())
				}
			}})
		}
	}
	return items
}

func (d *demos) backBox(a *App) draw.Rect {
	return draw.Rect{X: a.size.X - 156, Y: 28, W: 130, H: 40}
}

// slide moves the list by so many units.
func (d *demos) slide(a *App, units float64) {
	d.to(a, d.up+d.slid.rows(units, d.height()+demoGap))
}

func (d *demos) to(a *App, up int) {
	if up = max(0, min(up, d.rows(a)-d.fits(a))); up != d.up {
		d.up = up
		a.redraw()
	}
}

func (d *demos) scroll(a *App, notches float64) bool {
	d.slide(a, -notches*(d.height()+demoGap))
	return true
}

// onKey leaves; an arrow goes on to the row above or below, which comes into sight.
func (d *demos) onKey(a *App, k Key) bool {
	by := map[string]int{"Up": -2, "Down": 2}[k.Name]
	switch {
	case !k.Down:
		return false
	case k.Name == "Escape":
		a.show(&menu{})
		return true
	case by == 0:
		return false
	}
	for i, s := range a.opt.Shows {
		if a.focus != "show-"+s.Name || i+by < 0 || i+by >= len(a.opt.Shows) {
			continue
		}
		switch n := (i + by) / 2; {
		case n < d.up:
			d.to(a, n)
		case n >= d.up+d.fits(a):
			d.to(a, n-d.fits(a)+1)
		}
		a.collect()
		a.focus = "show-" + a.opt.Shows[i+by].Name
		return true
	}
	return false
}

func (d *demos) still(a *App, cv *draw.Canvas) {
	th, x := a.theme, d.left(a)
	cv.Text(draw.Pt(x, 70), draw.Left, draw.Style{Size: 34, Weight: draw.Bold, Color: th.Text}, "Show the class")
	cv.Text(draw.Pt(x, 102), draw.Left, draw.Style{Size: 18, Color: th.Soft}, "Prepared demonstrations: the inside of the pump, gauges and plots, large. You can step in at any time.")
	for i, s := range a.opt.Shows {
		r, ok := d.row(a, i)
		if !ok {
			continue
		}
		cv.Fill(draw.Round(r, 10), draw.Down(r, draw.Lighter(th.CardHi, 0.04), th.CardHi))
		cv.Fill(draw.Frame(r, 10, 1), draw.Solid(th.Rule))
		title := draw.Style{Size: 20, Weight: draw.Bold, Color: th.CardText}
		cv.Text(draw.Pt(r.X+demoIn, r.Y+31), draw.Left, title, title.Fit(cv.Scale, r.W-2*demoIn, s.Title))
		st := demoStyle
		st.Color = th.CardSoft
		for k, l := range st.Wrap(cv.Scale, r.W-2*demoIn, s.About) {
			cv.Text(draw.Pt(r.X+demoIn, r.Y+56+float64(k)*22), draw.Left, st, l)
		}
	}
	foot := draw.Style{Size: 15, Color: th.Soft}
	lines := foot.Wrap(cv.Scale, 1200, report.Caution)
	for i, l := range lines {
		cv.Text(draw.Pt(x, a.size.Y-20-float64(len(lines)-1-i)*20), draw.Left, foot, l)
	}
	if d.rows(a) > d.fits(a) {
		text := fmt.Sprintf("%d above, %d below · wheel, drag or ↑↓", 2*d.up, max(0, len(a.opt.Shows)-2*(d.up+d.fits(a))))
		cv.Text(draw.Pt(x+2*demoW+demoGap, 102), draw.Right, foot, text)
	}
}

func (d *demos) moving(a *App) {
	a.button(d.backBox(a), "First screen", false)
	if d.error != "" {
		st := draw.Style{Size: 17, Weight: draw.Bold, Color: a.theme.Bad}
		a.shelf.Text(&a.frame, draw.Pt(d.left(a), a.size.Y-64), draw.Left, st, st.Fit(a.scale, 1200, d.error))
	}
}

// Present begins a demonstration, and shows it.
func (a *App) Present(name string) error {
	s, err := a.opt.Present(name)
	if err != nil {
		return err
	}
	a.Take(s)
	a.tempo, a.frozen = 1, true // until the caution has been read
	a.class = &show{stage: s}
	a.eyes.Cover = a.class.covers
	a.show(a.class)
	return nil
}
