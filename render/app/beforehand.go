package app

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/report"
)

// beforehand is the caution before a rated attempt; nothing begins until it is acknowledged.
type beforehand struct {
	name, title, error string
}

// Offer begins an attempt: a rehearsal at once, a rated one after the caution has been acknowledged.
func (a *App) Offer(name string, rated bool) error {
	if !rated {
		return a.Begin(name, false)
	}
	b := &beforehand{name: name, title: name}
	for _, d := range a.opt.Drills {
		if d.Name == name {
			b.title = d.Title
		}
	}
	a.show(b)
	a.focus = "begin"
	return nil
}

func (b *beforehand) key() string { return "beforehand" }

func (b *beforehand) layout(*App) {}

func (b *beforehand) box(a *App) draw.Rect {
	return draw.Around(draw.Pt(a.size.X/2, a.size.Y/2), 780, 430)
}

func (b *beforehand) beginBox(a *App) draw.Rect {
	r := b.box(a)
	return draw.Rect{X: r.Right() - 360, Y: r.Bottom() - 70, W: 330, H: 46}
}

func (b *beforehand) backBox(a *App) draw.Rect {
	r := b.box(a)
	return draw.Rect{X: r.X + 30, Y: r.Bottom() - 70, W: 200, H: 46}
}

func (b *beforehand) items(a *App) []Item {
	return []Item{
		{Key: "begin", Box: b.beginBox(a), Label: "Understood: begin", Help: "Begins the rated attempt.", Do: func() {
			if err := a.Begin(b.name, true); err != nil {
				b.error = sentence(err.Error())
			}
		}},
		{Key: "back", Box: b.backBox(a), Label: "Back", Help: "Back to the drills.", Do: func() { a.show(&menu{rated: true}) }},
	}
}

func (b *beforehand) still(a *App, cv *draw.Canvas) {
	th, r := a.theme, b.box(a)
	cv.Shadow(draw.Round(r, 14), 0, 6, 24, draw.Fade(th.Shade, 0.9))
	cv.Fill(draw.Round(r, 14), draw.Solid(th.Card))
	cv.Fill(draw.Frame(r, 14, 2), draw.Solid(th.Caution))
	warning(cv, a, draw.Pt(r.X+58, r.Y+62), 1.2)
	cv.Text(draw.Pt(r.X+104, r.Y+52), draw.Left, draw.Style{Size: 24, Weight: draw.Bold, Color: th.Text}, "Before a rated attempt")
	cv.Text(draw.Pt(r.X+104, r.Y+80), draw.Left, draw.Style{Size: 17, Color: th.CardSoft}, b.title)
	st := draw.Style{Size: 18, Color: th.CardText}
	y := cv.Paragraph(draw.Pt(r.X+34, r.Y+130), r.W-68, 26, st, report.Caution)
	cv.Paragraph(draw.Pt(r.X+34, y+14), r.W-68, 26, st, "The clock starts when both brakes are set, and nothing pauses it. Captions describe sounds without naming their cause, and no control says where it stands.")
}

func (b *beforehand) moving(a *App) {
	a.button(b.backBox(a), "Back", false)
	a.button(b.beginBox(a), "Understood: begin", true)
	if b.error != "" {
		warn := draw.Style{Size: 16, Weight: draw.Bold, Color: a.theme.Bad}
		r := b.box(a)
		a.shelf.Text(&a.frame, draw.Pt(r.X+34, r.Bottom()-92), draw.Left, warn, warn.Fit(a.scale, r.W-68, b.error))
	}
}

func (b *beforehand) onKey(a *App, k Key) bool {
	if k.Down && k.Name == "Escape" {
		a.show(&menu{rated: true})
		return true
	}
	return false
}

// warning is the triangle of a caution about c, k times as large as on the first screen.
func warning(cv *draw.Canvas, a *App, c draw.Point, k float64) {
	th := a.theme
	cv.Fill(draw.Poly(c.Add(draw.Pt(0, -22*k)), c.Add(draw.Pt(22*k, 16*k)), c.Add(draw.Pt(-22*k, 16*k))), draw.Solid(th.Caution))
	cv.Middle(c.Add(draw.Pt(0, 3*k)), draw.Center, draw.Style{Size: 24 * k, Weight: draw.Bold, Color: th.Room}, "!")
}
