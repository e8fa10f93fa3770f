package rig

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

const (
	joulePerBtu    = 1055.05585262
	thermostatSpan = 15.0 // °F from beginning to fully open (assumption)
	hotHysteresis  = 4.0  // °F
)

// Cooling is the engine's coolant with thermostat, radiator, and the auxiliary cooler that the pump
// feeds. The cooler cools the engine, never the pump.
type Cooling struct {
	def      CoolingDef
	capacity float64 // J/K
	kelvin   float64
	hot      bool
	blocked  float64 // fault, said anew before each tick: share of the radiator's air that is gone
}

// Block takes a share of 0 to 1 of the radiator's air away, as a torn fan belt does.
func (c *Cooling) Block(share float64) { c.blocked = share }

// NewCooling builds the coolant of an engine that has been driven.
func NewCooling(d CoolingDef) Cooling {
	return Cooling{def: d, capacity: float64(d.ThermalBtuF*joulePerBtu) / unit.KPerF, kelvin: unit.Fahrenheit(d.StartF).K()}
}

// Step advances by dt seconds and returns the heat that the cooler gives to the pump's water, W.
// power is the engine's, W; speed its share of governed speed (0: stands still); air and pumpWater
// are in kelvin; cooler is the share of the cooler's full flow.
func (c *Cooling) Step(dt, power, speed, air, pumpWater, cooler float64) float64 {
	heat := 0.0
	if speed > 0.1 {
		heat = float64(c.def.HeatShare*power) + float64(float64(c.def.IdleHeatHP*unit.WPerHP)*bound.AtMost(float64(3*speed), 1))
	}
	perK := unit.WPerHP / (100 * unit.KPerF) // of hp per 100 °F
	open := bound.Within((c.F()-c.def.ThermostatF)/thermostatSpan, 0, 1)
	radiator := float64(float64(c.def.RadiatorHP*perK) * float64(float64(open*(0.05+float64(0.95*speed)))*(1-c.blocked)))
	toWater := float64(float64(float64(c.def.CoolerHP*perK)*bound.Within(cooler, 0, 1)) * (c.kelvin - pumpWater))
	block := float64(20 * (c.kelvin - air)) // W, from the engine's own surface
	c.kelvin += float64((heat - float64(radiator*(c.kelvin-air)) - toWater - block) * (dt / c.capacity))
	if c.F() > c.def.HotF {
		c.hot = true
	} else if c.F() < c.def.HotF-hotHysteresis {
		c.hot = false
	}
	return toWater
}

// F is the coolant's temperature, °F.
func (c *Cooling) F() float64 { return float64(unit.FahrenheitOf(c.kelvin)) }

// Hot reports whether the engine lamp is lit.
func (c *Cooling) Hot() bool { return c.hot }

// Walk visits the coolant's state.
func (c *Cooling) Walk(w *state.Walker) {
	w.Float(&c.kelvin)
	w.Bool(&c.hot)
}
