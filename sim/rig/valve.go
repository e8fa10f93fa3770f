package rig

import (
	"math"

	"steadyneedle/sim/unit"
)

// cvSI turns gpm per √psi into m³/s per √Pa.
func cvSI(cv float64) float64 { return float64(cv*unit.M3SPerGPM) / math.Sqrt(unit.PaPerPSI) }

// Valve is a passage that a handle opens. Travel of the handle and opening of the passage are two
// things: with a ball valve most of the change lies near the shut end, so that three seconds of
// travel stop a long line's water in well under one.
type Valve struct {
	cv, curve, lock float64
}

// NewValve builds a valve from its definition.
func NewValve(d ValveDef) Valve { return Valve{cvSI(d.Cv), max(1, d.Curve), d.Lock} }

// Opening is the share of the full passage at a handle position, both 0 to 1.
func (v *Valve) Opening(travel float64) float64 {
	if travel <= v.lock {
		return 0
	}
	x := min(1, (travel-v.lock)/(1-v.lock))
	return x / (v.curve - float64((v.curve-1)*x))
}

// Resistance is R of dP = R q², Pa/(m³/s)², at a handle position; open is false when the valve is shut.
func (v *Valve) Resistance(travel float64) (r float64, open bool) {
	return resistance(v.cv, v.Opening(travel))
}

// FlowResistance is R of dP = R q², Pa/(m³/s)², of a plain passage of cv gpm per √psi, opened by a
// share of 0 to 1.
func FlowResistance(cv, opening float64) (r float64, open bool) { return resistance(cvSI(cv), opening) }

func resistance(cv, opening float64) (float64, bool) {
	if !(opening > 1e-3) || !(cv > 0) {
		return 0, false
	}
	k := float64(cv * opening)
	return 1 / float64(k*k), true
}
