package rig

import (
	"math"
	"testing"
)

const step = 1.0 / 240

func runEngine(e *Engine, seconds, throttle, load float64) {
	for range int(seconds * 240) {
		e.Step(step, true, throttle, load)
		e.Accessories(step, 0)
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

// An electronic governor takes its droop back: 0–1 % from no load to full (from memory).
func TestElectronicEngineTakesItsDroopBack(t *testing.T) {
	def := Default().Engine
	def.Droop, def.ResetS, def.FollowRPMS = 0.05, 0.4, 900
	e := NewEngine(def)
	runEngine(&e, 10, 0.55, 0)
	free := e.RPM()
	load := 0.9 * e.torque.at(e.Speed())
	runEngine(&e, 0.3, 0.55, load)
	if drop := 1 - e.RPM()/free; drop < 0.005 {
		t.Errorf("a third of a second after the load came the speed has sagged by %.4f only: no engine is so stiff", drop)
	}
	low, high := e.RPM(), 0.0
	runEngine(&e, 10, 0.55, load)
	if drop := 1 - e.RPM()/free; drop < -0.002 || drop > 0.01 {
		t.Errorf("from %.0f over %.0f to %.0f rpm: droop %.3f", free, low, e.RPM(), drop)
	}
	for range 240 * 10 {
		e.Step(step, true, 0.55, 0)
		e.Accessories(step, 0)
		high = max(high, e.RPM())
	}
	if high < free+10 || high > 1.08*free || e.RPM() > free+3 {
		t.Errorf("load lost: races to %.0f rpm and stands at %.0f", high, e.RPM())
	}
}

// Losing all load at full throttle the engine races to its governed speed and no farther than where it has
// no torque (2350 rpm, its data).
func TestEngineDoesNotRunAway(t *testing.T) {
	e := NewEngine(Default().Engine)
	runEngine(&e, 10, 1, 0)
	runEngine(&e, 10, 1, 0.9*e.torque.at(2100*0.10472))
	sagged, top := e.RPM(), 0.0
	for range 240 * 10 {
		e.Step(step, true, 1, 0)
		e.Accessories(step, 0)
		top = max(top, e.RPM())
	}
	if sagged > 2120 || top < 2140 || top > 2350 {
		t.Errorf("from %.0f rpm under load up to %.0f without", sagged, top)
	}
}

// Oil pressure and voltage follow the engine; the oil lamp lights when it dies (data of this engine).
func TestOilAndVolts(t *testing.T) {
	e := NewEngine(Default().Engine)
	runEngine(&e, 5, 0, 0)
	if math.Abs(e.OilPSI()-28) > 1 || math.Abs(e.Volts()-13.9) > 0.05 || e.LowOil() {
		t.Errorf("idle: %.0f psi of oil, %.1f V, lamp %v", e.OilPSI(), e.Volts(), e.LowOil())
	}
	runEngine(&e, 15, 1, 0)
	if math.Abs(e.OilPSI()-62) > 1 {
		t.Errorf("governed speed: %.0f psi of oil", e.OilPSI())
	}
	for range 240 * 5 {
		e.Step(step, true, 0, 0)
		e.Accessories(step, 0.6)
	}
	if e.Volts() > 13.5 {
		t.Errorf("primer running: %.1f V", e.Volts())
	}
	for range 240 * 15 {
		e.Step(step, false, 0, 0)
		e.Accessories(step, 0)
	}
	if !e.LowOil() || math.Abs(e.Volts()-12.6) > 0.05 || e.RPM() > 1 {
		t.Errorf("switched off: lamp %v, %.1f V, %.0f rpm", e.LowOil(), e.Volts(), e.RPM())
	}
}

// Source: from memory, spool 700 → 1400 rpm within 2–4 s of a hand's throttle.
func TestEngineSpool(t *testing.T) {
	e := NewEngine(Default().Engine)
	seconds := 0.0
	for hand := 0.0; e.RPM() < 1390 && seconds < 10; seconds += step {
		hand = min(700.0/1450, hand+step/2.5)
		e.Step(step, true, hand, 40)
		e.Accessories(step, 0)
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
	e.Step(step, false, 0, 0)
	e.Accessories(step, 0)
	runEngine(&e, 4, 0, 0)
	if !e.Running() || math.Abs(e.RPM()-700) > 10 || e.LowOil() {
		t.Errorf("not started: %.0f rpm, oil %.0f psi", e.RPM(), e.OilPSI())
	}
}

// A starter that the neutral switch locks does not crank, and does not begin by itself when it is freed
// (common practice [P]).
func TestStarterLocked(t *testing.T) {
	e := NewEngine(Default().Engine)
	e.Step(step, false, 0, 0)
	e.Accessories(step, 0)
	e.LockStarter(true)
	runEngine(&e, 4, 0, 0)
	e.LockStarter(false)
	runEngine(&e, 4, 0, 0)
	if e.Running() || e.RPM() > 0 {
		t.Fatalf("%.0f rpm with the starter locked when the switch was turned on", e.RPM())
	}
	e.Step(step, false, 0, 0)
	e.Accessories(step, 0)
	runEngine(&e, 4, 0, 0)
	if !e.Running() {
		t.Error("not started in neutral")
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
