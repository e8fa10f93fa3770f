package fidelity

import (
	"fmt"
	"strings"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/unit"
)

// ServiceTest lists the trials that any pumper's pump has to stand, by its rated flow alone: the points of
// the rating from draft with engine to spare, the time to prime, and pressure control where a relief valve
// has it. Of the apparatus only the data is known, so nothing here is expected by the data itself. It is
// for an apparatus with a hand's throttle.
func ServiceTest(d rig.Def) []Trial {
	full := d.Pump.RatedGPM
	list := []Trial{servicePriming(d)}
	for _, p := range [...]struct {
		name       string
		share, net float64
	}{{"100 %", 1, 150}, {"70 %", 0.7, 200}, {"50 %", 0.5, 250}, {"overload", 1, 165}} {
		list = append(list, servicePoint(d, p.name, p.share, float64(p.share*full), p.net))
	}
	return list
}

// atTest has the apparatus at the pond of the rating: 10 ft of lift, 20 ft of suction hose as the standard
// gives it by size (from memory), 2000 ft above sea level, 60 °F; three short wide lines.
func atTest(m Model, d rig.Def) *bench {
	s := street()
	d.Instruments = d.Instruments.True()
	s.Rig = d
	s.Draft = &fireground.DraftDef{LiftFt: 10, SuctionFt: 20, SuctionIn: suctionSize(d.Pump.RatedGPM), ElevationFt: 2000}
	s.Draft.LossC = float64(0.05 * pow5(6/s.Draft.SuctionIn))
	s.WaterF, s.AirF = 60, 70
	s.Line = fireground.LineDef{Trunk: hose(4, 0.2, 25), Nozzle: tip(1.75)}
	b := set(m, s)
	b.reliefOut()
	b.inGear()
	return b
}

// suctionSize is the diameter in inches that the standard's table gives a pump (from memory).
func suctionSize(gpm float64) float64 {
	switch {
	case gpm <= 500:
		return 4
	case gpm <= 750:
		return 4.5
	case gpm <= 1000:
		return 5
	}
	return 6
}

// pow5 is x⁵: friction of hoses of one make falls with the fifth power of their diameter.
func pow5(x float64) float64 {
	x2 := float64(x * x)
	return float64(float64(x2*x2) * x)
}

// called is the short name of an apparatus, without what it is.
func called(d *rig.Def) string {
	name, _, _ := strings.Cut(d.Title, ",")
	return name
}

func testText(d *rig.Def) string {
	return fmt.Sprintf("%s at draft: 10 ft of lift, 20 ft of %g in suction hose, 2000 ft above sea level, water 60 °F; three short lines whose nozzles set the flow; relief valve wound in", d.Title, suctionSize(d.Pump.RatedGPM))
}

func servicePriming(d rig.Def) Trial {
	most := 30.0
	if d.Pump.RatedGPM >= 1500 {
		most = 45
	}
	mid, width := limits(0, most)
	return Trial{initial: testText(&d) + "; dry", begin: func(m Model) *bench { return atTest(m, d) }, checks: []check{{
		Test:    record("service-"+d.Name+"-prime", Transients, called(&d)+": time to prime", "The pump primes in the time that the standard gives its size.", "Work the primer until the casing is full.", "time", "s", mid, width, primeRule),
		measure: (*bench).prime,
	}}}
}

func servicePoint(d rig.Def, name string, share, gpm, net float64) Trial {
	point := fmt.Sprintf("%g gpm at %g psi net (%s)", gpm, net, name)
	id := func(what string) string { return fmt.Sprintf("service-%s-%g-at-%g-%s", d.Name, gpm, net, what) }
	steps := "Prime; work throttle and nozzles in turn until the pump gives " + point + "; wait until steady."
	t := Trial{initial: testText(&d), begin: func(m Model) *bench {
		b := atTest(m, d)
		b.in.Series = d.Pump.Transfer != nil && share <= 0.5 // in pressure up to half of the rated flow
		b.primedLines()
		b.pumpAt(gpm, net)
		return b
	}}
	add := func(what, title, objective, compared, unitName string, lo, hi float64, source Source, value func(*bench) float64) {
		mid, width := limits(lo, hi)
		t.checks = append(t.checks, check{
			Test:    record(id(what), Steady, called(&d)+": "+title+", "+point, objective, steps, compared, unitName, mid, width, source),
			measure: func(b *bench) float64 { return b.snap(func() float64 { return value(b) }) },
		})
	}
	add("flow", "flow", "The pump reaches the point of its rating from draft.", "pump flow", "gpm", float64(0.99*gpm), float64(1.01*gpm), rating, (*bench).flow)
	add("net", "net pressure", "The pump reaches the point of its rating from draft.", "discharge less intake", "psi", float64(0.99*net), float64(1.01*net), rating, (*bench).net)
	add("load", "engine load", "The engine has power to spare.", "share of the torque available", "", 0.05, 0.95, rating, func(b *bench) float64 { return b.o.EngineLoad })
	add("speed", "engine speed", "The point is reached below governed speed.", "engine speed over governed speed", "", 0.4, 0.98, rating, func(b *bench) float64 { return b.o.EngineRPM / d.Engine.GovernedRPM })
	add("head", "head kept against cavitation", "At its rating the pump does not cavitate.", "head factor", "", 0.97, 1, Source{Computed, "NPSHr is where 3 % of the head are lost, by definition"}, func(b *bench) float64 { return b.o.HeadFactor })
	if share == 1 && net == 150 {
		add("efficiency", "efficiency", "The pump is about as good as pumps of vehicles are: best 0.68 to 0.75, small ones less.", "water power (gpm·psi/1714) over shaft power", "", 0.55, 0.75,
			Source{Read, "Fire Apparatus, \"Pump power requirements\" (2012): best efficiency of vehicle pumps 0.68 to 0.75; the allowance for a small pump is from memory"},
			func(b *bench) float64 {
				return float64(hydraulics.WaterPower(unit.GPM(b.o.PumpGPM), unit.PSI(b.o.NetPSI))) / b.o.ShaftHP
			})
		if d.Relief != nil {
			rise, width := limits(0, 30)
			t.checks = append(t.checks, check{
				Test: record(id("relief"), Transients, called(&d)+": highest rise, all shut in 3 s from "+point, "The relief valve keeps the rise within what the standard allows.", steps+" Set the relief valve by its lamp; shut all discharges evenly in 3 s.", "highest discharge pressure less that before", "psi", rise, width, reliefRule),
				measure: func(b *bench) float64 {
					b.setRelief()
					b.settle()
					return b.shutAllPlotted(3, 30)
				},
			})
		}
	}
	return t
}
