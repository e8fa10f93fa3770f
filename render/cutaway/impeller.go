package cutaway

import (
	"fmt"
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/sim/unit"
)

// rise is the pressure at a share of the rim's radius between a pressure at the eye and one at the rim: thrown
// outward, water gains with the square of its distance from the axis; the volute turns the rest of its speed into
// pressure.
func rise(eye, rim, share float64) float64 { return eye + (rim-eye)*share*share }

// impeller draws volute, contours, blades, vapor and air of one stage.
func (d *Drawing) impeller(sh *stage.Shelf, f *stage.Frame, s *State, i int) {
	w := &d.plan.wheels[i]
	eye, rim := s.stage(i, d.plan.two())
	d.casingWater(sh, f, i, eye, rim)
	f.Turn(d.blades(sh, w), d.at(w.at), d.turn)
	if i == 0 || s.Series < 0.5 { // behind another impeller there is pressure enough
		d.vapor(sh, f, s, w)
	}
	d.air(sh, f, s, w)
	d.numbers(sh, f, i, eye, rim)
}

// net is what a stage adds, psi; 0 where it is covered.
func net(eye, rim float64) float64 {
	if v := rim - eye; !math.IsNaN(v) {
		return v
	}
	return 0
}

// rings are the bands of color between eye and rim.
const rings = 9

// casingWater fills volute and impeller; redrawn when a pressure has moved by a step.
func (d *Drawing) casingWater(sh *stage.Shelf, f *stage.Frame, i int, eye, rim float64) {
	w := &d.plan.wheels[i]
	slot := fmt.Sprint("cutaway/casing/", i)
	key := fmt.Sprintf("%s/%d/%d/%d/%v/%d", slot, level(eye), level(rim), int(net(eye, rim))/4, d.box, len(d.plan.wheels))
	art := sh.Once(slot, key, d.rect(w.box()), func(cv *draw.Canvas) {
		cv.Fill(d.scaled(w.volute(0)), draw.Solid(water(level(rim))))
		c := d.at(w.at)
		for i := rings; i >= 0; i-- {
			share := float64(i) / rings
			cv.Fill(draw.Circle(c, w.share(share)*d.k), draw.Solid(water(level(rise(eye, rim, share)))))
		}
		for _, psi := range contours(eye, rim, d.unit) {
			r := d.radius(w, eye, rim, psi)
			cv.Fill(draw.Ring(c, r+0.9, r-0.9), draw.Solid(draw.Fade(theme.Paper.Ink, 0.6)))
		}
	})
	f.Put(art, draw.Point{})
	f.Put(d.inlets(sh, i), draw.Point{})
}

// inlets are where pipes pass in front of the casing, to the eye: their sides run together to its width.
func (d *Drawing) inlets(sh *stage.Shelf, i int) *stage.Art {
	w := &d.plan.wheels[i]
	box := w.box()
	return sh.Get(fmt.Sprintf("cutaway/inlet/%d/%v/%d", i, d.box, len(d.plan.wheels)), d.rect(box), func(cv *draw.Canvas) {
		for _, in := range w.ins {
			dir := in.from.Bearing(w.at)
			end := w.at.Polar(w.eye()-6*w.k, dir+180)
			if math.Abs(in.from.Y-w.at.Y) < 10 { // along the intake, which is not quite level with the axis
				dir, end = 90, draw.Pt(w.at.X-w.eye()+6*w.k, in.from.Y)
			}
			for _, side := range [...]float64{-1, 1} {
				a := in.from.Polar(side*in.bore/2, dir+90)
				b := end.Polar(side*min(in.bore/2, w.eye()*0.8), dir+90)
				for _, dash := range draw.Dashes(draw.Polyline(d.at(a), d.at(b)), 10*d.k, 8*d.k) {
					cv.Fill(draw.Stroke(dash, 2*d.k), draw.Solid(draw.Fade(theme.Paper.Ink, 0.55)))
				}
			}
		}
	})
}

// contours are round pressures between eye and rim, few enough for large numbers.
// They are round in the units that are shown, and given in psi.
func contours(eye, rim float64, in unit.System) []float64 {
	low, high := in.From(eye, "psi"), in.From(rim, "psi")
	span := high - low
	if net(eye, rim) < 4 {
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
func (d *Drawing) radius(w *wheel, eye, rim, psi float64) float64 {
	return w.share(math.Sqrt(clamp((psi-eye)/max(1, rim-eye)))) * d.k
}

// numbers prints each contour's pressure on it, away from the blades' glare. The impellers of a two-stage pump are
// too small for that: what the first gives stands on its way up, what the second gives at the discharge.
func (d *Drawing) numbers(sh *stage.Shelf, f *stage.Frame, i int, eye, rim float64) {
	w := &d.plan.wheels[i]
	if d.plan.two() {
		if i == 0 && net(eye, rim) >= 4 {
			d.tag(sh, f, d.at(w.outlet().Add(draw.Pt(0, -30))), rim)
		}
		return
	}
	for i, psi := range contours(eye, rim, d.unit) {
		d.tag(sh, f, d.at(w.at).Polar(d.radius(w, eye, rim, psi), 100+float64(i)*58), psi)
	}
}

// tag prints a pressure on the water.
func (d *Drawing) tag(sh *stage.Shelf, f *stage.Frame, p draw.Point, psi float64) {
	size := d.text * 0.9
	text := figure(d.unit.From(psi, "psi"))
	st := draw.Style{Size: size, Weight: draw.Bold, Color: theme.Paper.Ink}
	w := st.Width(sh.Scale, text)
	back := sh.Get(fmt.Sprintf("cutaway/tag/%.0f/%.0f", w, size), draw.Around(draw.Point{}, w+8, size*1.05), func(cv *draw.Canvas) {
		cv.Fill(draw.Round(draw.Around(draw.Point{}, w+8, size*1.05), 3), draw.Solid(draw.Fade(theme.Paper.Sheet, 0.92)))
	})
	f.Put(back, p)
	sh.Middle(f, p, draw.Center, st, text)
}

// blades is the impeller as one piece of art that turns.
func (d *Drawing) blades(sh *stage.Shelf, w *wheel) *stage.Art {
	k := d.k * w.k
	r := rimR * k
	return sh.Get(fmt.Sprintf("cutaway/blades/%v", k), draw.Around(draw.Point{}, 2*r+6, 2*r+6), func(cv *draw.Canvas) {
		o := draw.Point{}
		cv.Fill(draw.Ring(o, r, r-2.5*d.k), draw.Solid(draw.Fade(metalEdge, 0.9)))
		thick := d.k * math.Sqrt(w.k) // a smaller one's blades are not as thin as its measures
		for i := range 6 {
			// Blades lean back against the turn, which is counterclockwise.
			a := float64(i) * 60
			blade := new(draw.Path).Move(o.Polar(eyeR*0.75*k, a)).
				Cube(o.Polar(rimR*0.62*k, a+6), o.Polar(rimR*0.86*k, a+34), o.Polar((rimR-3)*k, a+58))
			cv.Fill(draw.Stroke(blade, 7*thick), draw.Solid(metalEdge))
			cv.Fill(draw.Stroke(blade, 4*thick), draw.Solid(metal))
		}
		cv.Fill(draw.Circle(o, 17*k), draw.Solid(metalEdge))
		cv.Fill(draw.Circle(o, 14*k), draw.Conic{Center: o, Stops: draw.Even(metal, metalEdge, metal, metalEdge, metal)})
	})
}

// mostBubbles is how many there are when the eye is full of vapor, or of air.
const mostBubbles = 90

// vapor shows it in the eye; it collapses on its way out.
func (d *Drawing) vapor(sh *stage.Shelf, f *stage.Frame, s *State, w *wheel) {
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
		d.bubble(sh, f, w, r, b+d.turn, 3+4*(1-life)+float64(i%3), white)
	}
}

// air gathers in the eye and spreads from there.
func (d *Drawing) air(sh *stage.Shelf, f *stage.Frame, s *State, w *wheel) {
	for i := range int(mostBubbles * math.Sqrt(s.air())) {
		outer := eyeR + 8 + (rimR-eyeR-8)*s.air()
		r, b := spokes(i+7, 14, outer)
		d.bubble(sh, f, w, r, b+d.turn*0.7, 4+float64(i%4)*1.6, gray)
	}
}

func boolShare(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// bubble puts one into a wheel; radius and size are those in a single-stage pump's.
func (d *Drawing) bubble(sh *stage.Shelf, f *stage.Frame, w *wheel, r, bearing, size float64, col draw.Color) {
	px := max(1.5, math.Round(size*d.k*math.Sqrt(w.k)))
	art := sh.Get(fmt.Sprintf("cutaway/bubble/%.0f/%v", px, col), draw.Around(draw.Point{}, 2*px+4, 2*px+4), func(cv *draw.Canvas) {
		cv.Fill(draw.Circle(draw.Point{}, px), draw.Solid(metalEdge))
		cv.Fill(draw.Circle(draw.Point{}, px-1), draw.Solid(col))
	})
	f.Put(art, d.at(w.at.Polar(r*w.k, bearing)))
}
