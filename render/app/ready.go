package app

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/report"
)

// ready stands before a rated attempt: what is different from a rehearsal, and the caution. The world
// stands still until the candidate begins.
type ready struct{}

func (r *ready) key() string { return "ready" }

func (r *ready) layout(*App) {}

func (r *ready) box(a *App) draw.Rect {
	return draw.Around(draw.Pt(a.size.X/2, a.size.Y/2), 760, 560)
}

// conditions are what a rated attempt is like.
var conditions = [...]string{
	"The clock and the world run on: there is no pause and no way back.",
	"Nobody prompts. Valves tell no numbers, and captions describe a sound without its cause.",
	"Everything you do and say is recorded, and every finding counts.",
	"Your evaluator has three keys: F8 drops a mark, F6 stops for safety, F7 voids the attempt because a real call came in.",
}

func (r *ready) items(a *App) []Item {
	b := r.box(a)
	return []Item{
		{Key: "begin", Box: draw.Rect{X: b.X + 40, Y: b.Bottom() - 76, W: 200, H: 48}, Label: "Begin", Help: "The attempt begins at once.", Do: func() { a.show(a.placeScreen(a.eyes.Place())) }},
		{Key: "back", Box: draw.Rect{X: b.Right() - 260, Y: b.Bottom() - 76, W: 220, H: 48}, Label: "Back to the drills", Help: "Key Esc.", Do: func() { r.back(a) }},
	}
}

func (r *ready) back(a *App) {
	a.attempt = nil
	a.show(&menu{})
}

func (r *ready) onKey(a *App, k Key) bool {
	if k.Down && k.Name == "Escape" {
		r.back(a)
		return true
	}
	return false
}

func (r *ready) still(a *App, cv *draw.Canvas) {
	th, b, info := a.theme, r.box(a), a.attempt.Info()
	cv.Shadow(draw.Round(b, 14), 0, 6, 24, draw.Fade(th.Shade, 0.9))
	cv.Fill(draw.Round(b, 14), draw.Solid(th.Card))
	cv.Fill(draw.Frame(b, 14, 1.5), draw.Solid(th.Rule))
	cv.Text(draw.Pt(b.X+40, b.Y+56), draw.Left, draw.Style{Size: 28, Weight: draw.Bold, Color: th.Text}, "Rated attempt")
	under := draw.Style{Size: 18, Color: th.Soft}
	cv.Text(draw.Pt(b.X+40, b.Y+88), draw.Left, under, under.Fit(cv.Scale, b.W-80, info.Title+" · "+info.Under))
	y := b.Y + 138
	for _, c := range conditions {
		cv.Fill(draw.Circle(draw.Pt(b.X+46, y-6), 3.5), draw.Solid(th.Accent))
		y = cv.Paragraph(draw.Pt(b.X+64, y), b.W-104, 23, draw.Style{Size: 17, Color: th.CardText}, c) + 10
	}
	c := draw.Rect{X: b.X + 40, Y: b.Bottom() - 204, W: b.W - 80, H: 106}
	cv.Fill(draw.Round(c, 10), draw.Solid(draw.Mix(th.Card, th.Caution, 0.1)))
	cv.Fill(draw.Frame(c, 10, 1.5), draw.Solid(th.Caution))
	cv.Paragraph(draw.Pt(c.X+20, c.Y+30), c.W-40, 23, draw.Style{Size: 17, Color: th.Text}, report.Caution)
}

func (r *ready) moving(a *App) {
	for _, it := range r.items(a) {
		a.button(it.Box, it.Label, it.Key == "begin")
	}
}
