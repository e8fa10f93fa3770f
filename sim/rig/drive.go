package rig

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

// ln4 lets the shaft, slowing by a constant and a proportional drag, stand after exactly the wind-down
// time when it starts from idle speed.
const ln4 = 1.3862943611198906

// Drive carries power from the engine to the pump: road transmission, pump shift, and the shaft
// between. In pump gear and in drive the shaft turns with the engine; in neutral it runs down.
// All speeds are engine speeds.
type Drive struct {
	def  DriveDef
	idle float64 // rad/s

	shift    float64 // 0 road gear … 1 pump gear
	wanted   bool    // selected a step ago: true pump
	grinding bool    // this selection has clashed already
	grip     float64 // 0 slipping … 1 the transmission has taken hold
	shaft    float64 // rad/s
	clashes  float64
	neutralS float64 // s since the transmission went to neutral
}

// NewDrive builds a drive in road gear with its shaft at rest.
func NewDrive(d DriveDef, e EngineDef) Drive {
	return Drive{def: d, idle: float64(e.IdleRPM * unit.RadSPerRPM)}
}

// Step advances by dt seconds with the engine at speed rad/s.
func (d *Drive) Step(dt, engine float64, pump, inDrive bool) {
	if pump && d.wanted && inDrive && d.shift == 1 && d.grip == 1 {
		d.shaft, d.neutralS = engine, 0 // as it mostly is: everything engaged
		return
	}
	d.change(dt, engine, pump, inDrive)
}

// change is Step while something is not engaged.
func (d *Drive) change(dt, engine float64, pump, inDrive bool) {
	if inDrive {
		d.neutralS = 0
	} else {
		d.neutralS += dt
	}
	d.moveShift(dt, pump, inDrive)
	if d.Engaged() && inDrive {
		d.grip = bound.AtMost(d.grip+dt/d.def.EngageS, 1)
		// The converter pulls the shaft up; once it is level it stays with the engine.
		if d.grip == 1 {
			d.shaft = engine
		} else {
			d.shaft = bound.AtLeast(d.shaft, float64(engine*float64(d.grip*(2-d.grip))))
		}
		return
	}
	d.grip = 0
	tau := d.def.WindDownS / ln4
	d.shaft = bound.AtLeast(d.shaft-float64((d.shaft+d.idle/3)*(dt/tau)), 0)
}

// moveShift moves the gears toward what is selected. They grind and stay where they are while what
// they should mesh with turns.
func (d *Drive) moveShift(dt float64, pump, inDrive bool) {
	if pump != d.wanted {
		d.wanted, d.grinding = pump, false
	}
	goal := 0.0
	if pump {
		goal = 1
	}
	if d.shift == goal {
		return
	}
	if inDrive || d.shaft > float64(d.def.ClashRPM*unit.RadSPerRPM) {
		if !d.grinding {
			d.clashes++
			d.grinding = true
		}
		return
	}
	step := dt / d.def.ShiftS
	d.shift += bound.Within(goal-d.shift, -step, step)
}

// Engaged reports whether the pump shift is completed.
func (d *Drive) Engaged() bool { return d.shift == 1 }

// Shaft is the pump shaft's speed as engine speed, rad/s.
func (d *Drive) Shaft() float64 { return d.shaft }

// Coupled reports whether the engine carries the pump.
func (d *Drive) Coupled() bool { return d.grip > 0 }

// Ready reports whether pump, transmission and brake are as they must be for pumping.
func (d *Drive) Ready(inDrive, parked bool) bool {
	return d.Engaged() && inDrive && d.grip == 1 && parked
}

// Throttle is what the interlock lets through of a hand's throttle.
func (d *Drive) Throttle(hand float64, ready bool) float64 {
	if ready || d.def.FreeThrottle {
		return hand
	}
	return 0
}

// Load is the torque on the engine, N·m: the pump's power (W) with the drive's loss, and what the
// converter takes while it slips.
func (d *Drive) Load(engine, power float64, inDrive, rolling bool) float64 {
	load := 0.0
	if d.grip > 0 && d.shaft > 1 {
		load = power / float64((1-d.def.Loss)*d.shaft)
	}
	if inDrive && d.grip < 1 {
		r := engine / d.idle
		slip := float64(float64(d.def.SlipLbFt*unit.NmPerLbFt) * bound.AtMost(float64(r*r), 4))
		load += float64(slip * (1 - d.grip))
	}
	if rolling {
		load += float64(2 * float64(d.def.SlipLbFt*unit.NmPerLbFt))
	}
	return load
}

// Clashes counts gear clashes so far.
func (d *Drive) Clashes() float64 { return d.clashes }

// NeutralS is the time since the transmission went to neutral, s.
func (d *Drive) NeutralS() float64 { return d.neutralS }

// Walk visits the drive's state.
func (d *Drive) Walk(w *state.Walker) {
	w.Float(&d.shift)
	w.Bool(&d.wanted)
	w.Bool(&d.grinding)
	w.Float(&d.grip)
	w.Float(&d.shaft)
	w.Float(&d.clashes)
	w.Float(&d.neutralS)
}
