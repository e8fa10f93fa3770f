package plant

import (
	"testing"

	"steadyneedle/sim/rig"
)

// What the needles and lamps do when something is broken, and that everything can be mended.

// set has the relief valve set at what the pump makes, one line flowing.
func withReliefSet(t *testing.T) *hands {
	h := pumping(t, ground())
	h.in.Throttle += 0.1
	h.run(10)
	h.setRelief(h.o.DischargePSI)
	return h
}

func TestReliefValveSticks(t *testing.T) {
	h := withReliefSet(t)
	psi := h.o.DischargeNeedle
	h.in.Faults.Relief = rig.StuckOpen
	h.run(5)
	if !h.o.AmberLamp || h.o.ReliefGPM < 500 || h.o.DischargeNeedle > psi-20 || h.o.BypassSound < 0.9 {
		t.Errorf("stuck open: amber %v, %.0f gpm round, needle from %.0f to %.0f", h.o.AmberLamp, h.o.ReliefGPM, psi, h.o.DischargeNeedle)
	}
	h.in.Faults.Relief = rig.Free
	h.run(10)
	h.near("needle when it is free again", h.o.DischargeNeedle, psi, 2)

	rise := func(stuck rig.Stuck, clog float64) (top, last float64) {
		h := withReliefSet(t)
		h.in.Faults.Relief, h.in.Faults.PilotClogged = stuck, clog
		was := h.o.DischargePSI
		h.turn(&h.in.Throttle, h.in.Throttle+0.15, 1)
		for range 60 * 40 {
			h.run(tick)
			top = max(top, h.o.DischargePSI-was)
		}
		return top, h.o.DischargePSI - was
	}
	free, held := rise(rig.Free, 0)
	shut, stays := rise(rig.StuckShut, 0)
	if free > 12 || shut < free+15 || stays < held+15 {
		t.Errorf("throttle up: rises by %.1f, %.1f at last; stuck shut by %.1f, %.1f", free, held, shut, stays)
	}
	still, _ := rise(rig.StuckAsItStands, 0) // it stood shut
	if still < shut-1 {
		t.Errorf("stuck as it stood, shut: rises by %.1f, not %.1f", still, shut)
	}
	slow, late := rise(rig.Free, 1)
	if slow < free+6 || late > held+3 {
		t.Errorf("pilot clogged: rises by %.1f against %.1f, %.1f at last: it must come, late", slow, free, late)
	}
}

func TestGaugesFail(t *testing.T) {
	h := pumping(t, ground())
	f := &h.in.Faults
	f.LineGauge[0].Stuck, f.DischargeGauge.Off, f.IntakeGauge.Off, f.Tach.Stuck = true, 25, -10, true
	h.run(1)
	line, tach := h.o.LineNeedle[0], h.o.TachNeedle
	h.turn(&h.in.Throttle, h.in.Throttle+0.1, 2)
	h.run(5)
	if h.o.LineNeedle[0] != line || h.o.TachNeedle != tach {
		t.Errorf("stuck needles moved: %v to %v psi, %v to %v rpm", line, h.o.LineNeedle[0], tach, h.o.TachNeedle)
	}
	if h.o.Lines[0].ValvePSI < line+10 {
		t.Errorf("the line stands at %.0f, its stuck needle at %.0f", h.o.Lines[0].ValvePSI, line)
	}
	h.near("discharge needle reads high by", h.o.DischargeNeedle-h.o.DischargePSI, 25, 2)
	h.near("intake needle reads low by", h.o.IntakeNeedle-h.o.IntakePSI, -10, 2)
	*f = Faults{LineGauge: []Gauge{{}, {}, {}}}
	h.run(5)
	h.near("mended, line", h.o.LineNeedle[0], h.o.Lines[0].ValvePSI, 2)
	h.near("mended, discharge", h.o.DischargeNeedle, h.o.DischargePSI, 2)
	h.near("mended, tachometer", h.o.TachNeedle, h.o.EngineRPM, 20)
}

// With its radiator's air gone a working engine is hot in some minutes; the auxiliary cooler brings it
// back. The pump's own warmth is another thing.
func TestEngineOverheats(t *testing.T) {
	h := pumping(t, ground())
	h.in.Faults.RadiatorGone = 1
	seconds := h.until(1800, func() bool { return h.o.EngineHotLamp })
	h.between("s until the lamp", seconds, 60, 900)
	if h.o.PumpHotLamp {
		t.Error("the pump's lamp is lit too")
	}
	h.in.Cooler = 1
	h.between("s until the cooler has it out", h.until(1800, func() bool { return !h.o.EngineHotLamp }), 3, 900)
}

func TestTankLampsLie(t *testing.T) {
	h := at(t, ground())
	h.in.Faults.TankLampsOff = 0.5
	h.run(10)
	if h.o.TankLamp != [5]bool{true, true, true, true, true} || h.o.TankGal > 376 {
		t.Errorf("%.0f gal, lamps %v: they must show a full tank", h.o.TankGal, h.o.TankLamp)
	}
	h.in.Faults.TankLampsOff = -0.6
	h.run(10)
	if h.o.TankLamp[2] {
		t.Errorf("lamps %v: they must show too little", h.o.TankLamp)
	}
	h.in.Faults.TankLampsOff = 0
	h.run(10)
	if h.o.TankLamp != [5]bool{true, true, true, true, false} {
		t.Errorf("mended: lamps %v", h.o.TankLamp)
	}
}

// A dead primer draws nothing and is not heard; an air leak in the suction hose lets the vacuum fall
// when the primer stops, and binds a pump that draws.
func TestDraftFaults(t *testing.T) {
	h := drafting(t, 0, defaultSubsteps)
	h.in.Primer, h.in.Faults.PrimerDead = true, true
	h.run(20)
	if h.o.CasingWater > 0.01 || h.o.IntakeNeedle < -0.5 || h.o.AirSound > 0 || h.o.PrimerS != 0 {
		t.Errorf("dead primer: casing %.2f, intake %.1f inHg, sound %.2f", h.o.CasingWater, h.o.IntakeNeedle, h.o.AirSound)
	}
	h.in.Faults.PrimerDead = false
	h.until(60, func() bool { return h.o.CasingWater > 0.99 })
	h.in.Primer = false
	h.run(30)
	tight := h.o.IntakeNeedle
	h.between("tight, inHg", tight, -11, -8)
	h.in.Faults.SuctionLeakGPM = 60
	h.run(180)
	if h.o.IntakeNeedle < -3 {
		t.Errorf("leaking: from %.1f to %.1f inHg only: the water must sink in the suction hose", tight, h.o.IntakeNeedle)
	}
	h.in.Lines[0].Attached, h.in.Lines[0].Nozzle[0] = true, 0.3
	h.turn(&h.in.Discharge[0], 1, 4)
	h.run(30)
	if h.o.AirFactor > 0.5 || h.o.DischargePSI > 20 || h.o.Lines[0].NozzleGPM[0] > 30 {
		t.Errorf("a line opened then: air factor %.2f, %.0f psi, %.0f gpm: the prime must be lost", h.o.AirFactor, h.o.DischargePSI, h.o.Lines[0].NozzleGPM[0])
	}
}

// A main gives no less than nothing, however much is taken from it.
func TestHydrantFails(t *testing.T) {
	h := pumping(t, ground())
	h.in.Shock.StaticDropPSI = 25
	h.run(15)
	h.between("intake with 25 psi lost", h.o.IntakeNeedle, 30, 42)
	h.in.Shock.StaticDropPSI = 200
	h.run(60)
	if h.o.HydrantPSI < -1 || h.o.HydrantGPM < -1 || h.o.DischargePSI > 30 {
		t.Errorf("hydrant gone: %.1f psi and %.1f gpm there, %.0f psi at the discharge", h.o.HydrantPSI, h.o.HydrantGPM, h.o.DischargePSI)
	}
}
