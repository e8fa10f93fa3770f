package rig

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/state"
)

// Governor is the electronic pressure governor. In pressure mode it works the engine's speed so that the
// discharge stands at the setting; in speed mode it holds a speed and leaves the pressure alone. It
// begins, and after each loss of readiness stands, at idle until a hand asks for more.
//
// When water runs short it must not speed the engine up without end: with the intake low and the pressure
// not held it cuts back, and resumes when the intake stands again. Until it has noticed it speeds up,
// and over-runs by that when the water is back at once.
//
// Pressures are in psi, speeds in engine rpm: what its display counts in.
type Governor struct {
	def       GovernorDef
	idle, top float64

	pressure bool // mode
	idling   bool // at idle until a hand asks for more
	psi, rpm float64
	aim      float64 // psi: what it works for now, on the way to the setting
	sum      float64 // rpm: the part of the demand that stays
	demand   float64 // rpm
	felt, in float64 // psi: discharge and intake as its senders give them
	before   GovernorHands
	held     float64 // s for which raise or lower has been held
	short    float64 // s for which water has been short
	back     float64 // s for which the intake has stood again
	gone     float64 // s without any pressure
	cut      bool    // cutting back for lack of water
	dropped  bool    // gone to idle for lack of water
}

// GovernorHands is what hands do to the governor's head. The four buttons act when they are pressed;
// raise and lower go on while they are held.
type GovernorHands struct {
	Pressure                   bool // mode selected: pressure, or else speed
	Raise, Lower, Preset, Idle bool
}

// NewGovernor builds a governor at idle.
func NewGovernor(d GovernorDef, e EngineDef) Governor {
	g := Governor{def: d, idle: e.IdleRPM, top: e.GovernedRPM, rpm: e.IdleRPM, psi: d.LowestPSI, idling: true}
	g.sum, g.demand = g.idle, g.idle
	return g
}

// repeatS is how long a button is held before it repeats, s (assumption).
const repeatS = 0.5

// Step advances by dt seconds with the pump ready or not, and discharge and intake pressure in psi; it
// gives the engine's throttle, 0 (idle) to 1 (governed speed).
func (g *Governor) Step(dt float64, ready bool, h GovernorHands, discharge, intake float64) float64 {
	g.felt = lag(g.felt, discharge, g.def.SenseS, dt)
	g.in = lag(g.in, intake, g.def.SenseS, dt)
	g.choose(h.Pressure)
	g.buttons(dt, h)
	g.before = h
	if !ready {
		g.rest()
		g.dropped = false
	}
	switch {
	case g.idling:
		g.demand, g.sum = g.idle, g.idle
	case g.pressure:
		g.watch(dt)
		g.hold(dt)
	default:
		most := float64(g.def.RampRPMS * dt)
		g.demand += bound.Within(g.rpm-g.demand, -float64(2*most), most)
		g.sum = g.demand
	}
	return (g.demand - g.idle) / (g.top - g.idle)
}

// choose changes the mode without a bump: it takes over what stands.
func (g *Governor) choose(pressure bool) {
	if pressure == g.pressure {
		return
	}
	g.pressure = pressure
	g.cut, g.short = false, 0
	g.take()
}

// take makes what stands now the setting.
func (g *Governor) take() {
	g.psi = bound.Within(g.felt, g.def.LowestPSI, g.def.HighestPSI)
	g.aim, g.sum = g.felt, g.demand
	g.rpm = bound.Within(g.demand, g.idle, g.top)
}

// rest goes to idle until a hand asks for more.
func (g *Governor) rest() {
	g.idling, g.cut = true, false
	g.short, g.back, g.gone = 0, 0, 0
	g.rpm, g.psi = g.idle, g.def.LowestPSI
}

// wake ends idling and takes over what stands.
func (g *Governor) wake() {
	g.dropped = false
	if g.idling || g.cut {
		g.idling, g.cut = false, false
		g.short, g.gone = 0, 0
		g.take()
	}
}

func (g *Governor) buttons(dt float64, h GovernorHands) {
	if h.Idle {
		g.rest()
		g.dropped = false
		return
	}
	if h.Preset && !g.before.Preset {
		g.wake()
		if g.pressure {
			g.psi = g.def.PresetPSI
		} else {
			g.rpm = g.def.PresetRPM
		}
	}
	switch {
	case h.Raise == h.Lower: // neither, or both, which cancel
		g.held = 0
		return
	case h.Lower && g.idling:
		return
	}
	g.wake()
	way := 1.0
	if h.Lower {
		way = -1
	}
	if g.held == 0 {
		g.nudge(float64(way*g.def.StepPSI), float64(way*g.def.StepRPM))
	} else if g.held >= repeatS {
		g.nudge(float64(float64(way*g.def.HoldPSIS)*dt), float64(float64(way*g.def.HoldRPMS)*dt))
	}
	g.held += dt
}

func (g *Governor) nudge(psi, rpm float64) {
	if g.pressure {
		g.psi = bound.Within(g.psi+psi, g.def.LowestPSI, g.def.HighestPSI)
	} else {
		g.rpm = bound.Within(g.rpm+rpm, g.idle, g.top)
	}
}

// hold works the demand in pressure mode: proportional and integral, and no windup at either end.
func (g *Governor) hold(dt float64) {
	most := float64(g.def.RampPSIS * dt)
	g.aim += bound.Within(g.psi-g.aim, -most, most)
	if g.cut {
		g.aim = bound.AtMost(g.aim, g.felt)
		floor := bound.AtMost(g.demand, bound.AtLeast(g.idle, g.def.CutRPM))
		g.demand = bound.AtLeast(floor, g.demand-float64(g.def.CutRPMS*dt))
		g.sum = g.demand
		return
	}
	off := float64(g.def.GainRPMPSI * (g.aim - g.felt))
	g.sum = bound.Within(g.sum+float64(off*(dt/g.def.ResetS)), g.idle, bound.AtMost(g.top, g.demand+float64(g.def.RiseRPMS*g.def.ResetS)))
	want := bound.Within(g.sum+off, g.idle, g.top)
	g.demand = bound.AtMost(want, g.demand+float64(g.def.RiseRPMS*dt))
}

// recoverPSI is how far above the low-intake limit the intake must stand before the water counts as back
// (assumption).
const recoverPSI = 5

// watch looks after the water.
func (g *Governor) watch(dt float64) {
	switch {
	case g.cut && g.in >= g.def.LowIntakePSI+recoverPSI:
		g.back += dt
		if g.back >= g.def.BackS {
			g.cut, g.short = false, 0
			g.aim = g.felt
		}
	case g.cut:
		g.back = 0
	case g.in < g.def.LowIntakePSI && g.aim-g.felt > g.def.ShortPSI:
		g.short += dt
		if g.short >= g.def.LowAfterS {
			g.cut, g.back = true, 0
		}
	default:
		g.short = 0
	}
	if g.felt >= g.def.LostPSI {
		g.gone = 0
	} else if g.gone += dt; g.gone >= g.def.LostS {
		g.rest()
		g.dropped = true
	}
}

// Pressure reports whether it is in pressure mode.
func (g *Governor) Pressure() bool { return g.pressure }

// Idling reports whether it stands at idle until a hand asks for more.
func (g *Governor) Idling() bool { return g.idling }

// SetPSI is the pressure set, and 0 while it idles or holds a speed.
func (g *Governor) SetPSI() float64 {
	if g.idling || !g.pressure {
		return 0
	}
	return g.psi
}

// SetRPM is the speed set, and 0 while it idles or holds a pressure.
func (g *Governor) SetRPM() float64 {
	if g.idling || g.pressure {
		return 0
	}
	return g.rpm
}

// LowWater reports whether its lamp tells of a lack of water.
func (g *Governor) LowWater() bool { return g.cut || g.dropped }

// Walk visits the governor's state.
func (g *Governor) Walk(w *state.Walker) {
	for _, x := range [...]*float64{&g.psi, &g.rpm, &g.aim, &g.sum, &g.demand, &g.felt, &g.in, &g.held, &g.short, &g.back, &g.gone} {
		w.Float(x)
	}
	b := &g.before
	for _, x := range [...]*bool{&g.pressure, &g.idling, &g.cut, &g.dropped, &b.Pressure, &b.Raise, &b.Lower, &b.Preset, &b.Idle} {
		w.Bool(x)
	}
}
