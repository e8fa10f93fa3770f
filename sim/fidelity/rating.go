package fidelity

import (
	"fmt"

	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/unit"
)

// ratingPoints are the points at which a pump is certified, and the overload; speed and power are
// predicted from this pump's constants.
var ratingPoints = [...]struct {
	name         string
	gpm, net     float64
	rpm, hp, eff float64
}{
	{"100 %", 1500, 150, 1520, 193, 0.70},
	{"70 %", 1050, 200, 1622, 186, 0},
	{"50 %", 750, 250, 1759, 198, 0},
	{"overload", 1500, 165, 1577, 211, 0},
}

// ratingTrials pump the rating points from draft.
func ratingTrials() []Trial {
	var list []Trial
	for _, p := range ratingPoints {
		list = append(list, ratingTrial(p.name, p.gpm, p.net, p.rpm, p.hp, p.eff))
	}
	return list
}

func ratingTrial(name string, gpm, net, rpm, hp, eff float64) Trial {
	id := func(what string) string { return fmt.Sprintf("rating-%g-at-%g-%s", gpm, net, what) }
	point := fmt.Sprintf("%g gpm at %g psi net (%s)", gpm, net, name)
	steps := "Prime; work throttle and nozzles in turn until the pump gives " + point + "; wait until steady."
	t := Trial{initial: ratedText, begin: func(m Model) *bench { return rated(m, gpm, net) }}
	add := func(test Test, measure func(b *bench) float64) {
		test.Area, test.Steps = Steady, steps
		t.checks = append(t.checks, check{Test: test, measure: func(b *bench) float64 { return b.snap(func() float64 { return measure(b) }) }})
	}
	add(Test{ID: id("flow"), Title: "Flow, " + point, Objective: "The pump reaches the point of its rating from draft.", Compared: "pump flow", Unit: "gpm",
		Expected: gpm, Tolerance: formula(0.01), Source: rating}, (*bench).flow)
	add(Test{ID: id("net"), Title: "Net pressure, " + point, Objective: "The pump reaches the point of its rating from draft.", Compared: "discharge less intake", Unit: "psi",
		Expected: net, Tolerance: formulaPSI(), Source: rating}, (*bench).net)
	add(Test{ID: id("speed"), Title: "Engine speed, " + point, Objective: "Speed is predicted, not fitted: the affinity laws carry one point to the others.", Compared: "engine speed", Unit: "rpm",
		Expected: rpm, Tolerance: statedShare(0.06), Source: ownConstants}, (*bench).rpm)
	add(Test{ID: id("power"), Title: "Engine power for the pump, " + point, Objective: "Power includes the drive's loss.", Compared: "shaft power over 0.97", Unit: "hp",
		Expected: hp, Tolerance: statedShare(0.06), Source: ownConstants}, func(b *bench) float64 { return b.o.ShaftHP / 0.97 })
	load, width := limits(0, 0.9)
	add(Test{ID: id("load"), Title: "Engine load, " + point, Objective: "The engine has power to spare.", Compared: "share of the torque available",
		Expected: load, Tolerance: width, Source: rating}, func(b *bench) float64 { return b.o.EngineLoad })
	head, width := limits(0.97, 1)
	add(Test{ID: id("head"), Title: "Head kept against cavitation, " + point, Objective: "At its rating the pump does not cavitate.", Compared: "head factor",
		Expected: head, Tolerance: width, Source: Source{Computed, "NPSHr is where 3 % of the head are lost, by definition"}}, func(b *bench) float64 { return b.o.HeadFactor })
	if eff > 0 {
		mid, width := limits(0.68, 0.75)
		add(Test{ID: id("efficiency"), Title: "Efficiency, " + point, Objective: "The pump is as good as pumps of vehicles are.", Compared: "water power (gpm·psi/1714) over shaft power",
			Expected: mid, Tolerance: width, Source: Source{Read, "Fire Apparatus, \"Pump power requirements\" (2012): best efficiency of vehicle pumps 0.68 to 0.75"}},
			func(b *bench) float64 {
				return float64(hydraulics.WaterPower(unit.GPM(b.o.PumpGPM), unit.PSI(b.o.NetPSI))) / b.o.ShaftHP
			})
		add(Test{ID: id("water-power"), Title: "Brake power at 70 %, " + point, Objective: "Water power over an efficiency of 0.70 is what the shaft gives.", Compared: "shaft power", Unit: "hp",
			Expected: 187.5, Tolerance: formula(0.02), Source: Source{Computed, "gpm·psi/1714 over 0.70"}}, func(b *bench) float64 { return b.o.ShaftHP })
		vac, width := limits(12, 16)
		add(Test{ID: id("vacuum"), Title: "Vacuum at the intake, " + point, Objective: "The intake gauge shows lift, friction and velocity.", Compared: "intake", Unit: "inHg",
			Expected: vac, Tolerance: width, Source: ownConstants}, func(b *bench) float64 { return b.inHg() })
		add(Test{ID: id("npsh"), Title: "NPSH at hand, " + point, Objective: "What is left over the vapor pressure at the pump follows the textbook sum.", Compared: "NPSHa", Unit: "ft",
			Expected: float64(npshAtRating()), Tolerance: Tolerance{Stated, 1, 0}, Source: Source{Computed, "atmosphere at 2000 ft less lift, vapor pressure and friction; strainer and inlet left out"}},
			func(b *bench) float64 { return b.o.NPSHa })
	}
	return t
}

// npshAtRating is the textbook's sum at 1500 gpm through 20 ft of 6 in hose, ft.
func npshAtRating() unit.Feet {
	const ftPerPSI = 1 / 0.4335 // water of 60 °F
	friction := hydraulics.FrictionLoss(0.05, 1500, 20)
	return hydraulics.NPSHAvailable(unit.Feet(float64(hydraulics.Atmosphere(2000))*ftPerPSI), -10, unit.Feet(0.2563*ftPerPSI), unit.Feet(float64(friction)*ftPerPSI))
}

// inHg is the vacuum at the intake.
func (b *bench) inHg() float64 { return float64(-b.o.IntakePSI * (unit.PaPerPSI / unit.PaPerInHg)) }
