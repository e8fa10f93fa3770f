package app

import (
	"fmt"

	"steadyneedle/render/draw"
)

// pause is the sheet over a stopped attempt.
type pause struct{ back *place }

func newPause(s *place) *pause { return &pause{s} }

func (p *pause) key() string { return "pause" }

func (p *pause) layout(a *App) { p.back.layout(a) }

func (p *pause) row(a *App, i int) draw.Rect {
	return draw.Rect{X: a.size.X/2 - 190, Y: p.box(a).Y + 78 + float64(i)*58, W: 380, H: 48}
}

func (p *pause) words() [3]string {
	return [3]string{"Go on", "End the attempt and see the sheet", "Leave without a sheet"}
}

func (p *pause) items(a *App) []Item {
	do := [3]func(){
		func() { p.leave(a) },
		func() { a.attempt.End(); a.ended() },
		func() { a.attempt.End(); a.keep(); a.leave() },
	}
	var items []Item
	for i, w := range p.words() {
		items = append(items, Item{Key: fmt.Sprint("pause-", i), Box: p.row(a, i), Label: w, Do: do[i]})
	}
	return items
}

// leave goes back to the place, which may have changed in the meantime.
func (p *pause) leave(a *App) { a.resume(p.back) }

// box is the sheet that lies over the place.
func (p *pause) box(a *App) draw.Rect {
	return draw.Around(draw.Pt(a.size.X/2, a.size.Y/2), 660, 526)
}

func (p *pause) still(a *App, cv *draw.Canvas) { p.back.still(a, cv) }

// keysHelp are the keys that are needed most; the page of keys has all.
var keysHelp = [][2]string{
	{"Tab, Shift-Tab", "next control, the one before"},
	{"↑ ↓, Page Up, Page Down", "work the control in focus; Shift: fine"},
	{"Enter, Space", "throw, press, choose"},
	{"S, M, L", "say or signal; messages; look round"},
	{"1, 2, 3", "cab, panel, street plan"},
	{"F1, F2", "what is this; all keys"},
	{"F3, F4", "colors; sound off and on"},
	{"F8, F6, F7", "evaluator: mark, stop for safety, void (a call came in)"},
}

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
		for i, k := range keysHelp {
			y := b.Y + 292 + 27*float64(i)
			cv.Text(draw.Pt(b.X+40, y), draw.Left, draw.Style{Size: 16, Weight: draw.Bold, Color: th.CardText}, k[0])
			cv.Text(draw.Pt(b.X+262, y), draw.Left, draw.Style{Size: 16, Color: th.CardSoft}, k[1])
		}
	})
	a.frame.Put(veil, draw.Point{})
	for i, w := range p.words() {
		a.button(p.row(a, i), w, false)
	}
}

func (p *pause) onKey(a *App, k Key) bool {
	if k.Down && k.Name == "Escape" {
		p.leave(a)
		return true
	}
	return false
}
