package layout

import (
	"errors"
	"math"
	"strings"
	"testing"

	"steadyneedle/sim/fireground"
)

func hoseDef() *fireground.HoseDef { return &fireground.HoseDef{SizeIn: 2.5, LossC: 2, LengthFt: 200} }
func tipDef() *fireground.NozzleDef {
	return &fireground.NozzleDef{TipIn: 1, RatedPSI: 50}
}

func from(ids ...string) []string { return ids }

var town = Ground{Discharges: 3, Hydrant: true}

// TestCheckRefuses: what cannot be laid is refused with an error that names the part, before anything
// is built.
func TestCheckRefuses(t *testing.T) {
	line := func(h fireground.HoseDef, z fireground.NozzleDef) Plan {
		return Plan{{ID: "line", From: from("discharge1"), Hose: &h}, {ID: "tip", From: from("line"), Nozzle: &z}}
	}
	with := func(change func(*fireground.HoseDef)) Plan {
		h := *hoseDef()
		change(&h)
		return line(h, *tipDef())
	}
	nozzle := func(z fireground.NozzleDef) Plan { return line(*hoseDef(), z) }
	end := func(p Part) Plan {
		p.ID, p.From = "end", from("line")
		return Plan{{ID: "line", From: from("discharge1"), Hose: hoseDef()}, p}
	}
	middle := func(p Part) Plan {
		p.ID = "middle"
		if p.From == nil {
			p.From = from("discharge1")
		}
		return Plan{p, {ID: "tip", From: from("middle"), Nozzle: tipDef()}}
	}
	for _, c := range []struct {
		name string
		plan Plan
		part string
		says string
	}{
		{"no id", Plan{{From: from("discharge1"), Nozzle: tipDef()}}, "", "an id is"},
		{"capitals", Plan{{ID: "Tip", From: from("discharge1"), Nozzle: tipDef()}}, "Tip", "an id is"},
		{"id of a discharge", Plan{{ID: "discharge2", From: from("discharge1"), Nozzle: tipDef()}}, "discharge2", "stands for something else"},
		{"id twice", Plan{{ID: "a", From: from("discharge1"), Nozzle: tipDef()}, {ID: "a", From: from("discharge2"), Nozzle: tipDef()}}, "a", "stands for something else"},
		{"no kind", Plan{{ID: "a", From: from("discharge1")}}, "a", "is nothing"},
		{"two kinds", Plan{{ID: "a", From: from("discharge1"), Nozzle: tipDef(), Hose: hoseDef()}}, "a", "is hose and nozzle"},
		{"no source", Plan{{ID: "a", Nozzle: tipDef()}}, "a", "comes from 0"},
		{"unknown source", Plan{{ID: "a", From: from("b"), Nozzle: tipDef()}}, "a", `"b"`},
		{"from itself", Plan{{ID: "a", From: from("a"), Hose: hoseDef()}}, "a", "in a circle"},
		{"circle", Plan{{ID: "a", From: from("b"), Hose: hoseDef()}, {ID: "b", From: from("a"), Hose: hoseDef()}}, "a", "in a circle"},
		{"discharge that isn't there", Plan{{ID: "a", From: from("discharge4"), Nozzle: tipDef()}}, "a", "discharges 1 to 3"},
		{"hose to nowhere", Plan{{ID: "a", From: from("discharge1"), Hose: hoseDef()}}, "a", "leads to 0 parts"},
		{"two from a hose", append(line(*hoseDef(), *tipDef()), Part{ID: "b", From: from("line"), Nozzle: tipDef()}), "line", "a wye divides"},
		{"two from a discharge", Plan{{ID: "a", From: from("discharge1"), Nozzle: tipDef()}, {ID: "b", From: from("discharge1"), Nozzle: tipDef()}}, "a", "a wye divides"},
		{"beyond a nozzle", append(line(*hoseDef(), *tipDef()), Part{ID: "b", From: from("tip"), Nozzle: tipDef()}), "tip", "nothing can come from it"},
		{"wye with one outlet", middle(Part{Wye: &WyeDef{}}), "middle", "leads to 1 part, expected 2 to 4"},
		{"siamese with one inlet", middle(Part{Siamese: &SiameseDef{}}), "middle", "comes from 1, expected 2 to 3"},
		{"siamese from one hose twice", middle(Part{From: from("discharge1", "discharge1"), Siamese: &SiameseDef{}}), "middle", "twice"},
		{"zero-length hose", with(func(h *fireground.HoseDef) { h.LengthFt = 0 }), "line", "0 ft long"},
		{"negative length", with(func(h *fireground.HoseDef) { h.LengthFt = -50 }), "line", "ft long"},
		{"length of NaN", with(func(h *fireground.HoseDef) { h.LengthFt = math.NaN() }), "line", "ft long"},
		{"length without end", with(func(h *fireground.HoseDef) { h.LengthFt = math.Inf(1) }), "line", "ft long"},
		{"hose without bore", with(func(h *fireground.HoseDef) { h.SizeIn = 0 }), "line", "in across"},
		{"frictionless hose", with(func(h *fireground.HoseDef) { h.LossC = 0 }), "line", "friction coefficient"},
		{"wave speed", with(func(h *fireground.HoseDef) { h.WaveFtS = 1e9 }), "line", "wave speed"},
		{"nozzle without opening", nozzle(fireground.NozzleDef{RatedPSI: 50}), "tip", "tip_in"},
		{"tip and fog", nozzle(fireground.NozzleDef{TipIn: 1, RatedGPM: 100, RatedPSI: 50}), "tip", "one of them"},
		{"tip of NaN", nozzle(fireground.NozzleDef{TipIn: math.NaN()}), "tip", "tip_in must be"},
		{"fog without pressure", nozzle(fireground.NozzleDef{RatedGPM: 100}), "tip", "rated_psi"},
		{"fog of no flow", nozzle(fireground.NozzleDef{RatedGPM: -100, RatedPSI: 100}), "tip", "rated_gpm"},
		{"nozzle that rises", nozzle(fireground.NozzleDef{TipIn: 1, RiseFt: 10}), "tip", "rise_ft belongs"},
		{"two rises", Plan{{ID: "line", From: from("discharge1"), RiseFt: 1, RisePSI: 1, Hose: hoseDef()}, {ID: "tip", From: from("line"), Nozzle: tipDef()}}, "line", "one of them"},
		{"rise to the moon", Plan{{ID: "line", From: from("discharge1"), RiseFt: 1e9, Hose: hoseDef()}, {ID: "tip", From: from("line"), Nozzle: tipDef()}}, "line", "cannot be"},
		{"wye that rises", Plan{{ID: "w", From: from("discharge1"), RiseFt: 5, Wye: &WyeDef{}}}, "w", "cannot rise"},
		{"loss without flow", middle(Part{Appliance: &LossDef{PSI: 10}}), "middle", "at_gpm"},
		{"flow without loss", middle(Part{Monitor: &LossDef{GPM: 10}}), "middle", "at_gpm"},
		{"negative loss", middle(Part{Appliance: &LossDef{PSI: -10, GPM: 300}}), "middle", "loss_psi"},
		{"unknown law", middle(Part{Valve: &ValveDef{Law: "needle", Cv: 100}}), "middle", "ball, gate or butterfly"},
		{"valve without passage", middle(Part{Valve: &ValveDef{}}), "middle", "cv"},
		{"riser without floors", middle(Part{Riser: &RiserDef{SizeIn: 6, LossC: 0.05, FloorPSI: 5}}), "middle", "floors"},
		{"floors of no height", middle(Part{Riser: &RiserDef{SizeIn: 6, LossC: 0.05, Floors: 5}}), "middle", "floor_ft or floor_psi"},
		{"floors twice", middle(Part{Riser: &RiserDef{SizeIn: 6, LossC: 0.05, Floors: 5, FloorFt: 10, FloorPSI: 5}}), "middle", "one of them"},
		{"low ceiling", middle(Part{Riser: &RiserDef{SizeIn: 6, LossC: 0.05, Floors: 5, FloorFt: 1}}), "middle", "6 to 40 ft"},
		{"riser without bore", middle(Part{Riser: &RiserDef{LossC: 0.05, Floors: 5, FloorFt: 10}}), "middle", "size_in"},
		{"pumper that holds nothing", middle(Part{Pumper: &PumperDef{}}), "middle", "one of them"},
		{"pumper that races", middle(Part{Pumper: &PumperDef{RPM: 9000}}), "middle", "rpm from 500"},
		{"pumper of no size", middle(Part{Pumper: &PumperDef{RPM: 900, RatedGPM: 1}}), "middle", "rated_gpm"},
		{"dry hydrant", Plan{{ID: "h", Hydrant: &fireground.HydrantDef{StaticPSI: 0, FlowGPM: 500}}}, "h", "static_psi"},
		{"residual above static", Plan{{ID: "h", Hydrant: &fireground.HydrantDef{StaticPSI: 50, ResidualPSI: 60, FlowGPM: 500}}}, "h", "less than the static"},
		{"residual that its own valve would undercut", Plan{{ID: "h", Hydrant: &fireground.HydrantDef{StaticPSI: 50, ResidualPSI: 49, FlowGPM: 6000}}}, "h", "expected 46 at most"},
		{"hydrant on a hill", Plan{{ID: "h", Hydrant: &fireground.HydrantDef{StaticPSI: 50, ResidualPSI: 40, FlowGPM: 500, ElevationFt: 10}}}, "h", "rise of the hose"},
		{"hydrant that comes from one", Plan{{ID: "h", From: from("hydrant"), Hydrant: &fireground.HydrantDef{StaticPSI: 50, ResidualPSI: 40, FlowGPM: 500}}}, "h", "comes from 1"},
		{"pond on a hill", Plan{{ID: "p", Pond: &PondDef{LiftFt: 90}}}, "p", "lift_ft"},
		{"outlet without size", end(Part{Outlet: &OutletDef{}}), "end", "size_in"},
		{"outlet that gains", end(Part{Outlet: &OutletDef{SizeIn: 2.5, Coefficient: 2}}), "end", "coefficient"},
		{"intake without passage", Plan{{ID: "i", From: from("hydrant"), Intake: &IntakeDef{}}}, "i", "cv"},
		{"our own water", end(Part{Intake: &IntakeDef{Cv: 500}}), "end", "in a circle"},
	} {
		err := c.plan.Check(town)
		var e *Error
		if !errors.As(err, &e) {
			t.Errorf("%s: %v, want an *Error", c.name, err)
			continue
		}
		if e.Part != c.part || !strings.Contains(e.Why, c.says) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %q, want it to name %q and to say %q", c.name, err, c.part, c.says)
		}
	}
	draft := Ground{Discharges: 1}
	if err := (Plan{{ID: "a", From: from("hydrant"), Nozzle: tipDef()}}).Check(draft); err == nil || !strings.Contains(err.Error(), "there is none") {
		t.Errorf("no hydrant: %v", err)
	}
}

// TestCheckPasses: nothing is refused that can be laid.
func TestCheckPasses(t *testing.T) {
	for _, p := range []Plan{
		nil,
		{{ID: "gun", From: from("discharge1"), Monitor: &LossDef{}}, {ID: "tip", From: from("gun"), Nozzle: tipDef()}},
		{{ID: "a", From: from("discharge1"), Hose: hoseDef()}, {ID: "b", From: from("discharge3"), Hose: hoseDef()},
			{ID: "s", From: from("a", "b"), Siamese: &SiameseDef{Loss: LossDef{PSI: 10, GPM: 350}}},
			{ID: "p", From: from("s"), Pumper: &PumperDef{RPM: 1200}}, {ID: "x", From: from("p"), Nozzle: tipDef()}, {ID: "y", From: from("p"), Outlet: &OutletDef{SizeIn: 2.5}}},
	} {
		if err := p.Check(town); err != nil {
			t.Error(err)
		}
	}
}
