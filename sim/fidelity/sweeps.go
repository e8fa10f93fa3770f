package fidelity

import (
	"fmt"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/unit"
)

// sweepTrials go between the points that other tests stand on, so that nothing is tuned to points.
func sweepTrials() []Trial {
	list := []Trial{
		pdpSweep("1.75-tip", "200 ft of 1¾ in, 15/16 in tip", hose(1.75, 15.5, 200), tip(0.9375)),
		pdpSweep("1.75-fog", "200 ft of 1¾ in, fog 150 gpm at 100 psi", hose(1.75, 15.5, 200), fog(150, 100)),
		pdpSweep("2.5-tip", "300 ft of 2½ in, 1⅛ in tip", hose(2.5, 2, 300), tip(1.125)),
		pdpSweep("3-tip", "400 ft of 3 in, 1¼ in tip", hose(3, 0.8, 400), tip(1.25)),
	}
	for _, rpm := range [...]float64{900, 1200, 1500, 1700} {
		list = append(list, pumpCurve(rpm))
	}
	return append(list, affinityTrial(), frictionSweep())
}

// pdpSweep raises the pump pressure and reads the nozzle.
func pdpSweep(id, text string, h fireground.HoseDef, z *fireground.NozzleDef) Trial {
	factor := float64(29.7 * float64(z.TipIn*z.TipIn)) // gpm at 1 psi
	if z.TipIn == 0 {
		factor = z.RatedGPM / root(z.RatedPSI)
	}
	// Behind the valve: NP + R k² NP, with R of the hose in psi/gpm².
	share := 1 + float64(float64(h.LossC*h.LengthFt)*float64(factor*factor))/1e6
	return Trial{
		initial: tankText + "; " + text, begin: func(m Model) *bench { return fromTank(m, fireground.LineDef{Trunk: h, Nozzle: z}) },
		checks: []check{{
			Test: record("nozzle-over-pump-"+id, Steady, "Nozzle pressure over pump pressure: "+text, "At every pump pressure the nozzle gets what the hose leaves of it.", "Throttle to pump pressures from 60 to 240 psi; wait until steady at each; read the nozzle.",
				"nozzle pressure", "psi", 0, formulaPSI(), Source{Computed, "NP = PDP/(1 + C L k²/10⁶), k the nozzle's gpm at 1 psi"}),
			sweep: func(b *bench) *Curve {
				c := &Curve{X: "pressure behind the discharge valve", XUnit: "psi", Y: "nozzle pressure", YUnit: "psi"}
				for psi := 60.0; psi <= 240; psi += 20 {
					b.throttleFor(psi, 0, b.gauge(0))
					np := b.snap(b.nozzle(0))
					c.add(b.o.Lines[0].ValvePSI, np, b.o.Lines[0].ValvePSI/share, formulaPSI())
				}
				return c
			},
		}},
	}
}

// strongMain has three lines of large hose on a main that hardly gives way.
func strongMain(m Model) *bench {
	s := street()
	s.Hydrant, s.Supply = fireground.HydrantDef{StaticPSI: 25, ResidualPSI: 22, FlowGPM: 2500}, hose(5, 0.08, 0)
	s.Line = fireground.LineDef{Trunk: hose(4, 0.2, 25), Nozzle: tip(2.5)}
	b := onStreet(m, s, 0)
	for i := range 3 {
		b.in.Lines[i].Attached = true
		b.nozzles(i, 0.1)
		b.turn(&b.in.Discharge[i], 1, 4)
	}
	b.run(30)
	return b
}

const strongText = "Engine 41 in gear on a main of 25 psi that gives way by 3 psi at 2500 gpm; 25 ft of 5 in supply hose; three lines of 25 ft of 4 in with 2½ in tips"

// pumpCurve opens the nozzles at one speed.
func pumpCurve(rpm float64) Trial {
	curve := func(id, title, y, yUnit, compared string, source Source, tol Tolerance, value func(*bench) float64, expected func(w, q float64) float64) check {
		return check{
			Test: record(fmt.Sprintf("pump-%s-%g", id, rpm), Steady, fmt.Sprintf("%s at %g rpm", title, rpm), "The pump follows its curve between the points of its rating.",
				fmt.Sprintf("Throttle to %g rpm; open the nozzles in steps from nothing to 1500 gpm; wait until steady at each.", rpm), compared, yUnit, 0, tol, source),
			sweep: func(b *bench) *Curve {
				c := &Curve{X: "flow", XUnit: "gpm", Y: y, YUnit: yUnit}
				for open := 0.04; open <= 1; open = float64(open * 1.55) {
					for i := range 3 {
						b.turn(&b.in.Lines[i].Nozzle[0], open, 2)
					}
					b.throttleTo(rpm, -1, b.rpm)
					v := b.snap(func() float64 { return value(b) })
					if b.o.PumpGPM > 1600 || b.o.IntakePSI < 5 {
						break
					}
					c.add(b.o.PumpGPM, v, expected(b.o.EngineRPM/1520, b.o.PumpGPM), tol)
				}
				return c
			},
		}
	}
	pressure := Tolerance{Formula, 1, 0.02}
	return Trial{initial: strongText, begin: strongMain, checks: []check{
		curve("head", "Net pressure over flow", "net pressure", "psi", "discharge less intake", Source{Computed, "195 ω² − 2·10⁻⁵ Q² psi, ω = rpm/1520: affinity laws on this pump's data"}, pressure,
			(*bench).net, func(w, q float64) float64 { return float64(195*float64(w*w)) - float64(2e-5*float64(q*q)) }),
		curve("power", "Shaft power over flow", "shaft power", "hp", "shaft power", Source{Computed, "75 ω³ + 0.075 ω² Q hp, this pump's data"}, formula(0.02),
			func(b *bench) float64 { return b.o.ShaftHP }, func(w, q float64) float64 {
				w2 := float64(w * w)
				return float64(75*float64(w2*w)) + float64(0.075*float64(w2*q))
			}),
	}}
}

// affinityTrial raises the speed with fixed nozzles.
func affinityTrial() Trial {
	return Trial{initial: tankText + "; 50 ft of 4 in with a 1¼ in tip, fixed", begin: func(m Model) *bench {
		return fromTank(m, fireground.LineDef{Trunk: hose(4, 0.2, 50), Nozzle: tip(1.25)})
	}, checks: []check{{
		Test: record("affinity", Steady, "Affinity laws with a fixed outlet", "With the outlet fixed, flow rises with speed, and net pressure with its square.", "Throttle from 900 to 1700 rpm in steps; wait until steady at each.", "net pressure against that at 900 rpm", "psi", 0, formulaPSI(),
			Source{Computed, "square of the ratio of speeds; the tank's own head of 1 psi does not scale"}),
		sweep: func(b *bench) *Curve {
			c := &Curve{X: "engine speed", XUnit: "rpm", Y: "net pressure", YUnit: "psi"}
			var base, rpm0 float64
			tol := Tolerance{Formula, 1, 0.02}
			for rpm := 900.0; rpm <= 1700; rpm += 100 {
				b.throttleFor(rpm, -1, b.rpm)
				p := b.snap(b.net)
				if base == 0 {
					base, rpm0 = p, b.o.EngineRPM
				}
				r := b.o.EngineRPM / rpm0
				c.add(b.o.EngineRPM, p, float64(base*float64(r*r)), tol)
			}
			return c
		},
	}}}
}

// frictionSweep reads a hose's loss over its flow.
func frictionSweep() Trial {
	return Trial{initial: tankText + "; 300 ft of 2½ in with a 1¼ in tip", begin: func(m Model) *bench {
		return fromTank(m, fireground.LineDef{Trunk: hose(2.5, 2, 300), Nozzle: tip(1.25)})
	}, checks: []check{{
		Test: record("friction-over-flow", Steady, "Friction loss over flow, 300 ft of 2½ in", "Twice the flow costs four times the pressure.", "Throttle from 240 to 460 gpm in steps; wait until steady at each.", "pressure behind the discharge valve less nozzle pressure", "psi", 0, formulaPSI(), handouts),
		sweep: func(b *bench) *Curve {
			c := &Curve{X: "flow", XUnit: "gpm", Y: "friction loss", YUnit: "psi"}
			for q := 240.0; q <= 460; q += 20 {
				b.throttleFor(q, 0, b.gpm(0))
				fl := b.snap(func() float64 { return b.o.Lines[0].ValvePSI - b.o.Lines[0].NozzlePSI[0] })
				c.add(b.o.Lines[0].NozzleGPM[0], fl, float64(hydraulics.FrictionLoss(2, unit.GPM(b.o.Lines[0].NozzleGPM[0]), 300)), formulaPSI())
			}
			return c
		},
	}}}
}
