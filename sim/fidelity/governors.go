package fidelity

import (
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
		return Trial{initial: initial + ", then speed mode", begin: begin, checks: []check{{
			Test: record("governor-speed-shut", Transients, "All lines shut in speed mode", "In speed mode nothing takes the pressure: the test of pressure mode can fail.", "Shut both discharges in 3 s; wait.", "rise when steady over that to the pump's shut-off pressure on top of the hydrant's", "", 1, formula(0.02), balanced),
			measure: func(b *bench) float64 {
				before := b.o.DischargePSI
				b.shutAllPlotted(3, 0)
				return (b.snap(b.discharge) - before) / (streetBalance(b.o.PumpShaftRPM, 1e-6, 0) - before)
			},
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
