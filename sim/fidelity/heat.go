package fidelity

import (
	"fmt"

	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/water"
)

// heatTrials shut the pump up, and keep it cool.
func heatTrials() []Trial {
	var list []Trial
	for _, rpm := range [...]float64{700, 933, 1333} {
		list = append(list, deadHeadTrial(rpm))
	}
	return append(list, boilTrial(), recirculationTrial(), pureHeat(), flowingHeat(), coolingFlow())
}

// Heat that warms a kilogram by a kelvin, J/(kg K).
const (
	waterHeat = 4183.0 // IAPWS-IF97, middle of 10 to 60 °C [S]
	ironHeat  = 460.0  // cast iron, 0.11 Btu/(lb °F) of the handbooks [M]
)

// deadHeadRate is the warming, °F a minute, of Engine 41's pump shut up at rpm, when it has come to f °F
// in air of 70 °F: all of the power that it takes with no flow stays in its water and iron, but for what
// the casing gives to the air.
//
//	dT/dt = (P0 ω³ − UA (T − T_air)) / (ρ V c_w + m_i c_i)
func deadHeadRate(rpm, f float64) float64 {
	d := rig.Default().Pump
	w := rpm / d.RatedRPM
	power := float64(float64(d.ShaftHP*unit.WPerHP) * float64(w*float64(w*w)))
	lost := float64(d.LossBtuHrF*float64(1055.06*(f-70))) / 3600
	mass := float64(float64(d.CasingGal*unit.M3PerGal) * water.Density(unit.Fahrenheit(f).K()))
	capacity := float64(mass*waterHeat) + float64(float64(d.CasingLb*unit.KgPerLb)*ironHeat)
	return float64(60*(power-lost)) / float64(capacity*unit.KPerF)
}

// shutUp has the pump turning at rpm with no way out for the water.
func shutUp(m Model, rpm float64) *bench {
	b := set(m, street())
	b.reliefOut()
	b.inGear()
	b.onTank()
	b.in.TankToPump = 0
	b.throttleFor(rpm, -1, b.rpm)
	return b
}

const shutText = "Engine 41 in gear, pump full of water of 60 °F and shut off all round, relief valve wound in"

func deadHeadTrial(rpm float64) Trial {
	return Trial{initial: fmt.Sprintf("%s; %g rpm", shutText, rpm), begin: func(m Model) *bench { return shutUp(m, rpm) }, checks: []check{{
		Test: record(fmt.Sprintf("dead-head-%g", rpm), Abnormal, fmt.Sprintf("Warming of a dead-headed pump at %g rpm", rpm), "All of the shaft's power goes into the water and the iron.", "Wait two minutes.", "warming", "°F/min", deadHeadRate(rpm, 70), formula(0.02), heatBalanced),
		measure: func(b *bench) float64 {
			from := b.o.PumpF
			b.run(120)
			return float64(0.5 * (b.o.PumpF - from))
		},
	}}}
}

// boilTrial leaves it shut until it boils, and saves it.
func boilTrial() Trial {
	minutes := 70 / deadHeadRate(1333, 105)
	top, topWidth := limits(200, 290)
	psi, psiWidth := limits(-5, 80)
	cool, coolWidth := limits(50, 130)
	return Trial{initial: shutText + "; 1333 rpm", begin: func(m Model) *bench { return shutUp(m, 1333) }, checks: []check{
		{Test: record("dead-head-to-140", Abnormal, "Dead-headed at 150 psi: time from 70 to 140 °F", "A pump forgotten at pressure is hot in ten minutes.", "Wait until the pump's water reaches 140 °F.", "time", "min", minutes, formula(0.02), heatBalanced),
			measure: func(b *bench) float64 {
				plot := &Curve{X: "time", XUnit: "min", Y: "water in the pump", YUnit: "°F"}
				b.until("70 °F", 300, func() bool { return b.o.PumpF >= 70 })
				from, beat := b.s, 0
				b.watch = func() {
					if beat++; beat%600 == 0 {
						plot.trace((b.s-from)/60, b.o.PumpF)
					}
				}
				s := b.until("140 °F", 1500, func() bool { return b.o.PumpF >= 140 })
				b.watch, b.plot = nil, plot
				return s / 60
			}},
		{Test: record("dead-head-lamp", Instruments, "Pump lamp when dead-headed", "The lamp warns before the water scalds more than it must.", "Wait until the lamp lights.", "temperature at which it is lit", "°F", 140, statedWidth(3), ownDesign),
			measure: func(b *bench) float64 {
				b.until("the lamp", 300, func() bool { return b.o.PumpHotLamp })
				return b.o.PumpF
			}},
		{Test: record("dead-head-boils", Abnormal, "Hottest after 45 minutes more", "It boils, no hotter than its packing holds.", "Wait 45 min.", "water in the pump", "°F", top, topWidth, Source{Computed, "boiling point up to 30 psi, where packing and drains let steam go (assumption)"}),
			measure: func(b *bench) float64 { b.run(2700); return b.o.PumpF }},
		{Test: record("dead-head-loses-head", Abnormal, "Pressure of a boiling pump", "Steam makes no pressure.", "As before.", "discharge pressure", "psi", psi, psiWidth, ownDesign),
			measure: func(b *bench) float64 { return b.o.DischargePSI }},
		{Test: record("dead-head-cooled", Abnormal, "Moved water cools it", "Water moved through the pump cools it in a minute or two.", "Open tank to pump and tank fill, throttle down; wait two minutes.", "water in the pump", "°F", cool, coolWidth, ownDesign),
			measure: func(b *bench) float64 {
				b.in.TankToPump, b.in.TankFill = 1, 1
				b.turn(&b.in.Throttle, 0.1, 2)
				b.run(120)
				return b.o.PumpF
			}},
	}}
}

// recirculationTrial keeps a shut pump cool through the tank for an hour.
func recirculationTrial() Trial {
	flow, flowWidth := limits(15, 25)
	model := Source{Computed, "heat balance of pump and a 500 gal tank, trial model"}
	return Trial{
		initial: "Engine 41 in gear on its full tank, 500 gal of 60 °F, all discharges shut, recirculation open, 1270 rpm",
		begin: func(m Model) *bench {
			s := street()
			s.Rig.Tank.StartFraction = 1
			b := set(m, s)
			b.reliefOut()
			b.inGear()
			b.onTank()
			b.in.Recirculation = 1
			b.rpmFor(1270)
			b.before = b.o.TankF
			return b
		},
		checks: []check{
			{Test: record("recirculation-flow", Controls, "Flow of the recirculation line", "About 20 gpm run back to the tank.", "Read the flow.", "recirculation", "gpm", flow, flowWidth, ownDesign),
				measure: func(b *bench) float64 { return b.snap(func() float64 { return b.o.RecircGPM }) }},
			{Test: record("recirculation-pump", Transients, "Pump after an hour on recirculation", "Recirculation keeps the pump from boiling.", "Wait an hour.", "water in the pump", "°F", 99, otherModel(0.08), model),
				measure: func(b *bench) float64 {
					from := b.o.PumpF
					b.watch = func() {
						b.btu += float64(tick * (float64(b.o.ShaftHP*42.41/60) - float64(30*(b.o.PumpF-70))/3600))
					}
					b.run(3600)
					b.watch = nil
					b.btu -= float64((26.417*8.34 + 330.7*0.11) * (b.o.PumpF - from))
					return b.o.PumpF
				}},
			{Test: record("recirculation-tank", Transients, "Tank after an hour on recirculation", "What cools the pump warms the tank: some 27 °F an hour with 500 gal.", "As before.", "gain of the tank's temperature", "°F", 27, otherModel(0.08), model),
				measure: func(b *bench) float64 { return b.o.TankF - b.before }},
			{Test: record("energy-recirculating", System, "Balance of energy on recirculation", "All that the shaft gives ends in the tank, the casing and the air: also the pressure that the recirculation line takes.", "As before.", "warmth of the tank over work of the shaft less what casing and air have", "", 1, formula(0.02), Source{Computed, "42.41 Btu/min a horsepower, 8.34 lb a gallon; conservation law"}),
				measure: func(b *bench) float64 { return float64(500*float64(8.34*(b.o.TankF-b.before))) / b.btu }},
			{Test: record("recirculation-lamp", Instruments, "Pump lamp on recirculation", "A pump kept cool lights no lamp.", "As before.", "pump lamp (1 lit)", "", 0, statedWidth(0), ownDesign),
				measure: func(b *bench) float64 { return lit(b.o.PumpHotLamp) }},
		},
	}
}

func pureHeat() Trial {
	return formulaTest(Test{
		ID: "dead-head-formula", Area: Steady, Title: "Dead-heading, water alone", Objective: "The formula that the tests of the pump build on.", Initial: "50 hp into 25 gal",
		Steps: "Evaluate 42.41 Btu/min a horsepower over 8.34 lb a gallon.", Compared: "warming", Unit: "°F/min", Expected: 10.2, Tolerance: formula(0.01), Source: deadHead,
	}, func() float64 { return float64(hydraulics.DeadHeadRise(50, 25)) })
}

func flowingHeat() Trial {
	return formulaTest(Test{
		ID: "flowing-rise", Area: Steady, Title: "Warming of water that flows through a pump", Objective: "Moved water stays cool: only what the pump wastes warms it.", Initial: "5000 ft of head at an efficiency of 0.80",
		Steps: "Evaluate H/(778 c) (1/η − 1).", Compared: "rise of temperature", Unit: "°F", Expected: 1.6, Tolerance: formula(0.01), Source: Source{Read, "pump handbooks: ΔT = H/(778 c) (1/η − 1)"},
	}, func() float64 { return float64(hydraulics.FlowingRise(5000, 0.8)) })
}

// coolingFlow pumps the minimum flow of the handbooks through a pump at speed.
func coolingFlow() Trial {
	return Trial{
		initial: "Engine 41 in gear on a tank too large to warm, discharges shut, 1333 rpm; tank fill opened to the handbooks' minimum flow",
		begin: func(m Model) *bench {
			s := street()
			s.Rig.Tank.Gallons, s.Rig.Tank.StartFraction = largeTank, 0.5
			b := set(m, s)
			b.reliefOut()
			b.inGear()
			b.onTank()
			b.rpmFor(1333)
			return b
		},
		checks: []check{{
			Test: record("minimum-flow", Steady, "Rise of temperature at the minimum flow", "gpm = BHP/2.95 carry the shaft's power away with a rise of 15 °F.", "Open tank fill until BHP/2.95 flow; wait 15 min.", "water in the pump less water in the tank", "°F", 15, empirical(0.15), minimumFlow),
			measure: func(b *bench) float64 {
				for b.o.TankFillGPM < b.o.ShaftHP/2.95 && b.in.TankFill < 1 {
					b.in.TankFill += 0.002
					b.run(0.5)
				}
				b.run(900)
				return b.o.PumpF - b.o.TankF
			},
		}},
	}
}
