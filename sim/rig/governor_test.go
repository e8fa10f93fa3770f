package rig

import (
	"math"
	"testing"
)

// pumpUnder is a pump and its engine as a governor sees them: the engine follows the demand in 0.15 s,
// the pump makes 195 psi at 1520 rpm less what a flow costs, over an intake.
type pumpUnder struct {
	g            Governor
	rpm          float64
	intake, loss float64 // psi
	most         float64 // psi that the water at hand allows
	psi          float64
	h            GovernorHands
	ready        bool
	top          float64 // highest pressure
}

func underGovernor() *pumpUnder {
	e := Default().Engine
	return &pumpUnder{g: NewGovernor(DefaultGovernor(), e), rpm: e.IdleRPM, intake: 50, loss: 20, most: 400, ready: true}
}

func (p *pumpUnder) run(seconds float64) {
	e := Default().Engine
	for range int(math.Round(seconds / step)) {
		throttle := p.g.Step(step, p.ready, p.h, p.psi, p.intake)
		p.rpm = lag(p.rpm, e.IdleRPM+throttle*(e.GovernedRPM-e.IdleRPM), 0.15, step)
		p.psi = max(0, min(p.most, p.intake+195*p.rpm/1520*p.rpm/1520-p.loss))
		p.top = max(p.top, p.psi)
	}
}

func (p *pumpUnder) press(button *bool, seconds float64) {
	*button = true
	p.run(seconds)
	*button = false
	p.run(step)
}

func TestGovernorWaitsAtIdle(t *testing.T) {
	p := underGovernor()
	p.h.Pressure = true
	p.run(5)
	if p.rpm > 701 || !p.g.Idling() || p.g.SetPSI() != 0 {
		t.Errorf("untouched: %.0f rpm, set %v", p.rpm, p.g.SetPSI())
	}
	p.press(&p.h.Lower, 1)
	if !p.g.Idling() {
		t.Error("lower wakes an idling governor")
	}
	p.press(&p.h.Preset, 0.1)
	p.run(20)
	if math.Abs(p.psi-125) > 0.5 || p.g.SetPSI() != 125 {
		t.Errorf("preset: %.1f psi, set %v, want 125", p.psi, p.g.SetPSI())
	}
	p.ready = false
	p.run(3)
	p.ready = true
	p.run(3)
	if p.rpm > 701 || !p.g.Idling() {
		t.Errorf("after the interlock let go: %.0f rpm, want idle until a hand asks", p.rpm)
	}
}

// One press is one step, held it repeats; both buttons together do nothing.
func TestGovernorRaisesAndLowers(t *testing.T) {
	p := underGovernor()
	p.h.Pressure = true
	p.press(&p.h.Preset, 0.1)
	p.run(20)
	p.press(&p.h.Raise, 0.1)
	p.run(5)
	if p.g.SetPSI() != 127 || math.Abs(p.psi-127) > 0.5 {
		t.Errorf("one press: set %v, %.1f psi, want 127", p.g.SetPSI(), p.psi)
	}
	p.press(&p.h.Raise, 2.5) // one step and two seconds of 8 psi/s
	if s := p.g.SetPSI(); math.Abs(s-145) > 0.5 {
		t.Errorf("held for 2.5 s: set %v, want 145", s)
	}
	p.press(&p.h.Lower, 0.1)
	p.h.Raise, p.h.Lower = true, true
	p.run(1)
	p.h.Raise, p.h.Lower = false, false
	if s := p.g.SetPSI(); math.Abs(s-143) > 0.5 {
		t.Errorf("lowered once, then both buttons: set %v, want 143", s)
	}
	p.press(&p.h.Raise, 60)
	if s := p.g.SetPSI(); s != 300 {
		t.Errorf("held for a minute: set %v, want the highest, 300", s)
	}
	p.press(&p.h.Idle, 0.1)
	p.run(5)
	if p.rpm > 705 || !p.g.Idling() {
		t.Errorf("idle button: %.0f rpm", p.rpm)
	}
}

// A line that opens or shuts moves the pressure for a moment only; in speed mode it stays moved.
func TestGovernorHoldsPressureOrSpeed(t *testing.T) {
	p := underGovernor()
	p.h.Pressure = true
	p.press(&p.h.Preset, 0.1)
	p.run(20)
	p.loss = 45
	p.run(6)
	if math.Abs(p.psi-125) > 1 {
		t.Errorf("pressure mode, line opened: %.1f psi", p.psi)
	}
	rpm := p.rpm
	p.h.Pressure = false
	p.run(5)
	if math.Abs(p.rpm-rpm) > 5 || math.Abs(p.g.SetRPM()-rpm) > 5 {
		t.Errorf("change of mode: from %.0f to %.0f rpm, set %.0f: a bump", rpm, p.rpm, p.g.SetRPM())
	}
	p.loss = 20
	p.run(6)
	if math.Abs(p.rpm-rpm) > 5 || p.psi < 140 {
		t.Errorf("speed mode, line shut: %.0f rpm, %.1f psi: the pressure must rise", p.rpm, p.psi)
	}
	p.h.Pressure = true
	psi := p.psi
	p.run(5)
	if math.Abs(p.psi-psi) > 1 {
		t.Errorf("back to pressure mode: from %.1f to %.1f psi: a bump", psi, p.psi)
	}
}

// Water that is gone for a moment is back at an engine that has been sped up: the pressure over-runs, by
// no more than the rise that the governor allows itself. Gone for longer, the engine is cut back, and
// resumes by itself without a jump.
func TestGovernorShortOfWater(t *testing.T) {
	over := func(gone float64) (top float64, p *pumpUnder) {
		p = underGovernor()
		p.h.Pressure = true
		p.press(&p.h.Preset, 0.1)
		p.run(20)
		p.intake, p.most = 0, 60
		p.run(gone)
		p.top = 0
		p.intake, p.most = 50, 400
		p.run(20)
		return p.top - 125, p
	}
	short, _ := over(1)
	if short < 10 || short > 80 {
		t.Errorf("over-run after 1 s without water: %.0f psi, want it felt and bounded (assumption)", short)
	}
	long, p := over(5)
	if long > short/2 || p.g.LowWater() || math.Abs(p.psi-125) > 1 {
		t.Errorf("after 5 s: over-run %.0f psi against %.0f, low water %v, %.1f psi at last", long, short, p.g.LowWater(), p.psi)
	}
	p.intake, p.most = 0, 60
	p.run(4)
	if !p.g.LowWater() || p.rpm > 1010 {
		t.Errorf("short of water for 4 s: low water %v, %.0f rpm: it must have cut back", p.g.LowWater(), p.rpm)
	}
	p.most = 5 // no pressure at all
	p.run(4)
	p.intake, p.most = 50, 400
	p.run(10)
	if !p.g.Idling() || !p.g.LowWater() || p.rpm > 705 {
		t.Errorf("no water for 4 s: idling %v, lamp %v, %.0f rpm: it must wait for a hand", p.g.Idling(), p.g.LowWater(), p.rpm)
	}
	p.press(&p.h.Preset, 0.1)
	p.run(20)
	if p.g.LowWater() || math.Abs(p.psi-125) > 1 {
		t.Errorf("preset again: lamp %v, %.1f psi", p.g.LowWater(), p.psi)
	}
}
