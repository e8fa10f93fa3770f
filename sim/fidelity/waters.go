package fidelity

import (
	"fmt"

	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/water"
)

// waterTable is IAPWS-IF97: saturation pressure (region 4), density and heat capacity (region 1).
var waterTable = [...]struct{ celsius, pa, density, heat float64 }{
	{10, 1228.1839, 999.65, 4.1958},
	{20, 2339.2148, 998.16, 4.1851},
	{40, 7384.4275, 992.18, 4.1788},
	{60, 19945.8019, 983.18, 4.1830},
	{80, 47414.7199, 971.78, 4.1956},
	{100, 101417.9779, 958.35, 4.2167},
}

// formulaTest is a trial that needs no machine.
func formulaTest(t Test, measure func() float64) Trial {
	return Trial{initial: t.Initial, checks: []check{{Test: t, measure: func(*bench) float64 { return measure() }}}}
}

// waterTrials hold the water of the model against the steam tables.
func waterTrials() []Trial {
	var list []Trial
	for _, w := range waterTable {
		k := w.celsius + 273.15
		at := fmt.Sprintf("Water of %g °C", w.celsius)
		list = append(list,
			formulaTest(Test{
				ID: fmt.Sprintf("vapor-%g", w.celsius), Area: Steady, Title: "Vapor pressure at " + fmt.Sprintf("%g °C", w.celsius),
				Objective: "Lift and cavitation depend on the vapor pressure.", Initial: at, Steps: "Evaluate the model's water.", Compared: "vapor pressure",
				Unit: "Pa", Expected: w.pa, Tolerance: numerical(), Source: iapws,
			}, func() float64 { return water.VaporPressure(k) }),
			formulaTest(Test{
				ID: fmt.Sprintf("density-%g", w.celsius), Area: Steady, Title: "Density at " + fmt.Sprintf("%g °C", w.celsius),
				Objective: "Heads and heat depend on the density.", Initial: at, Steps: "Evaluate the model's water.", Compared: "density",
				Unit: "kg/m³", Expected: w.density, Tolerance: numerical(), Source: iapws,
			}, func() float64 { return water.Density(k) }),
			formulaTest(Test{
				ID: fmt.Sprintf("heat-%g", w.celsius), Area: Steady, Title: "Heat capacity at " + fmt.Sprintf("%g °C", w.celsius),
				Objective: "How fast a shut pump warms depends on the heat capacity.", Initial: at, Steps: "Evaluate the model's water.", Compared: "heat capacity",
				Unit: "kJ/(kg K)", Expected: w.heat, Tolerance: formula(0.0005), Source: iapws,
			}, func() float64 { return water.HeatCapacity(k) / 1000 }),
		)
	}
	list = append(list, boiling(), releaseCheck())
	return append(list, atmospheres()...)
}

// boiling sweeps the boiling point back through the vapor pressure.
func boiling() Trial {
	return Trial{initial: "Water from 5 to 145 °C", checks: []check{{
		Test: Test{
			ID: "boiling-sweep", Area: Steady, Title: "Boiling point over temperature", Objective: "Boiling point and vapor pressure are one law read in two directions.",
			Steps: "For each temperature take the vapor pressure, and the boiling point at that pressure.", Compared: "boiling point", Unit: "°C",
			Tolerance: numerical(), Source: Source{Computed, "IAPWS-IF97 region 4, equations 30 and 31, undo each other"},
		},
		sweep: func(*bench) *Curve {
			c := &Curve{X: "temperature", XUnit: "°C", Y: "boiling point at its vapor pressure", YUnit: "°C"}
			for t := 5.0; t <= 145; t += 10 {
				c.add(t, water.BoilingPoint(water.VaporPressure(t+273.15))-273.15, t, numerical())
			}
			return c
		},
	}}}
}

// releaseCheck is the check value of the release within the model's range.
func releaseCheck() Trial {
	return formulaTest(Test{
		ID: "vapor-300-K", Area: Steady, Title: "Vapor pressure at 300 K, check value of the release", Objective: "The equation is the release's own.",
		Initial: "Water of 300 K", Steps: "Evaluate the model's water.", Compared: "vapor pressure", Unit: "Pa", Expected: 3536.58941,
		Tolerance: Tolerance{Tier: Numerical, Share: 1e-6}, Source: Source{Read, "IAPWS-IF97, table 35"},
	}, func() float64 { return water.VaporPressure(300) })
}

// atmospheres hold the air's pressure at the heights of the table.
func atmospheres() []Trial {
	var list []Trial
	for _, a := range [...]struct{ ft, psi float64 }{{0, 14.696}, {2000, 13.664}, {5000, 12.228}, {10000, 10.106}} {
		list = append(list, formulaTest(Test{
			ID: fmt.Sprintf("atmosphere-%g", a.ft), Area: Steady, Title: fmt.Sprintf("Air pressure %g ft above sea level", a.ft),
			Objective: "What lifts the water at draft is the air's pressure.", Initial: "Standard atmosphere", Steps: "Evaluate the model's atmosphere.",
			Compared: "absolute pressure", Unit: "psi", Expected: a.psi, Tolerance: Tolerance{Tier: Numerical, Share: 1e-4}, Source: isa,
		}, func() float64 { return float64(hydraulics.Atmosphere(unit.Feet(a.ft))) }))
	}
	return list
}
