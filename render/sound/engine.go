package sound

import "math"

// engineNote is a six-cylinder four-stroke diesel: three firings a turn, their harmonics and half orders.
// Load brings out the firing and the clatter, speed the whole.
func (s *Synth) engineNote() float64 {
	n := &s.now
	running := max(0, min(1, (n.EngineRPM-60)/140)) // it dies away below cranking speed
	if running == 0 {
		return 0
	}
	s.engine = turn(s.engine, n.EngineRPM/60/2) // one cycle is two turns
	x := 0.0
	for _, h := range [...]struct{ order, level, loaded float64 }{
		{1, 0.10, 0.02}, {3, 0.30, 0.12}, {6, 0.34, 0.30}, {9, 0.14, 0.12}, {12, 0.14, 0.20}, {18, 0.05, 0.16},
	} {
		x += (h.level + h.loaded*n.Load) * sine(s.engine*h.order)
	}
	follow(&s.low[0], s.noise(), 30)
	rough := s.low[0] * (1.6 + 1.6*n.Load) * (0.5 + 0.5*math.Abs(sine(s.engine*3)))
	return running * (x + rough) * (0.20 + 0.16*n.Load + 0.18*n.EngineRPM/2200)
}

// pumpNote is the gears' and the impeller's whine: fourteen teeth a turn, louder with pressure.
func (s *Synth) pumpNote() float64 {
	level := min(1, s.now.PumpPSI/300) * 0.1
	s.pump = turn(s.pump, s.now.EngineRPM/60*14)
	return level * (sine(s.pump) + 0.4*sine(2*s.pump))
}

// primerNote is an electric motor under load: a buzz at its commutator.
func (s *Synth) primerNote() float64 {
	s.motor = turn(s.motor, 148)
	return s.now.Primer * 0.22 * (soft(2.5*sine(s.motor)) + 0.5*sine(s.motor*5) + 0.25*sine(s.motor*11))
}
