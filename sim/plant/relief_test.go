package plant

import (
	"testing"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/rig"
)

// swinging has three lines of large hose on a hydrant with their nozzles shut, the throttle up, and the
// relief valve set at psi below the pressure that is there, and gives what the discharge pressure swings by
// and about, 15 s later.
func swinging(t *testing.T, hose fireground.HoseDef, relief rig.ReliefDef, substeps int, throttle, psi float64) (swing, mean float64) {
	s := ground()
	s.Substeps = substeps
	s.Rig.Relief = &relief
	s.Line = fireground.LineDef{Trunk: hose, Nozzle: &fireground.NozzleDef{TipIn: 2, RatedPSI: 80}}
	h := at(t, s)
	h.inGear()
	h.in.ReliefTurns = relief.Turns
	h.onHydrant()
	for i := range 3 {
		h.in.Lines[i].Attached = true
		h.in.Lines[i].Nozzle[0] = 0.3
		h.turn(&h.in.Discharge[i], 1, 3)
	}
	h.run(15)
	for i := range 3 {
		h.turn(&h.in.Lines[i].Nozzle[0], 0, 2)
	}
	h.turn(&h.in.Throttle, throttle, 3)
	h.run(8)
	h.in.ReliefTurns = (h.o.DischargePSI - psi - relief.LowestPSI) / relief.PSIPerTurn
	h.run(15)
	lo, hi := h.o.DischargePSI, h.o.DischargePSI
	for range 60 * 5 {
		h.run(tick)
		lo, hi = min(lo, h.o.DischargePSI), max(hi, h.o.DischargePSI)
	}
	h.sound()
	return hi - lo, (lo + hi) / 2
}

// A by-passing relief valve stands still on a hydrant also where the supply's column has nothing but the
// elasticity of short wide lines to swing against, at the usual step and at a sixteenth of it.
func TestReliefStandsStillOnAHydrant(t *testing.T) {
	for _, hose := range []fireground.HoseDef{{SizeIn: 4, LossC: 0.2, LengthFt: 25}, {SizeIn: 3, LossC: 0.8, LengthFt: 50}} {
		for _, c := range []struct{ throttle, below float64 }{{0.1, 40}, {0.2, 30}, {0.4, 30}, {0.5, 60}} {
			coarse, at := swinging(t, hose, *rig.Default().Relief, defaultSubsteps, c.throttle, c.below)
			fine, there := swinging(t, hose, *rig.Default().Relief, 64, c.throttle, c.below)
			if coarse > 0.5 || fine > 0.5 || there-at > 0.5 || at-there > 0.5 {
				t.Errorf("%g in, throttle %g, set %g psi below: swings by %.2f psi about %.1f at 240 Hz, by %.2f about %.1f at 3840 Hz", hose.SizeIn, c.throttle, c.below, coarse, at, fine, there)
			}
		}
	}
}

// The test above can fail: a valve that follows late keeps the column swinging.
func TestLateReliefSwings(t *testing.T) {
	late := *rig.Default().Relief
	late.PilotLagS, late.LiftLagS = 0.05, 0.35
	for _, substeps := range []int{defaultSubsteps, 64} {
		if swing, _ := swinging(t, fireground.HoseDef{SizeIn: 4, LossC: 0.2, LengthFt: 25}, late, substeps, 0.4, 30); swing < 20 {
			t.Errorf("with %d substeps a valve that is late by 0.4 s swings by %.1f psi only: what do the other tests prove?", substeps, swing)
		}
	}
}
