package app

import (
	"fmt"

	plot "steadyneedle/render/debrief"
	"steadyneedle/render/draw"
	"steadyneedle/render/report"
)

// findings is the sheet by phase, with the chosen finding in full beside it.
type findings struct {
	rows   []sheetRow
	chosen int     // finding
	up     int     // rows scrolled past
	wide   float64 // px: what the titles were last broken for
}

// sheetRow is a phase, or a finding of it.
type sheetRow struct {
	phase   string
	finding int      // −1: the phase's heading
	title   []string // the finding's, in lines
}

func newFindings(s *report.Sheet) *findings {
	f := &findings{}
	for _, phase := range s.Phases() {
		f.rows = append(f.rows, sheetRow{phase: phase, finding: -1})
		for i := range s.Findings {
			if s.Findings[i].Phase == phase {
				f.rows = append(f.rows, sheetRow{phase: phase, finding: i})
			}
		}
	}
	for _, r := range f.rows { // the first in the order of the list
		if r.finding >= 0 {
			f.chosen = r.finding
			break
		}
	}
	return f
}

func (f *findings) name() string { return "Findings" }

const (
	phaseH   = 30.0
	findingH = 52.0 // with one line of title
	titleH   = 20.0 // each further line
	moreH    = 20.0
)

var titleStyle = draw.Style{Size: 17}

func (f *findings) list(a *App, d *debrief) draw.Rect {
	b := d.box(a)
	return draw.Rect{X: b.X, Y: b.Y, W: b.W * 0.43, H: b.H}
}

func (f *findings) detail(a *App, d *debrief) draw.Rect {
	b, l := d.box(a), f.list(a, d)
	return draw.Rect{X: l.Right() + 12, Y: b.Y, W: b.Right() - l.Right() - 12, H: b.H}
}

func (r sheetRow) height() float64 {
	if r.finding >= 0 {
		return findingH + titleH*float64(max(0, len(r.title)-1))
	}
	return phaseH
}

// fit breaks the titles into lines of the list's width.
func (f *findings) fit(a *App, d *debrief) {
	w := f.list(a, d).W - 16 - 30
	if f.wide == w*a.scale {
		return
	}
	f.wide = w * a.scale
	for i := range f.rows {
		if r := &f.rows[i]; r.finding >= 0 {
			r.title = titleStyle.Wrap(a.scale, w, d.sheet.Findings[r.finding].Title)
		}
	}
}

// height is what all rows need.
func (f *findings) height() float64 {
	h := 0.0
	for _, r := range f.rows {
		h += r.height()
	}
	return h
}

// more says what lies above and below of a list that does not fit; empty for one that does.
func (f *findings) more(a *App, d *debrief) string {
	f.fit(a, d)
	if f.height() <= f.list(a, d).H-12 {
		return ""
	}
	first, last := 0, 0
	f.visible(a, d, func(_ int, r sheetRow, _ draw.Rect) {
		if r.finding >= 0 {
			last++
		}
	})
	for _, r := range f.rows[:f.up] {
		if r.finding >= 0 {
			first++
		}
	}
	return fmt.Sprintf("%d above, %d below · wheel or ↑↓", first, len(d.sheet.Findings)-first-last)
}

// visible calls do for each row that fits, with its box.
func (f *findings) visible(a *App, d *debrief, do func(n int, r sheetRow, b draw.Rect)) (shown int) {
	f.fit(a, d)
	l := f.list(a, d)
	y, end := l.Y+8, l.Bottom()-4
	if f.height() > l.H-12 {
		end -= moreH
	}
	for n := f.up; n < len(f.rows); n++ {
		h := f.rows[n].height()
		if y+h > end {
			break
		}
		do(n, f.rows[n], draw.Rect{X: l.X + 8, Y: y, W: l.W - 16, H: h - 5})
		y += h
		shown++
	}
	return shown
}

func (f *findings) items(a *App, d *debrief) []Item {
	var items []Item
	f.visible(a, d, func(_ int, r sheetRow, b draw.Rect) {
		if r.finding < 0 {
			return
		}
		find := &d.sheet.Findings[r.finding]
		items = append(items, Item{Key: fmt.Sprint("finding-", r.finding), Box: b, Label: find.Title, Help: find.Why, Do: func() { f.choose(a, d, r.finding) }})
	})
	if len(d.sheet.Findings) > 0 {
		items = append(items, Item{Key: "moment", Box: f.momentBox(a, d), Label: "Show the moment",
			Help: "Shows the world as it stood then. From there you can take over.", Do: func() { f.show(a, d) }})
		if d.mayRule() {
			items = append(items, f.waiver(a, d))
		}
	}
	return items
}

// waiver is the evaluator's button of the chosen finding.
func (f *findings) waiver(a *App, d *debrief) Item {
	find, b := &d.sheet.Findings[f.chosen], f.momentBox(a, d)
	it := Item{Key: "waive", Box: draw.Rect{X: b.X - 118, Y: b.Y, W: 110, H: b.H}, Label: "Waive it",
		Help: "For the evaluator: it takes no points, for a reason that stands on the sheet.", Do: func() { d.waive(a, find) }}
	if d.sheet.WaivedFor(find) != "" {
		it.Label, it.Help, it.Do = "Take back", "The finding counts again.", func() { d.takeBack(a, find) }
	}
	return it
}

func (f *findings) momentBox(a *App, d *debrief) draw.Rect {
	b := f.detail(a, d)
	return draw.Rect{X: b.Right() - 182, Y: b.Y + 12, W: 170, H: 36}
}

// findingOf is the finding that an item's key names.
func findingOf(key string) (int, bool) {
	var i int
	n, _ := fmt.Sscanf(key, "finding-%d", &i)
	return i, n == 1
}

func (f *findings) choose(a *App, d *debrief, i int) {
	f.chosen, d.cursor = i, d.sheet.Findings[i].At
	a.stale = true
}

// show goes to the chosen finding's moment.
func (f *findings) show(a *App, d *debrief) {
	find := &d.sheet.Findings[f.chosen]
	a.show(newMoment(a, d, find.At, find))
}

// turn chooses the next finding or the one before; where there is none it scrolls.
func (f *findings) turn(a *App, d *debrief, lines int) {
	at := f.rowOf(f.chosen)
	for n := at + sign(float64(lines)); n >= 0 && n < len(f.rows); n += sign(float64(lines)) {
		if f.rows[n].finding < 0 {
			continue
		}
		f.choose(a, d, f.rows[n].finding)
		f.reveal(a, d, n)
		a.collect()
		a.focus = fmt.Sprint("finding-", f.chosen)
		return
	}
	f.up = max(0, min(f.up+sign(float64(lines)), f.most(a, d)))
	a.redraw()
}

func (f *findings) rowOf(finding int) int {
	for n, r := range f.rows {
		if r.finding == finding {
			return n
		}
	}
	return -1
}

// reveal scrolls until row n shows, with the heading above it if there is room.
func (f *findings) reveal(a *App, d *debrief, n int) {
	before := f.up
	if n <= f.up {
		f.up = max(0, n-1)
	}
	for n >= f.up+f.visible(a, d, func(int, sheetRow, draw.Rect) {}) {
		f.up++
	}
	if f.up != before {
		a.redraw()
	}
}

// most is how far the list scrolls.
func (f *findings) most(a *App, d *debrief) int {
	keep := f.up
	defer func() { f.up = keep }()
	for f.up = 0; f.up < len(f.rows); f.up++ {
		if f.up+f.visible(a, d, func(int, sheetRow, draw.Rect) {}) == len(f.rows) {
			break
		}
	}
	return f.up
}

func (f *findings) still(a *App, d *debrief, cv *draw.Canvas) {
	a.panelOf(cv, f.list(a, d))
	a.panelOf(cv, f.detail(a, d))
	th := a.theme
	f.visible(a, d, func(_ int, r sheetRow, b draw.Rect) {
		if r.finding >= 0 {
			return
		}
		y := b.Center().Y
		cv.Middle(draw.Pt(b.X+4, y), draw.Left, draw.Style{Size: 16, Weight: draw.Bold, Color: th.CardText}, r.phase)
		grade := d.sheet.Grade(r.phase)
		right := draw.Style{Size: 15, Weight: draw.Bold, Color: plot.Color(th, grade)}
		x := b.Right() - 6
		cv.Middle(draw.Pt(x, y), draw.Right, right, grade)
		if own := d.sheet.Own; own != nil && own.Phases[r.phase] != "" {
			x -= right.Width(cv.Scale, grade) + 14
			st := draw.Style{Size: 15, Color: th.CardSoft}
			word := "you said " + own.Phases[r.phase]
			if own.Phases[r.phase] != grade {
				st.Color = th.Focus
			}
			cv.Middle(draw.Pt(x, y), draw.Right, st, word)
		}
	})
	if l := f.list(a, d); f.more(a, d) != "" {
		cv.Text(draw.Pt(l.Right()-14, l.Bottom()-9), draw.Right, draw.Style{Size: 15, Color: th.CardSoft}, f.more(a, d))
	}
	if len(d.sheet.Findings) == 0 {
		b := f.detail(a, d)
		cv.Text(draw.Pt(b.X+20, b.Y+40), draw.Left, draw.Style{Size: 20, Weight: draw.Bold, Color: th.Good}, "No findings.")
	}
}

func (f *findings) moving(a *App, d *debrief) {
	f.visible(a, d, func(_ int, r sheetRow, b draw.Rect) {
		if r.finding >= 0 {
			f.putRow(a, d, r, b)
		}
	})
	if len(d.sheet.Findings) == 0 {
		return
	}
	f.putDetail(a, d)
	a.button(f.momentBox(a, d), "Show the moment", false)
	if d.mayRule() {
		it := f.waiver(a, d)
		a.button(it.Box, it.Label, false)
	}
}

func (f *findings) putRow(a *App, d *debrief, row sheetRow, r draw.Rect) {
	i := row.finding
	th, find := a.theme, &d.sheet.Findings[i]
	on, waived := i == f.chosen, d.sheet.WaivedFor(find) != ""
	art := a.shelf.Get(fmt.Sprintf("finding/%s/%d/%v/%v/%v", th.Name, i, on, waived, r.W), draw.Rect{W: r.W, H: r.H}, func(cv *draw.Canvas) {
		b := draw.Rect{W: r.W, H: r.H}
		back := th.CardHi
		if on {
			back = draw.Lighter(th.CardHi, 0.12)
		}
		cv.Fill(draw.Round(b, 6), draw.Solid(back))
		col, word := plot.Color(th, find.Severity), find.Severity
		if waived {
			col, word = th.CardSoft, find.Severity+", waived"
		}
		cv.Fill(draw.Round(draw.Rect{W: 6, H: b.H}, 3), draw.Solid(col))
		cv.Middle(draw.Pt(18, 14), draw.Left, draw.Style{Size: 15, Weight: draw.Bold, Color: col}, word)
		cv.Middle(draw.Pt(b.W-12, 14), draw.Right, draw.Style{Size: 15, Color: th.CardSoft}, clockText(find.At.Seconds())+" · "+find.Place)
		st := titleStyle
		st.Color = th.CardText
		for n, line := range row.title {
			cv.Middle(draw.Pt(18, 33+titleH*float64(n)), draw.Left, st, line)
		}
	})
	a.frame.Put(art, draw.Pt(r.X, r.Y))
}
