package app

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/report"
)

// demos is the list of prepared demonstrations, with what each teaches.
type demos struct{ error string }

func (d *demos) key() string { return "demos" }

func (d *demos) layout(*App) {}

// row is the box of the i-th demonstration: two columns.
func (d *demos) row(a *App, i int) draw.Rect {
	const w, h, gap = 594.0, 92.0, 14.0
	x := a.size.X/2 - w - gap/2
	return draw.Rect{X: x + float64(i%2)*(w+gap), Y: 132 + float64(i/2)*(h+gap), W: w, H: h}
}

func (d *demos) items(a *App) []Item {
	items := []Item{{Key: "back", Box: draw.Rect{X: a.size.X - 156, Y: 28, W: 130, H: 40}, Label: "First screen", Help: "Back to the drills. Escape.", Do: func() { a.show(&menu{}) }}}
	for i := range a.opt.Shows {
		s := a.opt.Shows[i]
		items = append(items, Item{Key: "show-" + s.Name, Box: d.row(a, i), Label: s.Title, Help: s.About, Do: func() {
			if err := a.Present(s.Name); err != nil {
				d.error = sentence(err.Error())
			}
		}})
	}
	return items
}

func (d *demos) onKey(a *App, k Key) bool {
	if k.Down && k.Name == "Escape" {
		a.show(&menu{})
		return true
	}
	return false
}

func (d *demos) still(a *App, cv *draw.Canvas) {
	th := a.theme
	cv.Text(draw.Pt(d.row(a, 0).X, 70), draw.Left, draw.Style{Size: 34, Weight: draw.Bold, Color: th.Text}, "Show the class")
	cv.Text(draw.Pt(d.row(a, 0).X, 102), draw.Left, draw.Style{Size: 18, Color: th.Soft}, "Prepared demonstrations: the inside of the pump, gauges and plots, large. You can step in at any time.")
	for i, s := range a.opt.Shows {
		r := d.row(a, i)
		cv.Fill(draw.Round(r, 10), draw.Down(r, draw.Lighter(th.CardHi, 0.04), th.CardHi))
		cv.Fill(draw.Frame(r, 10, 1), draw.Solid(th.Rule))
		title := draw.Style{Size: 20, Weight: draw.Bold, Color: th.CardText}
		cv.Text(draw.Pt(r.X+20, r.Y+31), draw.Left, title, title.Fit(cv.Scale, r.W-40, s.Title))
		st := draw.Style{Size: 16, Color: th.CardSoft}
		lines := st.Wrap(cv.Scale, r.W-40, s.About)
		if len(lines) > 2 {
			lines = lines[:2]
			lines[1] = st.Fit(cv.Scale, r.W-52, lines[1]+" …")
		}
		for k, l := range lines {
			cv.Text(draw.Pt(r.X+20, r.Y+56+float64(k)*22), draw.Left, st, l)
		}
	}
	foot := draw.Style{Size: 15, Color: th.Soft}
	lines := foot.Wrap(cv.Scale, 1200, report.Caution)
	for i, l := range lines {
		cv.Text(draw.Pt(d.row(a, 0).X, a.size.Y-20-float64(len(lines)-1-i)*20), draw.Left, foot, l)
	}
}

func (d *demos) moving(a *App) {
	a.button(draw.Rect{X: a.size.X - 156, Y: 28, W: 130, H: 40}, "First screen", false)
	if d.error != "" {
		st := draw.Style{Size: 17, Weight: draw.Bold, Color: a.theme.Bad}
		a.shelf.Text(&a.frame, draw.Pt(d.row(a, 0).X, a.size.Y-74), draw.Left, st, st.Fit(a.scale, 1200, d.error))
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
