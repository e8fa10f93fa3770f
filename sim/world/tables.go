package world

// ControlsOf lists every control of a world built from s, by ControlID.
func ControlsOf(s *Setup) []Control {
	list := append([]Control(nil), commonControls...)
	list = append(list, groundControls...)
	list = append(list, faultControls...)
	for n := 1; n <= len(s.Rig.Discharges); n++ {
		list = append(list, dischargeControls(n)...)
		if s.Ground.Lay.Holds(n) {
			list[len(list)-perDischarge+2].Start = 0 // its cap is off
		}
	}
	for n := 1; n <= s.Nozzles(); n++ {
		list = append(list, nozzleControls(n)...)
	}
	for i := range s.Ground.Lay {
		list = append(list, laidControls(s.Ground.Lay, i)...)
	}
	for i := range s.Ground.People {
		list = append(list, personControl(&s.Ground.People[i]))
	}
	list = append(list, candidateSpeech...)
	list = append(list, othersSpeech...)
	fit(list, &s.Rig)
	s.fitLoads(&list[lineHose])
	for _, p := range s.pieces() {
		c := &list[supplyLength]
		c.Options, c.Max = append(c.Options[:len(c.Options):len(c.Options)], p.name()), c.Max+1
	}
	if s.Ground.Line.None() && s.Ground.Lay.FirstLine() < 0 {
		list[secondLine].Missing = "no line is laid that a second could hang on"
	}
	return list
}

// SignalsOf lists every signal of a world built from s, by SignalID: first what the plant and the
// ground tell, then each control under its own name, then NAME_value for phrases that carry a number,
// then NAME_heard for what others say or show: how often the candidate has heard or seen it.
func SignalsOf(s *Setup) []Signal {
	sources := sourcesOf(s)
	list := make([]Signal, len(sources))
	for i := range sources {
		list[i] = sources[i].Signal
	}
	return list
}

func sourcesOf(s *Setup) []source {
	list := append([]source(nil), plantSignals...)
	for n := 1; n <= len(s.Rig.Discharges); n++ {
		list = append(list, dischargeSignals(n)...)
	}
	for n := 1; n <= s.Nozzles(); n++ {
		list = append(list, nozzleSignals(n)...)
	}
	for i := range s.Ground.Lay {
		list = append(list, laidSignals(s.Ground.Lay, i)...)
	}
	list = append(list, bodySignals...)
	list = append(list, peopleSignals...)
	controls := ControlsOf(s)
	for i := range controls {
		list = append(list, source{Signal: controls[i].signal()})
	}
	for i := range controls {
		if c := &controls[i]; c.CarriesNumber() {
			list = append(list, source{
				Signal{c.Name + "_value", c.Unit, c.perceived(), "last number said"},
				kept(func(w *World) *float64 { return &w.number[i] })})
		}
	}
	for i := range controls {
		if c := &controls[i]; c.said() && c.Speaker != Candidate {
			list = append(list, source{
				Signal{c.Name + "_heard", "", Anywhere, "times heard or seen: " + c.Label},
				kept(func(w *World) *float64 { return &w.heard[i] })})
		}
	}
	return list
}

// Whole reports whether the control takes whole numbers alone: its positions are numbered.
func (c *Control) Whole() bool { return c.Kind == Choice || c.Kind == Switch || c.Kind == Walk }

// said reports whether the control is a phrase or a gesture.
func (c *Control) said() bool { return c.Kind == Speech || c.Kind == Gesture }

// CarriesNumber reports whether a number goes with the phrase.
func (c *Control) CarriesNumber() bool { return c.Kind == Speech && c.Max > 1 }

// perceived is from where a person knows the state of the control.
func (c *Control) perceived() Reach {
	switch {
	case c.said() && c.Speaker != Candidate:
		return Nowhere // what was given; what was heard is a signal of its own
	case c.said() || c.Kind == Walk || c.worn():
		return Anywhere
	}
	return c.By | c.Seen
}

// worn reports whether the candidate carries the thing about.
func (c *Control) worn() bool {
	switch c.Name {
	case "clothing", "helmet", "portable_radio", "wrench", "adapters", "look_round":
		return true
	}
	return false
}

func (c *Control) signal() Signal {
	if c.said() {
		return Signal{c.Name, "", c.perceived(), "times given: " + c.Label}
	}
	return Signal{c.Name, c.Unit, c.perceived(), c.Label}
}

// Nozzles is the number of nozzle controls: one for each branch of a wye, and at least two, so that a
// drill whose variants have one or two nozzles speaks of both in one set of words.
func (s *Setup) Nozzles() int { return max(2, len(s.Ground.Line.Branches)) }
