package rig

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

// Spring is the spring-loaded intake relief valve. It opens to the ground in proportion to the pressure
// above its setting, and once open stays so, a little, until the pressure has fallen by its blow-down.
type Spring struct {
	def  SpringDef
	lift float64 // 0…1
	open bool
}

// crack is the lift that an open valve keeps until it reseats (assumption).
const crack = 0.02

// NewSpring builds a valve that is shut.
func NewSpring(d SpringDef) Spring { return Spring{def: d} }

// Step advances by dt seconds with pressure p, Pa.
func (s *Spring) Step(dt, p float64) {
	psi := p / unit.PaPerPSI
	goal := bound.Within((psi-s.def.SetPSI)/s.def.SpanPSI, 0, 1)
	switch {
	case goal > 0:
		s.open = true
	case psi < s.def.SetPSI-s.def.BlowdownPSI:
		s.open = false
	}
	if s.open {
		goal = bound.AtLeast(goal, crack)
	}
	s.lift = lag(s.lift, goal, s.def.LagS, dt)
	if !s.open && s.lift < 1e-3 {
		s.lift = 0 // it seats
	}
}

// Resistance is R of dP = R q², Pa/(m³/s)²; open is false while the valve is shut.
func (s *Spring) Resistance() (float64, bool) { return FlowResistance(s.def.Cv, s.lift) }

// Lift is the opening, 0 to 1.
func (s *Spring) Lift() float64 { return s.lift }

// Walk visits the valve's state.
func (s *Spring) Walk(w *state.Walker) {
	w.Float(&s.lift)
	w.Bool(&s.open)
}
