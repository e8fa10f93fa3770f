package cutaway

import (
	"fmt"
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
)

// plugR is the radius of the transfer valve's body.
const plugR = 27.0

// valveBody paints the metal round the transfer valve, and the clapper valve's seat.
func (d *Drawing) valveBody(cv *draw.Canvas) {
	if !d.plan.two() {
		return
	}
	c := d.at(d.plan.transfer)
	cv.Fill(draw.Circle(c, (plugR+1.5)*d.k), draw.Solid(metalEdge))
	cv.Fill(draw.Circle(c, plugR*d.k), draw.Solid(metal))
}

// turns is how finely vane and flap are drawn on their way.
const turns = 30

// valves draws the transfer valve's vane, which shuts the way across in volume and the way up in pressure, and the
// clapper valve's flap.
func (d *Drawing) valves(sh *stage.Shelf, f *stage.Frame, s *State) {
	p := d.plan
	if !p.two() {
		return
	}
	at := int(math.Round(clamp(s.TransferAt) * turns))
	shut := at
	if s.ClapperOpen {
		shut = 0
	}
	_, gives := s.stage(0, true)
	box := d.rect(draw.Around(p.transfer, 2*plugR+2, 2*plugR+2))
	f.Put(sh.Once("cutaway/vane", fmt.Sprintf("cutaway/vane/%d/%d/%v", at, level(gives), d.box), box, func(cv *draw.Canvas) {
		c := d.at(p.transfer)
		cv.Fill(draw.Circle(c, (plugR-5)*d.k), draw.Solid(water(level(gives))))
		const half = 16.0
		hinge := p.transfer.Add(draw.Pt(half, -half))
		end := hinge.Polar(2*half, 180+90*float64(at)/turns) // down over the way across, then left over the way up
		cv.Fill(draw.Segment(d.at(hinge), d.at(end), 7*d.k), draw.Solid(black))
		cv.Fill(draw.Circle(d.at(hinge), 6*d.k), draw.Solid(black))
		cv.Fill(draw.Circle(d.at(hinge), 2.5*d.k), draw.Solid(ring))
	}), draw.Point{})
	const flap = 31.0
	box = d.rect(draw.Rect{X: p.clapper.X - 8, Y: p.clapper.Y - flap - 4, W: flap + 16, H: flap + 14})
	f.Put(sh.Once("cutaway/flap", fmt.Sprintf("cutaway/flap/%d/%v", shut, d.box), box, func(cv *draw.Canvas) {
		end := p.clapper.Polar(flap, 8+82*float64(shut)/turns) // up along the wall, then down across the way
		cv.Fill(draw.Segment(d.at(p.clapper), d.at(end), 6*d.k), draw.Solid(black))
		cv.Fill(draw.Circle(d.at(p.clapper), 5.5*d.k), draw.Solid(black))
		cv.Fill(draw.Circle(d.at(p.clapper), 2.2*d.k), draw.Solid(ring))
	}), draw.Point{})
}

// arrangement is what the transfer valve stands in, in the panel's words.
func (s *State) arrangement() string {
	switch {
	case s.TransferAt <= 0:
		return "volume"
	case s.TransferAt >= 1:
		return "pressure"
	}
	return "changing"
}
