package cutaway

import (
	"fmt"
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/sim/unit"
)

// rise is the pressure at a share of the rim's radius: thrown outward, water gains with the square of
// its distance from the axis; the volute turns the rest of its speed into pressure.
func rise(s *State, share float64) float64 {
	return s.IntakePSI + (s.DischargePSI-s.IntakePSI)*share*share
}

// impeller draws volute, contours, blades, vapor and air.
func (d *Drawing) impeller(sh *stage.Shelf, f *stage.Frame, s *State) {
	d.casingWater(sh, f, s)
	f.Turn(d.blades(sh), d.at(center), d.turn)
	d.bubbles(sh, f, s)
	d.numbers(sh, f, s)
}

// net is what the pump adds, psi; 0 where it is covered.
func net(s *State) float64 {
	if v := s.DischargePSI - s.IntakePSI; !math.IsNaN(v) {
		return v
	}
	return 0
}

// rings are the bands of color between eye and rim.
const rings = 9

// casingWater fills volute and impeller; redrawn when a pressure has moved by a step.
func (d *Drawing) casingWater(sh *stage.Shelf, f *stage.Frame, s *State) {
	key := fmt.Sprintf("cutaway/casing/%d/%d/%d/%v", level(s.IntakePSI), level(s.DischargePSI), int(net(s))/4, d.box)
	box := d.rect(draw.Around(center, 2*(rimR+70), 2*(rimR+70)))
	now := *s
	art := sh.Once("cutaway/casing", key, box, func(cv *draw.Canvas) {
		cv.Fill(d.scaled(volute(0)), draw.Solid(water(level(now.DischargePSI))))
		c := d.at(center)
		for i := rings; i >= 0; i-- {
			share := float64(i) / rings
			r := (eyeR*0.6 + (rimR-eyeR*0.6)*share) * d.k
			cv.Fill(draw.Circle(c, r), draw.Solid(water(level(rise(&now, share)))))
		}
		for _, psi := range contours(&now, d.unit) {
			r := d.radius(&now, psi)
			cv.Fill(draw.Ring(c, r+0.9, r-0.9), draw.Solid(draw.Fade(theme.Paper.Ink, 0.6)))
		}
	})
	f.Put(art, draw.Point{})
	f.Put(d.inlet(sh), draw.Point{})
}

// inlet is where the intake passes in front of the casing, to the eye.
func (d *Drawing) inlet(sh *stage.Shelf) *stage.Art {
	box := d.rect(draw.Rect{X: riserX, Y: suctionY - wide, W: center.X - riserX, H: 2 * wide})
	return sh.Get(fmt.Sprintf("cutaway/inlet/%v", d.box), box, func(cv *draw.Canvas) {
		for _, side := range [...]float64{-1, 1} {
			y := suctionY + side*wide/2
			line := draw.Polyline(d.at(draw.Pt(riserX+10, y)), d.at(draw.Pt(center.X-eyeR+6, y)))
			for _, dash := range draw.Dashes(line, 10*d.k, 8*d.k) {
				cv.Fill(draw.Stroke(dash, 2*d.k), draw.Solid(draw.Fade(theme.Paper.Ink, 0.55)))
			}
		}
	})
}

// contours are round pressures between eye and rim, few enough for large numbers.
// They are round in the units that are shown, and given in psi.
func contours(s *State, in unit.System) []float64 {
	low, high := in.From(s.IntakePSI, "psi"), in.From(s.DischargePSI, "psi")
	span := high - low
	if net(s) < 4 {
		return nil
	}
	step := 5.0
	for _, step = range [...]float64{5, 10, 20, 25, 50, 100, 200, 250, 500, 1000} {
		if span/step <= 3.4 {
			break
		}
	}
	var list []float64
	for v := math.Ceil((low+0.1*span)/step) * step; v < high-0.04*span; v += step {
		list = append(list, in.To(v, "psi"))
	}
	return list
}

// radius is where the pressure psi stands, on the page.
func (d *Drawing) radius(s *State, psi float64) float64 {
	share := math.Sqrt(clamp((psi - s.IntakePSI) / max(1, s.DischargePSI-s.IntakePSI)))
	return (eyeR*0.6 + (rimR-eyeR*0.6)*share) * d.k
}

// numbers prints each contour's pressure on it, away from the blades' glare.
func (d *Drawing) numbers(sh *stage.Shelf, f *stage.Frame, s *State) {
	c := d.at(center)
	size := d.text * 0.9
	for i, psi := range contours(s, d.unit) {
		p := c.Polar(d.radius(s, psi), 100+float64(i)*58)
		text := figure(d.unit.From(psi, "psi"))
		st := draw.Style{Size: size, Weight: draw.Bold, Color: theme.Paper.Ink}
		w := st.Width(sh.Scale, text)
		back := sh.Get(fmt.Sprintf("cutaway/tag/%.0f/%.0f", w, size), draw.Around(draw.Point{}, w+8, size*1.05), func(cv *draw.Canvas) {
			cv.Fill(draw.Round(draw.Around(draw.Point{}, w+8, size*1.05), 3), draw.Solid(draw.Fade(theme.Paper.Sheet, 0.92)))
		})
		f.Put(back, p)
		sh.Middle(f, p, draw.Center, st, text)
	}
}

// blades is the impeller as one piece of art that turns.
func (d *Drawing) blades(sh *stage.Shelf) *stage.Art {
	r := rimR * d.k
	return sh.Get(fmt.Sprintf("cutaway/blades/%v", d.k), draw.Around(draw.Point{}, 2*r+6, 2*r+6), func(cv *draw.Canvas) {
		o := draw.Point{}
		cv.Fill(draw.Ring(o, r, r-2.5*d.k), draw.Solid(draw.Fade(metalEdge, 0.9)))
		for i := range 6 {
			// Blades lean back against the turn, which is counterclockwise.
			a := float64(i) * 60
			blade := new(draw.Path).Move(o.Polar(eyeR*0.75*d.k, a)).
				Cube(o.Polar(rimR*0.62*d.k, a+6), o.Polar(rimR*0.86*d.k, a+34), o.Polar((rimR-3)*d.k, a+58))
			cv.Fill(draw.Stroke(blade, 7*d.k), draw.Solid(metalEdge))
			cv.Fill(draw.Stroke(blade, 4*d.k), draw.Solid(metal))
		}
		cv.Fill(draw.Circle(o, 17*d.k), draw.Solid(metalEdge))
		cv.Fill(draw.Circle(o, 14*d.k), draw.Conic{Center: o, Stops: draw.Even(metal, metalEdge, metal, metalEdge, metal)})
	})
}

// mostBubbles is how many there are when the eye is full of vapor, or of air.
const mostBubbles = 90

// bubbles shows vapor in the eye, which collapses on its way out, and air, which gathers there.
func (d *Drawing) bubbles(sh *stage.Shelf, f *stage.Frame, s *State) {
	// The first few show long before head is lost: that is when the rattle begins.
	vapor := s.vapor()
	early := clamp((3 - s.NPSHa/max(0.1, s.NPSHr)) / 2)
	if math.IsNaN(early) { // covered
		early = 0
	}
	n := int(mostBubbles * max(math.Sqrt(vapor), 0.2*early*boolShare(s.ShaftRPM > 50)))
	for i := range n {
		outer := eyeR + 14 + (rimR-eyeR-20)*math.Sqrt(vapor)
		r, b := spokes(i, 18, outer)
		life := math.Mod(s.At*2.2+float64(i)*0.377, 1)
		r = min(outer, r+life*16)
		d.bubble(sh, f, r, b+d.turn, 3+4*(1-life)+float64(i%3), white)
	}
	n = int(mostBubbles * math.Sqrt(s.air()))
	for i := range n {
		outer := eyeR + 8 + (rimR-eyeR-8)*s.air()
		r, b := spokes(i+7, 14, outer)
		d.bubble(sh, f, r, b+d.turn*0.7, 4+float64(i%4)*1.6, gray)
	}
}

func boolShare(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

func (d *Drawing) bubble(sh *stage.Shelf, f *stage.Frame, r, bearing, size float64, col draw.Color) {
	px := max(1.5, math.Round(size*d.k))
	art := sh.Get(fmt.Sprintf("cutaway/bubble/%.0f/%v", px, col), draw.Around(draw.Point{}, 2*px+4, 2*px+4), func(cv *draw.Canvas) {
		cv.Fill(draw.Circle(draw.Point{}, px), draw.Solid(metalEdge))
		cv.Fill(draw.Circle(draw.Point{}, px-1), draw.Solid(col))
	})
	f.Put(art, d.at(center.Polar(r, bearing)))
}
