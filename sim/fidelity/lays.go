package fidelity

import (
	"fmt"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/layout"
)

// Parts of a lay, as one writes them down.

func hosePart(id, from string, size, c, ft float64) layout.Part {
	return layout.Part{ID: id, From: []string{from}, Hose: &fireground.HoseDef{SizeIn: size, LossC: c, LengthFt: ft}}
}

func tipPart(from string, in, psi float64) layout.Part {
	return layout.Part{ID: "nozzle", From: []string{from}, Nozzle: &fireground.NozzleDef{TipIn: in, RatedPSI: psi}}
}

func fogPart(id, from string, gpm, psi float64) layout.Part {
	return layout.Part{ID: id, From: []string{from}, Nozzle: &fireground.NozzleDef{RatedGPM: gpm, RatedPSI: psi}}
}

// rising gives a part a rise that costs psi.
func rising(p layout.Part, psi float64) layout.Part {
	p.RisePSI = psi
	return p
}

// monitor is a master-stream appliance that takes 25 psi at gpm.
func monitor(gpm float64, from ...string) layout.Part {
	return layout.Part{ID: "monitor", From: from, Monitor: &layout.LossDef{PSI: 25, GPM: gpm}}
}

// joined is what two like lines from two discharges lead to.
func joined(size, c, ft float64, rest ...layout.Part) layout.Plan {
	return append(layout.Plan{hosePart("left", "discharge1", size, c, ft), hosePart("right", "discharge2", size, c, ft)}, rest...)
}

// wye is a trunk that ends in two like branches.
func wye(trunk layout.Part, loss layout.LossDef, c, branchFt, gpm float64) layout.Plan {
	return layout.Plan{trunk, {ID: "wye", From: []string{trunk.ID}, Wye: &layout.WyeDef{Loss: loss}},
		hosePart("a", "wye", 1.75, c, branchFt), fogPart("nozzle", "a", gpm, 100),
		hosePart("b", "wye", 1.75, c, branchFt), fogPart("other", "b", gpm, 100)}
}

// lays are the worked lays of the trade: with the calculated pressure behind the discharge valve the
// nozzle must show the pressure and flow it is made for.
var lays = [...]struct {
	id, title    string
	pdp, np, gpm float64
	plan         layout.Plan
	source       Source
}{
	{"200-ft-1.75-fog", "200 ft of 1¾ in, fog 150 gpm at 100 psi", 169.8, 100, 150,
		layout.Plan{hosePart("line", "discharge1", 1.75, 15.5, 200), fogPart("nozzle", "line", 150, 100)}, pdpFormula},
	{"150-ft-1.75-tip", "150 ft of 1¾ in, 15/16 in tip at 50 psi", 129.2, 50, 184.6,
		layout.Plan{hosePart("line", "discharge1", 1.75, 15.5, 150), tipPart("line", 0.9375, 50)}, pdpFormula},
	{"200-ft-2.5-tip", "200 ft of 2½ in, 1⅛ in tip at 50 psi", 78.3, 50, 265.8,
		layout.Plan{hosePart("line", "discharge1", 2.5, 2, 200), tipPart("line", 1.125, 50)}, pdpFormula},
	{"250-ft-2.5-tip", "250 ft of 2½ in, 1¼ in tip at 50 psi", 103.8, 50, 328.1,
		layout.Plan{hosePart("line", "discharge1", 2.5, 2, 250), tipPart("line", 1.25, 50)}, pdpFormula},
	{"two-floors-up", "200 ft of 1¾ in, fog 175 gpm at 75 psi, two floors up", 179.9, 75, 175,
		layout.Plan{rising(hosePart("line", "discharge1", 1.75, 15.5, 200), 10), fogPart("nozzle", "line", 175, 75)}, pdpFormula},
	{"wye-2.5", "Wye: 200 ft of 2½ in to two 150 ft of 1¾ in, 150 gpm at 100 psi each", 188.3, 100, 150,
		wye(hosePart("trunk", "discharge1", 2.5, 2, 200), layout.LossDef{}, 15.5, 150, 150), pdpFormula},
	{"wye-3", "Wye: 400 ft of 3 in to two 150 ft of 1¾ in, 200 gpm at 100 psi each", 254.2, 100, 200,
		wye(hosePart("trunk", "discharge1", 3, 0.8, 400), layout.LossDef{PSI: 10, GPM: 400}, 15.5, 150, 200), pdpFormula},
	{"wye-example", "Wye of the worked example: 200 ft of 2½ in at 300 gpm and 150 ft of 1¾ in with C = 10", 170, 100, 150,
		wye(hosePart("trunk", "discharge1", 2.5, 2, 200), layout.LossDef{}, 10, 150, 150),
		Source{Read, "City of Rohnert Park, apparatus operator slides 3-8: 36 + 34 = 70 psi of friction, here with 100 psi at the nozzles"}},
	{"deck-gun", "Deck gun, 1½ in tip at 80 psi", 105, 80, 597.7,
		layout.Plan{monitor(597.7, "discharge1"), tipPart("monitor", 1.5, 80)}, pdpFormula},
	{"monitor", "Monitor, 1⅜ in tip at 80 psi, two lines of 300 ft of 2½ in", 142.8, 80, 502.2,
		joined(2.5, 2, 300, monitor(502.2, "left", "right"), tipPart("monitor", 1.375, 80)), pdpFormula},
	{"ladder-pipe", "Ladder pipe 75 ft up, 1¾ in tip at 80 psi, two lines of 200 ft of 3 in", 169.0, 80, 813.5,
		joined(3, 0.8, 200, rising(monitor(813.5, "left", "right"), 37.5), tipPart("monitor", 1.75, 80)), pdpFormula},
	{"standpipe", "Standpipe, tenth floor: 100 ft of 3 in, 150 ft of 2½ in with a 1⅛ in tip", 146.8, 50, 265.8, layout.Plan{
		hosePart("supply", "discharge1", 3, 0.8, 100),
		{ID: "connection", From: []string{"supply"}, Appliance: &layout.LossDef{PSI: 25, GPM: 265.8}},
		{ID: "riser", From: []string{"connection"}, Riser: &layout.RiserDef{SizeIn: 6, LossC: 0.0001, Floors: 9, FloorPSI: 5, Wet: true}},
		{ID: "outlet", From: []string{"riser"}, Valve: &layout.ValveDef{Law: "gate", Cv: 10000}},
		hosePart("pack", "outlet", 2.5, 2, 150), tipPart("pack", 1.125, 50)}, pdpFormula},
	{"wildland", "1000 ft of 1½ in at 50 gpm, 100 ft up, two wyes in line", 220, 100, 50, layout.Plan{
		hosePart("one", "discharge1", 1.5, 24, 500),
		{ID: "first", From: []string{"one"}, Appliance: &layout.LossDef{PSI: 5, GPM: 50}},
		rising(hosePart("two", "first", 1.5, 24, 500), 50),
		{ID: "second", From: []string{"two"}, Appliance: &layout.LossDef{PSI: 5, GPM: 50}},
		fogPart("nozzle", "second", 50, 100)}, Source{Computed, "PDP = NP + FL + AL ± EL; 5 psi for each wye in a line after NWCG"}},
}

// lowHydrant is one whose pressure with idle lies below every calculated pressure of a lay.
var lowHydrant = fireground.HydrantDef{StaticPSI: 32, ResidualPSI: 26, FlowGPM: 1500}

const lowHydrantText = "Engine 41 in gear on a hydrant of 32 psi static, 26 psi at 1500 gpm, 25 ft of 5 in supply hose; relief valve wound in; lay: "

// laidOut has a plan filled and flowing, everything open.
func laidOut(m Model, plan layout.Plan) *bench {
	s := street()
	s.Hydrant, s.Supply = lowHydrant, hose(5, 0.08, 0)
	s.Line, s.Lay = fireground.LineDef{}, plan
	b := onStreet(m, s, 0)
	b.openLay()
	return b
}

// openLay opens everything of the plan, then the discharges that it hangs on, and lets it fill.
func (b *bench) openLay() {
	if b.p == nil {
		return
	}
	for i := range b.in.Lay {
		b.in.Lay[i].Open, b.in.Lay[i].Gate = 1, 1
	}
	for i := range b.in.Discharge {
		if b.setup.Lay.Holds(i + 1) {
			b.turn(&b.in.Discharge[i], 1, 4)
		}
	}
	b.run(90)
}

// part is what is so in a part of the plan.
func (b *bench) part(id string) *layout.PartOut { return &b.o.Lay[b.setup.Lay.Index(id)] }

// behindValves is the mean pressure behind the open discharge valves.
func (b *bench) behindValves() float64 {
	sum, n := 0.0, 0.0
	for i := range b.in.Discharge {
		if b.in.Discharge[i] > 0 {
			sum += b.o.Lines[i].ValvePSI
			n++
		}
	}
	return sum / n
}

// layTrials run every lay.
func layTrials() []Trial {
	var list []Trial
	for _, l := range lays {
		steps := fmt.Sprintf("Open all of it; throttle until %g psi stand behind the discharge valve; wait until steady.", l.pdp)
		list = append(list, Trial{
			initial: lowHydrantText + l.title,
			begin: func(m Model) *bench {
				b := laidOut(m, l.plan)
				b.throttleFor(l.pdp, 0, b.behindValves)
				return b
			},
			checks: []check{
				{Test: record("lay-"+l.id+"-nozzle", Steady, l.title+": nozzle pressure", "The pressure that the trade calculates for a lay brings the nozzle pressure it was calculated for.", steps, "nozzle pressure", "psi", l.np, formulaPSI(), l.source),
					measure: func(b *bench) float64 { return b.snap(func() float64 { return b.part("nozzle").PSI }) }},
				{Test: record("lay-"+l.id+"-flow", Steady, l.title+": flow", "The lay gives the flow that it was calculated for.", steps, "nozzle flow", "gpm", l.gpm, formula(0.02), l.source),
					measure: func(b *bench) float64 { return b.snap(func() float64 { return b.part("nozzle").GPM }) }},
			},
		})
	}
	list = append(list, siameseTrial(2, 0.5), siameseTrial(3, 0.22))
	return append(append(list, relayTrials()...), netPressure())
}

// siameseTrial reads the loss of like lines side by side.
func siameseTrial(lines int, c float64) Trial {
	plan := layout.Plan{}
	var ids []string
	for i := range lines {
		id := [...]string{"a", "b", "c"}[i]
		ids = append(ids, id)
		plan = append(plan, hosePart(id, fmt.Sprintf("discharge%d", i+1), 2.5, 2, 300))
	}
	plan = append(plan, layout.Part{ID: "siamese", From: ids, Siamese: &layout.SiameseDef{}}, layout.Part{ID: "nozzle", From: []string{"siamese"}, Nozzle: tip(1.75)})
	const gpm = 800.0
	return Trial{
		initial: fmt.Sprintf("%s%d lines of 300 ft of 2½ in into a siamese without loss, 1¾ in tip", lowHydrantText, lines),
		begin:   func(m Model) *bench { return laidOut(m, plan) },
		checks: []check{{
			Test: record(fmt.Sprintf("siamese-%d", lines), Steady, fmt.Sprintf("%d lines of 2½ in siamesed", lines), "Lines side by side share the flow.",
				"Throttle until 800 gpm flow; wait until steady.", "loss of the lines as a coefficient C, psi/((Q/100)² L/100)", "", c, formula(0.02), renton),
			measure: func(b *bench) float64 {
				b.throttleFor(gpm, 0, func() float64 { return b.part("nozzle").GPM })
				return b.snap(func() float64 {
					q := b.part("nozzle").GPM / 100
					return (b.behindValves() - b.part("nozzle").PSI) / float64(float64(q*q)*3)
				})
			},
		}},
	}
}

func pumper(id, from string, psi float64) layout.Part {
	return layout.Part{ID: id, From: []string{from}, Pumper: &layout.PumperDef{PSI: psi}}
}

// relayTrials pump to another pumper.
func relayTrials() []Trial {
	var list []Trial
	for _, c := range [...]struct {
		id, title               string
		pdp, gpm                float64
		size, loss, ft, risePSI float64
	}{
		{"relay-5", "Relay of 1000 gpm through 1000 ft of 5 in", 100, 1000, 5, 0.08, 1000, 0},
		{"relay-3", "Relay of 500 gpm through 800 ft of 3 in, 30 ft up", 195, 500, 3, 0.8, 800, 15},
	} {
		plan := layout.Plan{rising(hosePart("relay", "discharge1", c.size, c.loss, c.ft), c.risePSI), pumper("next", "relay", 150), fogPart("nozzle", "next", c.gpm, 150)}
		steps := fmt.Sprintf("Throttle to %g psi behind the discharge valve while the next pumper flows little; let it flow all; throttle again; wait until steady.", c.pdp)
		list = append(list, Trial{
			initial: lowHydrantText + c.title + ", the next pumper holding 150 psi at a nozzle",
			begin: func(m Model) *bench {
				b := laidOut(m, plan)
				if b.p == nil {
					return b
				}
				// The next pumper asks for its water only when it is there: else it draws the relay hose flat.
				nozzle := &b.in.Lay[b.setup.Lay.Index("nozzle")].Open
				b.turn(nozzle, 0.1, 3)
				b.throttleFor(c.pdp, 0, b.behindValves)
				b.turn(nozzle, 1, 10)
				b.throttleFor(c.pdp, 0, b.behindValves)
				return b
			},
			checks: []check{
				{Test: record(c.id+"-residual", Steady, c.title+": residual at the next pumper", "The calculated pressure leaves 20 psi at the next pumper's intake.", steps, "intake of the next pumper", "psi", 20, statedWidth(2), pdpFormula),
					measure: func(b *bench) float64 { return b.snap(func() float64 { return b.part("next").InletPSI }) }},
				{Test: record(c.id+"-flow", Steady, c.title+": flow", "The relay carries its flow.", steps, "flow", "gpm", c.gpm, formula(0.02), pdpFormula),
					measure: func(b *bench) float64 { return b.snap(func() float64 { return b.part("next").GPM }) }},
			},
		})
	}
	return append(list, tandemTrial())
}

// tandemTrial pumps through a second pumper: 300 psi at the connection of a fortieth floor.
func tandemTrial() Trial {
	plan := layout.Plan{
		hosePart("short", "discharge1", 5, 0.08, 25),
		pumper("second", "short", 300),
		{ID: "riser", From: []string{"second"}, Riser: &layout.RiserDef{SizeIn: 6, LossC: 0.0001, Floors: 40, FloorPSI: 5, Wet: true}},
		fogPart("nozzle", "riser", 250, 100),
	}
	return Trial{
		initial: lowHydrantText + "a second pumper in tandem holding 300 psi at the connection of a riser of forty floors, wet; an outlet that flows 250 gpm at 100 psi",
		begin:   func(m Model) *bench { return laidOut(m, plan) },
		checks: []check{{
			Test: record("tandem-40-floors", Steady, "Fortieth floor, 300 psi at the connection", "40 × 5 psi and 100 psi at the outlet make 300 psi at the connection: one pumper alone cannot safely, two in tandem do.",
				"Give the second pumper 150 psi; wait until steady.", "pressure at the outlet", "psi", 100, formulaPSI(), Source{Read, "Fire Engineering, Hollins, tandem pumping"}),
			measure: func(b *bench) float64 {
				b.throttleFor(150, 0, b.behindValves)
				return b.snap(func() float64 { return b.part("nozzle").PSI })
			},
		}},
	}
}

// netPressure is a pumper at 150 psi on a hydrant of 100: it makes 50.
func netPressure() Trial {
	return Trial{
		initial: "Engine 41 in gear on a hydrant of 100 psi static that gives way by 1 psi at 1000 gpm; the street's line",
		begin: func(m Model) *bench {
			s := street()
			s.Hydrant = fireground.HydrantDef{StaticPSI: 100, ResidualPSI: 99, FlowGPM: 1000}
			s.Line.Trunk.LengthFt = 800
			return onStreet(m, s, 1)
		},
		checks: []check{{
			Test: record("net-50", Steady, "Net pressure of a pumper at 150 psi on a 100 psi hydrant", "The pump makes only what the hydrant does not give.", "Throttle until the discharge gauge shows 150 psi; wait until steady.", "discharge less intake", "psi", 50, formulaPSI(), Source{Practice, "net pressure is discharge less intake"}),
			measure: func(b *bench) float64 {
				b.throttleFor(150, 0, func() float64 { return b.o.DischargeNeedle })
				return b.snap(b.net)
			},
		}},
	}
}
