package fidelity

import "steadyneedle/sim/rig"

// faultTrials break things.
func faultTrials() []Trial {
	return []Trial{stuckShut(), stuckOpen(), cloggedPilot(), gaugeFaults(), primerFault(), leakFault(), radiatorFault(), tankFault(), burstTrial(), secondLineTrial(), kinkTrial()}
}

func ratedFault(m Model) *bench {
	b := rated(m, 1500, 150)
	b.setRelief()
	b.settle()
	return b
}

func stuckShut() Trial {
	return Trial{initial: ratedText + "; 1500 gpm at 150 psi net, relief valve set", begin: ratedFault, checks: []check{
		{Test: record("fault-relief-shut", Abnormal, "Relief valve stuck shut, all lines shut in 3 s", "A valve that is stuck protects nobody: the rise is that without a valve.", "Stick it shut; shut all discharges in 3 s; wait.", "discharge pressure less that before", "psi", 61, empirical(0.2), reliefModel),
			measure: func(b *bench) float64 {
				b.in.Faults.Relief = rig.StuckShut
				b.shutAllPlotted(3, 0)
				return b.snap(b.discharge) - b.before
			}},
	}}
}

func stuckOpen() Trial {
	return Trial{initial: streetText + ", at 134.8 psi, relief valve set", begin: func(m Model) *bench {
		b := onStreet(m, street(), 1)
		b.throttleFor(lay, 0, b.gauge(0))
		b.setRelief()
		b.settle()
		return b
	}, checks: []check{
		{Test: record("fault-relief-open", Abnormal, "Relief valve stuck open", "The pressure falls and amber stays lit whatever the wheel does.", "Stick it open; wind the wheel in; wait until steady.", "discharge pressure over that of the pump with 220 gpm at 1 psi open around it", "", 1, formula(0.02), balanced),
			measure: func(b *bench) float64 {
				b.in.Faults.Relief = rig.StuckOpen
				b.reliefOut()
				line := inRow(streetValve, hoseCv(2, 600), tipCv(1.125))
				return b.snap(b.discharge) / streetBalance(b.o.PumpShaftRPM, line, 220)
			}},
		{Test: record("fault-relief-open-lamp", Abnormal, "Amber with the relief valve stuck open", "The lamp tells what the wheel cannot cure.", "As before.", "amber lamp (1 lit)", "", 1, statedWidth(0), ownDesign),
			measure: func(b *bench) float64 { return lit(b.o.AmberLamp) }},
	}}
}

func cloggedPilot() Trial {
	more, width := limits(5, 60)
	return Trial{initial: ratedText + "; 1500 gpm at 150 psi net, relief valve set", begin: ratedFault, checks: []check{
		{Test: record("fault-pilot", Abnormal, "Clogged pilot, all lines shut in 3 s", "A pilot that feels late lets the pressure rise before the valve opens.", "Clog the pilot; shut all discharges in 3 s.", "highest rise over that of a sound valve", "psi", more, width, ownDesign),
			measure: func(b *bench) float64 {
				sound := ratedFault(b.model)
				rise := sound.shutAllPlotted(3, 0)
				b.takes(sound)
				b.in.Faults.PilotClogged = 1
				return b.shutAllPlotted(3, 0) - rise
			}},
	}}
}

func gaugeFaults() Trial {
	return Trial{initial: streetText + ", at 134.8 psi", begin: pumpingLay, checks: []check{
		{Test: record("fault-gauge-off", Abnormal, "A line gauge that reads 20 psi too high", "A wrong gauge shows itself against the master gauge.", "Put gauge 1 off by 20 psi; wait until steady.", "gauge 1 less the pressure it is tapped to", "psi", 20, statedWidth(1.5), ownDesign),
			measure: func(b *bench) float64 {
				b.in.Faults.LineGauge[0].Off = 20
				b.run(4)
				return b.look(func() float64 { return b.o.LineNeedle[0] - b.o.Lines[0].ValvePSI })
			}},
		{Test: record("fault-gauge-stuck", Abnormal, "A master gauge whose needle is stuck", "A stuck needle tells of a pressure that is gone.", "Stick the master gauge; throttle to idle; wait 10 s.", "change of the needle", "psi", 0, statedWidth(1), ownDesign),
			measure: func(b *bench) float64 {
				b.in.Faults.DischargeGauge.Stuck = true
				b.run(1)
				was := b.o.DischargeNeedle
				b.turn(&b.in.Throttle, 0, 2)
				b.run(10)
				return b.o.DischargeNeedle - was
			}},
	}}
}

func primerFault() Trial {
	return Trial{initial: "Engine 41 at draft, dry, pump in gear at idle: 10 ft of lift; primer dead", begin: func(m Model) *bench {
		b := atPond(m, pond{lift: 10, waterF: 60})
		b.in.Faults.PrimerDead = true
		return b
	}, checks: []check{
		{Test: record("fault-primer", Abnormal, "A primer that fails", "Without a primer there is no water.", "Work the primer for 60 s.", "share of the casing that holds water", "", 0, statedWidth(0.05), ownDesign),
			measure: func(b *bench) float64 { b.in.Primer = true; b.run(60); return b.o.CasingWater }},
	}}
}

func leakFault() Trial {
	lost, width := limits(0, 0.9)
	return Trial{initial: "Engine 41 at draft, primed at 10 ft of lift, 500 gpm at 100 psi net; air leak at the suction hose", begin: func(m Model) *bench {
		b := atPond(m, pond{lift: 10, waterF: 60})
		b.primedLines()
		b.pumpAt(500, 100)
		return b
	}, checks: []check{
		{Test: record("fault-suction-leak", Abnormal, "An air leak at the suction hose", "Air drawn in takes head from the pump.", "Let 60 gpm of free air in at 22 inHg; wait 20 s.", "net pressure over that before", "", lost, width, ownDesign),
			measure: func(b *bench) float64 {
				was := b.o.NetPSI
				b.in.Faults.SuctionLeakGPM = 60
				b.run(20)
				return b.o.NetPSI / was
			}},
	}}
}

func radiatorFault() Trial {
	return Trial{initial: ratedText + "; 1500 gpm at 150 psi net, the radiator's air gone", begin: func(m Model) *bench {
		b := rated(m, 1500, 150)
		b.in.Faults.RadiatorGone = 1
		return b
	}, checks: []check{
		{Test: record("fault-radiator", Abnormal, "The engine overheats without its radiator", "The coolant lamp tells of it.", "Wait until the engine lamp lights.", "coolant when it is lit", "°F", 220, statedWidth(3), ownDesign),
			measure: func(b *bench) float64 {
				b.until("the engine lamp", 1800, func() bool { return b.o.EngineHotLamp })
				return b.o.CoolantF
			}},
	}}
}

func tankFault() Trial {
	return Trial{initial: "Engine 41 parked, tank at three quarters", begin: func(m Model) *bench { return set(m, street()) }, checks: []check{
		{Test: record("fault-tank-lamps", Abnormal, "Tank lamps that read too high", "The lamps say full, the tank is not.", "Let the sender read a quarter too high; wait 20 s.", "lamp F (1 lit)", "", 1, statedWidth(0), ownDesign),
			measure: func(b *bench) float64 {
				b.in.Faults.TankLampsOff = 0.25
				b.run(20)
				return lit(b.o.TankLamp[4])
			}},
		{Test: record("fault-tank-truth", Abnormal, "What is in the tank all the same", "Looking in tells the truth.", "As before.", "gallons in the tank", "gal", 375, statedWidth(1), ownDesign),
			measure: func(b *bench) float64 { return b.o.TankGal }},
	}}
}

// burstTrial tears a hole of an inch into the line.
func burstTrial() Trial {
	return Trial{initial: streetText + ", at 134.8 psi", begin: func(m Model) *bench {
		b := pumpingLay(m)
		b.in.Lines[0].Burst = 1
		b.run(20)
		return b
	}, checks: []check{
		{Test: record("burst-flow", Abnormal, "Water lost through a burst of one inch", "A hole is an orifice: 29.84 c d² √p.", "Tear a hole of 1 in at the line's far end; wait until steady.", "flow lost over 29.84 · 0.8 · √NP", "", 1, formula(0.02), Source{Memory, "NFPA 291, coefficient of a square outlet"}),
			measure: func(b *bench) float64 {
				return b.snap(func() float64 {
					return b.o.Lines[0].LeakGPM / float64(29.84*float64(0.8*root(b.o.Lines[0].NozzlePSI[0])))
				})
			}},
		{Test: record("burst-nozzle", Abnormal, "Nozzle pressure with a burst line", "The nozzle loses what the burst takes.", "As before.", "nozzle pressure over that of tip and hole side by side", "", 1, formula(0.02), balanced),
			measure: func(b *bench) float64 { return b.nozzle(0)() / endBalance(b, tipCv(1.125)+29.84*0.8) }},
	}}
}

// endBalance is the pressure at the end of the street's line, psi, with an opening there.
func endBalance(b *bench, end float64) float64 {
	line := inRow(streetValve, hoseCv(2, 600))
	return across(streetBalance(b.o.PumpShaftRPM, inRow(line, end), 0), line, end)
}

// secondLineTrial lets the crew open a second line on the end of the first.
func secondLineTrial() Trial {
	return Trial{initial: streetText + ", at 134.8 psi", begin: func(m Model) *bench {
		b := pumpingLay(m)
		b.in.Lines[0].Second = 1
		b.run(20)
		return b
	}, checks: []check{
		{Test: record("second-line-flow", Abnormal, "Flow of a second line that the crew opens unasked", "Hose and tip in a row: the pressures that they take add up.", "Open it on the line's far end; wait until steady.", "psi that 150 ft of 1¾ in (C 15.5) and a 15/16 in tip take of its flow, over the pressure there", "", 1, formula(0.02), Source{Memory, "FL = C (Q/100)² L/100; Q = 29.7 d² √NP"}),
			measure: func(b *bench) float64 {
				return b.snap(func() float64 {
					q := b.o.Lines[0].LeakGPM
					tip := q / float64(29.7*float64(0.9375*0.9375))
					return (float64(15.5*1.5*float64(q/100*(q/100))) + float64(tip*tip)) / b.o.Lines[0].NozzlePSI[0]
				})
			}},
		{Test: record("second-line-nozzle", Abnormal, "First line's nozzle when the crew opens a second", "Two lines share what the first one had.", "As before.", "nozzle pressure over that of tip and second line side by side", "", 1, formula(0.02), balanced),
			measure: func(b *bench) float64 {
				return b.nozzle(0)() / endBalance(b, tipCv(1.125)+inRow(hoseCv(15.5, 150), tipCv(0.9375)))
			}},
	}}
}

// kinked is the opening of a kink by nine tenths in 2½ in hose: 90 velocity heads, V = 0.4085 Q/d² ft/s, V²/2g in ft.
var kinked = 1 / root(90*0.4085*0.4085/39.0625*0.434/64.348)

func kinkTrial() Trial {
	return Trial{initial: streetText + ", at 134.8 psi", begin: func(m Model) *bench {
		b := pumpingLay(m)
		b.before = b.o.Lines[0].ValvePSI
		b.in.Lines[0].Kink = 0.9
		b.run(20)
		return b
	}, checks: []check{
		{Test: record("kink-nozzle", Abnormal, "Nozzle pressure of a kinked line", "A kink takes the nozzle's pressure.", "Kink the line to nine tenths; wait until steady.", "nozzle pressure over that behind 90 velocity heads of 2½ in", "", 1, formula(0.02), Source{Computed, balanced.Text + "; a kink by k takes k/(1 − k)² velocity heads (assumption)"}),
			measure: func(b *bench) float64 {
				line := inRow(streetValve, hoseCv(2, 600), kinked)
				return b.snap(b.nozzle(0)) / across(streetBalance(b.o.PumpShaftRPM, inRow(line, tipCv(1.125)), 0), line, tipCv(1.125))
			}},
		{Test: record("kink-gauge", Abnormal, "Line gauge of a kinked line", "The pump's gauge shows the contrary: it rises.", "As before.", "rise of the line's pressure over that of the pump at this speed with the kink and without", "", 1, empirical(0.1), balanced),
			measure: func(b *bench) float64 {
				at := func(line float64) float64 {
					return across(streetBalance(b.o.PumpShaftRPM, inRow(streetValve, line), 0), streetValve, line)
				}
				free := inRow(hoseCv(2, 600), tipCv(1.125))
				return (b.o.Lines[0].ValvePSI - b.before) / (at(inRow(free, kinked)) - at(free))
			}},
	}}
}
