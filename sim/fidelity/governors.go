package fidelity

import (
	"fmt"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/plant"
	"steadyneedle/sim/rig"
)

// governorTrials work the same pumper under an electronic pressure governor.
func governorTrials() []Trial {
	return []Trial{governorHolds(), governorSpeed(), governorShut(true), governorShut(false), governorLost(), governorOverRun()}
}

// withGovernor is the street with a governor in place of relief valve and hand throttle.
func withGovernor() plant.Setup {
	s := street()
	g := rig.DefaultGovernor()
	s.Rig.Governor, s.Rig.Relief = &g, nil
	s.Rig.Engine.Droop, s.Rig.Engine.ResetS, s.Rig.Engine.FollowRPMS = 0.05, 0.4, 900
	return s
}

const governorText = "The pumper with a pressure governor in place of relief valve and hand throttle, on the street's hydrant; "

var governorRule = Source{Memory, "NFPA 1901, pressure control: rise of 30 psi at most, all discharges shut in 3 to 10 s"}

// press gives a button of the governor a short press.
func (b *bench) press(button *bool) {
	*button = true
	b.run(0.1)
	*button = false
	b.run(0.4)
}

// govern has the governor hold psi in pressure mode.
func (b *bench) govern(psi float64) {
	b.in.Governor.Pressure = true
	b.press(&b.in.Governor.Preset)
	b.run(15)
	for k := 0; b.o.GovernorSetPSI < psi-1 && k < 200; k++ {
		b.press(&b.in.Governor.Raise)
	}
	b.run(8)
}

func governorHolds() Trial {
	calm, width := limits(0, 0.5)
	return Trial{initial: governorText + "the street's line flowing", begin: func(m Model) *bench {
		b := onStreet(m, withGovernor(), 1)
		b.govern(151)
		return b
	}, checks: []check{
		{Test: record("governor-holds", Controls, "The governor holds the pressure set", "In pressure mode the pump stands at the setting; the engine's droop does not show.", "Press preset (125 psi), then raise to 151 psi; wait until steady.", "discharge pressure", "psi", 151, statedWidth(1), Source{Memory, "electronic engines and governors hold within 0 to 1 %"}),
			measure: func(b *bench) float64 { return b.snap(b.discharge) }},
		{Test: record("governor-calm", Controls, "The governor does not hunt", "A governor at rest stands still.", "As before; watch for 10 s.", "swing of the discharge pressure", "psi", calm, width, ownDesign),
			measure: func(b *bench) float64 { return b.swing(10, b.discharge) }},
		{Test: record("governor-second-line", Controls, "A second line under the governor", "A further line is taken up by the engine: the first keeps its pressure.", "Open a like line on discharge 2; wait until steady.", "discharge pressure", "psi", 151, statedWidth(2), ownDesign),
			measure: func(b *bench) float64 { b.line(1); return b.snap(b.discharge) }},
	}}
}

func governorSpeed() Trial {
	return Trial{initial: "The pumper with a pressure governor, in gear on its tank", begin: func(m Model) *bench {
		b := set(m, withGovernor())
		b.inGear()
		b.onTank()
		return b
	}, checks: []check{
		{Test: record("governor-speed", Controls, "The governor holds a speed", "In speed mode the engine stands at the preset against the pump's load.", "Open tank fill; press preset (1100 rpm); wait until steady.", "engine speed", "rpm", 1100, statedShare(0.01), Source{Memory, "electronic engines hold within 0 to 1 %"}),
			measure: func(b *bench) float64 {
				b.in.TankFill = 1
				b.press(&b.in.Governor.Preset)
				b.run(10)
				return b.snap(b.rpm)
			}},
		{Test: record("governor-idle", Controls, "The idle button", "One press brings the engine to idle.", "Press idle; wait 8 s.", "engine speed", "rpm", 700, statedWidth(25), ownDesign),
			measure: func(b *bench) float64 {
				b.press(&b.in.Governor.Idle)
				b.run(8)
				return b.o.EngineRPM
			}},
	}}
}

// governorShut shuts two lines under the governor, in pressure and in speed mode.
func governorShut(pressure bool) Trial {
	begin := func(m Model) *bench {
		s := withGovernor()
		s.Line = fireground.LineDef{Trunk: hose(4, 0.2, 25), Nozzle: tip(1.25)}
		b := onStreet(m, s, 2)
		b.govern(151)
		b.in.Governor.Pressure = pressure
		b.settle()
		return b
	}
	initial := governorText + "two lines of 25 ft of 4 in with 1¼ in tips at 151 psi"
	if !pressure {
		least, width := limits(20, 120)
		return Trial{initial: initial + ", then speed mode", begin: begin, checks: []check{{
			Test:    record("governor-speed-shut", Transients, "All lines shut in speed mode", "In speed mode nothing takes the pressure: the test of pressure mode can fail.", "Shut both discharges in 3 s; wait.", "highest discharge pressure less that before", "psi", least, width, ownDesign),
			measure: func(b *bench) float64 { return b.shutAllPlotted(3, 0) },
		}}}
	}
	rise, width := limits(0, 30)
	return Trial{initial: initial, begin: begin, checks: []check{
		{Test: record("governor-shut", Transients, "All lines shut in pressure mode", "The governor keeps the rise within what the standard allows.", "Shut both discharges in 3 s; wait.", "highest discharge pressure less that before", "psi", rise, width, governorRule),
			measure: func(b *bench) float64 { return b.shutAllPlotted(3, 30) }},
		{Test: record("governor-shut-rest", Transients, "Back at the setting after all lines are shut", "The governor brings the pressure back.", "As before, when steady.", "discharge pressure less that before", "psi", 0, statedWidth(2), ownDesign),
			measure: func(b *bench) float64 { return b.snap(b.discharge) - b.before }},
	}}
}

// governorLost takes the hydrant away for good.
func governorLost() Trial {
	return Trial{initial: governorText + "the street's line at 151 psi", begin: func(m Model) *bench {
		b := onStreet(m, withGovernor(), 1)
		b.govern(151)
		b.settle()
		b.before = b.o.EngineRPM
		b.in.Shock.StaticDropPSI = 65
		b.peak = b.highest(20, b.rpm)
		return b
	}, checks: []check{
		{Test: record("governor-lost-races", Abnormal, "The engine does not race when the water is lost", "Cut back, the engine does not race after water that is not there.", "Take the main's pressure; watch 20 s.", "highest speed over that before", "rpm", 200, Tolerance{Tier: Limit, Width: 200}, ownDesign),
			measure: func(b *bench) float64 { return b.peak - b.before }},
		{Test: record("governor-lost-idle", Abnormal, "At idle in the end when the water is lost", "Without pressure the governor goes to idle and waits for a hand.", "As before, after 20 s.", "engine speed", "rpm", 700, statedWidth(25), ownDesign),
			measure: func(b *bench) float64 { return b.o.EngineRPM }},
		{Test: record("governor-lost-lamp", Instruments, "Lamp of the governor when the water is lost", "The lamp says why.", "As before.", "low-water lamp (1 lit)", "", 1, statedWidth(0), ownDesign),
			measure: func(b *bench) float64 { return lit(b.o.LowWaterLamp) }},
	}}
}

// governorOverRun takes the hydrant away for a moment.
func governorOverRun() Trial {
	over, width := limits(8, 150)
	return Trial{initial: governorText + "the street's line at 151 psi", begin: func(m Model) *bench {
		b := onStreet(m, withGovernor(), 1)
		b.govern(151)
		b.settle()
		return b
	}, checks: []check{
		{Test: record("governor-over-run", Abnormal, "Over-run when lost water returns", "The governor speeds up after pressure that is not there: when the water is back at once, the pressure over-runs.", "Take the main's pressure for 1.2 s; give it back; watch 20 s.", "highest discharge pressure over the setting", "psi", over, width, Source{Assumed, "how fast this governor speeds the engine up, 300 rpm a second, and the column that comes back"}),
			measure: func(b *bench) float64 {
				plot := &Curve{X: "time", XUnit: "s", Y: "discharge pressure", YUnit: "psi"}
				from, beat := b.s, 0
				b.watch = func() {
					if beat++; beat%6 == 0 {
						plot.trace(b.s-from, b.o.DischargePSI)
					}
				}
				b.in.Shock.StaticDropPSI = 65
				b.run(1.2)
				b.in.Shock.StaticDropPSI = 0
				top := b.highest(20, b.discharge)
				b.watch, b.plot = nil, plot
				return top - 151
			}},
		{Test: record("governor-over-run-ends", Abnormal, "After the over-run", "It comes back to the setting by itself.", "Wait until steady.", "discharge pressure", "psi", 151, statedWidth(1), ownDesign),
			measure: func(b *bench) float64 { return b.snap(b.discharge) }},
	}}
}

// stageTrials work a two-stage pump.
func stageTrials() []Trial {
	list := []Trial{transferTrial(), joltTrial(), clapperTrial()}
	for _, c := range [...]struct {
		id, how       string
		series        bool
		gpm, net, rpm float64
	}{
		{"parallel-1250", "volume", false, 1250, 150, 1520},
		{"parallel-625", "volume", false, 625, 250, 1759},
		{"series-625", "pressure", true, 625, 250, 1419},
	} {
		list = append(list, stageRating(c.id, c.how, c.series, c.gpm, c.net, c.rpm))
	}
	return list
}

// twoStage is the street with a two-stage 1250 gpm pump.
func twoStage() plant.Setup {
	s := street()
	t := rig.DefaultTransfer()
	s.Rig.Pump.RatedGPM, s.Rig.Pump.LossPSI, s.Rig.Pump.ShaftHP, s.Rig.Pump.Transfer = 1250, 2.88e-5, 62, &t
	return s
}

const twoStageText = "A two-stage 1250 gpm pump on Engine 41's chassis"

var twoStageLaw = Source{Computed, "in series the rises of two like impellers add, each with the whole flow: 2 A ω² − 8 B Q² against A ω² − B Q² in parallel"}

func transferTrial() Trial {
	return Trial{initial: twoStageText + ", in gear from its tank, no flow, idle, parallel", begin: func(m Model) *bench {
		b := set(m, twoStage())
		b.reliefOut()
		b.inGear()
		b.onTank()
		b.settle()
		b.before = b.o.NetPSI
		return b
	}, checks: []check{
		{Test: record("transfer-time", Transients, "Travel of the transfer valve", "The valve takes some seconds.", "Select series.", "time", "s", 4, statedWidth(0.3), ownDesign),
			measure: func(b *bench) float64 {
				b.in.Series = true
				return b.until("the transfer valve", 15, func() bool { return b.o.TransferAt >= 1 })
			}},
		{Test: record("transfer-doubles", Steady, "Net pressure in series over that in parallel, no flow", "In series the rises of both impellers add.", "Wait until steady.", "ratio of net pressures, speeds being equal", "", 2, formula(0.02), twoStageLaw),
			measure: func(b *bench) float64 { return b.snap(b.net) / b.before }},
		{Test: record("transfer-calm", Abnormal, "Changing over at idle", "At or below 50 psi nothing jolts.", "As before.", "jolts", "", 0, statedWidth(0), Source{Memory, "two-stage pumps are changed over at 50 psi net or less"}),
			measure: func(b *bench) float64 { return b.o.TransferJolts }},
	}}
}

func joltTrial() Trial {
	return Trial{initial: twoStageText + ", in gear from its tank, no flow, 1500 rpm, parallel", begin: func(m Model) *bench {
		b := set(m, twoStage())
		b.reliefOut()
		b.inGear()
		b.onTank()
		b.rpmFor(1200)
		return b
	}, checks: []check{
		{Test: record("transfer-jolts", Abnormal, "Changing over at high pressure", "Far above 50 psi the change jolts the pump.", "Select series at 1200 rpm; wait 6 s.", "jolts", "", 1, statedWidth(0), Source{Memory, "two-stage pumps are changed over at 50 psi net or less"}),
			measure: func(b *bench) float64 {
				b.before = b.o.Damage
				b.in.Series = true
				b.run(6)
				return b.o.TransferJolts
			}},
	}}
}

// clapperTrial leaves the clapper valve open.
func clapperTrial() Trial {
	return Trial{initial: twoStageText + ", in gear from its tank, no flow, idle, parallel", begin: func(m Model) *bench {
		b := set(m, twoStage())
		b.reliefOut()
		b.inGear()
		b.onTank()
		b.settle()
		b.before = b.o.NetPSI
		return b
	}, checks: []check{
		{Test: record("clapper-open", Abnormal, "Series with a clapper valve that stays open", "A clapper valve that does not shut lets the second stage's pressure go round: changing over brings next to nothing.", "Hold the clapper open; select series; wait until steady.", "ratio of net pressures", "", 1.1, statedWidth(0.05), ownDesign),
			measure: func(b *bench) float64 {
				b.in.Faults.ClapperOpen = true
				b.in.Series = true
				b.run(6)
				return b.snap(b.net) / b.before
			}},
	}}
}

func stageRating(id, how string, series bool, gpm, net, rpm float64) Trial {
	return Trial{initial: fmt.Sprintf("%s at draft: 10 ft of lift, 20 ft of 6 in suction hose, sea level, water 60 °F; %s", twoStageText, how), begin: func(m Model) *bench {
		s := twoStage()
		s.Draft = &fireground.DraftDef{LiftFt: 10, SuctionFt: 20, SuctionIn: 6}
		s.Line = fireground.LineDef{Trunk: hose(4, 0.2, 25), Nozzle: tip(1.75)}
		b := set(m, s)
		b.reliefOut()
		b.inGear()
		b.in.Series = series
		b.primedLines()
		b.pumpAt(gpm, net)
		return b
	}, checks: []check{{
		Test:    record("two-stage-"+id, Steady, fmt.Sprintf("Engine speed, %g gpm at %g psi net, %s", gpm, net, how), "Volume gives the flow, pressure the high pressure at less speed.", fmt.Sprintf("Prime; pump %g gpm at %g psi net; wait until steady.", gpm, net), "engine speed", "rpm", rpm, statedShare(0.03), twoStageLaw),
		measure: func(b *bench) float64 { return b.snap(b.rpm) },
	}}}
}
