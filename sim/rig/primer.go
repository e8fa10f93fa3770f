package rig

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

// Primer is the electric priming pump: it draws air from the top of the casing, and water when there
// is no air left.
type Primer struct {
	def PrimerDef
	run float64 // s of the present run
}

// NewPrimer builds a primer at rest.
func NewPrimer(d PrimerDef) Primer { return Primer{def: d} }

// Rest ends its run.
func (p *Primer) Rest() { p.run = 0 }

// Step runs it for dt seconds and gives what it draws in that time: free air (m³ at atmospheric
// pressure patm) and water (m³). p is the pressure at the casing (Pa, gauge), void the share of air
// there, power the battery's strength 0 to 1.
func (p *Primer) Step(dt float64, pressure, patm, void, power float64) (air, water float64) {
	p.run += dt
	vacuum := -pressure / unit.PaPerInHg
	pull := float64(bound.Within(1-vacuum/p.def.MaxInHg, 0, 1) * power)
	share := bound.Within(void/0.05, 0, 1) // its port is at the highest point: the last air is drawn before water
	density := bound.Within((pressure+patm)/patm, 0, 3)
	air = float64(float64(p.def.AirLS*1e-3) * float64(pull*float64(density*share)))
	water = float64(float64(p.def.WaterGPM*unit.M3SPerGPM) * float64(pull*(1-share)))
	return float64(air * dt), float64(water * dt)
}

// RunS is the length of the present run, s.
func (p *Primer) RunS() float64 { return p.run }

// Walk visits the primer's state.
func (p *Primer) Walk(w *state.Walker) { w.Float(&p.run) }
