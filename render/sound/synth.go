package sound

import "math"

// Rate is samples a second.
const Rate = 48000

// State is what is to be heard, as far as it is heard where one stands. Levels are 0 to 1.
type State struct {
	EngineRPM           float64
	Load                float64
	PumpPSI             float64 // pump discharge: the pump's whine
	Bypass, Gravel, Air float64
	Horn                bool
	Radio               int  // rises by one for each message that came by radio
	Muffled             bool // inside the cab
	Level               float64
}

// Synth turns states into samples. It follows a state smoothly and never goes beyond ±1.
type Synth struct {
	want, now State
	engine    float64 // phases, turns
	pump      float64
	horn      [2]float64
	beep      float64 // s left of the radio's tone
	tone      float64
	heard     int
	seed      uint64
	low       [4]float64 // filters of the noises
	pebble    float64
	ring      float64
	muffle    float64
	gain      float64
}

// NewSynth makes a silent synthesizer.
func NewSynth() *Synth { return &Synth{seed: 0x9e3779b97f4a7c15} }

// Set says what is to be heard from now on.
func (s *Synth) Set(st State) { s.want = st }

func (s *Synth) noise() float64 {
	s.seed ^= s.seed << 13
	s.seed ^= s.seed >> 7
	s.seed ^= s.seed << 17
	return float64(int64(s.seed)) / (1 << 63)
}

// follow moves a number toward its goal with a time constant in samples.
func follow(v *float64, goal, samples float64) { *v += (goal - *v) / samples }

// Next is the next sample.
func (s *Synth) Next() float64 {
	n, w := &s.now, &s.want
	follow(&n.EngineRPM, w.EngineRPM, 4000)
	follow(&n.Load, w.Load, 8000)
	follow(&n.PumpPSI, w.PumpPSI, 8000)
	follow(&n.Bypass, w.Bypass, 5000)
	follow(&n.Gravel, w.Gravel, 3000)
	follow(&n.Air, w.Air, 4000)
	follow(&s.gain, w.Level, 6000)
	mix := s.engineNote() + s.pumpNote() + s.waters() + s.gravel() + s.signals()
	if w.Muffled { // through the cab's wall the high notes are lost
		follow(&s.muffle, mix, 14)
		mix = s.muffle * 1.1
	} else {
		s.muffle = mix
	}
	return soft(mix * s.gain)
}

// soft bends loud samples below 1.
func soft(x float64) float64 { return x / (1 + math.Abs(x)) }

// engineNote is a six-cylinder four-stroke diesel: three firings a turn, and its half orders.
func (s *Synth) engineNote() float64 {
	n := &s.now
	if n.EngineRPM < 150 {
		return 0
	}
	s.engine = turn(s.engine, n.EngineRPM/60/2) // one cycle is two turns
	x := 0.0
	for _, h := range [...]struct{ order, level float64 }{{1, 0.10}, {3, 0.34}, {6, 0.42}, {9, 0.16}, {12, 0.18}, {18, 0.08}} {
		x += h.level * math.Sin(2*math.Pi*s.engine*h.order)
	}
	follow(&s.low[0], s.noise(), 30)
	rough := s.low[0] * 2.2 * (0.5 + 0.5*math.Abs(math.Sin(2*math.Pi*s.engine*3)))
	return (x + rough) * (0.22 + 0.22*n.Load + 0.16*n.EngineRPM/2200)
}

// pumpNote is the gears' and the impeller's whine, louder with pressure.
func (s *Synth) pumpNote() float64 {
	level := min(1, s.now.PumpPSI/300) * 0.1
	s.pump = turn(s.pump, s.now.EngineRPM/60*14)
	return level * (math.Sin(2*math.Pi*s.pump) + 0.4*math.Sin(4*math.Pi*s.pump))
}

// waters are the rush in the by-pass and the hiss of air.
func (s *Synth) waters() float64 {
	w := s.noise()
	follow(&s.low[1], w, 9)
	follow(&s.low[2], s.low[1], 40)
	rush := (s.low[1] - s.low[2]) * 1.6 * s.now.Bypass
	follow(&s.low[3], w, 2.2)
	return rush + (w-s.low[3])*0.35*s.now.Air
}

// gravel is pebbles against the casing: knocks at random times, each a short ring.
func (s *Synth) gravel() float64 {
	if s.now.Gravel < 0.01 {
		return 0
	}
	if s.noise() > 1-0.004*s.now.Gravel {
		s.pebble = 0.5 + 0.5*math.Abs(s.noise())
		s.ring = 0
	}
	s.pebble *= 0.9965
	s.ring = turn(s.ring, 1900)
	return s.pebble * 0.8 * s.now.Gravel * math.Sin(2*math.Pi*s.ring)
}

// signals are the horn and the radio's tone.
func (s *Synth) signals() float64 {
	x := 0.0
	if s.want.Horn {
		for i, hz := range [...]float64{311, 392} {
			s.horn[i] = turn(s.horn[i], hz)
			x += 0.35 * soft(3*math.Sin(2*math.Pi*s.horn[i]))
		}
	}
	if s.want.Radio > s.heard {
		s.heard, s.beep = s.want.Radio, 0.16
	}
	if s.beep > 0 {
		s.beep -= 1.0 / Rate
		s.tone = turn(s.tone, 1050)
		x += 0.22 * math.Sin(2*math.Pi*s.tone)
	}
	return x
}

// turn advances a phase, in turns, by one sample at a frequency.
func turn(phase, hz float64) float64 {
	phase += hz / Rate
	return phase - math.Floor(phase)
}
