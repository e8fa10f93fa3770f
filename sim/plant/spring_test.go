package plant

import (
	"testing"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/rig"
)

// slamSupply stops some 600 gpm at the discharge in half a second behind 50 ft of supply hose on a strong
// hydrant, and gives the highest pressure at the pump's intake and the highest flow to the ground.
func slamSupply(t *testing.T, relief *rig.SpringDef, substeps int) (h *hands, top, flow float64) {
	s := ground()
	s.Substeps = substeps
	s.Hydrant = fireground.HydrantDef{StaticPSI: 105, ResidualPSI: 100, FlowGPM: 1000}
	s.Rig.IntakeRelief = relief
	s.Line.Trunk = fireground.HoseDef{SizeIn: 3, LossC: 0.8, LengthFt: 25}
	s.Line.Nozzle = &fireground.NozzleDef{TipIn: 1.5, RatedPSI: 80}
	h = at(t, s)
	h.in.ReliefTurns = 10
	h.inGear()
	h.onHydrant()
	h.in.Supply.LengthFt = 50
	h.run(30)
	h.line(0)
	n := int(0.5 * 60)
	for k := range n + 60*3 {
		h.in.Discharge[0] = max(0, 1-float64(k+1)/float64(n))
		h.run(tick)
		top = max(top, h.o.IntakePSI)
		flow = max(flow, h.o.IntakeReliefGPM)
	}
	return h, top, flow
}

// The intake relief valve takes the surge of the supply's column, reseats by itself, and does the same at
// 3840 steps a second as at 240.
func TestIntakeReliefTakesTheSurge(t *testing.T) {
	_, without, none := slamSupply(t, nil, defaultSubsteps)
	if none != 0 || without < 125+20 {
		t.Fatalf("without the valve: %.0f psi, %.1f gpm: no surge to take", without, none)
	}
	def := rig.DefaultIntakeRelief()
	h, with, flow := slamSupply(t, &def, defaultSubsteps)
	if flow < 5 || with > without-5 {
		t.Logf("gpm before %.0f", h.o.PumpGPM)
		t.Errorf("with the valve %.0f psi at most, %.0f without; %.0f gpm to the ground", with, without, flow)
	}
	h.run(20)
	if h.o.IntakeReliefGPM != 0 {
		t.Errorf("%.2f gpm still run at %.0f psi", h.o.IntakeReliefGPM, h.o.IntakePSI)
	}
	_, fine, _ := slamSupply(t, &def, 64)
	h.near("highest psi at 3840 Hz", fine, with, 0.06*with)
}

// The thermal relief valve keeps a dead-headed pump below its lamp, at the cost of water on the ground.
func TestThermalRelief(t *testing.T) {
	hottest := func(valve *rig.ThermalDef) (f float64, h *hands) {
		s := ground()
		s.Rig.ThermalRelief = valve
		h = at(t, s)
		h.in.ReliefTurns = 10
		h.inGear()
		h.onTank()
		h.turn(&h.in.Throttle, 0.4, 3)
		for range 60 * 1500 {
			h.run(tick)
			f = max(f, h.o.PumpF)
		}
		return f, h
	}
	without, h := hottest(nil)
	if without < 145 || !h.o.PumpHotLamp || h.o.ThermalGPM != 0 {
		t.Errorf("without the valve: %.0f °F, lamp %v", without, h.o.PumpHotLamp)
	}
	def := rig.DefaultThermalRelief()
	with, h := hottest(&def)
	if with > 132 || h.o.PumpHotLamp || h.o.ThermalGPM < 0.5 {
		t.Errorf("with it: %.0f °F, lamp %v, %.1f gpm", with, h.o.PumpHotLamp, h.o.ThermalGPM)
	}
}
