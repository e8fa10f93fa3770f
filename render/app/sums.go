package app

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"steadyneedle/render/draw"
	"steadyneedle/render/report"
	"steadyneedle/render/view"
)

// sums is the calculation sheet while the drill runs: paper and pencil. Nothing is told there but what
// the department's sheet asks for; the world runs on.
type sums struct {
	back  *place
	list  []view.Sum
	texts []string // as written
	at    int      // line that is written on
}

func (a *App) openSums(s *place) {
	s.focus = a.focus
	w := &sums{back: s, list: a.attempt.Sums()}
	if len(w.list) == 0 {
		a.say("This drill has no calculation sheet.")
		return
	}
	for _, l := range w.list {
		text := ""
		if !math.IsNaN(l.Value) {
			text = strconv.FormatFloat(math.Round(l.Value*100)/100, 'f', -1, 64)
		}
		w.texts = append(w.texts, text)
	}
	a.show(w)
	a.focus = w.key0(0)
}

func (w *sums) key() string { return "sums" }

func (w *sums) key0(i int) string { return "sum-" + w.list[i].ID }

func (w *sums) layout(a *App) { w.back.layout(a) }

func (w *sums) box(a *App) draw.Rect {
	h := min(a.size.Y-stripH-footH-24, 266+float64(len(w.list))*40)
	return draw.Rect{X: a.size.X/2 - 400, Y: stripH + 12, W: 800, H: h}
}

func (w *sums) row(a *App, i int) draw.Rect {
	b := w.box(a)
	h := min(40, (b.H-240)/float64(len(w.list)))
	return draw.Rect{X: b.X + 28, Y: b.Y + 108 + float64(i)*h, W: b.W - 56, H: h}
}

func (w *sums) field(a *App, i int) draw.Rect {
	r := w.row(a, i)
	return draw.Rect{X: r.X + 420, Y: r.Y + 3, W: 130, H: r.H - 6}
}

func (w *sums) closeBox(a *App) draw.Rect {
	b := w.box(a)
	return draw.Rect{X: b.Right() - 124, Y: b.Y + 14, W: 100, H: 36}
}

func (w *sums) items(a *App) []Item {
	items := a.stripItems(w.back)
	for i, l := range w.list {
		items = append(items, Item{Key: w.key0(i), Box: w.field(a, i), Label: l.Title, Help: "Type the number. Enter goes to the next line.", Do: func() { w.next(a, i) }})
	}
	for i, k := range keypad {
		items = append(items, Item{Key: "digit-" + k.face, Box: w.padBox(a, i), Label: k.name, Help: "Writes on the line that was chosen last.", Do: func() { w.press(k.face) }})
	}
	return append(items, Item{Key: "close", Box: w.closeBox(a), Label: "Close", Help: "Key Esc.", Do: func() { w.close(a) }})
}

func (w *sums) padBox(a *App, i int) draw.Rect {
	b := w.box(a)
	return draw.Rect{X: b.X + 28 + float64(i)*57, Y: b.Bottom() - 126, W: 52, H: 34}
}

// press is one button of the keypad.
func (w *sums) press(face string) {
	switch face {
	case "C":
		w.texts[w.at] = ""
	case "−":
		w.typed('-')
	default:
		w.typed(rune(face[0]))
	}
}

// focused follows the focus with the pencil.
func (w *sums) focused(_ *App, it *Item) {
	for i := range w.list {
		if w.key0(i) == it.Key {
			w.at = i
		}
	}
}

// next writes a line down and goes to the one after it.
func (w *sums) next(a *App, i int) {
	w.keep(a, i)
	w.at = min(i+1, len(w.list)-1)
	a.focus = w.key0(w.at)
}

// keep notes a line.
func (w *sums) keep(a *App, i int) {
	v, err := strconv.ParseFloat(w.texts[i], 64)
	if w.texts[i] == "" || err != nil {
		v = math.NaN()
	}
	if old := w.list[i].Value; v == old || math.IsNaN(v) && math.IsNaN(old) {
		return
	}
	w.list[i].Value = v
	a.attempt.WriteSum(w.list[i].ID, v)
}

func (w *sums) close(a *App) {
	for i := range w.list {
		w.keep(a, i)
	}
	a.resume(w.back)
}

// typed takes one character into the line that is written on.
func (w *sums) typed(r rune) {
	if (r >= '0' && r <= '9' || r == '.' && !strings.Contains(w.texts[w.at], ".") || r == '-' && w.texts[w.at] == "") && len(w.texts[w.at]) < 8 {
		w.texts[w.at] += string(r)
	}
}

func (w *sums) onKey(a *App, k Key) bool {
	if !k.Down {
		return false
	}
	switch k.Name {
	case "Escape":
		w.close(a)
	case "Backspace":
		if t := w.texts[w.at]; t != "" {
			w.texts[w.at] = t[:len(t)-1]
		}
	case "Up":
		w.keep(a, w.at)
		w.at = max(0, w.at-1)
		a.focus = w.key0(w.at)
	case "Down":
		w.next(a, w.at)
	default:
		return false
	}
	return true
}

func (w *sums) still(a *App, cv *draw.Canvas) {
	a.stripStill(cv)
	th, b := a.theme, w.box(a)
	a.panelOf(cv, b)
	cv.Text(draw.Pt(b.X+28, b.Y+40), draw.Left, draw.Style{Size: 22, Weight: draw.Bold, Color: th.CardText}, "Calculation sheet")
	cv.Paragraph(draw.Pt(b.X+28, b.Y+66), b.W-56, 19, draw.Style{Size: 15, Color: th.CardSoft}, a.attempt.Info().Load)
	for i, l := range w.list {
		r := w.row(a, i)
		st := draw.Style{Size: 17, Color: th.CardText}
		if l.Total {
			st.Weight = draw.Bold
			cv.Fill(draw.Box(draw.Rect{X: r.X, Y: r.Y, W: r.W, H: 1}), draw.Solid(th.Rule))
		}
		cv.Middle(draw.Pt(r.X, r.Center().Y), draw.Left, st, l.Title)
		f := w.field(a, i)
		cv.Fill(draw.Round(f, 6), draw.Solid(th.Room))
		cv.Fill(draw.Frame(f, 6, 1), draw.Solid(th.CardSoft))
		cv.Middle(draw.Pt(f.Right()+12, r.Center().Y), draw.Left, draw.Style{Size: 16, Color: th.CardSoft}, l.Unit)
	}
	cv.Paragraph(draw.Pt(b.X+28, b.Bottom()-70), b.W-56, 19, draw.Style{Size: 15, Color: th.CardSoft}, a.attempt.SumsMethod())
	cv.Paragraph(draw.Pt(b.X+28, b.Bottom()-44), b.W-56, 19, draw.Style{Size: 15, Color: th.Caution}, report.SumsCaution)
}

func (w *sums) moving(a *App) {
	a.stripMoving(w.back)
	th := a.theme
	a.button(w.closeBox(a), "Close", false)
	for i, k := range keypad {
		a.button(w.padBox(a, i), k.face, false)
	}
	for i, l := range w.list {
		f := w.field(a, i)
		text := w.texts[i]
		if i == w.at {
			text += "_"
		}
		a.shelf.Middle(&a.frame, draw.Pt(f.X+10, f.Center().Y), draw.Left, draw.Style{Size: 18, Weight: draw.Bold, Color: th.Text}, text)
		if v, err := strconv.ParseFloat(w.texts[i], 64); err == nil && l.Limit > 0 && v > l.Limit {
			a.shelf.Middle(&a.frame, draw.Pt(f.Right()+62, f.Center().Y), draw.Left, draw.Style{Size: 15, Weight: draw.Bold, Color: th.Bad}, fmt.Sprintf("hose limit %.0f", l.Limit))
		}
	}
}
