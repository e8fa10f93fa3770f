package fidelity

import (
	"fmt"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/layout"
)

// partOpen are valves of which handbooks print how they lose part open.
var partOpen = [...]struct {
	law  string
	text string
	cv   float64 // gpm at 1 psi, full open
	// share of the open flow coefficient at shares of the travel
	flow   [][2]float64
	source Source
}{
	{"gate", "a gate valve", 450,
		headsShares(0.17, [][2]float64{{0.875, 0.07}, {0.75, 0.26}, {0.625, 0.81}, {0.5, 2.06}, {0.375, 5.52}, {0.25, 17}, {0.125, 97.8}}),
		Source{Memory, "Weisbach's table of part-open gates in round pipes, velocity heads, over 0.17 open"}},
	{"butterfly", "a butterfly valve", 300,
		headsShares(0.35, [][2]float64{{17. / 18, 0.24}, {8. / 9, 0.52}, {15. / 18, 0.90}, {7. / 9, 1.54}, {13. / 18, 2.51}, {6. / 9, 3.91}, {5. / 9, 10.8}, {4. / 9, 32.6}, {3. / 9, 118}, {2. / 9, 751}}),
		Source{Memory, "Weisbach's table of throttle discs in round pipes, velocity heads, over 0.35 open"}},
	{"ball", "a full-bore ball valve", 325,
		[][2]float64{{8. / 9, 0.80}, {6. / 9, 0.36}, {0.5, 0.19}, {3. / 9, 0.09}},
		Source{Memory, "flow coefficient of full-bore ball valves by angle, as makers' charts give it"}},
}

// headsShares turns losses beyond the open valve's, in velocity heads, into shares of its flow coefficient.
func headsShares(open float64, heads [][2]float64) [][2]float64 {
	for i := range heads {
		heads[i][1] = root(open / (open + heads[i][1]))
	}
	return heads
}

// valveTrials gate a line with each kind of valve and read what it loses.
func valveTrials() []Trial {
	var list []Trial
	for _, v := range partOpen {
		plan := layout.Plan{hosePart("to", "discharge1", 2.5, 2, 50),
			{ID: "valve", From: []string{"to"}, Valve: &layout.ValveDef{Law: v.law, Cv: v.cv}},
			hosePart("on", "valve", 2.5, 2, 50), tipPart("on", 1.125, 50)}
		list = append(list, Trial{
			initial: lowHydrantText + fmt.Sprintf("100 ft of 2½ in with %s (%g gpm at 1 psi) halfway, 1⅛ in tip", v.text, v.cv),
			begin: func(m Model) *bench {
				b := laidOut(m, plan)
				b.throttleFor(80, 0, b.behindValves)
				return b
			},
			checks: []check{{
				Test: record("valve-"+v.law, Controls, "Part-open flow of "+v.text, "A valve part open takes what handbooks say, so that gating a line down works as it does on the street.",
					"Shut the valve step by step; at each wait until steady and read its flow and the pressure that it takes.", "flow over the root of the pressure lost, as a share of that open", "", 0, empirical(0.1), v.source),
				sweep: func(b *bench) *Curve {
					c := &Curve{X: "travel from shut", Y: "share of the open flow coefficient"}
					if b.p == nil {
						return c
					}
					for _, want := range v.flow {
						b.turn(&b.in.Lay[b.setup.Lay.Index("valve")].Open, want[0], 2)
						got := b.snap(func() float64 {
							at := b.part("valve")
							return at.GPM / float64(v.cv*root(at.InletPSI-at.PSI))
						})
						c.add(want[0], got, want[1], empirical(0.1))
					}
					return c
				},
			}},
		})
	}
	return append(list, valveSlow())
}

// valveSlow says how much of a ball valve's travel does the work against a long line.
func valveSlow() Trial {
	return Trial{initial: "600 ft of 2½ in with a 1⅛ in tip behind a 3 in ball valve of 400 gpm at 1 psi", checks: []check{{
		Test: record("valve-effective-closure", Controls, "Steepest closure of a ball valve shut evenly in 3 s", "Against a long line most of the travel does nothing: what strikes is far quicker than the hand.",
			"Evaluate the line's flow over the valve's travel.", "time in which all of the flow would stop at the steepest pace", "s", 0.5, Tolerance{Tier: Limit, Width: 0.5}, Source{Computed, "friction of the line and the valve's law; an even closure would take 3 s"}),
		measure: func(*bench) float64 {
			line := fireground.HoseDef{SizeIn: 2.5, LossC: 2, LengthFt: 600}
			k := float64(29.7 * (1.125 * 1.125))
			friction := float64(line.LossC*line.LengthFt)/1e6 + 1/float64(k*k)
			flow := func(x float64) float64 {
				cv := float64(400 * hydraulics.Ball.Flow(x))
				if cv == 0 {
					return 0
				}
				return 1 / root(friction+1/float64(cv*cv))
			}
			steepest := 0.0
			for i := range 300 {
				x := float64(i) / 300
				steepest = max(steepest, float64((flow(x+1.0/300)-flow(x))*100)/flow(1))
			}
			return 1 / steepest
		},
	}}}
}
