package sound

import "math"

// Synth turns states into samples. It follows a state smoothly, so that no change clicks, and never goes
// beyond ±1.
type Synth struct {
	want, now State
	engine    float64 // phases, turns
	pump      float64
	motor     float64
	horn      [2]float64
	hornGain  float64
	beep      float64 // s left of the radio's tone
	beepGain  float64
	tone      float64
	seed      uint64
	low       [8]float64 // filters of the noises
	pebbles   [2]pebble
	next      int // pebble that falls next
	valve     strike
	brake     strike
	clash     strike
	started   bool
	muffle    float64
	inside    float64 // share of what is heard through the cab's wall
	gain      float64
	levels    [Sources]float64
}

// NewSynth makes a silent synthesizer.
func NewSynth() *Synth { return &Synth{seed: 0x9e3779b97f4a7c15} }

// Set says what is to be heard from now on. What had happened before the first state is not made up for.
func (s *Synth) Set(st State) {
	if s.started {
		s.events(&s.want, &st)
	}
	s.want, s.started = st, true
}

// events starts what is heard once. A count that falls is another attempt's.
func (s *Synth) events(was, is *State) {
	if is.Valves > was.Valves {
		s.valve.hit()
	}
	if is.Brake > was.Brake {
		s.brake.hit()
	}
	if is.Clash > was.Clash {
		s.clash.hit()
	}
	if is.Radio > was.Radio {
		s.beep = 0.16
	}
}

func (s *Synth) noise() float64 {
	s.seed ^= s.seed << 13
	s.seed ^= s.seed >> 7
	s.seed ^= s.seed << 17
	return float64(int64(s.seed)) / (1 << 63)
}

// follow moves a number toward its goal with a time constant in samples.
func follow(v *float64, goal, samples float64) { *v += (goal - *v) / samples }

// turn advances a phase, in turns, by one sample at a frequency.
func turn(phase, hz float64) float64 {
	phase += hz / Rate
	return phase - math.Floor(phase)
}

func sine(turns float64) float64 { return math.Sin(2 * math.Pi * turns) }

// soft bends loud samples below 1.
func soft(x float64) float64 { return x / (1 + math.Abs(x)) }

// Next is the next sample.
func (s *Synth) Next() float64 {
	s.settle()
	l := &s.levels
	mix := l[Engine]*s.engineNote() + l[Pump]*s.pumpNote() + l[Primer]*s.primerNote() +
		s.waters() + l[Gravel]*s.gravel() + s.strikes() + s.signals()
	follow(&s.muffle, mix, 14) // through the cab's wall the high notes are lost
	mix += (s.muffle*1.1 - mix) * s.inside
	return soft(mix * s.gain)
}

// settle moves everything toward what is wanted.
func (s *Synth) settle() {
	n, w := &s.now, &s.want
	follow(&n.EngineRPM, w.EngineRPM, 4000)
	follow(&n.Load, w.Load, 8000)
	follow(&n.PumpPSI, w.PumpPSI, 8000)
	follow(&n.Bypass, w.Bypass, 5000)
	follow(&n.Gravel, w.Gravel, 3000)
	follow(&n.Air, w.Air, 4000)
	follow(&n.Spit, w.Spit, 4000)
	follow(&n.Splash, w.Splash, 9000)
	follow(&n.Primer, w.Primer, 5000)
	follow(&s.gain, w.Level, 6000)
	inside := 0.0
	if w.Muffled {
		inside = 1
	}
	follow(&s.inside, inside, 5000)
	for i := range s.levels {
		follow(&s.levels[i], w.Mix.level(Source(i)), 2000)
	}
}
