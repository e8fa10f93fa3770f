package app

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/report"
)

// menu is the first screen: the drills, and the caution.
type menu struct {
	rated bool
	error string
	box   draw.Rect
	rowH  float64
	cut   Kept // an attempt that was cut off
	isCut bool
	asked bool // whether there is one has been looked up
	rows  int  // that the window holds
	up    int  // drills scrolled past
}

func (m *menu) key() string { return "menu" }

func (m *menu) layout(a *App) {
	w := 940.0
	m.rowH = 80
	if len(a.opt.Drills) <= 2 { // room for what the evaluator says
		m.rowH = 172
	}
	if !m.asked {
		m.cut, m.isCut = a.cutOff()
		m.asked = true
	}
	m.box = draw.Rect{X: (a.size.X - w) / 2, Y: 0, W: w, H: a.size.Y}
	room := m.cautionBox(a).Y - 240
	if m.isCut {
		room = m.cutBox(a).Y - 240
	}
	m.rows = max(1, int(room/(m.rowH+12)))
	m.up = max(0, min(m.up, len(a.opt.Drills)-m.rows))
}

// shown are the drills that the window holds, from the first to before the last.
func (m *menu) shown(a *App) (first, last int) { return m.up, min(len(a.opt.Drills), m.up+m.rows) }

// scroll moves the list, so that it begins with another drill.
func (m *menu) scroll(a *App, notches float64) bool { m.to(a, m.up-sign(notches)); return true }

func (m *menu) to(a *App, up int) {
	up = max(0, min(up, len(a.opt.Drills)-m.rows))
	if up == m.up {
		return
	}
	m.up = up
	a.redraw()
}

// step moves the focus from a drill to the one before or after, and the list with it.
func (m *menu) step(a *App, by int) bool {
	for i, d := range a.opt.Drills {
		if a.focus != "drill-"+d.Name || i+by < 0 || i+by >= len(a.opt.Drills) {
			continue
		}
		switch first, last := m.shown(a); {
		case i+by < first:
			m.to(a, i+by)
		case i+by >= last:
			m.to(a, i+by-m.rows+1)
		}
		a.collect()
		a.focus = "drill-" + a.opt.Drills[i+by].Name
		return true
	}
	return false
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

// keptBox is the button of the attempts that are kept.
func (m *menu) keptBox() draw.Rect {
	return draw.Rect{X: m.box.Right() - 200, Y: 176, W: 200, H: 42}
}

// cutBox is the notice of an attempt that was cut off, above the caution.
func (m *menu) cutBox(a *App) draw.Rect {
	c := m.cautionBox(a)
	return draw.Rect{X: c.X, Y: c.Y - 76, W: c.W, H: 64}
}

// cutButtons are what can be done with it.
func (m *menu) cutButtons(a *App) []Item {
	b := m.cutBox(a)
	items := []Item{{Key: "see-cut", Box: draw.Rect{X: b.Right() - 176, Y: b.Y + 12, W: 160, H: 40}, Label: "See its sheet",
		Help: "Keeps it as it stands, without a verdict.", Do: func() { a.seeCut(m.cut) }}}
	if m.cut.Resumable {
		items = append(items, Item{Key: "go-on-cut", Box: draw.Rect{X: b.Right() - 346, Y: b.Y + 12, W: 160, H: 40}, Label: "Go on from there",
			Help: "Takes it up at the moment at which it was cut off.", Do: func() { a.goOn(m.cut) }})
	}
	return items
}

// classBox leads to the demonstrations.
func (m *menu) classBox() draw.Rect {
	return draw.Rect{X: m.box.Right() - 200, Y: 84, W: 200, H: 42}
}

// row is where drill i stands while it is shown.
func (m *menu) row(i int) draw.Rect {
	return draw.Rect{X: m.box.X, Y: 240 + float64(i-m.up)*(m.rowH+12), W: m.box.W, H: m.rowH}
}

func (m *menu) items(a *App) []Item {
	items := []Item{
		{Key: "rehearse", Box: m.modeBox(false), Label: "Rehearse", Help: "Work without being rated: the prompter tells the next step, less each time; positions are told, the way of the water shows, you may pause.", Do: func() { m.rated = false }},
		{Key: "rated", Box: m.modeBox(true), Label: "Rated attempt", Help: "No positions, no way of the water, captions describe sounds without their cause, no pause.", Do: func() { m.rated = true }},
	}
	if len(a.opt.Shows) > 0 {
		items = append(items, Item{Key: "class", Box: m.classBox(), Label: "Show the class", Help: "Prepared demonstrations on a big screen: the inside of the pump, large gauges, plots.", Do: func() { a.show(&demos{}) }})
	}
	if a.opt.Store != nil {
		items = append(items, Item{Key: "records", Box: m.keptBox(), Label: "Attempts so far", Help: "Sheets of the attempts that are kept on this machine.", Do: func() { a.show(newRecords(a)) }})
	}
	if m.isCut {
		items = append(items, m.cutButtons(a)...)
	}
	first, last := m.shown(a)
	for i := first; i < last; i++ {
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
	if !k.Down {
		return false
	}
	switch k.Name {
	case "F9":
		a.show(&gallery{})
	case "Enter":
		first, last := m.shown(a)
		if a.focus != "" || first == last {
			return false
		}
		a.setFocus(a.find("drill-" + a.opt.Drills[first].Name)) // the next Enter begins it
	case "Up":
		return m.step(a, -1)
	case "Down":
		return m.step(a, 1)
	default:
		return false
	}
	return true
}

func (m *menu) still(a *App, cv *draw.Canvas) {
	th := a.theme
	whole := draw.Rect{W: a.size.X, H: a.size.Y}
	cv.Fill(draw.Box(whole), draw.Linear{From: draw.Pt(0, 0), To: draw.Pt(a.size.X*0.3, a.size.Y), Stops: draw.Even(draw.Lighter(th.PlateLo, 0.02), th.Room, th.Room)})
	emblem(cv, a)
	cv.Text(draw.Pt(m.box.X, 96), draw.Left, draw.Style{Size: 46, Weight: draw.Bold, Color: th.Text}, "Steady Needle")
	cv.Text(draw.Pt(m.box.X+2, 130), draw.Left, draw.Style{Size: 19, Color: th.Soft}, "Pump-panel practice for driver/operators, in the town of Alder Ferry")
	first, last := m.shown(a)
	for i := first; i < last; i++ {
		d, r := a.opt.Drills[i], m.row(i)
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
	m.apparatus(a, cv)
	if m.isCut {
		b := m.cutBox(a)
		cv.Fill(draw.Round(b, 10), draw.Solid(th.CardHi))
		cv.Fill(draw.Frame(b, 10, 1.5), draw.Solid(th.Focus))
		cv.Text(draw.Pt(b.X+20, b.Y+27), draw.Left, draw.Style{Size: 17, Weight: draw.Bold, Color: th.CardText}, "An attempt was cut off")
		cv.Text(draw.Pt(b.X+20, b.Y+49), draw.Left, draw.Style{Size: 15, Color: th.CardSoft}, m.cut.Title+", "+m.cut.When)
	}
	c := m.cautionBox(a)
	cv.Fill(draw.Round(c, 10), draw.Solid(draw.Mix(th.Room, th.Caution, 0.1)))
	cv.Fill(draw.Frame(c, 10, 1.5), draw.Solid(th.Caution))
	warning(cv, a, draw.Pt(c.X+38, c.Center().Y+3), 1)
	cv.Paragraph(draw.Pt(c.X+78, c.Y+32), c.W-104, 23, draw.Style{Size: 17, Color: th.Text}, report.Caution)
}

// apparatus stands where the list leaves room for it.
func (m *menu) apparatus(a *App, cv *draw.Canvas) {
	foot := m.cautionBox(a).Y - 26
	if m.isCut {
		foot = m.cutBox(a).Y - 26
	}
	_, last := m.shown(a)
	room := foot - m.row(last-1).Bottom() - 14
	if len(a.opt.Drills) == 0 || room < 100 {
		return
	}
	k := min(room/sideH, 2.4, m.box.W*0.8/sideW)
	sideView{cv, a.theme, draw.Pt(m.box.Center().X-k*sideW/2, foot), k}.paint()
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
	if a.opt.Store != nil {
		a.button(m.keptBox(), "Attempts so far", false)
	}
	if m.isCut {
		for _, it := range m.cutButtons(a) {
			a.button(it.Box, it.Label, false)
		}
	}
	if a.flash.left > 0 {
		st := draw.Style{Size: 16, Weight: draw.Bold, Color: th.Caution}
		a.shelf.Text(&a.frame, draw.Pt(m.box.X, 160), draw.Left, st, st.Fit(a.scale, m.box.W, a.flash.text))
	}
	word := "The prompter helps, less each time."
	if m.rated {
		word = "No help, no pause; every finding counts."
	}
	a.shelf.Middle(&a.frame, draw.Pt(m.box.X+392, 197), draw.Left, draw.Style{Size: 16, Color: th.Soft}, word)
	if m.error != "" {
		bad := draw.Style{Size: 16, Weight: draw.Bold, Color: th.Bad}
		a.shelf.Text(&a.frame, draw.Pt(m.box.X, 166), draw.Left, bad, bad.Fit(a.scale, m.box.W, m.error))
	}
	if first, last := m.shown(a); last-first < len(a.opt.Drills) {
		text := fmt.Sprintf("%d to %d of %d drills; ↑↓ or the mouse wheel for the others", first+1, last, len(a.opt.Drills))
		a.shelf.Middle(&a.frame, draw.Pt(m.box.Right(), a.size.Y-18), draw.Right, draw.Style{Size: 15, Color: th.Soft}, text)
	}
	a.shelf.Middle(&a.frame, draw.Pt(m.box.X, a.size.Y-18), draw.Left, draw.Style{Size: 15, Color: th.Soft}, "Tab next · Enter choose · F1 what is this · F2 all keys · F3 colors · F4 sound on or off")
}
