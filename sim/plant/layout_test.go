package plant

import (
	"math"
	"testing"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/layout"
)

// hose, tip, fog write a part down.
func hose(id, from string, size, c, ft float64) layout.Part {
	return layout.Part{ID: id, From: []string{from}, Hose: &fireground.HoseDef{SizeIn: size, LossC: c, LengthFt: ft}}
}

func tip(id, from string, in, psi float64) layout.Part {
	return layout.Part{ID: id, From: []string{from}, Nozzle: &fireground.NozzleDef{TipIn: in, RatedPSI: psi}}
}

func fog(id, from string, gpm, psi float64) layout.Part {
	return layout.Part{ID: id, From: []string{from}, Nozzle: &fireground.NozzleDef{RatedGPM: gpm, RatedPSI: psi}}
}

func rising(p layout.Part, psi float64) layout.Part {
	p.RisePSI = psi
	return p
}

// monitor takes psi at gpm.
func monitor(psi, gpm float64, from ...string) layout.Part {
	return layout.Part{ID: "monitor", From: from, Monitor: &layout.LossDef{PSI: psi, GPM: gpm}}
}

// laidOut has a plan on Engine 41 in gear, on a hydrant low enough that idle lies below every pressure, everything of the plan open and its
// discharges too.
func laidOut(t *testing.T, plan layout.Plan) *hands {
	t.Helper()
	s := ground()
	s.Hydrant = fireground.HydrantDef{StaticPSI: 32, ResidualPSI: 26, FlowGPM: 1500}
	s.Supply = fireground.HoseDef{SizeIn: 5, LossC: 0.08}
	s.Line, s.Lay = fireground.LineDef{}, plan
	h := at(t, s)
	h.in.ReliefTurns = s.Rig.Relief.Turns // above every pressure here
	h.inGear()
	h.onHydrant()
	h.openAll()
	return h
}

// openAll opens everything of the plan, then the discharges that it hangs on, and lets it fill.
func (h *hands) openAll() {
	plan := h.p.setup.Lay
	for i := range h.in.Lay {
		h.in.Lay[i].Open, h.in.Lay[i].Gate = 1, 1
	}
	for i := range h.in.Discharge {
		if plan.Holds(i + 1) {
			h.turn(&h.in.Discharge[i], 1, 4)
		}
	}
	h.run(90)
}

// part is what is so in a part of the plan.
func (h *hands) part(id string) *layout.PartOut { return &h.o.Lay[h.p.setup.Lay.Index(id)] }

// TestCalculatedPressures runs each lay of the trade's own arithmetic, PDP = NP + FL + AL ± EL: with the
// calculated pressure behind the discharge valve the nozzle must show the pressure it is made for, and
// the apparatus must be able to give it. Tips by 29.7 d² √NP, hose by C (Q/100)² L/100, appliance losses
// as practice gives them (all [P], the sums [C]).
func TestCalculatedPressures(t *testing.T) {
	const c175, c25, c3 = 15.5, 2, 0.8
	two := func(size, c, ft float64) []layout.Part {
		return []layout.Part{hose("left", "discharge1", size, c, ft), hose("right", "discharge2", size, c, ft)}
	}
	for _, c := range []struct {
		name    string
		pdp     float64
		np, gpm float64 // at the part named nozzle
		lines   int
		plan    layout.Plan
	}{
		{"200 ft 1¾, fog 150 at 100", 169.8, 100, 150, 1, layout.Plan{
			hose("line", "discharge1", 1.75, c175, 200), fog("nozzle", "line", 150, 100)}},
		{"150 ft 1¾, 15/16 at 50", 129.2, 50, 184.6, 1, layout.Plan{
			hose("line", "discharge1", 1.75, c175, 150), tip("nozzle", "line", 15.0/16, 50)}},
		{"200 ft 2½, 1⅛ at 50", 78.3, 50, 265.8, 1, layout.Plan{
			hose("line", "discharge1", 2.5, c25, 200), tip("nozzle", "line", 1.125, 50)}},
		{"250 ft 2½, 1¼ at 50", 103.8, 50, 328.1, 1, layout.Plan{
			hose("line", "discharge1", 2.5, c25, 250), tip("nozzle", "line", 1.25, 50)}},
		{"200 ft 1¾, fog 175 at 75, two floors up", 179.9, 75, 175, 1, layout.Plan{
			rising(hose("line", "discharge1", 1.75, c175, 200), 10), fog("nozzle", "line", 175, 75)}},
		{"wye, 200 ft 2½ to two 150 ft 1¾, 150 at 100", 188.3, 100, 150, 1, layout.Plan{
			hose("trunk", "discharge1", 2.5, c25, 200), {ID: "wye", From: []string{"trunk"}, Wye: &layout.WyeDef{}},
			hose("a", "wye", 1.75, c175, 150), fog("nozzle", "a", 150, 100),
			hose("b", "wye", 1.75, c175, 150), fog("other", "b", 150, 100)}},
		{"wye, 400 ft 3 in to two 150 ft 1¾, 200 at 100", 254.2, 100, 200, 1, layout.Plan{
			hose("trunk", "discharge1", 3, c3, 400), {ID: "wye", From: []string{"trunk"}, Wye: &layout.WyeDef{Loss: layout.LossDef{PSI: 10, GPM: 400}}},
			hose("a", "wye", 1.75, c175, 150), fog("nozzle", "a", 200, 100),
			hose("b", "wye", 1.75, c175, 150), fog("other", "b", 200, 100)}},
		{"deck gun 1½ at 80", 105, 80, 597.7, 1, layout.Plan{
			monitor(25, 597.7, "discharge1"), tip("nozzle", "monitor", 1.5, 80)}},
		{"monitor 1⅜ at 80, 300 ft of two 2½", 142.8, 80, 502.2, 2, append(two(2.5, c25, 300),
			monitor(25, 502.2, "left", "right"), tip("nozzle", "monitor", 1.375, 80))},
		{"ladder pipe 1¾ at 80, 200 ft of two 3 in, 75 ft up", 169.0, 80, 813.5, 2, append(two(3, c3, 200),
			rising(monitor(25, 813.5, "left", "right"), 37.5), tip("nozzle", "monitor", 1.75, 80))},
		{"standpipe, tenth floor", 146.8, 50, 265.8, 1, layout.Plan{
			hose("supply", "discharge1", 3, c3, 100),
			{ID: "connection", From: []string{"supply"}, Appliance: &layout.LossDef{PSI: 25, GPM: 265.8}},
			{ID: "riser", From: []string{"connection"}, Riser: &layout.RiserDef{SizeIn: 6, LossC: 0.0001, Floors: 9, FloorPSI: 5, Wet: true}},
			{ID: "outlet", From: []string{"riser"}, Valve: &layout.ValveDef{Law: "gate", Cv: 10000}},
			hose("pack", "outlet", 2.5, c25, 150), tip("nozzle", "pack", 1.125, 50)}},
		{"1000 ft 1½ at 50 gpm, 100 ft up, two wyes", 220, 100, 50, 1, layout.Plan{
			hose("one", "discharge1", 1.5, 24, 500),
			{ID: "first", From: []string{"one"}, Appliance: &layout.LossDef{PSI: 5, GPM: 50}},
			rising(hose("two", "first", 1.5, 24, 500), 50),
			{ID: "second", From: []string{"two"}, Appliance: &layout.LossDef{PSI: 5, GPM: 50}},
			fog("nozzle", "second", 50, 100)}},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := laidOut(t, c.plan)
			h.throttleFor(c.pdp, func() float64 {
				sum := 0.0
				for i := range c.lines {
					sum += h.o.Lines[i].ValvePSI
				}
				return sum / float64(c.lines)
			})
			n := h.part("nozzle")
			t.Logf("%.1f psi at %.0f rpm: nozzle %.2f psi, %.1f gpm", h.o.Lines[0].ValvePSI, h.o.EngineRPM, n.PSI, n.GPM)
			h.near("nozzle psi", n.PSI, c.np, max(1, 0.02*c.np))
			h.near("nozzle gpm", n.GPM, c.gpm, max(2, 0.02*c.gpm))
			h.sound()
		})
	}
}

// sound fails on a NaN, on a met cap and on water that doesn't add up.
func (h *hands) sound() {
	h.t.Helper()
	if c := h.p.net.Counters(); c.CapMet > 0 {
		h.t.Errorf("the cap of iterations was met: %+v", c)
	}
	if b := h.p.net.Balance(); !(math.Abs(b.Error) <= 1e-9*max(b.Moved, 1e-3)) {
		h.t.Errorf("water doesn't add up: %+v", b)
	}
}
