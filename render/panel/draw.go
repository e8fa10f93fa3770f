package panel

import (
	"fmt"
	"math"

	"steadyneedle/render/dial"
	"steadyneedle/render/draw"
	"steadyneedle/render/lamp"
	"steadyneedle/render/plate"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
)

// Still paints what never moves.
func (p *Panel) Still(cv *draw.Canvas, th *theme.Theme) {
	p.body(cv, th)
	plate.Panel(cv, th, p.box)
	p.well(cv, th, 10, 480, 402, 588)
	p.well(cv, th, 406, 480, 804, 588)
	p.well(cv, th, 808, 480, 1254, 588)
	if !p.HideWay {
		for _, q := range p.pipes {
			plate.Groove(cv, th, q.run, q.wide)
		}
		p.pump(cv, th)
	}
	for i := range p.dials {
		d := &p.dials[i]
		dial.Draw(cv, th, d.at, d.size, d.scale)
		if d.plate != nil {
			plate.Colored(cv, th, d.labelAt, d.label, 132, *d.plate)
		} else {
			plate.Label(cv, th, d.labelAt, d.label)
		}
	}
	for i := range p.fans {
		p.fans[i].fan.Draw(cv, th, p.fans[i].scale)
	}
	p.governorFrame(cv, th)
	for _, w := range p.words {
		if w.plate {
			plate.Label(cv, th, w.at, w.text)
		} else {
			plate.Small(cv, th, w.at, w.align, w.text)
		}
	}
	lamp.Level{Box: p.tankLevel()}.Still(cv, th)
	for _, w := range p.widgets {
		w.Still(cv, th)
	}
	p.testButton().Still(cv, th)
}

func (p *Panel) well(cv *draw.Canvas, th *theme.Theme, x0, y0, x1, y1 float64) {
	a, b := p.at(x0, y0), p.at(x1, y1)
	plate.Well(cv, th, draw.Rect{X: a.X, Y: a.Y, W: b.X - a.X, H: b.Y - a.Y})
}

// pump is the engraved casing: a volute round an impeller.
func (p *Panel) pump(cv *draw.Canvas, th *theme.Theme) {
	c := p.pumpAt()
	const r = 44
	cv.Fill(draw.Circle(c, r+2.5), draw.Solid(draw.Fade(th.Edge, 0.6)))
	cv.Fill(draw.Circle(c, r+1), draw.Solid(th.Groove))
	cv.Fill(draw.Circle(c, r-3), draw.Down(draw.Around(c, 2*r, 2*r), draw.Lighter(th.Groove, 0.04), draw.Lighter(th.Groove, 0.13)))
	for i := range 6 {
		a := float64(i) * 60
		blade := new(draw.Path).Move(c.Polar(r*0.72, a)).Quad(c.Polar(r*0.62, a+28), c.Polar(r*0.84, a+46))
		cv.Fill(draw.Stroke(blade, 3.4), draw.Solid(draw.Fade(th.Dry, 0.9)))
	}
	cv.Fill(draw.Circle(c, r*0.66), draw.Solid(draw.Lighter(th.Groove, 0.08)))
	cv.Middle(c, draw.Center, draw.Style{Size: 17, Weight: draw.Bold, Color: th.Text}, "Pump")
}

// Moving puts what moves.
func (p *Panel) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, e *view.Eyes) {
	p.putLights(sh, f, th, e.Named("panel_lights") >= 0.5)
	p.putTest(sh, f, th)
	if !p.HideWay {
		for i := range p.pipes {
			if q := &p.pipes[i]; q.wet(e) {
				p.putWater(sh, f, th, q)
			}
		}
		p.putPump(sh, f, th, e)
	}
	for i := range p.lamps {
		l := &p.lamps[i]
		state := lamp.Of(e.Lit(l.signal))
		if p.Test {
			state = lamp.Test
		} else if e.Covered(l.signal) {
			dial.Cover(sh, f, l.at, 15)
			continue
		}
		lamp.Put(sh, f, th, l.at, 11, l.kind, state)
	}
	p.putTank(sh, f, th, e)
	p.putGovernor(sh, f, th, e)
	for i := range p.dials {
		d := &p.dials[i]
		if e.Covered(d.signal) {
			dial.Cover(sh, f, d.at, d.size.R)
			continue
		}
		dial.Needle(sh, f, th, d.at, d.size, d.scale, e.Signal(d.signal))
	}
	for i := range p.fans {
		s := &p.fans[i]
		s.fan.Needle(sh, f, th, s.scale, e.Signal(s.signal))
		if e.Covered(s.signal) {
			s.fan.Cover(sh, f)
		}
	}
	hose := p.hoseOn(e)
	for _, w := range p.widgets {
		if c, ok := w.Face.(Cap); ok && c.Line == hose {
			continue // the coupling is where the cap would be
		}
		w.Moving(sh, f, th, e.Share(w.ID))
	}
	p.putHose(sh, f, th, e)
	p.putBleed(sh, f, th, e)
}

// hoseOn is the outlet that the line's coupling hangs on, from 1; 0: none.
func (p *Panel) hoseOn(e *view.Eyes) int {
	n := int(e.Named("line_to") + 0.01)
	if n < 1 || n > len(p.lines) || e.Named("line_coupling") < 0.5 {
		return 0
	}
	return n
}

// putHose puts the line's coupling on its outlet.
func (p *Panel) putHose(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, e *view.Eyes) {
	n := p.hoseOn(e)
	if n == 0 {
		return
	}
	at, r := p.at(p.column(n), 528), 31.0
	plate := theme.PlateOf(p.lines[n-1].Color)
	loose := e.Named("line_coupling") < 1.99
	foot := p.box.Bottom() - at.Y - 4
	art := sh.Get(fmt.Sprintf("hose/%s/%d/%v/%v", th.Name, n, loose, foot), draw.Rect{X: -r - 8, Y: -r - 8, W: 2*r + 16, H: r + 8 + foot}, func(cv *draw.Canvas) {
		o := draw.Point{}
		jacket := draw.Rect{X: -17, Y: 0, W: 34, H: foot}
		cv.Fill(draw.Box(jacket), draw.Across(jacket, draw.Darker(th.Hose, 0.55), th.Hose, draw.Darker(th.Hose, 0.15), draw.Darker(th.Hose, 0.6)))
		cv.Shadow(draw.Circle(o, r), 0, 3, 7, draw.Fade(th.Shade, 0.7))
		for i := range 3 {
			cv.Fill(draw.Round(draw.Around(o.Polar(r, float64(i)*120), 11, 11), 3), draw.Solid(th.SteelLo))
		}
		cv.Fill(draw.Circle(o, r), draw.Conic{Center: o, Stops: draw.Even(th.SteelHi, th.SteelLo, th.SteelHi, th.SteelLo, th.SteelHi, th.SteelLo, th.SteelHi)})
		cv.Fill(draw.Circle(o, r*0.72), draw.Solid(plate.Back))
		word := "tight"
		if loose {
			word = "loose"
		}
		cv.Middle(o, draw.Center, draw.Style{Size: 15, Weight: draw.Bold, Color: plate.Text}, word)
	})
	f.Put(art, at)
}

func (p *Panel) putWater(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, q *pipe) {
	box := q.run.Bounds().Inset(-q.wide)
	art := sh.Get("water/"+th.Name+"/"+q.key, box, func(cv *draw.Canvas) { plate.Water(cv, th, q.run, q.wide) })
	f.Put(art, draw.Point{})
}

// putPump covers the pipes' ends at the pump again and lights the casing while it holds pressure.
func (p *Panel) putPump(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, e *view.Eyes) {
	wet := e.Signal("discharge_gauge") > 3
	art := sh.Get(fmt.Sprintf("pump/%s/%v", th.Name, wet), draw.Around(p.pumpAt(), 100, 100), func(cv *draw.Canvas) {
		p.pump(cv, th)
		if wet {
			c := p.pumpAt()
			cv.Fill(draw.Ring(c, 43, 38.5), draw.Solid(th.Water))
		}
	})
	f.Put(art, draw.Point{})
}

func (p *Panel) putTank(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, e *view.Eyes) {
	lit := 0
	if v := e.Signal("tank_lamps"); !math.IsNaN(v) {
		lit = int(v)
	}
	if p.Test {
		lit = 5
	}
	lamp.Level{Box: p.tankLevel()}.Moving(sh, f, th, lit)
}
