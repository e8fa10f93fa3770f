package rig

import (
	"math"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/unit"
)

// cvSI turns gpm per √psi into m³/s per √Pa.
func cvSI(cv float64) float64 { return float64(cv*unit.M3SPerGPM) / math.Sqrt(unit.PaPerPSI) }

// Valve is a passage that a handle opens. Travel of the handle and opening of the passage are two
// things: against a long line's friction most of what a ball valve does lies near its shut end, so that
// three seconds of travel stop the water in well under one.
type Valve struct {
	cv, curve, lock float64
	law             hydraulics.ValveLaw
	lawful          bool // the law holds, not the curve
}

// NewValve builds a valve from its definition.
func NewValve(d ValveDef) Valve {
	law, ok := hydraulics.ValveLawNamed(d.Law)
	return Valve{cvSI(d.Cv), bound.AtLeast(d.Curve, 1), d.Lock, law, ok}
}

const (
	slowFrom = 3.0 // in: from this size on …
	slowS    = 3.0 // … a valve of an intake or discharge takes 3 s at least (NFPA 1901, from memory)
)

// Fastest is the seconds of full travel that the fastest hand needs; small is what it needs for a valve
// below 3 in whose definition does not say.
func (d *ValveDef) Fastest(small float64) float64 {
	switch {
	case d.TravelS > 0:
		return d.TravelS
	case d.SizeIn >= slowFrom:
		return slowS
	}
	return small
}

// Opening is the share of the full passage at a handle position, both 0 to 1.
func (v *Valve) Opening(travel float64) float64 {
	if travel <= v.lock {
		return 0
	}
	x := bound.AtMost((travel-v.lock)/(1-v.lock), 1)
	if v.lawful {
		return v.law.Flow(x)
	}
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
