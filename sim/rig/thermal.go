package rig

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

// Thermal is the thermal relief valve: an element that swells with the heat of the casing's water lets
// some of it out to the ground, so that cooler water follows.
type Thermal struct {
	def  ThermalDef
	lift float64 // 0…1
}

// NewThermal builds a valve that is shut.
func NewThermal(d ThermalDef) Thermal { return Thermal{def: d} }

// Step advances by dt seconds with the casing's water at kelvin.
func (t *Thermal) Step(dt, kelvin float64) {
	goal := bound.Within((float64(unit.FahrenheitOf(kelvin))-t.def.OpenF)/t.def.SpanF, 0, 1)
	t.lift = lag(t.lift, goal, t.def.LagS, dt)
	if goal == 0 && t.lift < 1e-3 {
		t.lift = 0
	}
}

// Resistance is R of dP = R q², Pa/(m³/s)²; open is false while the valve is shut.
func (t *Thermal) Resistance() (float64, bool) { return FlowResistance(t.def.Cv, t.lift) }

// Lift is the opening, 0 to 1.
func (t *Thermal) Lift() float64 { return t.lift }

// Walk visits the valve's state.
func (t *Thermal) Walk(w *state.Walker) { w.Float(&t.lift) }
