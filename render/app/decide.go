package app

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/report"
)

// decide lies over a rated attempt in which something unsafe was done, while the world stands: the
// evaluator ends the attempt, or lets it go on.
type decide struct {
	find  *report.Finding
	shown float64 // wall time
}

// settleS is for how long the card takes no answer, s: the hands of one who was working must not decide.
const settleS = 0.8

// standAtUnsafe shows the card when the attempt stands at an unsafe act.
func (a *App) standAtUnsafe() bool {
	f := a.attempt.Undecided()
	if f == nil {
		return false
	}
	a.hands.letGo()
	a.behind, a.focus = 0, ""
	a.show(&decide{f, a.wall})
	return true
}

func (d *decide) key() string { return "decide" }

func (d *decide) layout(*App) {}

func (d *decide) box(a *App) draw.Rect { return draw.Around(draw.Pt(a.size.X/2, a.size.Y/2), 760, 400) }

func (d *decide) items(a *App) []Item {
	b := d.box(a)
	y, w := b.Bottom()-66, (b.W-72)/2
	return []Item{
		{Key: "end-here", Box: draw.Rect{X: b.X + 28, Y: y, W: w, H: 46}, Label: "End the attempt (E)", Help: "The sheet opens. It says that the evaluator ended the attempt here.", Do: func() { d.word(a, false) }},
		{Key: "let-go-on", Box: draw.Rect{X: b.Right() - 28 - w, Y: y, W: w, H: 46}, Label: "Let it go on (G)", Help: "The world goes on. The unsafe act stays on the sheet, with your decision.", Do: func() { d.word(a, true) }},
	}
}

// word is the evaluator's.
func (d *decide) word(a *App, goOn bool) {
	if a.wall-d.shown < settleS {
		return
	}
	a.attempt.Decide(goOn)
	switch {
	case a.attempt.Over():
		a.ended()
	case !a.standAtUnsafe():
		a.resume(a.placeScreen(a.eyes.Place()))
	}
}

func (d *decide) onKey(a *App, k Key) bool {
	if !k.Down || k.Ctrl {
		return false
	}
	switch k.Name {
	case "E", "e":
		d.word(a, false)
	case "G", "g":
		d.word(a, true)
	case "Escape":
	default:
		return false
	}
	return true
}

func (d *decide) still(a *App, cv *draw.Canvas) {
	th, b, f := a.theme, d.box(a), d.find
	a.panelOf(cv, b)
	cv.Fill(draw.Frame(b, 10, 2), draw.Solid(th.Bad))
	cv.Text(draw.Pt(b.X+28, b.Y+46), draw.Left, draw.Style{Size: 24, Weight: draw.Bold, Color: th.Bad}, "Unsafe act")
	soft := draw.Style{Size: 15, Color: th.CardSoft}
	cv.Text(draw.Pt(b.Right()-28, b.Y+44), draw.Right, soft, clockText(f.At.Seconds())+" from the start, "+f.Place+"; the world stands")
	y := cv.Paragraph(draw.Pt(b.X+28, b.Y+92), b.W-56, 27, draw.Style{Size: 21, Weight: draw.Bold, Color: th.CardText}, f.Title) + 8
	for _, l := range [][2]string{{"Expected", f.Expected}, {"Found", f.Measured}, {"Why it counts", f.Why}} {
		if l[1] == "" {
			continue
		}
		cv.Text(draw.Pt(b.X+28, y), draw.Left, draw.Style{Size: 16, Weight: draw.Bold, Color: th.CardSoft}, l[0])
		y = cv.Paragraph(draw.Pt(b.X+168, y), b.W-196, 22, draw.Style{Size: 17, Color: th.CardText}, l[1]) + 6
	}
	cv.Text(draw.Pt(b.X+28, b.Bottom()-116), draw.Left, draw.Style{Size: 17, Weight: draw.Bold, Color: th.CardText}, "The evaluator decides. The act stays on the sheet either way.")
	cv.Text(draw.Pt(b.X+28, b.Bottom()-88), draw.Left, soft, "Department procedure, the maker's manual, local codes and a qualified instructor come first.")
}

func (d *decide) moving(a *App) {
	for _, it := range d.items(a) {
		a.button(it.Box, it.Label, false)
	}
}
