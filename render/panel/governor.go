package panel

import (
	"fmt"
	"math"

	"steadyneedle/render/control"
	"steadyneedle/render/draw"
	"steadyneedle/render/lamp"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
)

// idleRed is the color of the button that drops the engine to idle.
var idleRed = draw.Hex(0xb3261c)

const (
	headW = 188.0
	headH = 118.0
)

// head is the middle of the governor's head, which stands where other panels have a throttle.
func (p *Panel) head() draw.Point { return p.at(688, 402) }

func (p *Panel) display() draw.Rect {
	return draw.Around(p.head().Add(draw.Pt(0, -40)), headW-16, 30)
}

// governorHead is the head of the pressure governor: display, four buttons, mode; beside it the ready
// lamp. The lamp for a lack of water takes the place of the relief valve's, or, where both are fitted,
// stands below the other warnings.
func (p *Panel) governorHead() {
	c := p.head()
	steel := draw.Hex(0x3a4248)
	for _, b := range []struct {
		control, word string
		x             float64
		color         draw.Color
		name          string
	}{
		{"governor_raise", "Raise", -68, steel, "gray"}, {"governor_lower", "Lower", -22, steel, "gray"},
		{"governor_preset", "Preset", 28, steel, "gray"}, {"idle_button", "Idle", 72, idleRed, "red"},
	} {
		at := c.Add(draw.Pt(b.x, -6))
		p.put(b.control, control.Push{At: at, R: 11, Color: b.color, Name: b.name})
		p.say(at.Add(draw.Pt(0, 23)), draw.Center, b.word)
	}
	p.put("governor_mode", control.Pick{Area: draw.Around(c.Add(draw.Pt(0, 42)), headW-16, 24), Words: [2]string{"Speed", "Pressure"}})
	p.note(p.display(), "Governor", fmt.Sprintf("What the governor holds: a pressure at the pump's discharge (%s) or an engine speed (rpm). At idle it waits for a button.", p.units.Unit("psi")))
	p.light("throttle_ready", p.at(812, 360), lamp.Ready, "Ready")
	water := p.at(298, 346)
	if p.fitted("relief_wheel") { // its lamp is there already
		water = p.at(722, 219)
	}
	p.light("low_water_lamp", water, lamp.Warning, "Low water")
	p.cooler(p.at(811, 428))
}

// governorFrame paints the head's plate and the display's window.
func (p *Panel) governorFrame(cv *draw.Canvas, th *theme.Theme) {
	if p.fitted("throttle") {
		return
	}
	r := draw.Around(p.head(), headW, headH)
	cv.Shadow(draw.Round(r, 8), 0, 2, 7, draw.Fade(th.Shade, 0.8))
	cv.Fill(draw.Round(r, 8), draw.Down(r, draw.Lighter(th.LabelBack, 0.12), th.LabelBack))
	cv.Fill(draw.Frame(r, 8, 1.2), draw.Down(r, draw.Fade(th.Edge, 0.8), draw.Fade(th.Shade, 0.6)))
	d := p.display()
	cv.Fill(draw.Round(d, 4), draw.Solid(draw.Darker(th.Groove, 0.5)))
	cv.Fill(draw.Frame(d, 4, 1), draw.Solid(draw.Fade(th.Edge, 0.5)))
}

// putGovernor puts what the display shows.
func (p *Panel) putGovernor(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, e *view.Eyes) {
	if p.fitted("throttle") {
		return
	}
	text := "idle"
	if psi := e.Signal("governor_set_psi"); psi > 0 {
		text = p.units.Prose(fmt.Sprintf("%.0f psi", math.Round(psi)))
	} else if rpm := e.Signal("governor_set_rpm"); rpm > 0 {
		text = fmt.Sprintf("%.0f rpm", math.Round(rpm/10)*10)
	}
	sh.Middle(f, p.display().Center(), draw.Center, draw.Style{Size: 21, Weight: draw.Bold, Color: th.Amber}, text)
}

// transferValve is the switch between volume and pressure, with a lamp for where the valve has got to.
func (p *Panel) transferValve() {
	at := p.at(166, 288)
	p.put("transfer", control.Toggle{At: at})
	p.name(at.Add(draw.Pt(40, -46)), "Transfer")
	for _, l := range []struct {
		signal, word string
		y            float64
	}{{"pressure_lamp", "Pressure", -15}, {"volume_lamp", "Volume", 17}} {
		lampAt := at.Add(draw.Pt(36, l.y))
		p.lamps = append(p.lamps, light{l.signal, l.word, lampAt, lamp.Ready})
		p.say(lampAt.Add(draw.Pt(16, 0)), draw.Left, l.word)
		p.note(draw.Around(lampAt, 30, 30), l.word+" (lamp)", view.Gauge(l.signal))
	}
}
