package rig

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

const (
	ironHeat    = 460.0  // J/(kg K), cast iron
	waterHeat   = 4186.0 // J/(kg K), near 20 °C
	boilingHeat = 2.26e6 // J/kg
	pumpHotOff  = 5.0    // °F of hysteresis
)

// Casing is the warmth of the pump: water and iron together.
//
//	(m_w c_w + m_i c_i) dT/dt = ṁ c (T_in − T) + (P_shaft − dP·Q) − UA (T − T_air)
//
// and no warmer than boiling at its pressure: what would go beyond makes steam.
type Casing struct {
	def    PumpDef
	volume float64 // m³
	iron   float64 // J/K
	ua     float64 // W/K
	kelvin float64
	hot    bool
}

// NewCasing builds a casing at temperature kelvin.
func NewCasing(d PumpDef, kelvin float64) Casing {
	return Casing{
		def:    d,
		volume: float64(d.CasingGal * unit.M3PerGal),
		iron:   float64(float64(d.CasingLb*unit.KgPerLb) * ironHeat),
		ua:     float64(d.LossBtuHrF*joulePerBtu) / (3600 * unit.KPerF),
		kelvin: kelvin,
	}
}

// Volume is the casing's content, m³.
func (c *Casing) Volume() float64 { return c.volume }

// Step advances by dt seconds. through is the water that leaves and is replaced, m³/s, entering at
// inlet kelvin; heat is what the shaft leaves in the water, W; wet the share of the casing that holds
// water; boiling the boiling point at the pressure there. It returns the steam made, kg.
func (c *Casing) Step(dt, through, inlet, heat, air, wet, boiling, density float64) (steam float64) {
	water := float64(float64(c.volume*wet) * float64(density*waterHeat))
	capacity := water + c.iron
	flow := float64(float64(bound.AtLeast(through, 0)*density) * waterHeat)
	// Backward Euler: a full stream replaces the casing in well under a second.
	k := dt / capacity
	c.kelvin = (c.kelvin + float64(k*(float64(flow*inlet)+heat+float64(c.ua*air)))) / (1 + float64(k*(flow+c.ua)))
	if c.kelvin > boiling && wet > 0.01 {
		steam = float64((c.kelvin-boiling)*capacity) / boilingHeat
		c.kelvin = boiling
	}
	c.kelvin = bound.AtMost(c.kelvin, 700)
	if c.F() > c.def.HotF {
		c.hot = true
	} else if c.F() < c.def.HotF-pumpHotOff {
		c.hot = false
	}
	return steam
}

// Kelvin is the water's temperature.
func (c *Casing) Kelvin() float64 { return c.kelvin }

// F is the water's temperature, °F.
func (c *Casing) F() float64 { return float64(unit.FahrenheitOf(c.kelvin)) }

// Hot reports whether the pump lamp is lit.
func (c *Casing) Hot() bool { return c.hot }

// Walk visits the casing's state.
func (c *Casing) Walk(w *state.Walker) {
	w.Float(&c.kelvin)
	w.Bool(&c.hot)
}
