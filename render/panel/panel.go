package panel

import (
	"fmt"

	"steadyneedle/render/control"
	"steadyneedle/render/dial"
	"steadyneedle/render/draw"
	"steadyneedle/render/lamp"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// The panel's plate in units at 1280×720; in larger windows everything keeps its size and moves apart.
const (
	baseW = 1264.0
	baseH = 594.0
)

// Panel is the page. Make it with New, then Layout before anything else.
type Panel struct {
	table   *view.Table
	lines   []rig.DischargeDef
	gauge   *rig.InstrumentsDef
	units   unit.System
	HideWay bool
	Test    bool // the lamp test is pressed: every lamp burns

	room    draw.Rect // what there is
	box     draw.Rect // the plate in it
	dials   []instrument
	fans    []small
	lamps   []light
	widgets []*control.Widget
	words   []word
	pipes   []pipe
	notes   []view.Note
}

type instrument struct {
	signal, label string
	at            draw.Point
	size          dial.Size
	scale         *dial.Scale
	labelAt       draw.Point
	plate         *theme.Plate
}

type small struct {
	signal string
	fan    dial.Fan
	scale  *dial.Scale
}

type light struct {
	signal, label string
	at            draw.Point
	kind          lamp.Kind
}

type word struct {
	at    draw.Point
	align draw.Align
	text  string
	plate bool
}

// New makes the panel of an attempt's apparatus.
func New(t *view.Table, info *view.Info) *Panel {
	return &Panel{table: t, lines: info.Lines, gauge: &info.Gauges, units: info.Units, HideWay: info.Rated}
}

// Name is the page's name.
func (p *Panel) Name() string { return "panel" }

// Layout arranges the page in box.
func (p *Panel) Layout(_ float64, box draw.Rect) {
	p.room = box
	// beyond this the way of the water would come apart; the plate then stands in the middle
	if most := baseH * 1.14; box.H > most {
		box.Y, box.H = box.Y+(box.H-most)/2, most
	}
	if most := baseW * 1.5; box.W > most {
		box.X, box.W = box.X+(box.W-most)/2, most
	}
	p.box = box
	p.dials, p.fans, p.lamps, p.widgets, p.words, p.pipes, p.notes = nil, nil, nil, nil, nil, nil, nil
	p.gauges()
	p.intakeSide()
	p.pumpSide()
	p.engineSide()
	p.tankWell()
	p.dischargeSide()
	p.way()
}

// at maps a point of the base plate into the box: positions spread, sizes stay.
func (p *Panel) at(x, y float64) draw.Point {
	return draw.Pt(p.box.X+x*p.box.W/baseW, p.box.Y+y*p.box.H/baseH)
}

// column is the middle of discharge n's column, n from 1.
func (p *Panel) column(n int) float64 {
	step := 154.0
	if len(p.lines) > 3 {
		step = 462.0 / float64(len(p.lines))
	}
	return 1174 - step*float64(len(p.lines)-n)
}

// fitted reports whether the apparatus has a control.
func (p *Panel) fitted(name string) bool {
	id, ok := p.table.Control(name)
	return ok && p.table.Controls[id].Missing == ""
}

func (p *Panel) put(name string, f control.Face) {
	id, ok := p.table.Control(name)
	if !ok {
		return
	}
	p.widgets = append(p.widgets, &control.Widget{Face: f, ID: id, Def: &p.table.Controls[id], Units: p.units})
}

func (p *Panel) say(at draw.Point, a draw.Align, text string) {
	p.words = append(p.words, word{at: at, align: a, text: text})
}

func (p *Panel) name(at draw.Point, text string) {
	p.words = append(p.words, word{at: at, align: draw.Center, text: text, plate: true})
}

func (p *Panel) light(signal string, at draw.Point, k lamp.Kind, label string) {
	p.lamps = append(p.lamps, light{signal, label, at, k})
	p.say(at.Add(draw.Pt(0, 25)), draw.Center, label)
	p.note(draw.Around(at, 40, 40), label+" (lamp)", view.Gauge(signal))
}

func (p *Panel) note(box draw.Rect, title, text string) {
	p.notes = append(p.notes, view.Note{Box: box, Title: title, Text: text})
}

func (p *Panel) gauges() {
	g := p.gauge
	rpm := dial.Even(g.Tach.Low, g.Tach.High, g.Tach.Division, "rpm × 100")
	rpm.Label = func(v float64) string { return fmt.Sprintf("%.0f", v/100) }
	add := func(signal, label string, x, y, r, labelY float64, s *dial.Scale, plate *theme.Plate) {
		in := instrument{signal: signal, label: label, at: p.at(x, y), size: dial.SizeOf(r), scale: s, plate: plate}
		in.labelAt = in.at.Add(draw.Pt(0, labelY-y))
		p.dials = append(p.dials, in)
		p.note(draw.Around(in.at, 2*r, 2*r), label, view.Gauge(signal))
	}
	add("intake_gauge", "Intake", 118, 116, 104, 236, dial.VacuumIn(p.units, -g.Intake.Low, g.Intake.High, g.Intake.Division), nil)
	add("discharge_gauge", "Pump discharge", 366, 136, 122, 276, dial.In(p.units, g.Discharge.Low, g.Discharge.High, g.Discharge.Division, "psi"), nil)
	add("tach", "Engine speed", 596, 104, 88, 210, rpm, nil)
	for i := range p.lines {
		n, plate := i+1, theme.PlateOf(p.lines[i].Color)
		add(fmt.Sprintf("line%d_gauge", n), p.lines[i].Label, p.column(n), 88, 72, 182,
			dial.In(p.units, g.Line.Low, g.Line.High, g.Line.Division, "psi").Sparse(), &plate)
	}
}

// Widgets are the page's controls.
func (p *Panel) Widgets() []*control.Widget { return p.widgets }

// Notes are the things that can be pointed at and asked about.
func (p *Panel) Notes() []view.Note { return p.notes }

// Places from which the page can be seen.
func (p *Panel) Places() world.Reach { return world.At(world.Panel) }
