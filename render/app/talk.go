package app

import (
	"fmt"
	"strconv"
	"strings"

	"steadyneedle/render/draw"
	"steadyneedle/render/speech"
)

// talk is the sheet of phrases and gestures over the place. The world runs on under it.
type talk struct {
	back   *place
	list   []speech.Phrase
	filter string
	number string
	held   bool // the key that opened the list is still down, and may repeat
}

func (a *App) openSpeech(s *place) {
	s.focus = a.focus
	a.show(&talk{back: s, list: speech.List(a.eyes.Table)})
}

// openByKey opens it by key S, whose own letter is not meant for the list.
func (a *App) openByKey(s *place) {
	a.openSpeech(s)
	a.screen.(*talk).held = true
}

func (t *talk) key() string { return "talk" }

func (t *talk) layout(a *App) { t.back.layout(a) }

func (t *talk) sheet(a *App) draw.Rect {
	return draw.Rect{X: 10, Y: stripH + 7, W: a.size.X - 20, H: a.size.Y - stripH - footH - 14}
}

const (
	phraseH = 27.0
	signH   = 132.0
)

// boxes gives every phrase its place; headings get theirs by group and column.
func (t *talk) boxes(a *App) (rows []draw.Rect, heads map[int]draw.Point) {
	r := t.sheet(a)
	in := r.W - 24
	widths := t.widths(a, in)
	var x [4]float64
	x[0] = r.X + 12
	for i := 1; i < 4; i++ {
		x[i] = x[i-1] + widths[i-1]
	}
	top := r.Y + 62
	heads = map[int]draw.Point{}
	y := [4]float64{top, top, top, top}
	evaluators := t.count(speech.Evaluator)
	rows = make([]draw.Rect, len(t.list))
	seen, signs := 0, 0
	for _, g := range []int{speech.Crew, speech.Evaluator, speech.Gauges, speech.Officer, speech.Gestures} {
		for i := range t.list {
			if t.list[i].Group != g {
				continue
			}
			if g == speech.Gestures {
				w := in / 9
				rows[i] = draw.Rect{X: x[0] + w*float64(signs) + 3, Y: r.Bottom() - signH - 6, W: w - 6, H: signH - 8}
				signs++
				heads[g] = draw.Pt(x[0]+8, r.Bottom()-signH-16)
				continue
			}
			if g == speech.Evaluator {
				seen++
			}
			c := t.column(g, seen, evaluators)
			if _, ok := heads[g]; !ok {
				if g == speech.Officer {
					y[c] += 12
				}
				heads[g] = draw.Pt(x[c]+8, y[c]+10)
				y[c] += 24
			} else if g == speech.Evaluator && c == 2 && y[c] == top {
				y[c] += 24
			}
			rows[i] = draw.Rect{X: x[c], Y: y[c], W: widths[c] - 12, H: phraseH - 2}
			y[c] += phraseH
		}
	}
	return rows, heads
}

// column is where a phrase of a group stands, the evaluator's being parted in two.
func (t *talk) column(group, seen, evaluators int) int {
	if group == speech.Evaluator && seen > (evaluators+1)/2 {
		return 2
	}
	return [...]int{0, 3, 1, 3, 0}[group]
}

// widths gives each column what its longest phrase needs, and an equal share of the rest.
func (t *talk) widths(a *App, whole float64) [4]float64 {
	var w [4]float64
	evaluators, seen := t.count(speech.Evaluator), 0
	st := draw.Style{Size: 15}
	for i := range t.list {
		p := &t.list[i]
		if p.Group == speech.Gestures {
			continue
		}
		if p.Group == speech.Evaluator {
			seen++
		}
		need := st.Width(a.scale, p.Def.Label) + 32
		if p.Number() {
			need += draw.Style{Size: 15, Weight: draw.Bold}.Width(a.scale, max(a.eyes.Units.Unit(p.Def.Unit), "no.")) + 8
		}
		c := t.column(p.Group, seen, evaluators)
		w[c] = max(w[c], need)
	}
	rest := (whole - w[0] - w[1] - w[2] - w[3]) / 4
	for i := range w {
		w[i] += rest
	}
	return w
}

func (t *talk) count(group int) int {
	n := 0
	for i := range t.list {
		if t.list[i].Group == group {
			n++
		}
	}
	return n
}

func (t *talk) items(a *App) []Item {
	items := a.stripItems(t.back)
	rows, _ := t.boxes(a)
	for i := range t.list {
		p := &t.list[i]
		if !p.Match(t.filter) {
			continue
		}
		items = append(items, Item{Key: p.Def.Name, Box: rows[i], Label: p.Def.Label,
			Help: "Said and shown by you. Enter or a click says it at once.", Do: func() { t.say(a, p) }})
	}
	items = append(items, t.padItems(a)...)
	return append(items, Item{Key: "close", Box: t.closeBox(a), Label: "Close", Help: "Key Esc.", Do: func() { t.close(a) }})
}

func (t *talk) closeBox(a *App) draw.Rect {
	r := t.sheet(a)
	return draw.Rect{X: r.Right() - 116, Y: r.Y + 11, W: 100, H: 36}
}

func (t *talk) close(a *App) { a.resume(t.back) }

// say says a phrase, with its number if it carries one.
func (t *talk) say(a *App, p *speech.Phrase) {
	v := 1.0
	if p.Number() {
		n, err := strconv.ParseFloat(strings.Replace(t.number, "−", "-", 1), 64)
		if err != nil {
			a.say("Type the number first, then say it.")
			a.focus = p.Def.Name
			return
		}
		u := a.eyes.Units
		n = u.Typed(n, p.Def.Unit)
		if n < p.Def.Min || n > p.Def.Max {
			a.say(fmt.Sprintf("A number between %.0f and %.0f is wanted.", u.From(p.Def.Min, p.Def.Unit), u.From(p.Def.Max, p.Def.Unit)))
			return
		}
		v = n
	}
	a.hands.want(p.ID, v)
	t.close(a)
}

func (t *talk) still(a *App, cv *draw.Canvas) {
	a.stripStill(cv)
	th, r := a.theme, t.sheet(a)
	cv.Fill(draw.Round(r, 12), draw.Solid(th.Card))
	cv.Fill(draw.Frame(r, 12, 1.5), draw.Solid(th.Rule))
	cv.Text(draw.Pt(r.X+28, r.Y+37), draw.Left, draw.Style{Size: 21, Weight: draw.Bold, Color: th.CardText}, "Say or signal")
	_, heads := t.boxes(a)
	for g, at := range heads {
		cv.Middle(at, draw.Left, draw.Style{Size: 15, Weight: draw.Bold, Color: th.Say}, speech.Groups[g])
	}
	f := t.filterBox(a)
	for _, b := range []draw.Rect{f, t.numberBox(a)} {
		cv.Fill(draw.Round(b, 7), draw.Solid(th.Room))
		cv.Fill(draw.Frame(b, 7, 1), draw.Solid(th.CardSoft))
	}
}

func (t *talk) filterBox(a *App) draw.Rect {
	r := t.sheet(a)
	return draw.Rect{X: r.X + 210, Y: r.Y + 11, W: 330, H: 36}
}

func (t *talk) numberBox(a *App) draw.Rect {
	f := t.filterBox(a)
	return draw.Rect{X: f.Right() + 12, Y: f.Y, W: 180, H: f.H}
}

func (t *talk) moving(a *App) {
	th := a.theme
	a.stripMoving(t.back)
	rows, _ := t.boxes(a)
	for i := range t.list {
		t.row(a, &t.list[i], rows[i])
	}
	a.button(t.closeBox(a), "Close", false)
	t.putPad(a)
	f, n := t.filterBox(a), t.numberBox(a)
	soft, strong := draw.Style{Size: 16, Color: th.Soft}, draw.Style{Size: 17, Weight: draw.Bold, Color: th.Text}
	if t.filter == "" {
		a.shelf.Middle(&a.frame, draw.Pt(f.X+12, f.Center().Y), draw.Left, soft, "type words to narrow the list")
	} else {
		a.shelf.Middle(&a.frame, draw.Pt(f.X+12, f.Center().Y), draw.Left, strong, t.filter+"_")
	}
	if t.number == "" {
		a.shelf.Middle(&a.frame, draw.Pt(n.X+12, n.Center().Y), draw.Left, soft, "type a number")
	} else {
		a.shelf.Middle(&a.frame, draw.Pt(n.X+12, n.Center().Y), draw.Left, strong, t.number)
	}
}

// row puts one phrase: bright when it matches what was typed.
func (t *talk) row(a *App, p *speech.Phrase, r draw.Rect) {
	th := a.theme
	on := p.Match(t.filter)
	reach := p.Def.By.Has(a.eyes.Place())
	number := ""
	if p.Number() {
		number = ""
		if t.number != "" && a.focus == p.Def.Name {
			number = t.number
		}
		number = strings.TrimSpace(number + " " + a.eyes.Units.Unit(p.Def.Unit))
		if number == "" {
			number = "no."
		}
	}
	key := fmt.Sprintf("phrase/%s/%s/%v/%v/%s", th.Name, p.Def.Name, on, reach, number)
	art := a.shelf.Once("phrase/"+p.Def.Name, key, draw.Rect{W: r.W, H: r.H}, func(cv *draw.Canvas) {
		b := draw.Rect{W: r.W, H: r.H}
		fore, soft := th.CardText, th.CardSoft
		if !on || !reach {
			fore, soft = draw.Mix(th.CardHi, fore, 0.4), draw.Mix(th.CardHi, soft, 0.4)
		}
		if p.Group == speech.Gestures {
			cv.Fill(draw.Round(b, 8), draw.Solid(th.CardHi))
			motion := th.Caution
			if !on {
				motion = draw.Mix(th.CardHi, motion, 0.4)
			}
			speech.Pictogram(cv, draw.Rect{X: 0, Y: 6, W: b.W, H: b.H - 34}, p.Def.Name, fore, motion)
			cv.Middle(draw.Pt(b.W/2, b.H-14), draw.Center, draw.Style{Size: 15, Color: fore}, p.Short())
			return
		}
		cv.Fill(draw.Round(b, 5), draw.Solid(th.CardHi))
		st := draw.Style{Size: 15, Color: fore}
		wide := b.W - 16
		if number != "" {
			n := draw.Style{Size: 15, Weight: draw.Bold, Color: soft}
			cv.Middle(draw.Pt(b.W-8, b.H/2), draw.Right, n, number)
			wide -= n.Width(cv.Scale, number) + 6
		}
		cv.Middle(draw.Pt(8, b.H/2), draw.Left, st, st.Fit(cv.Scale, wide, p.Def.Label))
	})
	a.frame.Put(art, draw.Pt(r.X, r.Y))
}

// OnChar takes a typed character where something is being typed.
func (a *App) OnChar(r rune) {
	if w, ok := a.screen.(*sums); ok {
		w.typed(r)
		return
	}
	if w, ok := a.screen.(*writing); ok {
		w.typed(r)
		return
	}
	t, ok := a.screen.(*talk)
	if !ok || t.held && (r == 's' || r == 'S') {
		return
	}
	t.typed(a, r)
}

func (t *talk) typed(a *App, r rune) {
	switch {
	case r >= '0' && r <= '9' || r == '.' || r == '-':
		if len(t.number) < 7 {
			t.number += string(r)
		}
	case r >= ' ' && len(t.filter) < 24:
		if r == ' ' && (t.filter == "" || strings.HasSuffix(t.filter, " ")) {
			return
		}
		t.filter += string(r)
		t.choose(a)
	}
}

// choose focuses the first phrase that matches.
func (t *talk) choose(a *App) {
	a.stale = true
	if t.filter == "" {
		return
	}
	if it := a.find(a.focus); it != nil {
		for i := range t.list {
			if t.list[i].Def.Name == it.Key && t.list[i].Match(t.filter) {
				return
			}
		}
	}
	for i := range t.list {
		if t.list[i].Match(t.filter) {
			a.focus = t.list[i].Def.Name
			return
		}
	}
}

func (t *talk) onKey(a *App, k Key) bool {
	if !k.Down {
		t.held = t.held && k.Name != "S" && k.Name != "s"
		return false
	}
	switch k.Name {
	case "Escape":
		t.close(a)
	case "Space":
	case "Backspace":
		switch {
		case t.number != "":
			t.number = t.number[:len(t.number)-1]
		case t.filter != "":
			r := []rune(t.filter)
			t.filter = string(r[:len(r)-1])
			t.choose(a)
		}
	default:
		return false
	}
	return true
}
