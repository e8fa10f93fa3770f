package app

import (
	"fmt"

	plot "steadyneedle/render/debrief"
	"steadyneedle/render/draw"
	"steadyneedle/render/report"
	"steadyneedle/render/view"
)

// records is the list of attempts that are kept, newest first.
type records struct {
	list []Kept
	up   int
	note string // what could not be read
}

func newRecords(a *App) *records {
	r := &records{}
	kept, err := a.opt.Store.Kept("")
	if err != nil {
		r.note = sentence(err.Error())
	}
	for i := len(kept) - 1; i >= 0; i-- {
		r.list = append(r.list, kept[i])
	}
	return r
}

func (r *records) key() string { return "records" }

func (r *records) layout(*App) {}

const recordH = 54.0

func (r *records) box(a *App) draw.Rect {
	w := 940.0
	return draw.Rect{X: (a.size.X - w) / 2, Y: 104, W: w, H: a.size.Y - 104 - 80}
}

func (r *records) shown(a *App) []Kept {
	n := int((r.box(a).H - 12) / recordH)
	return r.list[r.up:min(len(r.list), r.up+n)]
}

func (r *records) row(a *App, i int) draw.Rect {
	b := r.box(a)
	return draw.Rect{X: b.X + 8, Y: b.Y + 8 + float64(i)*recordH, W: b.W - 16, H: recordH - 6}
}

func (r *records) backBox(a *App) draw.Rect {
	b := r.box(a)
	return draw.Rect{X: b.Right() - 190, Y: 44, W: 190, H: 40}
}

func (r *records) items(a *App) []Item {
	items := []Item{{Key: "back", Box: r.backBox(a), Label: "Back to the drills", Help: "Key Esc.", Do: func() { a.show(&menu{}) }}}
	for i, k := range r.shown(a) {
		items = append(items, Item{Key: "record-" + k.ID, Box: r.row(a, i), Label: k.Title + ", " + k.When, Help: "Opens its sheet.", Do: func() { a.openKept(k.ID) }})
	}
	return items
}

// openKept opens an attempt's debrief.
func (a *App) openKept(id string) {
	o, err := a.opt.Store.Open(id)
	if err != nil {
		a.say(sentence(err.Error()))
		return
	}
	a.openSlow(o, a.debriefOf)
}

func (r *records) scroll(a *App, notches float64) bool {
	r.move(a, -sign(notches))
	return true
}

func (r *records) move(a *App, by int) {
	n := int((r.box(a).H - 12) / recordH)
	if next := max(0, min(r.up+by, len(r.list)-n)); next != r.up {
		r.up = next
		a.redraw()
	}
}

func (r *records) onKey(a *App, k Key) bool {
	if !k.Down {
		return false
	}
	switch k.Name {
	case "Escape":
		a.show(&menu{})
	case "PageUp":
		r.move(a, -8)
	case "PageDown":
		r.move(a, 8)
	default:
		return false
	}
	return true
}

func (r *records) still(a *App, cv *draw.Canvas) {
	th, b := a.theme, r.box(a)
	cv.Text(draw.Pt(b.X, 74), draw.Left, draw.Style{Size: 30, Weight: draw.Bold, Color: th.Text}, "Attempts kept on this machine")
	a.panelOf(cv, b)
	if len(r.list) == 0 {
		cv.Text(draw.Pt(b.X+24, b.Y+44), draw.Left, draw.Style{Size: 17, Color: th.CardSoft}, "None so far.")
	}
	for i, k := range r.shown(a) {
		r.put(a, cv, r.row(a, i), k)
	}
	if r.note != "" {
		st := draw.Style{Size: 15, Color: th.Caution}
		cv.Text(draw.Pt(b.X, b.Bottom()+20), draw.Left, st, st.Fit(cv.Scale, b.W, r.note))
	}
	cv.Paragraph(draw.Pt(b.X, a.size.Y-40), b.W, 19, draw.Style{Size: 15, Color: th.Soft}, report.Caution)
}

func (r *records) put(a *App, cv *draw.Canvas, b draw.Rect, k Kept) {
	th := a.theme
	cv.Fill(draw.Round(b, 6), draw.Solid(th.CardHi))
	cv.Middle(draw.Pt(b.X+16, b.Y+16), draw.Left, draw.Style{Size: 17, Weight: draw.Bold, Color: th.CardText}, k.Title)
	cv.Middle(draw.Pt(b.X+16, b.Y+36), draw.Left, draw.Style{Size: 15, Color: th.CardSoft}, k.When)
	word, col, under := "Cut off", th.Caution, ""
	if s := k.Sheet; s != nil {
		word, col = s.Verdict(), plot.Color(th, "clean")
		switch {
		case s.Early:
			col = th.Caution
		case !s.Passed:
			col = th.Bad
		}
		if r := s.Ruling; r != nil {
			word += " · evaluator: " + passedWord(r.Passed)
		}
		under = fmt.Sprintf("%.0f points · clock %s · %s", s.Score, clockText(s.ClockS), counted(len(s.Findings), "finding"))
	}
	cv.Middle(draw.Pt(b.Right()-16, b.Y+16), draw.Right, draw.Style{Size: 17, Weight: draw.Bold, Color: col}, word)
	cv.Middle(draw.Pt(b.Right()-16, b.Y+36), draw.Right, draw.Style{Size: 15, Color: th.CardSoft}, under)
}

func (r *records) moving(a *App) { a.button(r.backBox(a), "Back to the drills", false) }

// cutOff is the newest attempt that was cut off; ok is false where there is none.
func (a *App) cutOff() (k Kept, ok bool) {
	if a.opt.Store == nil {
		return k, false
	}
	list, _ := a.opt.Store.Kept("") // what cannot be read is told of by the list of attempts
	for i := len(list) - 1; i >= 0; i-- {
		if list[i].Sheet == nil {
			return list[i], true
		}
	}
	return k, false
}

// goOn takes up an attempt that was cut off, where it was cut off.
func (a *App) goOn(k Kept) {
	a.openCut(k, func(at view.Attempt) {
		a.takeOver(at, at.Reading().At)
		if a.attempt != nil && a.attempt != at {
			a.drop(k.ID)
		}
	})
}

// seeCut keeps an attempt that was cut off as it stands, and opens its sheet.
func (a *App) seeCut(k Kept) {
	a.openCut(k, func(at view.Attempt) {
		if err := a.opt.Store.Settle(k.ID, at); err != nil {
			a.say(sentence(err.Error()))
		}
		a.debriefOf(at, nil)
	})
}

// openCut opens what was left of an attempt; where nothing can be made of it, it is thrown away.
func (a *App) openCut(k Kept, then func(view.Attempt)) {
	o, err := a.opt.Store.Open(k.ID)
	if err != nil {
		a.say(sentence(err.Error()))
		a.drop(k.ID)
		a.show(&menu{})
		return
	}
	a.openSlow(o, func(at view.Attempt, err error) {
		if at == nil {
			a.debriefOf(at, err)
			a.drop(k.ID)
			return
		}
		then(at)
	})
}

func (a *App) drop(id string) {
	if err := a.opt.Store.Drop(id); err != nil {
		a.say(sentence(err.Error()))
	}
}

// counted writes a number of things.
func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

func passedWord(passed bool) string {
	if passed {
		return "passed"
	}
	return "not passed"
}

// points writes a score.
func points(v float64) string { return counted(int(v+0.5), "point") }
