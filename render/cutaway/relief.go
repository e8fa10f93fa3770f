package cutaway

import (
	"fmt"
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
)

// liftSteps is how finely the valve's lift is drawn.
const liftSteps = 40

// relief draws the valve in its barrel: water above the piston, the piston as far as it has lifted, the
// by-pass port that it uncovers, and the spring that the pilot loads.
func (d *Drawing) relief(sh *stage.Shelf, f *stage.Frame, s *State) {
	if s.Governor {
		d.blank(sh, f)
		return
	}
	lift := int(math.Round(clamp(s.ReliefLift) * liftSteps))
	key := fmt.Sprintf("cutaway/relief/%d/%d/%d/%v", lift, level(s.DischargePSI), level(s.IntakePSI), d.box)
	now := *s
	art := sh.Once("cutaway/relief", key, d.rect(barrel), func(cv *draw.Canvas) { d.paintRelief(cv, &now, float64(lift)/liftSteps) })
	f.Put(art, draw.Point{})
}

func (d *Drawing) paintRelief(cv *draw.Canvas, s *State, lift float64) {
	cv.Fill(draw.Round(d.rect(barrel), 6*d.k), draw.Solid(water(level(s.IntakePSI))))
	const seat, travel, thick = 34.0, 56.0, 24.0
	head := barrel.Y + seat + travel*lift
	cv.Fill(draw.Box(d.rect(draw.Rect{X: barrel.X, Y: barrel.Y, W: barrel.W, H: head - barrel.Y})), draw.Solid(water(level(s.DischargePSI))))
	// Seat, and the ports beside the piston, which is narrower below it.
	for _, x := range [...]float64{barrel.X, barrel.X + barrel.W - 12} {
		cv.Fill(draw.Box(d.rect(draw.Rect{X: x, Y: barrel.Y + seat - 6, W: 12, H: 12})), draw.Solid(metalEdge))
	}
	if lift > 0.012 {
		port := 26 * lift
		mix := draw.Mix(water(level(s.DischargePSI)), water(level(s.IntakePSI)), 0.5)
		for _, x := range [...]float64{barrel.X + 2, barrel.X + barrel.W - 2 - port/1.6} {
			cv.Fill(draw.Box(d.rect(draw.Rect{X: x, Y: head - 10, W: port / 1.6, H: thick + 26})), draw.Solid(mix))
		}
	}
	piston := d.rect(draw.Rect{X: barrel.X + 10, Y: head, W: barrel.W - 20, H: thick})
	cv.Fill(draw.Round(piston, 3*d.k), draw.Solid(black))
	cv.Fill(draw.Box(draw.Rect{X: piston.X, Y: piston.Y + 2, W: piston.W, H: 2}), draw.Solid(ring))
	foot := barrel.Y + barrel.H - 6
	coils := 7
	top := head + thick
	spring := make([]draw.Point, 0, 2*coils+2)
	for i := 0; i <= 2*coils; i++ {
		x := barrel.X + barrel.W/2 - 22
		if i%2 == 1 {
			x += 44
		}
		spring = append(spring, d.at(draw.Pt(x, top+(foot-top)*float64(i)/float64(2*coils))))
	}
	cv.Fill(draw.Stroke(draw.Polyline(spring...), 4.5*d.k), draw.Solid(black))
}

// blank is the body of an apparatus without the valve: nothing by-passes.
func (d *Drawing) blank(sh *stage.Shelf, f *stage.Frame) {
	art := sh.Get(fmt.Sprintf("cutaway/blank/%v", d.box), d.rect(barrel), func(cv *draw.Canvas) {
		cv.Fill(draw.Round(d.rect(barrel), 6*d.k), draw.Solid(metalEdge))
	})
	f.Put(art, draw.Point{})
}
