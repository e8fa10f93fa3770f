package app

import (
	"fmt"

	plot "steadyneedle/render/debrief"
	"steadyneedle/render/draw"
	"steadyneedle/render/report"
	"steadyneedle/render/view"
)

// debrief is the sheet after the attempt: findings, what each means, and the timeline.
type debrief struct {
	attempt view.Attempt
	sheet   *report.Sheet
	chosen  int
	up      int // findings scrolled past
}

func newDebrief(at view.Attempt) *debrief { return &debrief{attempt: at, sheet: at.Sheet()} }

func (d *debrief) key() string { return "debrief" }

func (d *debrief) layout(*App) {}

const (
	sheetHead = 92.0
	findingH  = 54.0
	timelineH = 214.0
	footRow   = 74.0
)

func (d *debrief) listBox(a *App) draw.Rect {
	return draw.Rect{X: 16, Y: sheetHead, W: a.size.X*0.43 - 16, H: a.size.Y - sheetHead - timelineH - footRow - 20}
}

func (d *debrief) detailBox(a *App) draw.Rect {
	l := d.listBox(a)
	return draw.Rect{X: l.Right() + 12, Y: l.Y, W: a.size.X - l.Right() - 28, H: l.H}
}

func (d *debrief) plot(a *App) plot.Plot {
	l := d.listBox(a)
	return plot.Plot{Box: draw.Rect{X: 16, Y: l.Bottom() + 10, W: a.size.X - 32, H: timelineH}, Sheet: d.sheet}
}

func (d *debrief) rows(a *App) int { return max(1, int((d.listBox(a).H-8)/findingH)) }

func (d *debrief) row(a *App, i int) draw.Rect {
	l := d.listBox(a)
	return draw.Rect{X: l.X + 8, Y: l.Y + 8 + float64(i)*findingH, W: l.W - 16, H: findingH - 6}
}

func (d *debrief) buttons(a *App) []Item {
	x := a.size.X - 16
	var items []Item
	add := func(key, label, help string, w float64, do func()) {
		x -= w
		items = append(items, Item{Key: key, Box: draw.Rect{X: x, Y: 24, W: w, H: 40}, Label: label, Help: help, Do: do})
		x -= 10
	}
	add("leave", "Back to the drills", "Close the sheet.", 190, a.leave)
	if a.opt.Save != nil {
		add("save", "Save as a file", "Writes the sheet as one HTML file.", 160, func() { d.save(a) })
	}
	return items
}

func (d *debrief) save(a *App) {
	name, err := a.opt.Save(d.sheet)
	if err != nil {
		a.say(sentence(err.Error()))
		return
	}
	a.say("Saved as " + name)
}

func (d *debrief) items(a *App) []Item {
	items := d.buttons(a)
	n := min(d.rows(a), len(d.sheet.Findings)-d.up)
	for i := range n {
		f := &d.sheet.Findings[d.up+i]
		at := d.up + i
		items = append(items, Item{Key: fmt.Sprint("finding-", at), Box: d.row(a, i), Label: f.Title, Help: f.Why, Do: func() { d.choose(a, at) }})
	}
	if len(d.sheet.Findings) > 0 {
		items = append(items, Item{Key: "moment", Box: d.momentBox(a), Label: "Show the moment", Help: "Shows what could be seen at that moment.", Do: func() { d.show(a) }})
	}
	return items
}

func (d *debrief) choose(a *App, i int) {
	d.chosen = i
	a.stale = true
}

// rule is the rule behind an item of the list.
func (d *debrief) rule(key string) string {
	var i int
	if n, _ := fmt.Sscanf(key, "finding-%d", &i); n == 1 {
		return d.sheet.Findings[i].Rule
	}
	return ""
}

// focused follows the focus with the choice, so that arrows walk through the findings.
func (d *debrief) focused(a *App, it *Item) {
	var i int
	if n, _ := fmt.Sscanf(it.Key, "finding-%d", &i); n == 1 {
		d.choose(a, i)
	}
}

func (d *debrief) momentBox(a *App) draw.Rect {
	b := d.detailBox(a)
	return draw.Rect{X: b.Right() - 186, Y: b.Bottom() - 52, W: 170, H: 38}
}

// show goes to the chosen finding's moment.
func (d *debrief) show(a *App) {
	f := &d.sheet.Findings[d.chosen]
	a.show(newMoment(a, d, f))
}

func (d *debrief) scroll(a *App, notches float64) bool {
	most := max(0, len(d.sheet.Findings)-d.rows(a))
	d.up = max(0, min(most, d.up-sign(notches)))
	a.stale = true
	return true
}

func (d *debrief) onKey(a *App, k Key) bool {
	if !k.Down {
		return false
	}
	step := 0
	switch k.Name {
	case "Up":
		step = -1
	case "Down":
		step = 1
	default:
		return false
	}
	next := d.chosen + step
	if next < 0 || next >= len(d.sheet.Findings) {
		return true
	}
	d.chosen = next
	if next < d.up {
		d.up = next
	}
	if next >= d.up+d.rows(a) {
		d.up = next - d.rows(a) + 1
	}
	a.stale = true
	a.collect()
	a.focus = fmt.Sprint("finding-", next)
	return true
}

func (d *debrief) still(a *App, cv *draw.Canvas) {
	th, s := a.theme, d.sheet
	word, col := s.Verdict(), th.Good
	switch {
	case s.Early:
		col = th.Caution
	case !s.Passed:
		col = th.Bad
	}
	cv.Text(draw.Pt(18, 42), draw.Left, draw.Style{Size: 26, Weight: draw.Bold, Color: th.Text}, s.Title)
	cv.Text(draw.Pt(18, 68), draw.Left, draw.Style{Size: 16, Color: th.Soft}, s.Under)
	x := a.size.X * 0.43
	cv.Text(draw.Pt(x, 42), draw.Left, draw.Style{Size: 26, Weight: draw.Bold, Color: col}, word)
	cv.Text(draw.Pt(x, 68), draw.Left, draw.Style{Size: 16, Color: th.Soft},
		fmt.Sprintf("%.0f of %.0f points, %.0f to pass · clock %s", s.Score, s.Full, s.Pass, clockText(s.ClockS)))
	for _, b := range []draw.Rect{d.listBox(a), d.detailBox(a)} {
		cv.Fill(draw.Round(b, 10), draw.Solid(th.Card))
		cv.Fill(draw.Frame(b, 10, 1), draw.Solid(th.Rule))
	}
	d.plot(a).Draw(cv, th)
	st := draw.Style{Size: 15, Color: th.Soft}
	cv.Paragraph(draw.Pt(18, a.size.Y-52), a.size.X-36, 19, st, s.Caution)
}

func (d *debrief) moving(a *App) {
	th, s := a.theme, d.sheet
	for _, it := range d.buttons(a) {
		a.button(it.Box, it.Label, false)
	}
	if a.flash.left > 0 {
		a.shelf.Text(&a.frame, draw.Pt(a.size.X-18, 84), draw.Right, draw.Style{Size: 15, Weight: draw.Bold, Color: th.Caution}, a.flash.text)
	}
	if len(s.Findings) == 0 {
		l := d.listBox(a)
		a.shelf.Text(&a.frame, draw.Pt(l.X+20, l.Y+40), draw.Left, draw.Style{Size: 20, Weight: draw.Bold, Color: th.Good}, "No findings.")
		return
	}
	for i := range min(d.rows(a), len(s.Findings)-d.up) {
		d.putRow(a, d.up+i, d.row(a, i))
	}
	d.putDetail(a)
	a.button(d.momentBox(a), "Show the moment", false)
	mark := a.shelf.Get("plotmark/"+th.Name, draw.Rect{X: -1, W: 2, H: timelineH - 62}, func(cv *draw.Canvas) {
		cv.Fill(draw.Box(draw.Rect{X: -1, W: 2, H: timelineH}), draw.Solid(th.Focus))
	})
	p := d.plot(a)
	a.frame.Put(mark, draw.Pt(p.X(s.Findings[d.chosen].At), p.Box.Y+34))
}

func (d *debrief) putRow(a *App, i int, r draw.Rect) {
	th, f := a.theme, &d.sheet.Findings[i]
	on := i == d.chosen
	art := a.shelf.Get(fmt.Sprintf("finding/%s/%d/%v", th.Name, i, on), draw.Rect{W: r.W, H: r.H}, func(cv *draw.Canvas) {
		b := draw.Rect{W: r.W, H: r.H}
		back := th.CardHi
		if on {
			back = draw.Lighter(th.CardHi, 0.12)
		}
		cv.Fill(draw.Round(b, 6), draw.Solid(back))
		col := plot.Color(th, f.Severity)
		cv.Fill(draw.Round(draw.Rect{W: 6, H: b.H}, 3), draw.Solid(col))
		cv.Middle(draw.Pt(18, 15), draw.Left, draw.Style{Size: 15, Weight: draw.Bold, Color: col}, f.Severity)
		cv.Middle(draw.Pt(b.W-12, 15), draw.Right, draw.Style{Size: 15, Color: th.CardSoft}, clockText(f.At.Seconds())+" · "+f.Place)
		st := draw.Style{Size: 17, Color: th.CardText}
		cv.Middle(draw.Pt(18, 34), draw.Left, st, st.Fit(cv.Scale, b.W-30, f.Title))
	})
	a.frame.Put(art, draw.Pt(r.X, r.Y))
}

func (d *debrief) putDetail(a *App) {
	th, f := a.theme, &d.sheet.Findings[d.chosen]
	b := d.detailBox(a)
	art := a.shelf.Once("detail", fmt.Sprintf("detail/%s/%d", th.Name, d.chosen), draw.Rect{W: b.W, H: b.H}, func(cv *draw.Canvas) {
		y := cv.Paragraph(draw.Pt(20, 38), b.W-40, 26, draw.Style{Size: 21, Weight: draw.Bold, Color: th.CardText}, f.Title) + 8
		line := func(word, text string) {
			if text == "" {
				return
			}
			cv.Text(draw.Pt(20, y), draw.Left, draw.Style{Size: 16, Weight: draw.Bold, Color: th.CardSoft}, word)
			y = cv.Paragraph(draw.Pt(150, y), b.W-170, 22, draw.Style{Size: 17, Color: th.CardText}, text) + 6
		}
		line("When, where", clockText(f.At.Seconds())+" from the start, "+f.Place)
		line("Expected", f.Expected)
		line("Measured", f.Measured)
		line("Why it counts", f.Why)
	})
	a.frame.Put(art, draw.Pt(b.X, b.Y))
}
