package app

import (
	"fmt"
	"strings"

	"steadyneedle/render/draw"
)

// writing is a card on which one line is written, by keys or from words that are ready.
type writing struct {
	back  screen
	title string
	about []string // what it is for
	ready []string // words to choose from
	word  string   // of the button that takes it
	text  []rune
	fault string
	take  func(text string) error
}

// longestLine is how much can be written, in letters.
const longestLine = 90

func (a *App) openWriting(w *writing) {
	w.back = a.screen
	a.show(w)
	a.focus = ""
}

func (w *writing) key() string { return "writing" }

func (w *writing) layout(*App) {}

func (w *writing) box(a *App) draw.Rect {
	return draw.Around(draw.Pt(a.size.X/2, a.size.Y/2), 760, 300+float64(len(w.ready))*44)
}

func (w *writing) field(a *App) draw.Rect {
	b := w.box(a)
	return draw.Rect{X: b.X + 28, Y: b.Bottom() - 150 - float64(len(w.ready))*44, W: b.W - 56, H: 42}
}

func (w *writing) items(a *App) []Item {
	b, f := w.box(a), w.field(a)
	var items []Item
	for i, text := range w.ready {
		items = append(items, Item{Key: fmt.Sprint("ready-", i), Box: draw.Rect{X: f.X, Y: f.Bottom() + 10 + float64(i)*44, W: f.W, H: 36}, Label: text,
			Help: "Writes this.", Do: func() { w.text, w.fault = []rune(text), "" }})
	}
	y := b.Bottom() - 66
	return append(items,
		Item{Key: "take", Box: draw.Rect{X: b.Right() - 238, Y: y, W: 210, H: 44}, Label: w.word, Help: "Key Enter.", Do: func() { w.done(a) }},
		Item{Key: "cancel", Box: draw.Rect{X: b.X + 28, Y: y, W: 150, H: 44}, Label: "Cancel", Help: "Key Esc.", Do: func() { a.show(w.back) }})
}

// done takes what is written.
func (w *writing) done(a *App) {
	if err := w.take(strings.TrimSpace(string(w.text))); err != nil {
		w.fault = sentence(err.Error())
		return
	}
	a.show(w.back)
}

func (w *writing) typed(r rune) {
	if r < ' ' || r == 0x7f || len(w.text) >= longestLine || r == ' ' && len(w.text) == 0 {
		return
	}
	w.text, w.fault = append(w.text, r), ""
}

func (w *writing) onKey(a *App, k Key) bool {
	if k.Name == "Space" { // it is written
		return true
	}
	if !k.Down || k.Ctrl {
		return false
	}
	switch k.Name {
	case "Escape":
		a.show(w.back)
	case "Backspace":
		if n := len(w.text); n > 0 {
			w.text = w.text[:n-1]
		}
	case "Enter":
		if a.focus != "" && a.focus != "take" {
			return false
		}
		w.done(a)
	default:
		return false
	}
	return true
}

func (w *writing) still(a *App, cv *draw.Canvas) {
	th, b, f := a.theme, w.box(a), w.field(a)
	a.panelOf(cv, b)
	cv.Text(draw.Pt(b.X+28, b.Y+46), draw.Left, draw.Style{Size: 24, Weight: draw.Bold, Color: th.CardText}, w.title)
	y := b.Y + 78
	for _, text := range w.about {
		y = cv.Paragraph(draw.Pt(b.X+28, y), b.W-56, 21, draw.Style{Size: 16, Color: th.CardSoft}, text)
	}
	cv.Fill(draw.Round(f, 6), draw.Solid(th.Room))
	cv.Fill(draw.Frame(f, 6, 1.5), draw.Solid(th.Focus))
}

func (w *writing) moving(a *App) {
	th, f := a.theme, w.field(a)
	st := draw.Style{Size: 18, Weight: draw.Bold, Color: th.Text}
	text := append(w.text[:len(w.text):len(w.text)], '_')
	for st.Width(a.scale, string(text)) > f.W-24 { // the end of it shows
		text = text[1:]
	}
	a.shelf.Middle(&a.frame, draw.Pt(f.X+12, f.Center().Y), draw.Left, st, string(text))
	for _, it := range w.items(a) {
		a.button(it.Box, it.Label, it.Key == "take")
	}
	if w.fault != "" {
		bad := draw.Style{Size: 15, Weight: draw.Bold, Color: th.Bad}
		a.shelf.Text(&a.frame, draw.Pt(f.X, w.box(a).Bottom()-78), draw.Left, bad, bad.Fit(a.scale, f.W, w.fault))
	}
}
