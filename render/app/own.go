package app

import (
	"fmt"

	plot "steadyneedle/render/debrief"
	"steadyneedle/render/draw"
	"steadyneedle/render/report"
	"steadyneedle/render/view"
)

// own is where the candidates mark themselves, before they see the sheet.
type own struct {
	attempt view.Attempt
	phases  []string
	grades  []int // of report.Grades; −1: not marked yet
	pass    int   // 1 yes, 0 no, −1 not said
}

func newOwn(at view.Attempt) *own {
	o := &own{attempt: at, phases: at.Sheet().Phases(), pass: -1}
	for range o.phases {
		o.grades = append(o.grades, -1)
	}
	return o
}

func (o *own) key() string { return "own-marks" }

func (o *own) layout(*App) {}

// gradeWords are report.Grades as questions put them.
var gradeWords = [...]string{"clean", "minor slip", "an error", "unsafe"}

const (
	ownTop = 118.0
	ownGap = 10.0 // above the line about the whole
)

// rowH is the height of a line, as far as the window allows.
func (o *own) rowH(a *App) float64 {
	return min(54, (a.size.Y-ownTop-150-24-ownGap)/float64(len(o.phases)+1))
}

func (o *own) box(a *App) draw.Rect {
	w := 900.0
	return draw.Rect{X: (a.size.X - w) / 2, Y: ownTop, W: w, H: o.rowH(a)*float64(len(o.phases)+1) + ownGap + 24}
}

// row is line i; the last one asks about passing.
func (o *own) row(a *App, i int) draw.Rect {
	b, h := o.box(a), o.rowH(a)
	r := draw.Rect{X: b.X + 24, Y: b.Y + 12 + float64(i)*h, W: b.W - 48, H: h}
	if i == len(o.phases) {
		r.Y += ownGap
	}
	return r
}

func (o *own) gradeBox(a *App, i, g int) draw.Rect {
	r := o.row(a, i)
	return draw.Rect{X: r.X + 300 + float64(g)*138, Y: r.Y + 4, W: 130, H: r.H - 8}
}

func (o *own) items(a *App) []Item {
	var items []Item
	for i, phase := range o.phases {
		for g, word := range gradeWords {
			items = append(items, Item{Key: fmt.Sprintf("own-%d-%d", i, g), Box: o.gradeBox(a, i, g), Label: phase + ": " + word,
				Help: "The gravest thing that went wrong there, as you saw it.", Do: func() { o.grades[i] = g }})
		}
	}
	last := len(o.phases)
	for g, word := range []string{"not passed", "passed"} {
		items = append(items, Item{Key: "own-" + word, Box: o.gradeBox(a, last, g), Label: "As a whole: " + word, Do: func() { o.pass = g }})
	}
	y := o.box(a).Bottom() + 18
	return append(items,
		Item{Key: "open-sheet", Box: draw.Rect{X: a.size.X/2 - 310, Y: y, W: 300, H: 44}, Label: "See the sheet", Help: "Your marks stand beside the judge's.", Do: func() { o.done(a) }},
		Item{Key: "skip-own", Box: draw.Rect{X: a.size.X/2 + 10, Y: y, W: 300, H: 44}, Label: "Open it without marking", Help: "Key Esc.", Do: func() { a.show(newDebrief(a, o.attempt)) }})
}

func (o *own) onKey(a *App, k Key) bool {
	if k.Down && k.Name == "Escape" {
		a.show(newDebrief(a, o.attempt))
		return true
	}
	return false
}

// done keeps the marks and opens the sheet.
func (o *own) done(a *App) {
	marks := report.Own{Phases: map[string]string{}, Pass: o.pass == 1, Said: o.pass >= 0}
	for i, g := range o.grades {
		if g >= 0 {
			marks.Phases[o.phases[i]] = report.Grades[g]
		}
	}
	if len(marks.Phases) > 0 || marks.Said {
		o.attempt.SetOwn(&marks)
		if a.opt.Store != nil {
			if err := a.opt.Store.SetOwn(o.attempt, &marks); err != nil {
				a.say(sentence(err.Error()))
			}
		}
	}
	a.show(newDebrief(a, o.attempt))
}

func (o *own) still(a *App, cv *draw.Canvas) {
	th := a.theme
	x := o.box(a).X
	cv.Text(draw.Pt(x, 62), draw.Left, draw.Style{Size: 30, Weight: draw.Bold, Color: th.Text}, "How did it go?")
	cv.Text(draw.Pt(x, 94), draw.Left, draw.Style{Size: 17, Color: th.Soft}, "Mark yourself before you see the sheet: the gravest thing that went wrong in each part, as you saw it.")
	a.panelOf(cv, o.box(a))
	st := draw.Style{Size: 18, Color: th.CardText}
	for i, phase := range o.phases {
		r := o.row(a, i)
		cv.Middle(draw.Pt(r.X, r.Center().Y), draw.Left, st, phase)
	}
	r := o.row(a, len(o.phases))
	cv.Fill(draw.Box(draw.Rect{X: r.X, Y: r.Y - ownGap/2, W: r.W, H: 1}), draw.Solid(th.Rule))
	cv.Middle(draw.Pt(r.X, r.Center().Y), draw.Left, draw.Style{Size: 18, Weight: draw.Bold, Color: th.CardText}, "As a whole")
	cv.Paragraph(draw.Pt(x, a.size.Y-60), o.box(a).W, 19, draw.Style{Size: 15, Color: th.Soft}, report.Caution)
}

func (o *own) moving(a *App) {
	for i := range o.phases {
		for g, word := range gradeWords {
			b := o.gradeBox(a, i, g)
			a.button(b, word, o.grades[i] == g)
			if o.grades[i] == g {
				a.dot(b, plot.Color(a.theme, report.Grades[g]))
			}
		}
	}
	for g, word := range []string{"not passed", "passed"} {
		a.button(o.gradeBox(a, len(o.phases), g), word, o.pass == g)
	}
	for _, it := range o.items(a)[len(o.phases)*len(gradeWords)+2:] {
		a.button(it.Box, it.Label, false)
	}
}

// dot puts a spot of color at the left of a button.
func (a *App) dot(b draw.Rect, col draw.Color) {
	art := a.shelf.Get(fmt.Sprintf("dot/%v", col), draw.Around(draw.Point{}, 12, 12), func(cv *draw.Canvas) {
		cv.Fill(draw.Circle(draw.Point{}, 5), draw.Solid(draw.Darker(col, 0.35)))
	})
	a.frame.Put(art, draw.Pt(b.X+14, b.Center().Y))
}
