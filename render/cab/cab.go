package cab

import (
	"fmt"

	"steadyneedle/render/card"
	"steadyneedle/render/control"
	"steadyneedle/render/dial"
	"steadyneedle/render/draw"
	"steadyneedle/render/lamp"
	"steadyneedle/render/plate"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
	"steadyneedle/sim/unit"
)

const (
	cardsW = 380.0
	glassH = 196.0 // at least
	dashH  = 388.0
)

// Cab is the page.
type Cab struct {
	table   *view.Table
	info    *view.Info
	box     draw.Rect
	dash    draw.Rect
	glass   draw.Rect
	deck    *card.Deck // decisions of the way
	worn    *card.Deck
	widgets []*control.Widget
	words   []word
	tach    draw.Point
	scale   *dial.Scale
	fans    []fan
	lamps   []light
	notes   []view.Note
}

type word struct {
	at    draw.Point
	align draw.Align
	text  string
	plate bool
}

type fan struct {
	signal string
	fan    dial.Fan
	scale  *dial.Scale
	factor float64
}

type light struct {
	signal string
	at     draw.Point
	kind   lamp.Kind
}

// New makes the cab.
func New(t *view.Table, info *view.Info) *Cab {
	rpm := dial.Even(info.Gauges.Tach.Low, info.Gauges.Tach.High, info.Gauges.Tach.Division, "rpm × 100")
	rpm.Label = func(v float64) string { return fmt.Sprintf("%.0f", v/100) }
	return &Cab{table: t, info: info, scale: rpm}
}

// Name is the page's name.
func (c *Cab) Name() string { return "cab" }

// Widgets are the page's controls.
func (c *Cab) Widgets() []*control.Widget {
	all := append([]*control.Widget(nil), c.widgets...)
	return append(append(all, c.deck.Widgets()...), c.worn.Widgets()...)
}

// Notes are the instruments that can be asked about.
func (c *Cab) Notes() []view.Note { return c.notes }

// Layout arranges windshield, dash and cards.
func (c *Cab) Layout(scale float64, box draw.Rect) {
	c.box = box
	c.widgets, c.words, c.fans, c.lamps, c.notes = nil, nil, nil, nil, nil
	dash := min(dashH*1.1, box.H-glassH-10)
	c.glass = draw.Rect{X: box.X, Y: box.Y, W: box.W - cardsW - 12, H: box.H - dash - 10}
	c.dash = draw.Rect{X: box.X, Y: c.glass.Bottom() + 10, W: c.glass.W, H: dash}
	area := draw.Rect{X: box.Right() - cardsW, Y: box.Y + 6, W: cardsW, H: box.H - 8}
	c.deck = card.Lay(c.table, scale, area, 1, []card.Group{
		{Title: "On the way", Names: []string{"stop_at_fire", "lay_crossing", "lay_offset", "stop_at_hydrant", "drive"}},
	})
	rest := area
	rest.Y = c.deck.Bottom + 6
	rest.H = 150
	half := func(names ...string) []card.Group { return []card.Group{{Names: names}} }
	rest.W = cardsW/2 - 4
	c.worn = card.Lay(c.table, scale, rest, 1, half("seat_belt", "helmet"))
	rest.X += cardsW/2 + 4
	c.worn.Add(card.Lay(c.table, scale, rest, 1, half("clothing", "portable_radio")))
	c.instruments()
	c.controls()
}

// at maps a point of an 860 by dashH dash into the present one.
func (c *Cab) at(x, y float64) draw.Point {
	return draw.Pt(c.dash.X+x*c.dash.W/860, c.dash.Y+y*c.dash.H/dashH)
}

func (c *Cab) instruments() {
	g := &c.info.Gauges
	c.tach = c.at(112, 104)
	c.notes = append(c.notes, view.Note{Box: draw.Around(c.tach, 172, 172), Title: "Engine speed", Text: view.Gauge("tach")})
	u := c.info.Units
	for i, s := range []instrument{
		c.speed(),
		{"oil_gauge", "Oil", dial.FanIn(u, g.Oil.Low, g.Oil.High, g.Oil.Division, "psi"), 1},
		{"coolant_gauge", "Coolant", dial.FanIn(u, g.Coolant.Low, g.Coolant.High, g.Coolant.Division, "°F"), 1},
		{"volts_gauge", "Volts", dial.FanScale(g.Volts.Low, g.Volts.High, g.Volts.Division, "V"), 1},
	} {
		at := c.at(222+float64(i)*112, 22)
		box := draw.Rect{X: at.X, Y: at.Y, W: 104, H: 100}
		if s.scale.Unit != "V" {
			s.name += " " + s.scale.Unit
		}
		c.fans = append(c.fans, fan{s.signal, dial.Fan{Box: box, Name: s.name}, s.scale, s.factor})
		c.notes = append(c.notes, view.Note{Box: box, Title: s.name, Text: view.Gauge(s.signal)})
	}
	for i, l := range []struct {
		signal, name string
		kind         lamp.Kind
	}{
		{"pump_engaged", "Pump engaged", lamp.Ready},
		{"ok_to_pump", "OK to pump", lamp.Ready},
		{"door_lamp", "Door open", lamp.Warning},
		{"belt_lamp", "Belts", lamp.Warning},
		{"engine_hot_lamp", "Engine hot", lamp.Warning},
		{"low_oil_lamp", "Low oil", lamp.Warning},
	} {
		at := c.at(240+float64(i%3)*148, 158+float64(i/3)*36)
		c.lamps = append(c.lamps, light{l.signal, at, l.kind})
		c.words = append(c.words, word{at: at.Add(draw.Pt(20, 0)), text: l.name})
		c.notes = append(c.notes, view.Note{Box: draw.Rect{X: at.X - 14, Y: at.Y - 14, W: 140, H: 28}, Title: l.name + " (lamp)", Text: view.Gauge(l.signal)})
	}
}

// instrument is a small gauge of the dash.
type instrument struct {
	signal, name string
	scale        *dial.Scale
	factor       float64 // from the signal to what the scale is given
}

// speed is the speedometer: the signal is in ft/s.
func (c *Cab) speed() instrument {
	if c.info.Units == unit.SI {
		return instrument{"speed", "Speed", dial.FanScale(0, 30, 1, "km/h"), unit.MPerFt * 3.6}
	}
	return instrument{"speed", "Speed", dial.FanScale(0, 20, 1, "mph"), 3600.0 / 5280}
}

func (c *Cab) put(name string, f control.Face) {
	if id, ok := c.table.Control(name); ok {
		c.widgets = append(c.widgets, &control.Widget{Face: f, ID: id, Def: &c.table.Controls[id], Units: c.info.Units})
	}
}

func (c *Cab) controls() {
	for i, t := range []struct{ control, name string }{
		{"engine_run", "Engine"}, {"headlights", "Headlights"}, {"emergency_lights", "Emergency"}, {"flashers", "Flashers"},
	} {
		at := c.at(74+float64(i)*102, 300)
		c.put(t.control, control.Toggle{At: at})
		c.words = append(c.words, word{at: at.Add(draw.Pt(0, 45)), align: draw.Center, text: t.name})
	}
	brake := c.at(712, 92)
	c.put("parking_brake", Brake{At: brake, R: 48})
	c.words = append(c.words, word{at: brake.Add(draw.Pt(0, 70)), text: "Parking brake", plate: true})
	lock := c.at(806, 100)
	c.put("front_brake_lock", control.Guarded{At: lock})
	c.words = append(c.words, word{at: lock.Add(draw.Pt(-6, -56)), text: "Front lock", plate: true})
	gear := c.at(456, 236)
	c.put("transmission", Selector{Area: draw.Rect{X: gear.X, Y: gear.Y, W: 128, H: 136}, Options: c.options("transmission")})
	c.words = append(c.words, word{at: gear.Add(draw.Pt(64, -16)), text: "Transmission", plate: true})
	shift := c.at(612, 236)
	c.put("pump_shift", Gate{Area: draw.Rect{X: shift.X, Y: shift.Y, W: 110, H: 136}, Options: c.options("pump_shift")})
	c.words = append(c.words, word{at: shift.Add(draw.Pt(55, -16)), text: "Pump shift", plate: true})
	horn := c.at(794, 282)
	c.put("horn", control.Push{At: horn, R: 36, Color: draw.Hex(0x2b3136), Name: "black"})
	c.words = append(c.words, word{at: horn.Add(draw.Pt(0, 62)), text: "Horn", plate: true})
}

func (c *Cab) options(name string) []string {
	if id, ok := c.table.Control(name); ok {
		return c.table.Controls[id].Options
	}
	return nil
}

// Still paints what never moves.
func (c *Cab) Still(cv *draw.Canvas, th *theme.Theme) {
	c.street(cv, th)
	plate.Panel(cv, th, c.dash)
	a, b := c.at(16, 236), c.at(436, 376)
	plate.Well(cv, th, draw.Rect{X: a.X, Y: a.Y, W: b.X - a.X, H: b.Y - a.Y})
	dial.Draw(cv, th, c.tach, dial.SizeOf(86), c.scale)
	for i := range c.fans {
		c.fans[i].fan.Draw(cv, th, c.fans[i].scale)
	}
	for _, w := range c.words {
		if w.plate {
			plate.Label(cv, th, w.at, w.text)
		} else {
			plate.Small(cv, th, w.at, w.align, w.text)
		}
	}
	for _, w := range c.widgets {
		w.Still(cv, th)
	}
	c.deck.Still(cv, th)
	c.worn.Still(cv, th)
}

// Moving puts what moves.
func (c *Cab) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, e *view.Eyes) {
	if e.Covered("tach") {
		dial.Cover(sh, f, c.tach, 86)
	} else {
		dial.Needle(sh, f, th, c.tach, dial.SizeOf(86), c.scale, e.Signal("tach"))
	}
	for i := range c.fans {
		d := &c.fans[i]
		d.fan.Needle(sh, f, th, d.scale, e.Signal(d.signal)*d.factor)
	}
	for _, l := range c.lamps {
		lamp.Put(sh, f, th, l.at, 10, l.kind, lamp.Of(e.Lit(l.signal)))
	}
	for _, w := range c.widgets {
		w.Moving(sh, f, th, e.Share(w.ID))
	}
	c.deck.Moving(sh, f, th, e)
	c.worn.Moving(sh, f, th, e)
	c.outside(sh, f, th, e)
	c.putObjective(sh, f, th, e)
}
