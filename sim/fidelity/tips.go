package fidelity

import (
	"fmt"
	"math"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/unit"
)

// tips are the smooth-bore tips of the trade with what the Hydraulic Institute's table gives at 50 and
// at 80 psi; 0 where it has no row.
var tips = [...]struct {
	in         float64
	text       string
	at50, at80 float64
}{
	{0.5, "1/2", 52.8, 66.7}, {0.625, "5/8", 82.4, 104.3}, {0.75, "3/4", 119, 150}, {0.875, "7/8", 162, 204},
	{0.9375, "15/16", 0, 0}, {1, "1", 211, 267}, {1.125, "1 1/8", 267, 338}, {1.25, "1 1/4", 330, 417},
	{1.375, "1 3/8", 399, 505}, {1.5, "1 1/2", 475, 601}, {1.75, "1 3/4", 646, 817}, {2, "2", 844, 1068},
}

// tipTrials throttle every tip to 50 and to 80 psi and read what flows, and how it pushes.
func tipTrials() []Trial {
	var list []Trial
	for _, c := range tips {
		t := Trial{
			initial: fmt.Sprintf("%s; 50 ft of 4 in hose with a %s in tip", tankText, c.text),
			begin: func(m Model) *bench {
				return fromTank(m, fireground.LineDef{Trunk: hose(4, 0.2, 50), Nozzle: tip(c.in)})
			},
		}
		for _, np := range [...]float64{50, 80} {
			at := fmt.Sprintf("tip-%g-at-%g", c.in, np)
			read := Test{
				Area: Steady, Unit: "gpm", Compared: "nozzle flow",
				Objective: "A smooth-bore tip gives the flow that the handbooks print.",
				Steps:     fmt.Sprintf("Throttle until the pitot at the tip shows %g psi; wait until steady; read the flow.", np),
			}
			formulaTest := read
			formulaTest.ID, formulaTest.Title = at, fmt.Sprintf("%s in tip at %g psi", c.text, np)
			formulaTest.Source, formulaTest.Tolerance = everyHandbook, formula(0.01)
			formulaTest.Expected = float64(hydraulics.SmoothBore(unit.Inches(c.in), unit.PSI(np)))
			t.checks = append(t.checks, check{Test: formulaTest, measure: func(b *bench) float64 {
				b.throttleFor(np, 0, b.nozzle(0))
				return b.snap(b.gpm(0))
			}})
			if table := c.at50; c.at50 > 0 {
				if np == 80 {
					table = c.at80
				}
				tableTest := read
				tableTest.ID, tableTest.Title = at+"-table", fmt.Sprintf("%s in tip at %g psi, engineers' table", c.text, np)
				tableTest.Objective = "The trade's formula stays close to a theoretical jet, which gives half a percent more."
				tableTest.Source, tableTest.Tolerance, tableTest.Expected = engineersTip, formula(0.0125), table
				t.checks = append(t.checks, check{Test: tableTest, measure: func(b *bench) float64 { return b.snap(b.gpm(0)) }})
			}
		}
		t.checks = append(t.checks, tipReaction(c.in, c.text))
		list = append(list, t)
	}
	return list
}

// tipReaction reads the push at the pressure at which the trial stands, 80 psi.
func tipReaction(size float64, text string) check {
	return check{
		Test: Test{
			ID: fmt.Sprintf("reaction-%g-at-80", size), Area: Steady, Title: fmt.Sprintf("Reaction of a %s in tip at 80 psi", text),
			Objective: "The push on those who hold the line follows the handbooks.", Steps: "As before, at 80 psi; read the reaction.",
			Compared: "nozzle reaction", Unit: "lbf", Source: reactionForm, Tolerance: formula(0.01),
			Expected: float64(hydraulics.SmoothBoreReaction(unit.Inches(size), 80)),
		},
		measure: func(b *bench) float64 { return b.snap(func() float64 { return b.o.Lines[0].ReactionLbf[0] }) },
	}
}

// fogTrials hold fog nozzles of fixed orifice at their rated pressure and off it.
func fogTrials() []Trial {
	var list []Trial
	for _, c := range []struct {
		gpm, rated float64
		at         []float64
	}{{150, 100, []float64{100, 75, 130}}, {175, 75, []float64{75, 100}}, {95, 50, []float64{50, 100}}} {
		t := Trial{
			initial: fmt.Sprintf("%s; 50 ft of 4 in hose with a fog nozzle rated %g gpm at %g psi", tankText, c.gpm, c.rated),
			begin: func(m Model) *bench {
				return fromTank(m, fireground.LineDef{Trunk: hose(4, 0.2, 50), Nozzle: fog(c.gpm, c.rated)})
			},
		}
		for _, np := range c.at {
			flow := hydraulics.Fog(unit.GPM(c.gpm), unit.PSI(c.rated), unit.PSI(np))
			id := fmt.Sprintf("fog-%g-%g-at-%g", c.gpm, c.rated, np)
			t.checks = append(t.checks, check{
				Test: Test{
					ID: id, Area: Steady, Title: fmt.Sprintf("Fog nozzle %g gpm at %g psi, held at %g psi", c.gpm, c.rated, np),
					Objective: "A fog nozzle of fixed orifice gives its rated flow at its rated pressure, and Qr √(NP/NPr) off it.",
					Steps:     fmt.Sprintf("Throttle to %g psi at the nozzle; wait until steady; read the flow.", np), Compared: "nozzle flow", Unit: "gpm",
					Source: Source{Practice, "Q = Qr √(NP/NPr)"}, Tolerance: formula(0.01), Expected: float64(flow),
				},
				measure: func(b *bench) float64 {
					b.throttleFor(np, 0, b.nozzle(0))
					return b.snap(b.gpm(0))
				},
			})
		}
		q := float64(hydraulics.Fog(unit.GPM(c.gpm), unit.PSI(c.rated), unit.PSI(c.at[len(c.at)-1])))
		np := c.at[len(c.at)-1]
		t.checks = append(t.checks, check{
			Test: Test{
				ID: fmt.Sprintf("reaction-fog-%g", c.gpm), Area: Steady, Title: fmt.Sprintf("Reaction of the fog nozzle %g gpm at %g psi", c.gpm, np),
				Objective: "The push on those who hold the line follows the handbooks.", Steps: "As before; read the reaction.",
				Compared: "nozzle reaction", Unit: "lbf", Source: reactionForm, Tolerance: formula(0.015),
				Expected: float64(0.0505 * float64(q*math.Sqrt(np))),
			},
			measure: func(b *bench) float64 { return b.snap(func() float64 { return b.o.Lines[0].ReactionLbf[0] }) },
		})
	}
	return list
}
