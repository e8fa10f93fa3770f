package app

import (
	"math"

	"steadyneedle/render/sound"
	"steadyneedle/sim/world"
)

// quiet is the level that sound begins at.
const quiet = 0.3

// listen tells the speaker what is heard where the candidate is.
func (a *App) listen() {
	if a.opt.Sound == nil {
		return
	}
	if fault := a.opt.Sound.Fault(); fault != "" {
		a.say(fault)
	}
	if a.attempt == nil || a.attempt.Over() || !a.running() {
		a.opt.Sound.Set(sound.State{})
		return
	}
	e := a.eyes
	seen := func(name string) float64 {
		if v := e.Signal(name); !math.IsNaN(v) {
			return v
		}
		return 0
	}
	if v := e.Signal("tach"); !math.IsNaN(v) {
		a.rpm = v
	}
	st := sound.State{
		EngineRPM: a.rpm, Load: min(1, max(0, a.rpm-700)/1500), PumpPSI: seen("discharge_gauge"),
		Bypass: seen("bypass_sound"), Gravel: seen("gravel_sound"), Air: max(seen("air_sound"), seen("bleeder_air")),
		Muffled: e.Place() == world.Cab, Horn: e.Place() == world.Cab && e.Named("horn") >= 0.5, Level: quiet,
	}
	for _, l := range a.attempt.Heard() {
		if !l.Mine && !l.Shown {
			st.Radio++
		}
	}
	a.opt.Sound.Set(st)
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
