package sound

// signals are the horn, two notes together, and the radio's tone.
func (s *Synth) signals() float64 {
	goal := 0.0
	if s.want.Horn {
		goal = 1
	}
	follow(&s.hornGain, goal, 300)
	x := 0.0
	if s.hornGain > 1e-5 {
		for i, hz := range [...]float64{311, 392} {
			s.horn[i] = turn(s.horn[i], hz)
			x += s.levels[Horn] * s.hornGain * 0.35 * soft(3*sine(s.horn[i]))
		}
	}
	goal = 0
	if s.beep > 0 {
		s.beep -= 1.0 / Rate
		goal = 1
	}
	follow(&s.beepGain, goal, 150)
	if s.beepGain > 1e-5 {
		s.tone = turn(s.tone, 1050)
		x += s.levels[Radio] * s.beepGain * 0.22 * sine(s.tone)
	}
	return x
}
