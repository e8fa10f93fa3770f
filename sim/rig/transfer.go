package rig

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/state"
)

// Transfer is the transfer valve of a two-stage pump with its clapper valves. Moved while the pump makes
// more than its safe pressure it jolts: the clappers strike their seats and the pressure jumps.
type Transfer struct {
	def    TransferDef
	at     float64 // 0 parallel … 1 series
	series bool    // selected a step ago
	jolts  float64 // so far
	wear   float64 // of the last step
}

// NewTransfer builds a valve that stands in parallel.
func NewTransfer(d TransferDef) Transfer { return Transfer{def: d} }

// Step advances by dt seconds with series or parallel selected and the pump's net pressure in psi.
func (t *Transfer) Step(dt float64, series bool, net float64) {
	t.wear = 0
	if series != t.series {
		t.series = series
		if net > t.def.SafePSI {
			t.jolts++
			t.wear = float64(t.def.JoltWear * (net/t.def.SafePSI - 1))
		}
	}
	goal := 0.0
	if series {
		goal = 1
	}
	step := dt / t.def.TravelS
	t.at += bound.Within(goal-t.at, -step, step)
}

// Series is how far the second impeller stands behind the first, 0 (parallel) to 1 (series). A clapper
// valve that stays open lets most of the first impeller's rise back to the intake.
func (t *Transfer) Series(clapperOpen bool) float64 {
	if clapperOpen {
		return float64(t.at * (1 - t.def.ClapperBack))
	}
	return t.at
}

// At is the valve's position, 0 parallel to 1 series.
func (t *Transfer) At() float64 { return t.at }

// Jolts counts the changes made at too high a pressure.
func (t *Transfer) Jolts() float64 { return t.jolts }

// Wear is the damage that the last step's jolt did to the pump.
func (t *Transfer) Wear() float64 { return t.wear }

// Walk visits the valve's state.
func (t *Transfer) Walk(w *state.Walker) {
	w.Float(&t.at)
	w.Bool(&t.series)
	w.Float(&t.jolts)
	w.Float(&t.wear)
}
