package sound

// caption is what stands on the screen for a sound.
type caption struct{ sound, cause string }

// captions of every source; an empty cause is the sound's own name.
var captions = [Sources]caption{
	Gravel: {"rattle from the pump casing", "gravel: the pump cavitates"},
	Air:    {"hiss at the panel", "hiss of air"},
	Bypass: {"water rushing behind the panel", "water rushing through the by-pass"},
	Splash: {"water splashing on the road", "the tank overflows at the tires"},
	Gears:  {"harsh grinding from below", "gears grind: the shift was forced"},
	Primer: {"electric motor running", "primer motor running"},
	Horn:   {"horn", ""},
	Brake:  {"short blast of air", "air of the spring brake"},
	Valves: {"dull knock at the panel", "a valve at its stop"},
	Engine: {"engine idling", ""},
	Pump:   {"whine from the pump", ""},
	Radio:  {"radio tone", ""},
}

// order is what a caption is about when more is heard than fits: trouble first, the engine last. The
// radio's tone needs none while its message stands on the screen.
var order = [...]Source{Gravel, Gears, Air, Bypass, Splash, Horn, Primer, Brake, Valves, Engine, Pump, Radio}

// Caption is what stands on the screen for a source; in a rated attempt it describes the sound, not its
// cause.
func Caption(s Source, st *State, rated bool) string {
	switch {
	case s == Engine && st.EngineRPM >= 1500:
		return "engine loud"
	case s == Engine && st.EngineRPM >= 850:
		return "engine working"
	case s == Air && st.Spit > st.Air:
		if rated {
			return "spitting at the panel"
		}
		return "the bleeder spits air"
	case rated || captions[s].cause == "":
		return captions[s].sound
	}
	return captions[s].cause
}

// Heard lists what a person would name in a state, the most pressing first. recent says which of the
// sounds that are heard once sounded just now.
func Heard(st *State, recent [Sources]bool) []Source {
	loud := recent
	loud[Gravel] = st.Gravel > 0.15
	loud[Air] = st.Air > 0.15 || st.Spit > 0.15
	loud[Bypass] = st.Bypass > 0.1
	loud[Splash] = st.Splash > 0.1
	loud[Primer] = st.Primer > 0.1
	loud[Horn] = st.Horn
	loud[Engine] = st.EngineRPM > 300
	loud[Pump] = st.PumpPSI > 250
	var list []Source
	for _, s := range order {
		if loud[s] {
			list = append(list, s)
		}
	}
	return list
}
