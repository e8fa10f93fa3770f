package app

import (
	"fmt"
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/report"
)

// trend is how attempts at this drill have gone so far, and what keeps coming back.
type trend struct {
	drill string
	past  []*report.Sheet // oldest first
	weak  []Weakness
}

func newTrend(a *App, s *report.Sheet) *trend {
	t := &trend{drill: s.Drill}
	kept, err := a.opt.Store.Kept(s.Drill)
	if err != nil {
		a.say(sentence(err.Error()))
	}
	for _, k := range kept {
		if k.Sheet != nil && !k.Sheet.Early {
			t.past = append(t.past, k.Sheet)
		}
	}
	t.weak = a.opt.Store.Weak(s.Drill)
	return t
}

func (t *trend) name() string { return "All attempts" }

func (t *trend) plots(a *App, d *debrief) (score, time draw.Rect) {
	b := d.box(a)
	w := b.W*0.5 - 6
	h := b.H/2 - 5
	return draw.Rect{X: b.X, Y: b.Y, W: w, H: h}, draw.Rect{X: b.X, Y: b.Y + h + 10, W: w, H: h}
}

func (t *trend) weakBox(a *App, d *debrief) draw.Rect {
	b := d.box(a)
	return draw.Rect{X: b.X + b.W*0.5 + 6, Y: b.Y, W: b.W*0.5 - 6, H: b.H}
}

const weakH = 62.0

func (t *trend) weakRow(a *App, d *debrief, i int) draw.Rect {
	b := t.weakBox(a, d)
	return draw.Rect{X: b.X + 14, Y: b.Y + 40 + float64(i)*weakH, W: b.W - 28, H: weakH - 6}
}

func (t *trend) shown(a *App, d *debrief) []Weakness {
	n := int((t.weakBox(a, d).H - 44) / weakH)
	return t.weak[:max(0, min(n, len(t.weak)))]
}

func (t *trend) items(a *App, d *debrief) []Item {
	var items []Item
	for i, w := range t.shown(a, d) {
		r := t.weakRow(a, d, i)
		items = append(items, Item{Key: "practice-" + w.Step, Box: draw.Rect{X: r.Right() - 104, Y: r.Y + 6, W: 100, H: 38}, Label: "Practice",
			Help: w.Text + " A rehearsal that begins when this step's turn came.", Do: func() { a.practice(t.drill, w.Step) }})
	}
	return items
}

func (t *trend) turn(*App, *debrief, int) {}

func (t *trend) still(a *App, d *debrief, cv *draw.Canvas) {
	th := a.theme
	score, clock := t.plots(a, d)
	a.panelOf(cv, score)
	a.panelOf(cv, clock)
	var points, times []float64
	for _, s := range t.past {
		points = append(points, s.Score)
		times = append(times, s.ClockS/60)
	}
	pass, full := d.sheet.Pass, max(1, d.sheet.Full)
	t.bars(a, cv, score, "Points", fmt.Sprintf("line: %.0f to pass", pass), points, full, pass, "%.0f")
	t.bars(a, cv, clock, "Clock, minutes", fmt.Sprintf("line: par %.0f", d.sheet.ParS/60), times, max(1, slowest(times)*1.15), d.sheet.ParS/60, "%.1f")
	b := t.weakBox(a, d)
	a.panelOf(cv, b)
	cv.Text(draw.Pt(b.X+16, b.Y+27), draw.Left, draw.Style{Size: 16, Weight: draw.Bold, Color: th.Say}, "What to practice first")
	if len(t.weak) == 0 {
		cv.Text(draw.Pt(b.X+16, b.Y+60), draw.Left, draw.Style{Size: 16, Color: th.CardSoft}, "No step was missed so far.")
	}
	for i, w := range t.shown(a, d) {
		r := t.weakRow(a, d, i)
		st := draw.Style{Size: 15, Color: th.CardText}
		y := r.Y + 16
		for _, part := range st.Wrap(cv.Scale, r.W-116, w.Text) {
			cv.Text(draw.Pt(r.X, y), draw.Left, st, part)
			y += 17
		}
		word, col := fmt.Sprintf("missed in %d of %d", w.Misses, w.Of), th.CardSoft
		if w.CameBack {
			word, col = word+", comes back", th.Caution
		}
		cv.Text(draw.Pt(r.X, y+1), draw.Left, draw.Style{Size: 15, Color: col}, w.Phase+": "+word)
	}
}

func slowest(v []float64) float64 {
	m := 0.0
	for _, x := range v {
		m = math.Max(m, x)
	}
	return m
}

// bars draws one number of each attempt, the newest at the right, with a line where it is to be.
func (t *trend) bars(a *App, cv *draw.Canvas, b draw.Rect, title, line string, v []float64, top, mark float64, format string) {
	th := a.theme
	cv.Text(draw.Pt(b.X+16, b.Y+25), draw.Left, draw.Style{Size: 16, Weight: draw.Bold, Color: th.Say}, title)
	area := draw.Rect{X: b.X + 16, Y: b.Y + 52, W: b.W - 32, H: b.H - 64}
	const most = 12
	if len(v) > most {
		v = v[len(v)-most:]
	}
	if len(v) == 0 {
		cv.Text(draw.Pt(area.X, area.Y+12), draw.Left, draw.Style{Size: 16, Color: th.CardSoft}, "No attempt was worked to its end so far.")
		return
	}
	w := area.W / most
	for i, x := range v {
		h := area.H * max(0, min(1, x/top))
		r := draw.Rect{X: area.X + float64(i)*w + 4, Y: area.Bottom() - h, W: w - 10, H: h}
		col := th.Water
		if i == len(v)-1 {
			col = th.Focus
		}
		cv.Fill(draw.Box(r), draw.Solid(col))
		cv.Text(draw.Pt(r.Center().X, r.Y-4), draw.Center, draw.Style{Size: 15, Color: th.CardText}, fmt.Sprintf(format, x))
	}
	if mark > 0 && mark <= top {
		y := cv.Snap(area.Bottom() - area.H*mark/top)
		cv.Fill(draw.Box(draw.Rect{X: area.X, Y: y, W: area.W, H: 1}), draw.Solid(th.Caution))
		cv.Text(draw.Pt(area.Right(), b.Y+25), draw.Right, draw.Style{Size: 15, Color: th.Caution}, line)
	}
}

func (t *trend) moving(a *App, d *debrief) {
	for _, it := range t.items(a, d) {
		a.button(it.Box, it.Label, false)
	}
}
