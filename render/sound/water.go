package sound

import "math"

// waters are the rush in the by-pass, the hiss of air, the bleeder's spitting and water on the road.
func (s *Synth) waters() float64 {
	n, l := &s.now, &s.levels
	w := s.noise()
	follow(&s.low[1], w, 9)
	follow(&s.low[2], s.low[1], 40)
	rush := (s.low[1] - s.low[2]) * 1.6 * n.Bypass
	follow(&s.low[3], w, 2.2)
	hiss := w - s.low[3]
	follow(&s.low[4], w, 1800) // the bleeder's spitting comes and goes
	spit := hiss * min(1, math.Abs(s.low[4])*60) * n.Spit
	follow(&s.low[5], w, 4)
	follow(&s.low[6], s.low[5], 18)
	splash := (s.low[5] - s.low[6]) * 0.5 * n.Splash
	return l[Bypass]*rush + l[Air]*(0.35*hiss*n.Air+0.3*spit) + l[Splash]*splash
}

// pebble is one knock against the casing and its short ring.
type pebble struct{ loud, ring float64 }

// gravel is pebbles against the casing: knocks at random times. A new one takes the voice that has rung
// the longest, so that none is cut off while it is loud.
func (s *Synth) gravel() float64 {
	if s.now.Gravel < 1e-4 {
		return 0
	}
	if s.noise() > 1-0.004*s.now.Gravel {
		s.pebbles[s.next] = pebble{loud: 0.5 + 0.5*math.Abs(s.noise())}
		s.next = (s.next + 1) % len(s.pebbles)
	}
	x := 0.0
	for i := range s.pebbles {
		p := &s.pebbles[i]
		p.loud *= 0.9965
		p.ring = turn(p.ring, [...]float64{1900, 1640}[i])
		x += p.loud * sine(p.ring)
	}
	return x * 0.6 * s.now.Gravel
}
