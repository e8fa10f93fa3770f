package app

import (
	"fmt"
	"slices"

	"steadyneedle/render/draw"
	"steadyneedle/render/report"
)

// order is the drill's order of steps beside the order in which they were done.
type order struct {
	rows []orderRow
	up   int
}

// orderRow is one line: a step in its expected place, and the one that was done at that turn.
type orderRow struct {
	expected, actual *report.Step
}

func newOrder(s *report.Sheet) *order {
	o := &order{}
	done := make([]*report.Step, 0, len(s.Steps))
	for i := range s.Steps {
		o.rows = append(o.rows, orderRow{expected: &s.Steps[i]})
		if s.Steps[i].Rank > 0 {
			done = append(done, &s.Steps[i])
		}
	}
	slices.SortFunc(done, func(a, b *report.Step) int { return a.Rank - b.Rank })
	for i, p := range done {
		o.rows[i].actual = p
	}
	return o
}

func (o *order) name() string { return "Order of work" }

const (
	orderHead = 40.0
	orderLine = 20.0
)

// high is the height of a row: its texts are broken into lines, never cut.
func (o *order) high(a *App, d *debrief, r *orderRow) float64 {
	left, right := o.columns(a, d)
	n := len(o.lines(a, left, r.expected, false))
	if r.actual != nil {
		n = max(n, len(o.lines(a, right, r.actual, true)))
	}
	return 6 + orderLine*float64(n)
}

func (o *order) columns(a *App, d *debrief) (left, right draw.Rect) {
	b := d.box(a)
	mid := b.X + b.W*0.49
	return draw.Rect{X: b.X + 16, W: mid - b.X - 32}, draw.Rect{X: mid + 16, W: b.Right() - mid - 32}
}

// from is the last row from which on everything fits.
func (o *order) from(a *App, d *debrief) int {
	room := d.box(a).H - orderHead - 8
	n := len(o.rows)
	for n > 0 {
		if room -= o.high(a, d, &o.rows[n-1]); room < 0 {
			break
		}
		n--
	}
	return n
}

func (o *order) items(*App, *debrief) []Item { return nil }

func (o *order) turn(a *App, d *debrief, lines int) {
	next := max(0, min(o.up+2*lines, o.from(a, d)))
	if next != o.up {
		o.up = next
		a.redraw()
	}
}

func (o *order) still(a *App, d *debrief, cv *draw.Canvas) {
	th, b := a.theme, d.box(a)
	a.panelOf(cv, b)
	left, right := o.columns(a, d)
	head := draw.Style{Size: 16, Weight: draw.Bold, Color: th.Say}
	cv.Text(draw.Pt(left.X, b.Y+27), draw.Left, head, "Expected")
	cv.Text(draw.Pt(right.X, b.Y+27), draw.Left, head, "Done")
	y, n := b.Y+orderHead, o.up
	for ; n < len(o.rows); n++ {
		r := &o.rows[n]
		h := o.high(a, d, r)
		if y+h > b.Bottom()-8 {
			break
		}
		if n%2 == 1 {
			cv.Fill(draw.Box(draw.Rect{X: b.X + 6, Y: y, W: b.W - 12, H: h}), draw.Solid(draw.Mix(th.Card, th.CardHi, 0.5)))
		}
		left.Y, right.Y = y+h/2, y+h/2
		o.put(a, cv, left, n+1, r.expected, false)
		if r.actual != nil {
			o.put(a, cv, right, n+1, r.actual, true)
		}
		y += h
	}
	cv.Fill(draw.Box(draw.Rect{X: right.X - 16, Y: b.Y + 12, W: 1, H: b.H - 24}), draw.Solid(th.Rule))
	cv.Text(draw.Pt(b.Right()-16, b.Y+27), draw.Right, draw.Style{Size: 15, Color: th.CardSoft}, fmt.Sprintf("%d to %d of %d · wheel or ↑↓", o.up+1, n, len(o.rows)))
}

// became says what became of a step, on the side of the expected order or of the actual one.
func (o *order) became(a *App, p *report.Step, actual bool) (string, draw.Color) {
	switch th := a.theme; {
	case !actual && !p.Done:
		return "not done", th.Bad
	case !actual && p.Late:
		return "passed over", th.Bad
	case actual && p.Early:
		return "too soon", th.Caution
	case actual && p.Hinted:
		return "told", th.Say
	}
	return "", a.theme.CardText
}

var orderText = draw.Style{Size: 15}

// lines breaks a step's text into what fits between its number and what became of it.
func (o *order) lines(a *App, r draw.Rect, p *report.Step, actual bool) []string {
	w := r.W - 36
	if actual {
		w -= 54
	}
	if word, _ := o.became(a, p, actual); word != "" {
		w -= draw.Style{Size: 15, Weight: draw.Bold}.Width(a.scale, word) + 12
	}
	return orderText.Wrap(a.scale, w, p.Text)
}

// put writes one step about the middle of r.
func (o *order) put(a *App, cv *draw.Canvas, r draw.Rect, n int, p *report.Step, actual bool) {
	soft := draw.Style{Size: 15, Color: a.theme.CardSoft}
	word, col := o.became(a, p, actual)
	cv.Middle(draw.Pt(r.X+24, r.Y), draw.Right, soft, fmt.Sprint(n))
	x := r.X + 36
	if actual {
		cv.Middle(draw.Pt(x, r.Y), draw.Left, soft, clockText(p.At.Seconds()))
		x += 54
	}
	cv.Middle(draw.Pt(r.Right(), r.Y), draw.Right, draw.Style{Size: 15, Weight: draw.Bold, Color: col}, word)
	st := orderText
	st.Color = a.theme.CardText
	if word != "" && word != "told" {
		st.Color = col
	}
	list := o.lines(a, r, p, actual)
	for i, line := range list {
		cv.Middle(draw.Pt(x, r.Y+orderLine*(float64(i)-float64(len(list)-1)/2)), draw.Left, st, line)
	}
}

func (o *order) moving(*App, *debrief) {}
