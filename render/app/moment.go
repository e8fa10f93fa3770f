package app

import (
	"strings"

	"steadyneedle/render/draw"
	"steadyneedle/render/report"
	"steadyneedle/render/view"
	"steadyneedle/sim/world"
)

// moment is the world as it stood then, seen from one place: nothing can be worked, but one can go back
// and forth, look from elsewhere, and take over.
type moment struct {
	back *debrief
	at   world.Tick
	find *report.Finding // what brought us here; nil: the timeline
	from world.Place
	page page
	eyes *view.Eyes
	sim  []string // faults that were set then
}

func newMoment(a *App, d *debrief, at world.Tick, f *report.Finding) *moment {
	m := &moment{back: d, at: at, find: f, from: d.attempt.Stood(at), eyes: view.NewEyes(a.eyes.Table)}
	if f != nil && f.From != world.Walking {
		m.from = f.From
	}
	if m.from == world.Walking {
		m.from = world.Round
	}
	m.look(a)
	return m
}

// look brings what is seen up to the moment.
func (m *moment) look(a *App) {
	remember(m.eyes, m.back.attempt, m.at)
	if r := m.back.attempt.Look(m.at, m.from); r != nil {
		m.eyes.See(r)
	}
	m.sim = m.back.attempt.Simulated(m.at)
	m.page = a.placeScreen(m.from).page
	m.back.cursor = m.at
}

// again shows another moment, or another place.
func (m *moment) again(a *App, by float64, from world.Place) {
	next := *m
	next.at = max(0, min(m.back.sheet.Length, m.at+world.Tick(by*world.TicksPerSecond)))
	next.from, next.eyes = from, view.NewEyes(a.eyes.Table)
	if by != 0 {
		next.find = nil
	}
	next.look(a)
	a.show(&next)
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

func (m *moment) items(a *App) []Item {
	x := a.size.X - 12
	var items []Item
	add := func(key, label, help string, w float64, do func()) {
		x -= w
		items = append(items, Item{Key: key, Box: draw.Rect{X: x, Y: 11, W: w, H: 38}, Label: label, Help: help, Do: do})
		x -= 8
	}
	add("back", "Back to the sheet", "Key Esc.", 166, func() { a.show(m.back) })
	if a.opt.Store != nil {
		add("take-over", "Take over from here", "Begins a rehearsal that goes on from this moment; the attempt on the sheet stays as it is.", 180, func() { a.takeOver(m.back.attempt, m.at) })
	}
	add("later", "+ 5 s", "Five seconds later. Key →.", 60, func() { m.again(a, 5, m.from) })
	add("earlier", "− 5 s", "Five seconds before. Key ←.", 60, func() { m.again(a, -5, m.from) })
	other, word := world.Panel, "Panel"
	if m.from == world.Panel {
		other, word = world.Round, "Street"
	}
	add("other", word, "The same moment, seen from there.", 76, func() { m.again(a, 0, other) })
	if m.from != world.Cab {
		add("cab", "Cab", "The same moment, seen from there.", 60, func() { m.again(a, 0, world.Cab) })
	}
	return items
}

func (m *moment) notes() []view.Note { return m.page.Notes() }

func (m *moment) still(a *App, cv *draw.Canvas) {
	th := a.theme
	cv.Fill(draw.Box(draw.Rect{W: a.size.X, H: stripH}), draw.Solid(th.Strip))
	title := draw.Style{Size: 18, Weight: draw.Bold, Color: th.Text}
	under := draw.Style{Size: 15, Color: th.Soft}
	room := a.size.X - 700
	head, line := "The world as it stood", ""
	if m.find != nil {
		head = m.find.Title
		line = "Expected: " + m.find.Expected
		if m.find.Measured != "" {
			line += "   Found: " + m.find.Measured
		}
	}
	cv.Text(draw.Pt(16, 27), draw.Left, title, title.Fit(cv.Scale, room, head))
	cv.Text(draw.Pt(16, 48), draw.Left, under, under.Fit(cv.Scale, room, "At "+clockText(m.at.Seconds())+" from the start, "+report.PlaceWords(m.from)))
	foot := draw.Rect{Y: a.size.Y - footH, W: a.size.X, H: footH}
	cv.Fill(draw.Box(foot), draw.Solid(th.Strip))
	st := draw.Style{Size: 16, Color: th.Text}
	if len(m.sim) > 0 {
		st.Color, st.Weight = th.Caution, draw.Bold
		line = "Simulated: " + strings.Join(m.sim, ", ")
	}
	if line == "" {
		line = m.back.plot(a).Values(m.at)
	}
	cv.Middle(draw.Pt(16, foot.Center().Y), draw.Left, st, st.Fit(cv.Scale, a.size.X-32, line))
	m.page.Still(cv, th)
}

func (m *moment) moving(a *App) {
	m.page.Moving(a.shelf, &a.frame, a.theme, m.eyes)
	for _, it := range m.items(a) {
		a.button(it.Box, it.Label, false)
	}
}

func (m *moment) onKey(a *App, k Key) bool {
	if !k.Down || k.Ctrl {
		return false
	}
	switch k.Name {
	case "Escape":
		a.show(m.back)
	case "Left":
		m.again(a, -5, m.from)
	case "Right":
		m.again(a, 5, m.from)
	default:
		return false
	}
	return true
}
