package app

import (
	"fmt"

	plot "steadyneedle/render/debrief"
	"steadyneedle/render/draw"
	"steadyneedle/render/report"
	"steadyneedle/render/view"
	"steadyneedle/sim/world"
)

// debrief is the place after the attempt: what was found, in which order the work was done, how other
// attempts went, and the timeline under all of them.
type debrief struct {
	attempt view.Attempt
	sheet   *report.Sheet
	leaves  []leaf
	open    int // the leaf that shows
	view    plot.View
	cursor  world.Tick // on the timeline
	doubt   string     // what is wrong with the recording; empty: nothing
}

// leaf is one sheet of the debrief.
type leaf interface {
	name() string
	items(a *App, d *debrief) []Item
	still(a *App, d *debrief, cv *draw.Canvas)
	moving(a *App, d *debrief)
	// turn scrolls, or moves the choice, by lines.
	turn(a *App, d *debrief, lines int)
}

func newDebrief(a *App, at view.Attempt) *debrief {
	d := &debrief{attempt: at, sheet: at.Sheet()}
	d.leaves = []leaf{newFindings(d.sheet), newOrder(d.sheet)}
	if d.sheet.Sums != nil {
		d.leaves = append(d.leaves, &sumLeaf{d.sheet.Sums})
	}
	if a.opt.Store != nil {
		d.leaves = append(d.leaves, newTrend(a, d.sheet))
	}
	if len(d.sheet.Findings) > 0 {
		d.cursor = d.sheet.Findings[0].At
	}
	return d
}

func (d *debrief) key() string { return "debrief" }

func (d *debrief) layout(*App) {}

const (
	sheetHead = 122.0
	timelineH = 214.0
	footRow   = 84.0
)

// box is where the leaf lies.
func (d *debrief) box(a *App) draw.Rect {
	return draw.Rect{X: 16, Y: sheetHead, W: a.size.X - 32, H: a.size.Y - sheetHead - d.plotH() - footRow - 10}
}

func (d *debrief) plotH() float64 {
	if d.view == plot.Positions {
		return plot.LanesH
	}
	return timelineH
}

func (d *debrief) plot(a *App) plot.Plot {
	b := d.box(a)
	return plot.Plot{Box: draw.Rect{X: 16, Y: b.Bottom() + 10, W: a.size.X - 32, H: d.plotH()}, Sheet: d.sheet, View: d.view}
}

func (d *debrief) tabBox(i int) draw.Rect {
	return draw.Rect{X: 16 + float64(i)*154, Y: 78, W: 146, H: 36}
}

func (d *debrief) buttons(a *App) []Item {
	x := a.size.X - 16
	var items []Item
	add := func(key, label, help string, w float64, do func()) {
		x -= w
		items = append(items, Item{Key: key, Box: draw.Rect{X: x, Y: 20, W: w, H: 40}, Label: label, Help: help, Do: do})
		x -= 10
	}
	leave := "Close the sheet. Key Esc."
	if d.mayRule() {
		leave = "Close the sheet."
	}
	add("leave", "Back to the drills", leave, 180, a.leave)
	if a.opt.Save != nil {
		add("save", "Save as a file", "Writes the sheet as one HTML file.", 150, func() { d.save(a) })
	}
	if d.mayRule() {
		items = append(items, Item{Key: "sign", Box: draw.Rect{X: a.size.X - 126, Y: 78, W: 110, H: 36}, Label: "Sign it", Help: "For the evaluator: ends the ruling with your name.", Do: func() { d.sign(a) }})
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
	for i, l := range d.leaves {
		items = append(items, Item{Key: fmt.Sprint("tab-", i), Box: d.tabBox(i), Label: l.name(), Help: "Key " + fmt.Sprint(i+1) + ".", Do: func() { d.turnTo(a, i) }})
	}
	items = append(items, d.leaves[d.open].items(a, d)...)
	return append(items, d.timeItems(a)...)
}

func (d *debrief) turnTo(a *App, i int) {
	if i == d.open || i >= len(d.leaves) {
		return
	}
	d.open = i
	a.redraw()
}

// rule is the rule behind an item of the list.
func (d *debrief) rule(key string) string {
	if i, ok := findingOf(key); ok {
		return d.sheet.Findings[i].Rule
	}
	return ""
}

// focused follows the focus with the choice, so that arrows walk through the findings.
func (d *debrief) focused(a *App, it *Item) {
	if f, ok := d.leaves[d.open].(*findings); ok {
		if i, ok := findingOf(it.Key); ok {
			f.choose(a, d, i)
		}
	}
}

func (d *debrief) scroll(a *App, notches float64) bool {
	if d.box(a).Has(a.pointer) {
		d.leaves[d.open].turn(a, d, -sign(notches))
	}
	return true
}

func (d *debrief) onKey(a *App, k Key) bool {
	if !k.Down || k.Ctrl {
		return false
	}
	switch k.Name {
	case "Escape":
		if d.mayRule() { // the evaluator's chance to rule must not go by one key
			a.say("Sign the sheet, or leave it by Back to the drills.")
			break
		}
		a.leave()
	case "Up":
		d.leaves[d.open].turn(a, d, -1)
	case "Down":
		d.leaves[d.open].turn(a, d, 1)
	case "PageUp":
		d.leaves[d.open].turn(a, d, -8)
	case "PageDown":
		d.leaves[d.open].turn(a, d, 8)
	case "1", "2", "3", "4":
		d.turnTo(a, int(k.Name[0]-'1'))
	case "Left", "Right":
		if a.focus != "timeline" {
			return false
		}
		d.nudge(a, k)
	case "V", "v":
		d.turnView(a)
	default:
		return false
	}
	return true
}

func (d *debrief) still(a *App, cv *draw.Canvas) {
	th, s := a.theme, d.sheet
	col := th.Good
	switch {
	case s.Early:
		col = th.Caution
	case !s.Passed:
		col = th.Bad
	}
	title := draw.Style{Size: 26, Weight: draw.Bold, Color: th.Text}
	x := a.size.X * 0.43
	cv.Text(draw.Pt(18, 40), draw.Left, title, title.Fit(cv.Scale, x-40, s.Title))
	cv.Text(draw.Pt(18, 64), draw.Left, draw.Style{Size: 16, Color: th.Soft}, s.Under)
	cv.Text(draw.Pt(x, 40), draw.Left, draw.Style{Size: 26, Weight: draw.Bold, Color: col}, s.Verdict())
	cv.Text(draw.Pt(x, 64), draw.Left, draw.Style{Size: 16, Color: th.Soft},
		fmt.Sprintf("%.0f of %.0f points, %.0f to pass · clock %s", s.Score, s.Full, s.Pass, clockText(s.ClockS)))
	d.leaves[d.open].still(a, d, cv)
	d.plot(a).Draw(cv, th)
	st := draw.Style{Size: 15, Color: th.Soft}
	cv.Paragraph(draw.Pt(18, a.size.Y-31), a.size.X-36, 19, st, s.Caution)
}

func (d *debrief) moving(a *App) {
	for _, it := range d.buttons(a) {
		a.button(it.Box, it.Label, false)
	}
	for i, l := range d.leaves {
		a.button(d.tabBox(i), l.name(), i == d.open)
	}
	d.putWord(a)
	d.leaves[d.open].moving(a, d)
	d.putCursor(a)
}

// putWord puts what is to be known beside the tabs: a notice, what is wrong with the recording, or the
// evaluator's ruling.
func (d *debrief) putWord(a *App) {
	th := a.theme
	text, st := "", draw.Style{Size: 15, Weight: draw.Bold, Color: th.Caution}
	switch {
	case a.flash.left > 0:
		text = a.flash.text
	case d.doubt != "":
		text = d.doubt
	case d.sheet.Ruling != nil:
		text, st.Color = d.sheet.Ruling.Words(), th.Text
	}
	x, right := d.tabBox(len(d.leaves)).X+8, a.size.X-18
	if d.mayRule() {
		right -= 122
	}
	lines := st.Wrap(a.scale, right-x, text)
	if len(lines) > 2 {
		lines = lines[:2]
		lines[1] = st.Fit(a.scale, right-x, lines[1]+" …")
	}
	y := 101 - 9*float64(len(lines)-1)
	for i, line := range lines {
		a.shelf.Text(&a.frame, draw.Pt(right, y+18*float64(i)), draw.Right, st, line)
	}
}

// panelOf paints the ground of a part of the sheet.
func (a *App) panelOf(cv *draw.Canvas, b draw.Rect) {
	cv.Fill(draw.Round(b, 10), draw.Solid(a.theme.Card))
	cv.Fill(draw.Frame(b, 10, 1), draw.Solid(a.theme.Rule))
}
