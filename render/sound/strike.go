package sound

import "math"

// strike is something heard once: it swells in a few milliseconds and dies away.
type strike struct {
	left float64 // s
	amp  float64 // follows the envelope, so that a second strike over the first does not click
	turn [2]float64
}

const strikeS = 1.2

func (k *strike) hit() { k.left = strikeS }

// envelope advances by a sample; half is the time in which it halves, in seconds.
func (k *strike) envelope(half float64) float64 {
	goal := 0.0
	if k.left > 0 {
		goal = math.Exp2(-(strikeS - k.left) / half)
		k.left -= 1.0 / Rate
	}
	follow(&k.amp, goal, 90)
	return k.amp
}

// strikes are a valve at its stop, the brake's air and grinding gears.
func (s *Synth) strikes() float64 {
	l := &s.levels
	x := 0.0
	if v := &s.valve; v.left > 0 || v.amp > 1e-5 {
		e := v.envelope(0.035)
		v.turn[0], v.turn[1] = turn(v.turn[0], 96), turn(v.turn[1], 410)
		x += l[Valves] * e * (0.7*sine(v.turn[0]) + 0.18*sine(v.turn[1]))
	}
	if b := &s.brake; b.left > 0 || b.amp > 1e-5 {
		e := b.envelope(0.16)
		w := s.noise()
		follow(&s.low[7], w, 3)
		x += l[Brake] * e * 0.5 * (w - s.low[7])
	}
	if c := &s.clash; c.left > 0 || c.amp > 1e-5 {
		e := c.envelope(0.28)
		c.turn[0], c.turn[1] = turn(c.turn[0], 187), turn(c.turn[1], 1310)
		teeth := math.Abs(sine(c.turn[0]))
		x += l[Gears] * e * (0.5*teeth*sine(c.turn[1]) + 0.35*soft(4*sine(c.turn[0])) + 0.3*teeth*s.noise())
	}
	return x
}
