package rig

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

const (
	engineOff = iota
	engineCranking
	engineCatching // firing, not yet up to idle: too slow to stall again
	engineRunning
)

// Engine is the diesel with its speed governor. The governor is proportional: it gives fuel by how far
// the speed lies below the speed set, so that load makes the engine sag and losing the load makes it
// race, by the droop. An electronic one also takes the droop back, in its reset time.
type Engine struct {
	def      EngineDef
	torque   curve   // rad/s to N·m at full fuel, net of the engine's own drag
	inertia  float64 // kg m²
	friction float64 // N·m

	phase  int
	run    bool    // the switch, a step ago
	timer  float64 // s of cranking
	speed  float64 // rad/s
	set    float64 // rad/s, what the governor holds without load
	locked bool    // the starter is; no state: the owner says it again after loading one
	fuel   float64 // 0…1
	base   float64 // noLoad at speed baseAt, which is worked out when set moves
	baseAt float64
	trim   float64 // fuel that the reset has added
	oil    float64 // psi
	volts  float64
}

// NewEngine builds an engine that idles.
func NewEngine(d EngineDef) Engine {
	e := Engine{
		def:      d,
		torque:   newCurve(d.Torque, unit.RadSPerRPM, unit.NmPerLbFt),
		inertia:  float64(float64(d.InertiaLbFt2*unit.KgPerLb) * (unit.MPerFt * unit.MPerFt)),
		friction: float64(d.FrictionLbFt * unit.NmPerLbFt),
		phase:    engineRunning,
		run:      true,
	}
	e.speed = float64(d.IdleRPM * unit.RadSPerRPM)
	e.set = e.speed
	e.fuel = e.noLoad(e.set)
	e.oil, e.volts = e.oilGoal(), d.Volts
	return e
}

// noLoad is the fuel that just carries the engine's own drag.
func (e *Engine) noLoad(speed float64) float64 {
	return e.friction / (e.friction + bound.AtLeast(e.torque.at(speed), 1))
}

// Step advances by dt seconds. throttle runs from 0 (idle) to 1 (governed speed); load is the torque
// taken from the flywheel, N·m.
func (e *Engine) Step(dt float64, run bool, throttle, load float64) {
	e.switchOver(dt, run)
	idle := float64(e.def.IdleRPM * unit.RadSPerRPM)
	goal := idle + float64(bound.Within(throttle, 0, 1)*(float64(e.def.GovernedRPM*unit.RadSPerRPM)-idle))
	reach := float64(float64(e.def.FollowRPMS*unit.RadSPerRPM) * dt)
	e.set += bound.Within(goal-e.set, -float64(2*reach), reach)

	drive := 0.0
	if e.phase == engineRunning || e.phase == engineCatching {
		if e.set != e.baseAt {
			e.base, e.baseAt = e.noLoad(e.set), e.set
		}
		base := e.base
		below := (e.set - e.speed) / bound.AtLeast(float64(e.def.Droop*e.set), 1e-3)
		e.reset(dt, below, base+below+e.trim)
		want := base + below + e.trim
		e.fuel = lag(e.fuel, bound.Within(want, 0, 1), e.def.FuelLagS, dt)
		drive = float64(e.fuel*(e.torque.at(e.speed)+e.friction)) - e.friction
	} else {
		e.fuel = 0
		drive = -e.friction
	}
	e.speed = bound.AtLeast(e.speed+float64((drive-load)*(dt/e.inertia)), 0)
	if e.phase == engineCranking {
		e.speed = bound.AtLeast(e.speed, bound.AtMost(float64(0.25*idle), float64(e.timer*idle)))
	}
	e.settlePhase()
}

// Accessories moves oil pressure and voltage for dt seconds; once a tick is enough. battery is the share of
// the battery's strength that the primer takes.
func (e *Engine) Accessories(dt, battery float64) {
	e.oil = lag(e.oil, e.oilGoal(), 0.4, dt)
	e.volts = lag(e.volts, e.voltsGoal(battery), 0.3, dt)
}

// reset adds fuel as long as the speed stands off, by below of the full fuel, unless the fuel asked for
// is at its end already and would be driven farther.
func (e *Engine) reset(dt, below, asked float64) {
	if e.def.ResetS <= 0 || asked >= 1 && below > 0 || asked <= 0 && below < 0 {
		return
	}
	e.trim = bound.Within(e.trim+float64(below*(dt/e.def.ResetS)), -1, 1)
}

// LockStarter keeps the starter from cranking, as the neutral switch does while the transmission is in
// drive: who turns the engine on then has to turn it off and on again in neutral.
func (e *Engine) LockStarter(locked bool) { e.locked = locked }

// switchOver follows the switch: turning it on cranks, turning it off stops.
func (e *Engine) switchOver(dt float64, run bool) {
	switch {
	case !run:
		e.phase = engineOff
	case !e.run && !e.locked:
		e.phase, e.timer = engineCranking, 0
	case e.phase == engineCranking:
		e.timer += dt
		if e.timer >= e.def.CrankS {
			e.phase = engineCatching
		}
	}
	e.run = run
}

func (e *Engine) settlePhase() {
	stall := float64(e.def.StallRPM * unit.RadSPerRPM)
	switch {
	case e.phase == engineCatching && e.speed > float64(1.3*stall):
		e.phase = engineRunning
	case e.phase == engineRunning && e.speed < stall:
		e.phase = engineOff // stalled; the switch must be turned off and on again
	}
}

func (e *Engine) oilGoal() float64 {
	n := e.RPM()
	if n < e.def.IdleRPM {
		return float64(e.def.OilIdlePSI * (n / e.def.IdleRPM))
	}
	return e.def.OilIdlePSI + float64((e.def.OilPSI-e.def.OilIdlePSI)*bound.AtMost((n-e.def.IdleRPM)/(e.def.GovernedRPM-e.def.IdleRPM), 1))
}

func (e *Engine) voltsGoal(battery float64) float64 {
	v := e.def.BatteryVolts
	if e.phase == engineRunning {
		v = e.def.Volts
	}
	if e.phase == engineCranking {
		battery = 1
	}
	return v - float64(float64(0.12*e.def.BatteryVolts)*battery)
}

// Speed is in rad/s.
func (e *Engine) Speed() float64 { return e.speed }

// RPM is the engine's speed.
func (e *Engine) RPM() float64 { return e.speed / unit.RadSPerRPM }

// Running reports whether it runs under its own power.
func (e *Engine) Running() bool { return e.phase == engineRunning }

// Load is the share of the available torque in use, 0 to 1.
func (e *Engine) Load() float64 { return e.fuel }

// Power is what it delivers at the flywheel, W; never below zero.
func (e *Engine) Power() float64 {
	return bound.AtLeast(float64((float64(e.fuel*(e.torque.at(e.speed)+e.friction))-e.friction)*e.speed), 0)
}

// OilPSI is the oil pressure.
func (e *Engine) OilPSI() float64 { return e.oil }

// Volts is the battery's voltage.
func (e *Engine) Volts() float64 { return e.volts }

// LowOil reports whether the oil lamp is lit.
func (e *Engine) LowOil() bool { return e.oil < e.def.LowOilPSI }

// Walk visits the engine's state.
func (e *Engine) Walk(w *state.Walker) {
	w.Int(&e.phase)
	w.Bool(&e.run)
	w.Float(&e.timer)
	w.Float(&e.speed)
	w.Float(&e.set)
	w.Float(&e.fuel)
	w.Float(&e.trim)
	w.Float(&e.oil)
	w.Float(&e.volts)
}
