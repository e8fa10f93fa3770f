package fidelity

import (
	"fmt"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/plant"
	"steadyneedle/sim/rig"
)

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

// idleParallel has it idling in parallel without flow, and notes the net pressure.
func idleParallel(m Model) *bench {
	b := set(m, twoStage())
	b.reliefOut()
	b.inGear()
	b.onTank()
	b.settle()
	b.before = b.o.NetPSI
	return b
}

func transferTrial() Trial {
	return Trial{initial: twoStageText + ", in gear from its tank, no flow, idle, parallel", begin: idleParallel, checks: []check{
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
	return Trial{initial: twoStageText + ", in gear from its tank, no flow, 1200 rpm, parallel", begin: func(m Model) *bench {
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
	return Trial{initial: twoStageText + ", in gear from its tank, no flow, idle, parallel", begin: idleParallel, checks: []check{
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
