package app

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/report"
	"steadyneedle/render/view"
	"steadyneedle/sim/world"
)

// moment shows what could be seen when a finding began: the place as it was, nothing to be worked.
type moment struct {
	back *debrief
	find *report.Finding
	page page
	eyes *view.Eyes
}

func newMoment(a *App, d *debrief, f *report.Finding) *moment {
	from := f.From
	if from == world.Walking {
		from = world.Round
	}
	e := view.NewEyes(a.eyes.Table)
	remember(e, d.attempt, f.At)
	if r := d.attempt.Look(f.At, from); r != nil {
		e.See(r)
	}
	return &moment{back: d, find: f, page: a.placeScreen(from).page, eyes: e}
}

// remember lets eyes see all places at a moment, as one who has been everywhere would have it in mind how
// things were left.
func remember(e *view.Eyes, at view.Attempt, when world.Tick) {
	for _, p := range world.Places() {
		if r := at.Look(when, p); r != nil {
			e.See(r)
		}
	}
}

func (m *moment) key() string { return "moment-" + m.page.Name() }

func (m *moment) layout(a *App) {
	m.page.Layout(a.scale, draw.Rect{X: 8, Y: stripH + 6, W: a.size.X - 16, H: a.size.Y - stripH - footH - 12})
}

func (m *moment) backBox(a *App) draw.Rect {
	return draw.Rect{X: a.size.X - 216, Y: 11, W: 200, H: 38}
}

func (m *moment) items(a *App) []Item {
	return []Item{{Key: "back", Box: m.backBox(a), Label: "Back to the sheet", Help: "Key Esc.", Do: func() { a.show(m.back) }}}
}

func (m *moment) notes() []view.Note { return m.page.Notes() }

func (m *moment) still(a *App, cv *draw.Canvas) {
	th := a.theme
	cv.Fill(draw.Box(draw.Rect{W: a.size.X, H: stripH}), draw.Solid(th.Strip))
	title := draw.Style{Size: 18, Weight: draw.Bold, Color: th.Text}
	cv.Text(draw.Pt(16, 27), draw.Left, title, title.Fit(cv.Scale, a.size.X-260, m.find.Title))
	cv.Text(draw.Pt(16, 48), draw.Left, draw.Style{Size: 15, Color: th.Soft}, "As it was at "+clockText(m.find.At.Seconds())+" from the start, "+m.find.Place)
	foot := draw.Rect{Y: a.size.Y - footH, W: a.size.X, H: footH}
	cv.Fill(draw.Box(foot), draw.Solid(th.Strip))
	line := "Expected: " + m.find.Expected
	if m.find.Measured != "" {
		line += "   Measured: " + m.find.Measured
	}
	st := draw.Style{Size: 16, Color: th.Text}
	cv.Middle(draw.Pt(16, foot.Center().Y), draw.Left, st, st.Fit(cv.Scale, a.size.X-32, line))
	m.page.Still(cv, th)
}

func (m *moment) moving(a *App) {
	m.page.Moving(a.shelf, &a.frame, a.theme, m.eyes)
	a.button(m.backBox(a), "Back to the sheet", false)
}

func (m *moment) onKey(a *App, k Key) bool {
	if k.Down && k.Name == "Escape" {
		a.show(m.back)
		return true
	}
	return false
}
