package rig

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

// Tank is the booster tank: level, temperature, overflow, the vortex over its outlet, and the level
// lamps with a sender that lies a little while the tank is being filled.
type Tank struct {
	def    TankDef
	full   float64 // m³
	ratedQ float64 // m³/s, flow at which the vortex share is meant

	water  float64 // m³
	kelvin float64
	filled float64 // m³/s, net flow in, smoothed: the sender's error
	sender float64 // level as the sender sees it, 0…1
	wetS   float64 // s for which water still drips at the tires
	lamps  [5]bool
	lie    float64 // share by which the sender reads too high: a fault, which the owner says again after loading a state
}

// Mislead makes the level sender read too high by a share of the tank, or too low.
func (t *Tank) Mislead(share float64) { t.lie = share }

// lampLevels are the levels at which the lamps E, ¼, ½, ¾, F light: each a little below its mark, so
// that a tank at the mark shows it.
var lampLevels = [5]float64{0.03, 0.22, 0.46, 0.70, 0.875}

const (
	lampHysteresis = 0.02
	dripS          = 2.0 // s that it drips after an overflow (assumption)
)

// NewTank builds a tank holding its starting water at temperature kelvin.
func NewTank(d TankDef, kelvin float64) Tank {
	t := Tank{def: d, full: float64(d.Gallons * unit.M3PerGal), kelvin: kelvin, ratedQ: float64(500 * unit.M3SPerGPM)}
	t.water = float64(t.full * bound.Within(d.StartFraction, 0, 1))
	t.sender = t.Level()
	for i, l := range lampLevels {
		t.lamps[i] = t.sender >= l
	}
	return t
}

// Flow is what ran during a step, m³/s.
type Flow struct {
	Out, In  float64 // to the pump; back through tank fill, recirculation and check valve
	InKelvin float64 // temperature of what ran in
}

// Step advances by dt seconds.
func (t *Tank) Step(dt float64, f Flow) {
	gain := float64(bound.AtLeast(f.In, 0) * dt)
	if have := t.water + gain; gain > 0 && have > 0 {
		t.kelvin += float64((f.InKelvin - t.kelvin) * (gain / have))
	}
	t.water = bound.AtLeast(t.water+gain-float64(f.Out*dt), 0)
	t.wetS = bound.AtLeast(t.wetS-dt, 0)
	if t.water > t.full {
		t.wetS = dripS
		carry := float64(float64(t.def.OverflowGPM*unit.M3SPerGPM) * dt)
		t.water = bound.AtLeast(t.full, t.water-carry) // what the pipe can't carry stands in the fill tower
	}
	t.filled = lag(t.filled, f.In-f.Out, 2, dt)
}

// Look moves the sender and the lamps for dt seconds; once a tick is enough. While water pours in, the ¾
// lamp stands alone for LampFill of the tank too long: the F lamp comes late.
func (t *Tank) Look(dt float64) {
	goal := t.Level() + t.lie
	if t.filled > float64(30*unit.M3SPerGPM) {
		goal -= float64(t.def.LampFill * bound.Within((goal-0.72)/0.1, 0, 1))
	}
	t.sender = lag(t.sender, goal, 1.5, dt)
	for i := range t.lamps {
		l := lampLevels[i]
		switch {
		case t.sender >= l:
			t.lamps[i] = true
		case t.sender < l-lampHysteresis:
			t.lamps[i] = false
		}
	}
}

// Level is water over content, 0 to 1.
func (t *Tank) Level() float64 { return bound.AtMost(t.water/t.full, 1) }

// Gallons is the water in the tank.
func (t *Tank) Gallons() float64 { return t.water / unit.M3PerGal }

// Kelvin is the water's temperature.
func (t *Tank) Kelvin() float64 { return t.kelvin }

// Overflowing reports whether water runs down at the tires.
func (t *Tank) Overflowing() bool { return t.wetS > 0 }

// Lamps are the level lamps E, ¼, ½, ¾, F.
func (t *Tank) Lamps() [5]bool { return t.lamps }

// Head is the pressure at the pump's center from the height of the water, Pa; density in kg/m³.
func (t *Tank) Head(density float64) float64 {
	h := t.def.BottomFt + float64(t.def.DepthFt*t.Level())
	return float64(float64(h*unit.MPerFt) * float64(density*unit.Gravity))
}

// Top is the pressure at the pump's center that lifts water over the tank's rim, where the pipes that fill it
// end, Pa; density in kg/m³.
func (t *Tank) Top(density float64) float64 {
	return float64(float64((t.def.BottomFt+t.def.DepthFt)*unit.MPerFt) * float64(density*unit.Gravity))
}

// Void is the share of air in what the outlet draws at flow q, m³/s: a vortex reaches it when the
// level is low, sooner at a higher flow.
func (t *Tank) Void(q float64) float64 {
	deep := float64(t.def.VortexShare * bound.Within(q/t.ratedQ, 0.15, 1.5))
	if t.water <= 0 || deep <= 0 {
		return 1
	}
	return bound.Within(1-t.Level()/deep, 0, 1)
}

// Walk visits the tank's state.
func (t *Tank) Walk(w *state.Walker) {
	w.Float(&t.water)
	w.Float(&t.kelvin)
	w.Float(&t.filled)
	w.Float(&t.sender)
	w.Float(&t.wetS)
	for i := range t.lamps {
		w.Bool(&t.lamps[i])
	}
}
