package rig

import (
	"math"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

// Relief is the discharge relief valve. A pilot feels the discharge pressure; above the setting it
// lets the main valve lift in proportion, and water runs back to the pump's intake.
//
// It is stepped once per network step with the pressure of the step before, so constants that look calm
// at 240 steps a second must be tried at 3840.
//
// The lags must be short. A hydrant with its hose holds a column of water that swings against the
// elasticity of the lines, at some 5 to 20 rad/s, and nothing but a little loss in the hoses' walls damps
// it while the nozzles are all but shut. The valve takes pressure from discharge to intake; a valve that
// follows the swing late by τ gives back part of that in phase with the column's motion, as a negative
// resistance in proportion to ωτ/(1+ω²τ²), and the swing grows until the valve meets its stops. A lag of
// a few tenths of a second is the worst there is; some hundredths are what a chamber of 90 mL needs that
// 100 psi fill through a passage of 1.5 gpm at 1 psi (0.1 s for the whole stroke).
type Relief struct {
	def   ReliefDef
	pilot float64 // Pa, the pressure as the pilot feels it
	lift  float64 // 0…1
	set   float64 // Pa, follows from …
	turns float64 // … where the wheel was last
	amber bool

	stuck Stuck   // faults, which are no state: the owner says them again after loading one
	clog  float64 // 0…1
}

// Stuck is how a relief valve's main valve is stuck.
type Stuck uint8

const (
	Free Stuck = iota
	StuckAsItStands
	StuckOpen
	StuckShut
)

// clogS is the lag of a pilot whose strainer is clogged for good, s (assumption).
const clogS = 12.0

// Fail makes the main valve stick and the pilot's strainer clog, by a share of 0 to 1: a clogged pilot
// feels the pressure late.
func (r *Relief) Fail(stuck Stuck, clog float64) { r.stuck, r.clog = stuck, clog }

// NewRelief builds a relief valve at its standby setting.
func NewRelief(d ReliefDef) Relief {
	return Relief{def: d, set: float64(d.StandbyPSI * unit.PaPerPSI), turns: math.NaN()}
}

// StandbyTurns is the position of the wheel at the standby setting.
func (d ReliefDef) StandbyTurns() float64 { return (d.StandbyPSI - d.LowestPSI) / d.PSIPerTurn }

// Step advances by dt seconds with the wheel at turns (clockwise raises) and discharge pressure p, Pa.
func (r *Relief) Step(dt, turns, p float64) {
	if turns != r.turns {
		r.turns = turns
		r.set = float64((r.def.LowestPSI + float64(bound.Within(turns, 0, r.def.Turns)*r.def.PSIPerTurn)) * unit.PaPerPSI)
	}
	r.pilot = lag(r.pilot, p, r.def.PilotLagS+float64(clogS*float64(r.clog*r.clog)), dt)
	goal := bound.Within((r.pilot-r.set)/float64(r.def.SpanPSI*unit.PaPerPSI), 0, 1)
	r.move(dt, goal)
	switch {
	case r.lift >= r.def.AmberOn:
		r.amber = true
	case r.lift <= r.def.AmberOff:
		r.amber = false
	}
}

// move brings the main valve toward its goal, unless it sticks.
func (r *Relief) move(dt, goal float64) {
	switch r.stuck {
	case StuckAsItStands:
		return
	case StuckOpen:
		goal = 1
	case StuckShut:
		goal = 0
	}
	r.lift = lag(r.lift, goal, r.def.LiftLagS, dt)
	if goal == 0 && r.lift < 1e-3 {
		r.lift = 0 // it seats
	}
}

// Resistance is R of dP = R q² of the by-pass, Pa/(m³/s)²; open is false while the valve passes nothing.
func (r *Relief) Resistance() (float64, bool) {
	return FlowResistance(r.def.Cv, (r.lift-r.def.Overlap)/(1-r.def.Overlap))
}

// Lift is the opening of the main valve, 0 to 1.
func (r *Relief) Lift() float64 { return r.lift }

// SetPSI is the discharge pressure at which the main valve begins to lift.
func (r *Relief) SetPSI() float64 { return r.set / unit.PaPerPSI }

// Amber reports whether the lamp is lit.
func (r *Relief) Amber() bool { return r.amber }

// Walk visits the valve's state.
func (r *Relief) Walk(w *state.Walker) {
	w.Float(&r.pilot)
	w.Float(&r.lift)
	w.Float(&r.set)
	w.Bool(&r.amber)
	if w.Loading() {
		r.turns = math.NaN() // set may not be that of the last turns
	}
}
