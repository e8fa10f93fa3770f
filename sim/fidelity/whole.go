package fidelity

import (
	"math"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

// systemTrials look at the model as a whole.
func systemTrials() []Trial {
	return []Trial{sameTrial(), massTrial(), energyTrial(), heatBalance(), fineRated(), fineRelief(), fineColumn(), fineCavitation(), fineCollapse(), fineHammer()}
}

// shift works through most of what the machine can do: a shift at the pump in five minutes.
func (b *bench) shift() {
	b.inGear()
	b.onTank()
	b.onHydrant(25)
	b.in.TankToPump = 0
	b.line(0)
	b.turn(&b.in.Throttle, 0.25, 3)
	b.in.ReliefTurns = 3
	b.run(5)
	b.turn(&b.in.TankFill, 0.5, 2)
	b.line(1)
	b.turn(&b.in.Lines[0].Nozzle[0], 0, 0.5)
	b.run(5)
	b.in.Shock.StaticDropPSI = 40
	b.run(15)
	b.in.Shock.StaticDropPSI = 0
	b.turn(&b.in.Lines[0].Nozzle[0], 1, 1)
	b.run(20)
	b.shutAll(5)
	b.in.Drain[0], b.in.Lines[1].Kink = 1, 0.5
	b.run(30)
}

// hash is the state as one number.
func (b *bench) hash() uint64 {
	w := state.Hasher()
	b.p.Walk(&w)
	return w.Sum()
}

// differ is 0 for equal states.
func differ(a, b uint64) float64 {
	if a == b {
		return 0
	}
	return 1
}

func sameTrial() Trial {
	return Trial{initial: "Engine 41 on the street, five minutes of work: shift, tank, hydrant, two lines, relief valve, a nozzle slammed, the main failing and coming back, all shut", begin: func(m Model) *bench {
		b := set(m, street())
		b.shift()
		return b
	}, checks: []check{
		{Test: record("same-run", System, "The same run again", "The same hands give the same state.", "Work it again from the beginning; compare all state.", "states that differ", "", 0, statedWidth(0), sameAgain),
			measure: func(b *bench) float64 {
				k := set(b.model, street())
				k.shift()
				return differ(b.hash(), k.hash())
			}},
		{Test: record("same-restored", System, "Saved, run on, restored, run again", "A state that is restored goes on as it would have.", "Save; run 30 s with the throttle opened; restore; run the same again; compare all state.", "states that differ", "", 0, statedWidth(0), sameAgain),
			measure: func(b *bench) float64 {
				w := state.Saver(nil)
				b.p.Walk(&w)
				saved := w.Saved()
				on := func() uint64 {
					b.in.Throttle = 0.5
					b.in.Discharge[0] = 1
					b.run(30)
					return b.hash()
				}
				first := on()
				l := state.Loader(saved)
				b.p.Walk(&l)
				return differ(first, on())
			}},
		{Test: record("same-new", System, "Saved, and restored into another", "A state is all there is.", "Save; restore into an apparatus newly built; run both 30 s; compare all state.", "states that differ", "", 0, statedWidth(0), sameAgain),
			measure: func(b *bench) float64 {
				w := state.Saver(nil)
				b.p.Walk(&w)
				k := set(b.model, street())
				l := state.Loader(w.Saved())
				k.p.Walk(&l)
				k.in = b.in
				k.run(30)
				b.run(30)
				return differ(b.hash(), k.hash())
			}},
	}}
}

func massTrial() Trial {
	none := Tolerance{Tier: Numerical, Width: 1e-9}
	return Trial{initial: "Engine 41 on the street, the same five minutes of work", begin: func(m Model) *bench {
		b := set(m, street())
		b.shift()
		return b
	}, checks: []check{
		{Test: record("mass-balance", System, "Balance of water", "All water is somewhere.", "Compare what the network holds with what it held, and what came in and went out.", "water unaccounted for over water that crossed the boundaries", "", 0, none, conservation),
			measure: func(b *bench) float64 {
				x := b.p.Net().Balance()
				return math.Abs(x.Error) / x.Moved
			}},
		{Test: record("solver-cap", System, "Steps of the solver that did not converge", "Every step of the network converges.", "Count the steps that ended at the cap of iterations.", "steps", "", 0, statedWidth(0), conservation),
			measure: func(b *bench) float64 { return float64(b.p.Net().Counters().CapMet) }},
	}}
}

// energyTrial holds shaft power against what the water gets, as pressure and as warmth.
func energyTrial() Trial {
	return Trial{initial: ratedText + "; 1500 gpm at 150 psi net", begin: func(m Model) *bench { return rated(m, 1500, 150) }, checks: []check{
		{Test: record("energy-flowing", System, "Balance of energy at the rating", "The shaft's power leaves as pressure and as warmth.", "Wait ten minutes; add water power and what warms the water.", "water power and warmth over shaft power", "", 1, formula(0.02), conservation),
			measure: func(b *bench) float64 {
				b.run(600)
				q := float64(b.o.PumpGPM * unit.M3SPerGPM)
				water := float64(q * float64(b.o.NetPSI*unit.PaPerPSI))
				warm := float64(float64(q*999) * float64(4186*float64((b.o.PumpF-60)*unit.KPerF)))
				return (water + warm) / float64(b.o.ShaftHP*unit.WPerHP)
			}},
	}}
}

// heatBalance holds the shaft's power against the warming of a pump that is shut up.
func heatBalance() Trial {
	return Trial{initial: shutText + "; 1333 rpm", begin: func(m Model) *bench { return shutUp(m, 1333) }, checks: []check{
		{Test: record("energy-shut", System, "Balance of energy, dead-headed", "The shaft's power stays in water and iron.", "Wait three minutes; compare what has been stored with the shaft's work.", "heat stored over work of the shaft", "", 1, formula(0.02), Source{Computed, "100 L of water and 150 kg of iron; conservation law"}),
			measure: func(b *bench) float64 {
				work, from := 0.0, b.o.PumpF
				b.watch = func() { work += float64(b.o.ShaftHP * (unit.WPerHP * tick)) }
				b.run(180)
				b.watch = nil
				const capacity = 0.1*999*4186 + 150*460 // J/K
				return float64(capacity*float64((b.o.PumpF-from)*unit.KPerF)) / work
			}},
	}}
}

// fine is the model at 3840 steps a second.
func fine(m Model) Model {
	m.Substeps = 64
	return m
}

// twice takes a value at the usual and at the fine step and returns their difference.
func twice(b *bench, value func(Model) (*bench, float64)) float64 {
	k, coarse := value(b.model)
	f, exact := value(fine(b.model))
	b.takes(k)
	b.takes(f)
	return coarse - exact
}

func stepTest(id, title, compared, unitName string, width float64, source Source, value func(Model) (*bench, float64)) Trial {
	return Trial{initial: "The same run at 240 and at 3840 steps a second", begin: func(m Model) *bench { return &bench{model: m} }, checks: []check{{
		Test:    record(id, System, title, "What the model says does not hang on its step.", "Do the same at both steps; compare.", compared+", difference", unitName, 0, statedWidth(width), source),
		measure: func(b *bench) float64 { return twice(b, value) },
	}}}
}

func fineRated() Trial {
	return stepTest("step-rated", "Speed at the rating, coarse and fine step", "engine speed at 1500 gpm and 150 psi net from draft", "rpm", 5, ownFineStep, func(m Model) (*bench, float64) {
		b := rated(m, 1500, 150)
		return b, b.o.EngineRPM
	})
}

func fineRelief() Trial {
	return stepTest("step-relief", "Rise with the relief valve, coarse and fine step", "highest rise, all shut in 3 s from 1500 gpm at 150 psi net", "psi", 1, ownFineStep, func(m Model) (*bench, float64) {
		b := rated(m, 1500, 150)
		b.setRelief()
		b.settle()
		return b, b.shutAllPlotted(3, 0)
	})
}

func fineColumn() Trial {
	return stepTest("step-relief-column", "A by-passing relief valve on short lines, coarse and fine step", "discharge pressure plus its swing over 10 s, on a hydrant with three lines of 25 ft of 4 in shut", "psi", 0.5, ownFineStep, func(m Model) (*bench, float64) {
		b := onColumn(m)
		swing := b.swing(10, b.discharge)
		return b, b.o.DischargePSI + swing
	})
}

func fineCavitation() Trial {
	return stepTest("step-cavitation", "Flow of a cavitating pump, coarse and fine step", "pump flow with open nozzles at 1800 rpm from draft", "gpm", 15, ownFineStep, func(m Model) (*bench, float64) {
		b := atPond(m, pond{lift: 10, waterF: 60})
		b.primedLines()
		for i := range 3 {
			b.turn(&b.in.Lines[i].Nozzle[0], 1, 3)
		}
		b.turn(&b.in.Throttle, 0.8, 4)
		b.run(15)
		sum := 0.0
		for range 120 {
			b.run(tick)
			sum += b.o.PumpGPM
		}
		return b, sum / 120
	})
}

func fineCollapse() Trial {
	return stepTest("step-collapse", "Discharge on a flat supply hose, coarse and fine step", "discharge pressure at 1600 rpm on a hydrant of 40 psi that gives 300 gpm at 15", "psi", 3, ownFineStep, func(m Model) (*bench, float64) {
		s := street()
		s.Hydrant = fireground.HydrantDef{StaticPSI: 40, ResidualPSI: 15, FlowGPM: 300}
		s.Line = fireground.LineDef{Trunk: hose(2.5, 2, 200), Nozzle: tip(1.25)}
		b := onStreet(m, s, 1)
		b.turn(&b.in.Throttle, 0.65, 4)
		b.run(90)
		return b, b.o.DischargePSI
	})
}

func fineHammer() Trial {
	return stepTest("step-hammer", "Peak at a slammed nozzle, coarse and fine step", "highest pressure at the nozzle, shut in 0.5 s, wave speed 600 ft/s", "psi", 10, ownFineStep, func(m Model) (*bench, float64) {
		b := striking(m, 600)
		return b, b.slam(0.5)
	})
}
