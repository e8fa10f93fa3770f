package plant

import (
	"testing"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/rig"
)

// withGovernor is the ground of the twenty numbers with the same pumper under a pressure governor.
func withGovernor() Setup {
	s := ground()
	g := rig.DefaultGovernor()
	s.Rig.Governor, s.Rig.Relief = &g, nil
	s.Rig.Engine.Droop, s.Rig.Engine.ResetS, s.Rig.Engine.FollowRPMS = 0.05, 0.4, 900
	return s
}

// fullyFitted is a pumper with all parts that an apparatus may have.
func fullyFitted() Setup {
	s := withGovernor()
	i, t, f := rig.DefaultIntakeRelief(), rig.DefaultThermalRelief(), rig.DefaultTransfer()
	s.Rig.IntakeRelief, s.Rig.ThermalRelief, s.Rig.Pump.Transfer = &i, &t, &f
	return s
}

// governed has the governor hold psi in pressure mode.
func (h *hands) governed(psi float64) {
	h.in.Governor.Pressure = true
	h.in.Governor.Preset = true
	h.run(0.2)
	h.in.Governor.Preset = false
	h.run(15)
	for h.o.GovernorSetPSI < psi-1 {
		h.in.Governor.Raise = true
		h.run(0.1)
		h.in.Governor.Raise = false
		h.run(0.4)
	}
	h.run(8)
}

// The pressure stands at the setting within a psi and does not hunt, at 240 and at 3840 steps a second;
// the engine's droop does not show (0–1 %, from memory of electronic engines).
func TestGovernorHolds(t *testing.T) {
	for _, substeps := range [...]int{4, 64} {
		s := withGovernor()
		s.Substeps = substeps
		h := at(t, s)
		h.inGear()
		h.onHydrant()
		h.line(0)
		h.governed(151)
		lo, hi := h.o.DischargePSI, h.o.DischargePSI
		for range 60 * 10 {
			h.run(tick)
			lo, hi = min(lo, h.o.DischargePSI), max(hi, h.o.DischargePSI)
		}
		h.near("psi held", (lo+hi)/2, 151, 1)
		h.between("hunting, psi", hi-lo, 0, 0.5)
	}
	h := at(t, withGovernor())
	h.inGear()
	h.onTank()
	h.in.TankFill = 1
	h.in.Governor.Preset = true
	h.run(10)
	h.near("rpm held against the pump's load", h.o.EngineRPM, 1100, 11)
}

// All lines shut in 3 s: no more than 30 psi of rise and back at the setting soon (as a standard asks of
// pressure control, from memory); in speed mode the pressure rises and stays.
func TestGovernorTakesShutLines(t *testing.T) {
	shut := func(pressure bool) (rise, stays float64) {
		s := withGovernor()
		s.Line.Trunk = fireground.HoseDef{SizeIn: 4, LossC: 0.2, LengthFt: 25}
		s.Line.Nozzle = &fireground.NozzleDef{TipIn: 1.25, RatedPSI: 80}
		h := at(t, s)
		h.inGear()
		h.onHydrant()
		h.line(0)
		h.line(1)
		h.governed(151)
		was := h.o.DischargePSI
		h.in.Governor.Pressure = pressure
		h.run(2)
		top := h.shutAll(3)
		h.run(5)
		return top - was, h.o.DischargePSI - was
	}
	rise, stays := shut(true)
	if rise > 30 || rise < 2 || stays > 2 {
		t.Errorf("pressure mode: rises by %.1f psi, stays %.1f above", rise, stays)
	}
	free, left := shut(false)
	if left < rise || free < rise+5 {
		t.Errorf("speed mode: rises by %.1f psi, stays %.1f above, no more than the governor's %.1f", free, left, rise)
	}
}

// A hydrant that fails: the lamp, a cut back, idle at last, and it waits there for a hand when the water
// is back; the engine never races. Gone for a moment only, the water comes back to an engine that has
// been sped up: the pressure over-runs, and comes down to the setting by itself.
func TestGovernorLosesWater(t *testing.T) {
	lose := func(seconds float64) (h *hands, before, top, peak float64) {
		h = at(t, withGovernor())
		h.inGear()
		h.onHydrant()
		h.line(0)
		h.governed(151)
		before = h.o.EngineRPM
		h.in.Shock.StaticDropPSI = 65
		for range int(60 * seconds) {
			h.run(tick)
			top = max(top, h.o.EngineRPM)
		}
		h.in.Shock.StaticDropPSI = 0
		for range 60 * 20 {
			h.run(tick)
			peak = max(peak, h.o.DischargePSI)
		}
		return h, before, top, peak
	}
	h, before, top, _ := lose(20)
	if !h.o.LowWaterLamp || top > before+400 || h.o.EngineRPM > 705 || h.o.GovernorSetPSI != 0 {
		t.Errorf("gone for 20 s: lamp %v, from %.0f up to %.0f rpm, then %.0f: it must wait at idle", h.o.LowWaterLamp, before, top, h.o.EngineRPM)
	}
	h, before, top, peak := lose(1.2)
	if top < before+150 || peak < 151+8 || h.o.LowWaterLamp {
		t.Errorf("gone for 1.2 s: from %.0f up to %.0f rpm, peak %.0f psi, lamp %v", before, top, peak, h.o.LowWaterLamp)
	}
	h.near("psi after the over-run", h.o.DischargePSI, 151, 1)
}

// Beside a governor, a relief valve set above what the governor holds stays shut.
func TestGovernorBesideRelief(t *testing.T) {
	s := withGovernor()
	s.Rig.Relief = rig.Default().Relief
	h := at(t, s)
	h.inGear()
	h.onHydrant()
	h.line(0)
	h.in.Governor.Pressure, h.in.Governor.Preset = true, true
	h.run(0.2)
	h.in.Governor.Preset = false
	h.run(30)
	h.near("psi", h.o.DischargePSI, s.Rig.Governor.PresetPSI, 1)
	if h.o.ReliefGPM != 0 || h.o.AmberLamp {
		t.Errorf("the valve set at %.0f psi passes %.1f gpm, amber %v", h.o.ReliefSetPSI, h.o.ReliefGPM, h.o.AmberLamp)
	}
}

// A bad field is refused by name.
func TestGovernorDefs(t *testing.T) {
	s := withGovernor()
	s.Rig.Governor.PresetPSI = 500
	_, err := New(s)
	if e, ok := err.(*rig.FieldError); !ok || e.Field != "governor.preset_psi" {
		t.Errorf("preset beyond what can be set: %v", err)
	}
}
