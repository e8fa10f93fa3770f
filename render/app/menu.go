package app

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/report"
)

// menu is the first screen: the drills, and the caution.
type menu struct {
	rated bool
	error string
	box   draw.Rect
	rowH  float64
}

func (m *menu) key() string { return "menu" }

func (m *menu) layout(a *App) {
	w := 940.0
	m.rowH = 80
	if len(a.opt.Drills) <= 2 { // room for what the evaluator says
		m.rowH = 172
	}
	m.box = draw.Rect{X: (a.size.X - w) / 2, Y: 0, W: w, H: a.size.Y}
}

func (m *menu) cautionBox(a *App) draw.Rect {
	return draw.Rect{X: m.box.X, Y: a.size.Y - 132, W: m.box.W, H: 96}
}

func (m *menu) modeBox(rated bool) draw.Rect {
	b := draw.Rect{X: m.box.X, Y: 176, W: 180, H: 42}
	if rated {
		b.X += 190
	}
	return b
}

// classBox leads to the demonstrations.
func (m *menu) classBox() draw.Rect {
	return draw.Rect{X: m.box.Right() - 180, Y: 176, W: 180, H: 42}
}

func (m *menu) row(i int) draw.Rect {
	return draw.Rect{X: m.box.X, Y: 240 + float64(i)*(m.rowH+12), W: m.box.W, H: m.rowH}
}

func (m *menu) items(a *App) []Item {
	items := []Item{
		{Key: "rehearse", Box: m.modeBox(false), Label: "Rehearse", Help: "Work without being rated: positions are told, the way of the water shows, you may pause.", Do: func() { m.rated = false }},
		{Key: "rated", Box: m.modeBox(true), Label: "Rated attempt", Help: "No positions, no way of the water, captions describe sounds without their cause, no pause.", Do: func() { m.rated = true }},
	}
	if len(a.opt.Shows) > 0 {
		items = append(items, Item{Key: "class", Box: m.classBox(), Label: "Show the class", Help: "Prepared demonstrations on a big screen: the inside of the pump, large gauges, plots.", Do: func() { a.show(&demos{}) }})
	}
	for i := range a.opt.Drills {
		d := a.opt.Drills[i]
		items = append(items, Item{Key: "drill-" + d.Name, Box: m.row(i), Label: d.Title, Help: d.About, Do: func() {
			if err := a.Offer(d.Name, m.rated); err != nil {
				m.error = sentence(err.Error())
			}
		}})
	}
	return items
}

func (m *menu) onKey(a *App, k Key) bool {
	if k.Down && k.Name == "F9" {
		a.show(&gallery{})
		return true
	}
	return false
}

func (m *menu) still(a *App, cv *draw.Canvas) {
	th := a.theme
	whole := draw.Rect{W: a.size.X, H: a.size.Y}
	cv.Fill(draw.Box(whole), draw.Linear{From: draw.Pt(0, 0), To: draw.Pt(a.size.X*0.3, a.size.Y), Stops: draw.Even(draw.Lighter(th.PlateLo, 0.02), th.Room, th.Room)})
	emblem(cv, a)
	cv.Text(draw.Pt(m.box.X, 96), draw.Left, draw.Style{Size: 46, Weight: draw.Bold, Color: th.Text}, "Steady Needle")
	cv.Text(draw.Pt(m.box.X+2, 130), draw.Left, draw.Style{Size: 19, Color: th.Soft}, "Pump-panel practice for driver/operators, in the town of Alder Ferry")
	for i, d := range a.opt.Drills {
		r := m.row(i)
		cv.Shadow(draw.Round(r, 10), 0, 3, 10, draw.Fade(th.Shade, 0.5))
		cv.Fill(draw.Round(r, 10), draw.Down(r, draw.Lighter(th.CardHi, 0.04), th.CardHi))
		cv.Fill(draw.Frame(r, 10, 1), draw.Solid(th.Rule))
		cv.Fill(draw.Round(draw.Rect{X: r.X, Y: r.Y + 14, W: 5, H: r.H - 28}, 2), draw.Solid(th.Hose))
		cv.Text(draw.Pt(r.X+24, r.Y+34), draw.Left, draw.Style{Size: 21, Weight: draw.Bold, Color: th.CardText}, d.Title)
		st := draw.Style{Size: 16, Color: th.CardSoft}
		lines := st.Wrap(cv.Scale, r.W-48, d.About)
		if fit := int((r.H - 40) / 22); len(lines) > fit {
			lines = lines[:fit]
			lines[fit-1] = st.Fit(cv.Scale, r.W-60, lines[fit-1]+" …")
		}
		for k, line := range lines {
			cv.Text(draw.Pt(r.X+24, r.Y+62+float64(k)*23), draw.Left, st, line)
		}
	}
	c := m.cautionBox(a)
	cv.Fill(draw.Round(c, 10), draw.Solid(draw.Mix(th.Room, th.Caution, 0.1)))
	cv.Fill(draw.Frame(c, 10, 1.5), draw.Solid(th.Caution))
	warning(cv, a, draw.Pt(c.X+38, c.Center().Y+3), 1)
	cv.Paragraph(draw.Pt(c.X+78, c.Y+32), c.W-104, 23, draw.Style{Size: 17, Color: th.Text}, report.Caution)
}

// emblem is a quiet dial behind everything, its needle steady.
func emblem(cv *draw.Canvas, a *App) {
	th := a.theme
	c := draw.Pt(a.size.X+70, a.size.Y*0.5)
	faint := func(col draw.Color, k float64) draw.Paint { return draw.Solid(draw.Mix(th.Room, col, k)) }
	cv.Fill(draw.Ring(c, 402, 396), faint(th.Text, 0.16))
	for i := range 73 {
		b := -180 + 2.5*float64(i)*2
		r, w := 366.0, 1.6
		if i%8 == 0 {
			r, w = 346, 4.5
		}
		cv.Fill(draw.Segment(c.Polar(388, b), c.Polar(r, b), w), faint(th.Text, 0.2))
	}
	const at = -58
	cv.Fill(draw.Poly(c.Polar(13, at+90), c.Polar(340, at), c.Polar(13, at-90), c.Polar(80, at+180)), faint(th.Lance, 0.75))
	cv.Fill(draw.Circle(c, 30), faint(th.Steel, 0.35))
}

func (m *menu) moving(a *App) {
	th := a.theme
	a.button(m.modeBox(false), "Rehearse", !m.rated)
	a.button(m.modeBox(true), "Rated attempt", m.rated)
	if len(a.opt.Shows) > 0 {
		a.button(m.classBox(), "Show the class", false)
	}
	word := "Positions are told, the way of the water shows."
	if m.rated {
		word = "No help, no pause; every finding counts."
	}
	a.shelf.Middle(&a.frame, draw.Pt(m.box.X+392, 197), draw.Left, draw.Style{Size: 16, Color: th.Soft}, word)
	if m.error != "" {
		a.shelf.Text(&a.frame, draw.Pt(m.box.X, m.row(len(a.opt.Drills)).Y+20), draw.Left, draw.Style{Size: 16, Weight: draw.Bold, Color: th.Bad}, m.error)
	}
	a.shelf.Middle(&a.frame, draw.Pt(m.box.X, a.size.Y-18), draw.Left, draw.Style{Size: 15, Color: th.Soft}, "Tab next · Enter choose · F1 what is this · F2 all keys · F3 colors · F4 sound on or off")
}
