package fidelity

import (
	"steadyneedle/sim/rig"
	"steadyneedle/sim/unit"
)

// suctionTrials ask the pump itself where it begins to cavitate.
func suctionTrials() []Trial {
	onset, width := limits(12, 19)
	return []Trial{
		formulaTest(Test{
			ID: "cavitation-inHg", Area: Steady, Title: "Vacuum at which 1500 gpm begin to lose head", Objective: "Rated flow loses head from 12 to 19 inHg on: the intake gauge warns.",
			Initial: "The pump of Engine 41 at 1520 rpm, 1500 gpm, water 60 °F, sea level", Steps: "Raise the vacuum until 3 % of the head are lost.", Compared: "vacuum at the intake", Unit: "inHg",
			Expected: onset, Tolerance: width, Source: ownConstants,
		}, func() float64 {
			p := pumpAlone(1520)
			vacuum := 0.0
			for p.HeadFactor(unit.GPM(1500).M3S(), float64(-vacuum*unit.PaPerInHg)) > 0.97 && vacuum < 30 {
				vacuum += 0.05
			}
			return vacuum
		}),
		{initial: "The pump of Engine 41 with 20 psi at its intake, cold water", checks: []check{{
			Test: record("cavitation-none-at-20", Steady, "No cavitation in cold water at 20 psi", "Who keeps 20 psi at the intake does not cavitate, at any speed or flow.", "At 2150 rpm go from no flow to 1500 gpm.", "head factor", "", 1, formula(0.002), intakeRule),
			sweep: func(*bench) *Curve {
				c := &Curve{X: "flow", XUnit: "gpm", Y: "head factor"}
				p := pumpAlone(2150)
				for q := 0.0; q <= 1500; q += 150 {
					c.add(q, p.HeadFactor(unit.GPM(q).M3S(), unit.PSI(20).Pa()), 1, formula(0.002))
				}
				return c
			},
		}}},
	}
}

// pumpAlone is the pump without its machine, turning at rpm in water of 60 °F.
func pumpAlone(rpm float64) *rig.Pump {
	p := rig.NewPump(rig.Default().Pump)
	p.Prepare(unit.RPM(rpm).RadS(), 0, unit.PaAtm, 1766, 999)
	return &p
}
