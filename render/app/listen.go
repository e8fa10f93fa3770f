package app

import (
	"math"
	"strings"

	"steadyneedle/render/sound"
	"steadyneedle/render/view"
	"steadyneedle/sim/world"
)

// ear is what is heard where the candidate is, and what was heard a moment ago.
type ear struct {
	now    sound.State
	at     [sound.Sources]float64 // wall time at which a sound that is heard once sounded; 0: never
	stops  map[world.ControlID]bool
	brake  float64
	clash  float64
	jolts  float64 // of the transfer valve
	primed bool    // the first reading has been taken in
}

// shownFor is how long the caption of a sound that is heard once stays, in seconds.
const shownFor = 3

// listen takes in what is heard and tells the speaker.
func (a *App) listen() {
	if a.attempt == nil || a.attempt.Over() || !a.running() {
		a.ear.now = sound.State{}
	} else {
		a.hear()
	}
	if a.opt.Sound == nil {
		return
	}
	if fault := a.opt.Sound.Fault(); fault != "" {
		a.say(fault)
	}
	a.opt.Sound.Set(a.ear.now)
}

// hear makes the state of the sound from what is seen and heard now.
func (a *App) hear() {
	e, h := a.eyes, &a.ear
	level := func(name string) float64 {
		if v := e.Signal(name); !math.IsNaN(v) {
			return max(0, min(1, v))
		}
		return 0
	}
	if v := e.Signal("tach"); !math.IsNaN(v) {
		a.rpm = v
	}
	st := &h.now
	st.EngineRPM, st.Load = a.rpm, level("engine_load")
	if v := e.Signal("discharge_gauge"); !math.IsNaN(v) {
		st.PumpPSI = v
	} else {
		st.PumpPSI = 0
	}
	st.Bypass, st.Gravel, st.Air = level("bypass_sound"), level("gravel_sound"), level("air_sound")
	st.Spit, st.Splash = level("bleeder_air"), level("overflowing")
	st.Primer = 0
	if e.Signal("primer_run") > 0 {
		st.Primer = 1
	}
	inside := e.Place() == world.Cab
	st.Muffled, st.Horn = inside, inside && e.Named("horn") >= 0.5
	st.Level, st.Mix = a.opt.Level, a.opt.Mix
	a.strikes()
	st.Radio = 0
	for _, l := range a.attempt.Heard() {
		if !l.Mine && !l.Shown {
			st.Radio++
		}
	}
	h.primed = true
}

// strikes counts what is heard once: valves at their stops, the brake's air, gears.
func (a *App) strikes() {
	e, h := a.eyes, &a.ear
	once := func(s sound.Source, count *int) {
		if h.primed {
			*count++
			h.at[s] = max(a.wall, 1e-9)
		}
	}
	if h.stops == nil {
		h.stops = map[world.ControlID]bool{}
	}
	for i := range e.Controls {
		c := &e.Controls[i]
		if c.Kind != world.Handle && c.Kind != world.Lever && c.Kind != world.Wheel || !c.By.Has(e.Place()) {
			continue
		}
		id := world.ControlID(i)
		share := e.Share(id)
		at := share <= 0 || share >= 1
		if was, known := h.stops[id]; known && at && !was {
			once(sound.Valves, &h.now.Valves)
		}
		h.stops[id] = at
	}
	if set := math.Round(e.Named("parking_brake")); set != h.brake {
		if e.Place() == world.Cab {
			once(sound.Brake, &h.now.Brake)
		}
		h.brake = set
	}
	if n := e.Signal("transfer_jolts"); n > h.jolts {
		once(sound.Valves, &h.now.Valves)
		h.jolts = n
	}
	if n := e.Signal("clashes"); n > h.clash {
		once(sound.Gears, &h.now.Clash)
		h.clash = n
	}
}

// caption describes what is heard where one stands, the most pressing first; in a rated attempt the
// sounds, not their causes. At the panel, where no plan is in sight, who stands in the way comes before it.
func (a *App) caption() string {
	var recent [sound.Sources]bool
	for s, t := range a.ear.at {
		recent[s] = t > 0 && a.wall-t < shownFor
	}
	heard := sound.Heard(&a.ear.now, recent)
	most := 2
	var words []string
	if at, ok := a.screen.(*place); ok && at.street == nil && at.stands == world.Panel {
		for _, person := range view.InTheWay(a.eyes, a.attempt.Info().People) {
			words = append(words, "["+strings.TrimSuffix(person, ".")+"]")
			most--
		}
	}
	words = append(words, a.blowOffs()...)
	for _, s := range heard[:max(0, min(most, len(heard)))] {
		words = append(words, "["+sound.Caption(s, &a.ear.now, a.attempt.Info().Rated)+"]")
	}
	return strings.Join(words, " ")
}

// blowOffs tells of relief valves that let water out to the ground.
func (a *App) blowOffs() []string {
	var words []string
	for _, v := range [...]struct{ signal, sound, cause string }{
		{"intake_relief_open", "water gushes out under the intake", "the intake relief valve blows off"},
		{"thermal_open", "water runs out under the pump", "the thermal relief valve lets hot water out: stand clear"},
	} {
		switch {
		case !a.eyes.Lit(v.signal):
		case a.attempt.Info().Rated:
			words = append(words, "["+v.sound+"]")
		default:
			words = append(words, "["+v.cause+"]")
		}
	}
	return words
}

// mute turns sound off or on.
func (a *App) mute() {
	if a.opt.Sound == nil {
		return
	}
	if a.opt.Sound.Mute() {
		a.say("Sound is off. F4 turns it on.")
	} else {
		a.say("Sound is on.")
	}
}
