package plant

import (
	"strings"

	"steadyneedle/sim/fireground"
)

// Effects is a set of physical effects.
type Effects uint16

// Effects that Setup.Without can leave out. It is for proving tests only: a test of an effect must fail
// when the effect is gone. No drill may ask for it, for such a machine behaves like none there is.
const (
	Cavitation Effects = 1 << iota // the pump keeps its head whatever its suction; water does not boil
	AirBinding                     // air in the impeller's eye costs no head
	Inertance                      // water has no inertia: flows follow pressures at once
	Elasticity                     // hoses give no more than the water in them
	Collapse                       // the supply hose neither lies flat nor lets air in under vacuum
	Heat                           // what the pump leaves in the water does not warm it
	Relief                         // the discharge relief valve never lifts
	ReliefLag                      // the relief valve's pilot and main valve follow at once
	Droop                          // the engine holds the speed set within 0.5 % from no load to full
	effectsEnd
)

var effectNames = [...]string{"cavitation", "air binding", "inertance", "elasticity", "collapse", "heat", "relief", "relief lag", "droop"}

// EveryEffect is the set of all.
const EveryEffect = effectsEnd - 1

// Has reports whether all of some are in the set.
func (e Effects) Has(some Effects) bool { return e&some == some }

// Each gives the single effects of the set, in the order of the constants.
func (e Effects) Each() []Effects {
	var all []Effects
	for one := Effects(1); one < effectsEnd; one <<= 1 {
		if e.Has(one) {
			all = append(all, one)
		}
	}
	return all
}

// String names the set's effects.
func (e Effects) String() string {
	var names []string
	for i, name := range effectNames {
		if e.Has(1 << i) {
			names = append(names, name)
		}
	}
	return strings.Join(names, ", ")
}

const (
	rigidWave  = 4800.0 // ft/s, sound in water: a hose that gives no more than its water
	noDroop    = 0.005  // share of speed: what an engine without droop may sag
	noSpan     = 1e12   // psi of rise for full lift: a valve that never lifts
	noVapor    = 1.0    // Pa, absolute: that of water which does not boil
	noSuction  = 1e-9   // ft: the suction head that a pump needs which doesn't cavitate
	neverBinds = 2.0    // share of air at which head begins to fall in a pump that air doesn't bind
)

// leaveOut changes the setup so that the effects are gone that can be taken out of the data. The setup's
// slices and pointers are the caller's and are copied first.
func (s *Setup) leaveOut() {
	w, d := s.Without, &s.Rig
	if w.Has(Cavitation) {
		d.Pump.NPSHBaseFt, d.Pump.NPSHSpeedFt, d.Pump.NPSHFlowFt = noSuction, 0, 0
	}
	if w.Has(AirBinding) {
		d.Pump.AirLow, d.Pump.AirHigh = neverBinds, neverBinds+1
	}
	if w.Has(Elasticity) {
		s.stiffen()
	}
	if w.Has(Collapse) {
		s.Supply.Hard = true
	}
	if w.Has(Relief) {
		d.Relief.SpanPSI = noSpan
	}
	if w.Has(ReliefLag) {
		d.Relief.PilotLagS, d.Relief.LiftLagS = 0, 0
	}
	if w.Has(Droop) {
		d.Engine.Droop = noDroop
	}
}

// stiffen takes the elasticity out of every hose.
func (s *Setup) stiffen() {
	s.Supply.WaveFtS, s.Line.Trunk.WaveFtS = rigidWave, rigidWave
	s.Line.Branches = append([]fireground.BranchDef(nil), s.Line.Branches...)
	for i := range s.Line.Branches {
		s.Line.Branches[i].Hose.WaveFtS = rigidWave
	}
	s.Lay = append(s.Lay[:0:0], s.Lay...)
	for i := range s.Lay {
		if h := s.Lay[i].Hose; h != nil {
			stiff := *h
			stiff.WaveFtS = rigidWave
			s.Lay[i].Hose = &stiff
		}
	}
}
