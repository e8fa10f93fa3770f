package fidelity

import (
	"fmt"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/plant"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/unit"
)

// drawing has three lines of large hose drawing from a hydrant through 25 ft of 5 in supply hose.
func drawing(m Model, h fireground.HydrantDef) *bench {
	s := street()
	s.Hydrant, s.Supply = h, hose(5, 0.08, 0)
	s.Line = fireground.LineDef{Trunk: hose(4, 0.2, 25), Nozzle: tip(2.5)}
	b := onStreet(m, s, 0)
	for i := range 3 {
		b.in.Lines[i].Attached = true
		b.nozzles(i, 0.15)
		b.turn(&b.in.Discharge[i], 1, 4)
	}
	b.turn(&b.in.Throttle, 0.4, 3)
	b.run(30)
	return b
}

func drawingText(static, residual, gpm float64) string {
	return fmt.Sprintf("Hydrant %g psi static, %g psi at %g gpm; 25 ft of 5 in supply hose; Engine 41 in gear with three lines of 25 ft of 4 in hose and 2½ in tips, at a fixed throttle", static, residual, gpm)
}

// hydrantTrials draw on hydrants of published flow tests.
func hydrantTrials() []Trial {
	list := []Trial{{
		initial: drawingText(86, 42, 789),
		begin: func(m Model) *bench {
			return drawing(m, fireground.HydrantDef{StaticPSI: 86, ResidualPSI: 42, FlowGPM: 789})
		},
		checks: []check{
			residualAt(500, 67), residualAt(750, 46),
			flowAt("hydrant-86-42-at-20", 20, 980, statedShare(0.02), kolb),
		},
	}}
	for _, c := range [...]struct{ static, residual, want float64 }{{65, 50, 1809.9}, {80, 60, 1809.9}} {
		list = append(list, Trial{
			initial: drawingText(c.static, c.residual, 1000),
			begin: func(m Model) *bench {
				return drawing(m, fireground.HydrantDef{StaticPSI: c.static, ResidualPSI: c.residual, FlowGPM: 1000})
			},
			checks: []check{
				flowAt(fmt.Sprintf("hydrant-%g-%g-at-20", c.static, c.residual), 20, c.want, formula(0.02), nfpaHydrant),
			},
		})
	}
	list = append(list, lawSweep(65, 45, 1000), lawSweep(86, 42, 789))
	for _, c := range dropCases {
		list = append(list, dropTrial(c))
	}
	return append(list, pitotTrial())
}

func residualAt(gpm, psi float64) check {
	return check{
		Test: record(fmt.Sprintf("hydrant-86-42-at-%g-gpm", gpm), Steady, fmt.Sprintf("Residual pressure at %g gpm", gpm), "A hydrant's pressure falls with the flow as its test says.",
			fmt.Sprintf("Open the nozzles until the hydrant gives %g gpm; wait until steady.", gpm), "pressure at the hydrant's outlet", "psi", psi, statedWidth(1), kolb),
		measure: func(b *bench) float64 {
			b.nozzlesFor(-gpm, func() float64 { return -b.o.HydrantGPM })
			return b.snap(func() float64 { return b.o.HydrantPSI })
		},
	}
}

func flowAt(id string, psi, gpm float64, tol Tolerance, source Source) check {
	return check{
		Test: record(id, Steady, fmt.Sprintf("Flow of the hydrant at %g psi residual", psi), "What a hydrant gives at 20 psi follows from its flow test by the power 0.54.",
			fmt.Sprintf("Open the nozzles until the hydrant's outlet is down to %g psi; wait until steady.", psi), "flow from the hydrant", "gpm", gpm, tol, source),
		measure: func(b *bench) float64 {
			b.nozzlesFor(psi, func() float64 { return b.o.HydrantPSI })
			return b.snap(func() float64 { return b.o.HydrantGPM })
		},
	}
}

// lawSweep follows a hydrant from a trickle to 20 psi.
func lawSweep(static, residual, gpm float64) Trial {
	return Trial{
		initial: drawingText(static, residual, gpm),
		begin: func(m Model) *bench {
			return drawing(m, fireground.HydrantDef{StaticPSI: static, ResidualPSI: residual, FlowGPM: gpm})
		},
		checks: []check{{
			Test: record(fmt.Sprintf("hydrant-%g-%g-sweep", static, residual), Steady, fmt.Sprintf("Residual pressure over flow, hydrant %g/%g", static, residual),
				"Between the points of its test a hydrant follows the same law.", "Open the nozzles from a trickle until 20 psi are left, in twelve steps; wait until steady at each.",
				"pressure at the hydrant's outlet", "psi", 0, formulaPSI(), nfpaHydrant),
			sweep: func(b *bench) *Curve {
				c := &Curve{X: "flow", XUnit: "gpm", Y: "residual pressure", YUnit: "psi"}
				for k := range 12 {
					psi := static - 1 - float64(float64(k)*(static-21)/11)
					b.nozzlesFor(psi, func() float64 { return b.o.HydrantPSI })
					p := b.snap(func() float64 { return b.o.HydrantPSI })
					q := b.o.HydrantGPM
					c.add(q, p, float64(hydraulics.ResidualAtFlow(unit.GPM(gpm), unit.PSI(static), unit.PSI(residual), unit.GPM(q))), formulaPSI())
				}
				return c
			},
		}},
	}
}

// dropCase is a hydrant whose static pressure falls to residual when the first line flows.
type dropCase struct{ static, residual float64 }

var dropCases = [...]dropCase{{80, 60}, {60, 54}, {70, 62}, {70, 55}, {65, 60}, {65, 45}}

const likeGPM = 265.79 // of a 1⅛ tip at 50 psi

// like has a hydrant on which one line of 265.8 gpm leaves the residual of the case; six discharges for
// like lines of 500 ft of 2½ with a 1⅛ tip.
func like(m Model, c dropCase) *bench {
	s := plant.Setup{
		Rig:     engine41(),
		Hydrant: fireground.HydrantDef{StaticPSI: c.static, ResidualPSI: c.residual, FlowGPM: likeGPM},
		Supply:  hose(5, 0.08, 0),
		Line:    fireground.LineDef{Trunk: hose(2.5, 2, 500), Nozzle: tip(1.125)},
	}
	for len(s.Rig.Discharges) < 6 {
		s.Rig.Discharges = append(s.Rig.Discharges[:3:3], append([]rig.DischargeDef(nil), s.Rig.Discharges[:3]...)...)
	}
	return onStreet(m, s, 1)
}

const likePSI = 120.66 // PDP of such a line: 50 + 70.66

// dropTrial opens further like lines, each held at its pressure, as long as the hydrant allows.
func dropTrial(c dropCase) Trial {
	name := fmt.Sprintf("%g/%g", c.static, c.residual)
	id := func(what string) string { return fmt.Sprintf("drop-%g-%g-%s", c.static, c.residual, what) }
	percent := hydraulics.PercentDrop(unit.PSI(c.static), unit.PSI(c.residual))
	byLaw := 0
	for q := unit.GPM(2 * likeGPM); hydraulics.ResidualAtFlow(likeGPM, unit.PSI(c.static), unit.PSI(c.residual), q) >= 20; q += likeGPM {
		byLaw++
	}
	steps := "Open further like lines one after another; after each, throttle all to 120.7 psi and wait until steady."
	last := func(at20 bool) func(*bench) float64 {
		return func(b *bench) float64 {
			if at20 {
				return b.keeps20
			}
			return b.holds
		}
	}
	return Trial{
		initial: fmt.Sprintf("Hydrant of %g psi static that falls to %g psi (%.0f %%) with the first line of 265.8 gpm; 25 ft of 5 in supply hose; like lines of 500 ft of 2½ in with 1⅛ in tips", c.static, c.residual, percent),
		begin: func(m Model) *bench {
			b := like(m, c)
			b.throttleFor(likePSI, 0, b.gauge(0))
			return b
		},
		checks: []check{
			{Test: record(id("first"), Steady, "First line on hydrant "+name, "The hydrant's fall with the first line is what the case says.", "Throttle the first line to 120.7 psi; wait until steady.",
				"pressure at the hydrant's outlet", "psi", c.residual, formulaPSI(), nfpaHydrant),
				measure: func(b *bench) float64 { return b.snap(func() float64 { return b.o.HydrantPSI }) }},
			{Test: record(id("lines"), Steady, "Further like lines with 20 psi left, hydrant "+name, "The main gives as many lines as the power law says.", steps,
				"further lines while 20 psi are left at the hydrant", "lines", float64(byLaw), statedWidth(0), nfpaHydrant),
				measure: func(b *bench) float64 {
					b.openLike()
					return b.keeps20
				}},
			{Test: record(id("rule"), Steady, "Further like lines by percent drop, hydrant "+name, "The field's rule and the hydrant agree within one line.", "As before.",
				"further lines that can be held at all", "lines", float64(hydraulics.LikeLines(percent)), statedWidth(1), dropPractice),
				measure: last(false)},
			{Test: record(id("digit"), Steady, "Further like lines by the first digit, hydrant "+name, "The other rule of the field agrees within one line as well.", "As before.",
				"further lines that can be held at all", "lines", float64(hydraulics.LikeLinesByDigit(unit.PSI(c.static), unit.PSI(c.residual))), statedWidth(1),
				Source{Practice, "further like lines by the first digit of the static pressure"}), measure: last(false)},
		},
	}
}

// openLike opens like lines until one cannot be held, and notes how many could.
func (b *bench) openLike() {
	b.holds, b.keeps20 = 0, 0
	for i := 1; i < len(b.in.Lines); i++ {
		b.line(i)
		if !b.throttleTo(likePSI, 0, b.gauge(0)) || b.problem != "" || b.o.IntakePSI < 0 {
			b.problem = "" // a line that does not fill is a line that the hydrant does not give
			return
		}
		b.settle()
		b.holds++
		if b.o.HydrantPSI >= 20 {
			b.keeps20++
		}
	}
}

// pitotTrial is the arithmetic of a flow test.
func pitotTrial() Trial {
	return formulaTest(Test{
		ID: "pitot-28", Area: Steady, Title: "Flow of a 2½ in outlet by pitot", Objective: "The flow of a flow test is read by pitot.", Initial: "2½ in outlet, coefficient 0.80, pitot 28 psi",
		Steps: "Evaluate 29.84 c d² √p.", Compared: "flow", Unit: "gpm", Expected: 789, Tolerance: formula(0.002), Source: kolb,
	}, func() float64 { return float64(hydraulics.Pitot(0.8, 2.5, 28)) })
}
