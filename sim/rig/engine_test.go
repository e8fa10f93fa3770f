package rig

import (
	"math"
	"testing"
)

const step = 1.0 / 240

func runEngine(e *Engine, seconds, throttle, load float64) {
	for range int(seconds * 240) {
		e.Step(step, true, throttle, load, 0)
	}
}

// Source: idle 700 ± 25 and governed 2150 rpm are this engine's data; from memory for its class.
func TestEngineHoldsIdleAndGovernedSpeed(t *testing.T) {
	e := NewEngine(Default().Engine)
	runEngine(&e, 5, 0, 0)
	if math.Abs(e.RPM()-700) > 2 {
		t.Errorf("idle without load is %.0f rpm", e.RPM())
	}
	runEngine(&e, 15, 1, 0)
	if math.Abs(e.RPM()-2150) > 5 {
		t.Errorf("governed speed is %.0f rpm", e.RPM())
	}
}

// A mechanical governor sags by 6–8 % from no load to full torque (common practice).
func TestEngineDroops(t *testing.T) {
	e := NewEngine(Default().Engine)
	runEngine(&e, 10, 0.55, 0)
	free := e.RPM()
	runEngine(&e, 10, 0.55, 0.95*e.torque.at(e.Speed()))
	if drop := 1 - e.RPM()/free; drop < 0.05 || drop > 0.08 {
		t.Errorf("from %.0f to %.0f rpm: droop %.3f", free, e.RPM(), drop)
	}
	runEngine(&e, 10, 0.55, 0)
	if math.Abs(e.RPM()-free) > 2 {
		t.Errorf("does not race back to %.0f, stands at %.0f", free, e.RPM())
	}
}

// Source: from memory, spool 700 → 1400 rpm within 2–4 s of a hand's throttle.
func TestEngineSpool(t *testing.T) {
	e := NewEngine(Default().Engine)
	seconds := 0.0
	for hand := 0.0; e.RPM() < 1390 && seconds < 10; seconds += step {
		hand = min(700.0/1450, hand+step/2.5)
		e.Step(step, true, hand, 40, 0)
	}
	if seconds < 2 || seconds > 4 {
		t.Errorf("700 to 1400 rpm took %.1f s", seconds)
	}
}

func TestEngineStallsAndStarts(t *testing.T) {
	e := NewEngine(Default().Engine)
	runEngine(&e, 3, 0, 2500)
	if e.Running() || e.RPM() != 0 {
		t.Fatalf("overloaded engine still runs at %.0f rpm", e.RPM())
	}
	runEngine(&e, 1, 0, 0)
	if !e.LowOil() {
		t.Error("oil lamp dark with the engine stalled")
	}
	runEngine(&e, 3, 0, 0)
	if e.Running() {
		t.Error("a stalled engine started by itself")
	}
	e.Step(step, false, 0, 0, 0)
	runEngine(&e, 4, 0, 0)
	if !e.Running() || math.Abs(e.RPM()-700) > 10 || e.LowOil() {
		t.Errorf("not started: %.0f rpm, oil %.0f psi", e.RPM(), e.OilPSI())
	}
}

func TestCoolantAndCooler(t *testing.T) {
	run := func(power, air, cooler float64) float64 {
		c := NewCooling(Default().Cooling)
		for range 3600 * 10 {
			c.Step(0.1, power, 0.7, air, 289, cooler)
		}
		return c.F()
	}
	const air = 294 // K, 70 °F
	light := run(20e3, air, 0)
	if light < 180 || light > 200 {
		t.Errorf("coolant at light load settles at %.0f °F; the thermostat should hold 180 to 200", light)
	}
	hot := run(290e3, 320, 0)
	if cooled := run(290e3, 320, 1); cooled > hot-5 {
		t.Errorf("the auxiliary cooler brings %.0f °F only to %.0f", hot, cooled)
	}
}
