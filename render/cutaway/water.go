package cutaway

import (
	"fmt"
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// fill colors the water by its pressure.
func (d *Drawing) fill(sh *stage.Shelf, f *stage.Frame, s *State) {
	p := d.plan
	d.put(sh, f, "back", level(s.DischargePSI*0.15), &p.recirc)
	suction := []*way{&p.intake, &p.tank, &p.bypass}
	pressed := []*way{&p.relief, &p.discharge}
	if p.two() {
		suction = append(suction, &p.branch)
		pressed = append(pressed, &p.high, &p.second)
	}
	d.put(sh, f, "suction", level(s.IntakePSI), suction...)
	d.flatten(sh, f, s)
	if p.two() {
		_, gives := s.stage(0, true)
		takes, _ := s.stage(1, true)
		d.put(sh, f, "between", level(takes), &p.cross, &p.behind)
		d.put(sh, f, "first", level(gives), &p.low)
	}
	d.put(sh, f, "pressed", level(s.DischargePSI), pressed...)
}

// put fills ways that stand under one pressure.
func (d *Drawing) put(sh *stage.Shelf, f *stage.Frame, name string, level int, ways ...*way) {
	art := sh.Once("cutaway/"+name, fmt.Sprintf("cutaway/%s/%d/%v/%d", name, level, d.box, len(d.plan.wheels)), d.box, func(cv *draw.Canvas) {
		for _, w := range ways {
			cv.Fill(draw.Stroke(d.path(w), w.bore*d.k), draw.Solid(water(level)))
		}
	})
	f.Put(art, draw.Point{})
}

// flatten draws a soft supply hose, at the left end of the intake, as round as its filling lets it be.
func (d *Drawing) flatten(sh *stage.Shelf, f *stage.Frame, s *State) {
	if s.Draft || s.SupplyFill > 0.97 {
		return
	}
	flat := int(math.Round(clamp(1-s.SupplyFill) * 12))
	box := d.rect(draw.Rect{X: 0, Y: suctionY - wide, W: 72, H: 2 * wide})
	art := sh.Once("cutaway/flat", fmt.Sprintf("cutaway/flat/%d/%d/%v", flat, level(s.IntakePSI), d.box), box, func(cv *draw.Canvas) {
		half := (wide/2)*(1-0.86*float64(flat)/12) + 2
		outer := d.rect(draw.Rect{X: -2, Y: suctionY - wide/2 - wall - 2, W: 62, H: wide + 2*wall + 4})
		cv.Fill(draw.Box(outer), draw.Solid(theme.Paper.Sheet))
		sides := func() (*draw.Path, *draw.Path, *draw.Path) {
			a, b := d.at(draw.Pt(0, suctionY-half)), d.at(draw.Pt(0, suctionY+half))
			c, e := d.at(draw.Pt(62, suctionY-wide/2)), d.at(draw.Pt(62, suctionY+wide/2))
			m := d.at(draw.Pt(40, 0)).X
			upper := new(draw.Path).Move(a).Cube(draw.Pt(m, a.Y), draw.Pt(m, c.Y), c)
			lower := new(draw.Path).Move(e).Cube(draw.Pt(m, e.Y), draw.Pt(m, b.Y), b)
			whole := new(draw.Path).Move(a).Cube(draw.Pt(m, a.Y), draw.Pt(m, c.Y), c).Line(e).Cube(draw.Pt(m, e.Y), draw.Pt(m, b.Y), b).Close()
			return upper, lower, whole
		}
		upper, lower, whole := sides()
		cv.Fill(whole, draw.Solid(water(level(s.IntakePSI))))
		for _, side := range [...]*draw.Path{upper, lower} {
			cv.Fill(draw.Stroke(side, wall*d.k), draw.Solid(jacket))
		}
	})
	f.Put(art, draw.Point{})
}

// tank draws its level.
func (d *Drawing) tank(sh *stage.Shelf, f *stage.Frame, s *State) {
	t := d.rect(tankBox)
	px := int(math.Round(t.H * clamp(s.TankShare)))
	art := sh.Once("cutaway/tank", fmt.Sprintf("cutaway/tank/%d/%v", px, d.box), t, func(cv *draw.Canvas) {
		r := draw.Rect{X: t.X, Y: t.Bottom() - float64(px), W: t.W, H: float64(px)}
		cv.Fill(draw.Box(r), draw.Solid(water(1)))
		cv.Fill(draw.Box(draw.Rect{X: r.X, Y: r.Y, W: r.W, H: 2}), draw.Solid(water(14)))
	})
	f.Put(art, draw.Point{})
}

// flow is water that runs along a way.
type flow struct {
	way   *way
	speed func(s *State) float64 // units of the sheet a second
}

// flowsOf is all that runs in a plan, each way at its own speed.
func flowsOf(p *plan) []flow {
	// A bore of the sheet stands for a pipe: 64 units are 5 in, so a foot is 154 units. The ways inside a two-stage
	// pump are drawn narrower than they are.
	const perFoot, inside = 154 / Slowed, 3.5
	along := func(w *way, inches float64, gpm func(s *State) float64) flow {
		return flow{w, func(s *State) float64 { return 0.4085 * gpm(s) / (inches * inches) * perFoot }}
	}
	relief := func(s *State) float64 { return s.ReliefGPM }
	list := []flow{
		along(&p.intake, 5, func(s *State) float64 { return s.IntakeGPM }),
		along(&p.tank, 3.1, func(s *State) float64 { return s.TankToPumpGPM }),
		along(&p.discharge, 5, func(s *State) float64 { return s.DischargeGPM }),
		along(&p.relief, 3.1, relief),
		along(&p.bypass, 3.1, relief),
		along(&p.recirc, 1.4, func(s *State) float64 { return s.RecircGPM + s.TankFillGPM }),
	}
	if !p.two() {
		return list
	}
	aside := func(s *State) float64 { return (1 - s.Series) / 2 * s.pumpGPM() } // of either impeller, past the other
	through := func(s *State) float64 { return (1 + s.Series) / 2 * s.pumpGPM() }
	return append(list,
		along(&p.branch, inside, aside), along(&p.behind, inside, aside), along(&p.high, inside, aside),
		along(&p.low, inside, through), along(&p.second, inside, through),
		along(&p.cross, inside, func(s *State) float64 { return s.Series * s.pumpGPM() }),
	)
}

// streaks run with the water.
func (d *Drawing) streaks(sh *stage.Shelf, f *stage.Frame, s *State) {
	for i := range d.flows {
		if v := d.flows[i].speed(s); math.Abs(v) >= 0.15 {
			d.run1(sh, f, d.flows[i].way, d.run[i], v)
		}
	}
}

// gap is how far streaks follow each other, units of the sheet.
const gap = 46.0

func (d *Drawing) run1(sh *stage.Shelf, f *stage.Frame, w *way, run, v float64) {
	size := min(w.bore*0.3, 15) * d.k
	art := d.streak(sh, size)
	length := w.length()
	begin := math.Mod(run, gap)
	if begin < 0 {
		begin += gap
	}
	lanes := [...]float64{-0.25, 0.25}
	for n := begin; n < length; n += gap {
		for k, lane := range lanes {
			if w.bore <= thin && k > 0 {
				break
			}
			at := n + float64(k)*gap/2
			if at > length {
				continue
			}
			p, dir := w.along(at)
			side := lane * w.bore
			if w.bore <= thin {
				side = 0
			}
			p = p.Polar(side, dir+90)
			if v < 0 {
				dir += 180
			}
			if on := d.at(p); d.box.Inset(size + 5).Has(on) {
				f.Turn(art, on, dir)
			}
		}
	}
}

// streak is a chevron that points the way; light with a dark edge, so that it shows on every depth.
func (d *Drawing) streak(sh *stage.Shelf, size float64) *stage.Art {
	return sh.Get(fmt.Sprintf("cutaway/streak/%.1f", size), draw.Around(draw.Point{}, 2*size+8, 2*size+8), func(cv *draw.Canvas) {
		chevron := draw.Polyline(draw.Pt(-size*0.55, size*0.4), draw.Pt(0, -size*0.4), draw.Pt(size*0.55, size*0.4))
		cv.Fill(draw.Stroke(chevron, max(4, size*0.34)), draw.Solid(draw.Fade(theme.Paper.Ink, 0.75)))
		cv.Fill(draw.Stroke(chevron, max(2, size*0.18)), draw.Solid(white))
	})
}
