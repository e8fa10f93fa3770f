package plant

import (
	"math"
	"math/rand/v2"
	"testing"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/layout"
)

// everything is a plan with every part that a plan can have.
func everything() layout.Plan {
	return layout.Plan{
		{ID: "plug", Hydrant: &fireground.HydrantDef{StaticPSI: 70, ResidualPSI: 50, FlowGPM: 1000}},
		pumper("source", "plug", 80),
		hose("relay", "source", 5, 0.08, 300),
		{ID: "inlet", From: []string{"relay"}, Intake: &layout.IntakeDef{Cv: 1500}},
		{ID: "river", Pond: &layout.PondDef{LiftFt: 8}},
		{ID: "suction", From: []string{"river"}, Hose: &fireground.HoseDef{SizeIn: 6, LossC: 0.05, LengthFt: 20, Hard: true}},
		{ID: "drafting", From: []string{"suction"}, Pumper: &layout.PumperDef{RPM: 1100}},
		tip("exposure", "drafting", 1.25, 80),
		hose("trunk", "discharge1", 2.5, 2, 200),
		{ID: "wye", From: []string{"trunk"}, Wye: &layout.WyeDef{Gated: true, Loss: layout.LossDef{PSI: 10, GPM: 350}}},
		hose("left", "wye", 1.75, 15.5, 150), fog("left_nozzle", "left", 125, 75),
		rising(hose("right", "wye", 1.75, 15.5, 150), 5), tip("right_nozzle", "right", 0.9375, 50),
		hose("one", "discharge2", 3, 0.8, 100), hose("two", "discharge3", 3, 0.8, 100),
		{ID: "join", From: []string{"one", "two"}, Siamese: &layout.SiameseDef{Loss: layout.LossDef{PSI: 25, GPM: 500}}},
		{ID: "riser", From: []string{"join"}, Riser: &layout.RiserDef{SizeIn: 6, LossC: 0.05, Floors: 4, FloorFt: 12}},
		{ID: "valve", From: []string{"riser"}, Valve: &layout.ValveDef{Law: "gate", Cv: 400}},
		hose("pack", "valve", 2.5, 2, 150),
		monitor(25, 500, "pack"), fog("gun", "monitor", 350, 100),
		{ID: "test", From: []string{"hydrant"}, Outlet: &layout.OutletDef{SizeIn: 2.5}},
	}
}

// TestWaterAddsUp lets hands at random fill, open, shut, kink, burst and mend for half an hour of the
// plant's time, and closes the account of water every minute: to a billionth of what has flowed.
func TestWaterAddsUp(t *testing.T) {
	s := ground()
	s.Line, s.Lay = fireground.LineDef{}, everything()
	h := at(t, s)
	h.inGear()
	h.onHydrant()
	dice := rand.New(rand.NewPCG(3, 1))
	some := func(x *float64, most float64) { *x = most * math.Round(4*dice.Float64()) / 4 }
	worst := 0.0
	for range 30 {
		for range 60 {
			l := &h.in.Lay[dice.IntN(len(h.in.Lay))]
			some(&l.Open, 1)
			some(&l.Gate, 1)
			l.Kink, l.Burst, l.Leak = 0, 0, 0
			switch dice.IntN(6) {
			case 0:
				some(&l.Burst, 3)
			case 1:
				some(&l.Leak, 100)
			case 2:
				some(&l.Kink, 1)
			}
			some(&h.in.Discharge[dice.IntN(3)], 1)
			some(&h.in.Throttle, 0.6)
			some(&h.in.TankToPump, 1)
			some(&h.in.TankFill, 1)
			some(&h.in.Hydrant.Open, 1)
			h.run(1)
		}
		b := h.p.net.Balance()
		worst = max(worst, math.Abs(b.Error)/b.Moved)
		if !(math.Abs(b.Error) <= 1e-9*b.Moved) {
			t.Fatalf("water doesn't add up: %+v", b)
		}
		for i := range h.p.net.Nodes() {
			if n := h.p.net.Node(i); !n.Fixed() && (!(n.P > -h.p.patm) || !(math.Abs(n.Water) < 100) || !(n.Air >= 0)) {
				t.Fatalf("%s: %v Pa, %v m³ of water, %v m³ of air", n.Name, n.P, n.Water, n.Air)
			}
		}
	}
	b, c := h.p.net.Balance(), h.p.net.Counters()
	t.Logf("moved %.1f m³, error %.2g m³ (worst %.2g of what had flowed); %.3f iterations a step, %d at worst, cap met %d times",
		b.Moved, b.Error, worst, float64(c.Iterations)/float64(c.Steps), c.Most, c.CapMet)
	if c.CapMet > 0 {
		t.Errorf("the cap of iterations was met %d times", c.CapMet)
	}
}
