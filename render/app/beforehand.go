package app

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/report"
	"steadyneedle/sim/drill"
)

// beforehand is the caution before a rated attempt; nothing begins until it is acknowledged.
type beforehand struct {
	name, title, error string
	terms              drill.OnUnsafe
}

// Offer begins an attempt: a rehearsal at once, a rated one after the caution has been acknowledged.
func (a *App) Offer(name string, rated bool) error {
	if !rated {
		return a.Begin(name, false)
	}
	b := &beforehand{name: name, title: name}
	for _, d := range a.opt.Drills {
		if d.Name == name {
			b.title, b.terms = d.Title, d.OnUnsafe
		}
	}
	a.show(b)
	a.focus = "begin"
	return nil
}

func (b *beforehand) key() string { return "beforehand" }

func (b *beforehand) layout(*App) {}

func (b *beforehand) box(a *App) draw.Rect {
	return draw.Around(draw.Pt(a.size.X/2, a.size.Y/2), 780, 490)
}

func (b *beforehand) beginBox(a *App) draw.Rect {
	r := b.box(a)
	return draw.Rect{X: r.Right() - 360, Y: r.Bottom() - 70, W: 330, H: 46}
}

func (b *beforehand) backBox(a *App) draw.Rect {
	r := b.box(a)
	return draw.Rect{X: r.X + 30, Y: r.Bottom() - 70, W: 200, H: 46}
}

// termWords are what an unsafe act does, as the buttons say it.
var termWords = [...]string{drill.GoOn: "goes on", drill.Stop: "ends", drill.Ask: "waits for the evaluator"}

func (b *beforehand) termBox(a *App, i int) draw.Rect {
	r := b.box(a)
	return draw.Rect{X: r.X + 34 + float64(i)*240, Y: r.Bottom() - 148, W: 232, H: 40}
}

func (b *beforehand) items(a *App) []Item {
	var items []Item
	for i, word := range termWords {
		items = append(items, Item{Key: "on-unsafe-" + drill.OnUnsafe(i).String(), Box: b.termBox(a, i), Label: "At an unsafe act the attempt " + word,
			Help: "Set by the evaluator. The act is a finding either way.", Do: func() { b.terms = drill.OnUnsafe(i) }})
	}
	return append(items, []Item{
		{Key: "begin", Box: b.beginBox(a), Label: "Understood: begin", Help: "Begins the rated attempt.", Do: func() {
			if err := a.Begin(b.name, true); err != nil {
				b.error = sentence(err.Error())
				return
			}
			a.attempt.OnUnsafe(b.terms)
		}},
		{Key: "back", Box: b.backBox(a), Label: "Back", Help: "Back to the drills.", Do: func() { a.show(&menu{rated: true}) }},
	}...)
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
	cv.Text(draw.Pt(r.X+34, b.termBox(a, 0).Y-16), draw.Left, draw.Style{Size: 18, Weight: draw.Bold, Color: th.CardText}, "At an unsafe act the attempt")
	cv.Paragraph(draw.Pt(r.X+34, y+14), r.W-68, 26, st, "The clock starts when both brakes are set, and you cannot pause it. Captions describe sounds without naming their cause, and no control says where it stands.")
}

func (b *beforehand) moving(a *App) {
	for i, word := range termWords {
		a.button(b.termBox(a, i), word, drill.OnUnsafe(i) == b.terms)
	}
	a.button(b.backBox(a), "Back", false)
	a.button(b.beginBox(a), "Understood: begin", true)
	if b.error != "" {
		warn := draw.Style{Size: 16, Weight: draw.Bold, Color: a.theme.Bad}
		r := b.box(a)
		a.shelf.Text(&a.frame, draw.Pt(r.X+34, r.Bottom()-86), draw.Left, warn, warn.Fit(a.scale, r.W-68, b.error))
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
