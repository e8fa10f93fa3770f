package app

import "steadyneedle/render/draw"

// pause is the sheet over a stopped attempt.
type pause struct {
	back  *place
	rated bool // the world goes on under it
}

func (a *App) newPause(s *place) *pause { return &pause{s, a.attempt.Info().Rated} }

func (p *pause) key() string { return "pause" }

func (p *pause) layout(a *App) { p.back.layout(a) }

// choice is one button of the sheet.
type choice struct {
	key, word string
	do        func()
}

func (p *pause) choices(a *App) []choice {
	list := []choice{
		{"pause-0", "Go on", func() { p.leave(a) }},
		{"keys", "All keys (F2)", func() { a.show(&keysPage{back: p}) }},
		{"colors", "Other colors (F3)", a.nextLook},
		{"sound", "Sound off or on (F4)", a.mute},
	}
	if a.class != nil { // nobody is rated: there is no sheet
		return append(list,
			choice{"class", "Back to the class", func() { a.show(a.class) }},
			choice{"leave", "Leave the demonstration", a.leaveShow},
		)
	}
	return append(list, []choice{
		{"pause-1", "End the attempt and see the sheet", func() { a.attempt.End(); a.ended() }},
		{"pause-2", "Leave without a sheet", func() { a.attempt.End(); a.keep(); a.leave() }},
	}...)
}

func (p *pause) row(a *App, i int) draw.Rect {
	return draw.Rect{X: a.size.X/2 - 190, Y: p.box(a).Y + 84 + float64(i)*58, W: 380, H: 48}
}

func (p *pause) items(a *App) []Item {
	var items []Item
	for i, c := range p.choices(a) {
		items = append(items, Item{Key: c.key, Box: p.row(a, i), Label: c.word, Do: c.do})
	}
	return items
}

// leave goes back to the place, which may have changed in the meantime.
func (p *pause) leave(a *App) { a.resume(p.back) }

// box is the sheet that lies over the place.
func (p *pause) box(a *App) draw.Rect {
	return draw.Around(draw.Pt(a.size.X/2, a.size.Y/2), 520, 456)
}

func (p *pause) still(a *App, cv *draw.Canvas) { p.back.still(a, cv) }

func (p *pause) moving(a *App) {
	p.back.moving(a)
	th := a.theme
	whole := draw.Rect{W: a.size.X, H: a.size.Y}
	title := "Paused"
	if a.attempt.Info().Rated {
		title = "Rated attempt: the clock runs on"
	}
	veil := a.shelf.Get("veil/"+th.Name+title, whole, func(cv *draw.Canvas) {
		cv.Fill(draw.Box(whole), draw.Solid(draw.Fade(th.Room, 0.62)))
		b := p.box(a)
		cv.Shadow(draw.Round(b, 14), 0, 6, 24, draw.Fade(th.Shade, 0.9))
		cv.Fill(draw.Round(b, 14), draw.Solid(th.Card))
		cv.Fill(draw.Frame(b, 14, 1.5), draw.Solid(th.Rule))
		cv.Text(draw.Pt(b.Center().X, b.Y+50), draw.Center, draw.Style{Size: 26, Weight: draw.Bold, Color: th.Text}, title)
	})
	a.frame.Put(veil, draw.Point{})
	for i, c := range p.choices(a) {
		a.button(p.row(a, i), c.word, i == 0)
	}
}

func (p *pause) onKey(a *App, k Key) bool {
	if k.Down && k.Name == "Escape" {
		p.leave(a)
		return true
	}
	return false
}
