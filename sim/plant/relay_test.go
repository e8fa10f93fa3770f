package plant

import (
	"math"
	"testing"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/layout"
)

func pumper(id, from string, psi float64) layout.Part {
	return layout.Part{ID: id, From: []string{from}, Pumper: &layout.PumperDef{PSI: psi}}
}

// TestRelayToAnotherPumper: at the calculated pressure the next pumper has 20 psi left at its intake
// ([P] residual and practice; sums [C]).
func TestRelayToAnotherPumper(t *testing.T) {
	for _, c := range []struct {
		name              string
		pdp, gpm          float64
		size, c, ft, rise float64
	}{
		{"1000 gpm, 1000 ft 5 in", 100, 1000, 5, 0.08, 1000, 0},
		{"500 gpm, 800 ft 3 in, 30 ft up", 195, 500, 3, 0.8, 800, 15},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := laidOut(t, layout.Plan{
				rising(hose("relay", "discharge1", c.size, c.c, c.ft), c.rise),
				pumper("next", "relay", 150),
				fog("nozzle", "next", c.gpm, 150),
			})
			h.throttleFor(c.pdp, h.linePSI(0))
			n := h.part("next")
			t.Logf("%.1f psi at %.0f rpm; next pumper %.1f psi in, %.1f out at %.0f rpm, %.1f gpm", h.o.Lines[0].ValvePSI, h.o.EngineRPM, n.InletPSI, n.PSI, n.RPM, n.GPM)
			h.near("flow", n.GPM, c.gpm, 0.02*c.gpm)
			h.near("residual", n.InletPSI, 20, 2)
			h.near("its pressure", n.PSI, 150, 1)
			h.sound()
		})
	}
}

// TestRelayFromAnotherPumper: a pumper on a hydrant of its own gives us 100 psi into 1000 ft of 5 in.
// What our intake keeps is that less the hose's loss ([C]).
func TestRelayFromAnotherPumper(t *testing.T) {
	s := ground()
	s.Line = fireground.LineDef{}
	s.Lay = layout.Plan{
		{ID: "plug", Hydrant: &fireground.HydrantDef{StaticPSI: 65, ResidualPSI: 45, FlowGPM: 1000}},
		pumper("source", "plug", 100),
		hose("relay", "source", 5, 0.08, 1000),
		{ID: "inlet", From: []string{"relay"}, Intake: &layout.IntakeDef{Cv: 2000}},
		fog("nozzle", "discharge1", 800, 100),
	}
	h := at(t, s)
	h.inGear()
	h.openAll()
	h.throttleFor(100, func() float64 { return h.part("nozzle").PSI })
	in, src := h.part("inlet"), h.part("source")
	t.Logf("source %.1f psi at %.0f rpm on %.1f; our intake %.2f psi, %.1f gpm", src.PSI, src.RPM, src.InletPSI, h.o.IntakePSI, in.GPM)
	h.near("flow", in.GPM, 800, 8)
	h.near("source", src.PSI, 100, 1)
	h.near("loss of the relay hose", src.PSI-in.InletPSI, 0.08*64*10, 1)
	h.near("its hydrant", src.InletPSI, 65-20*0.661, 1.5) // 20 psi · (800/1000)^1.852, and a psi in barrel and inlet
	h.sound()
}

// TestTandem: a pumper on the hydrant puts its pressure on top of what we give.
func TestTandem(t *testing.T) {
	h := laidOut(t, layout.Plan{
		hose("short", "discharge1", 5, 0.08, 50),
		{ID: "second", From: []string{"short"}, Pumper: &layout.PumperDef{RPM: 1500}},
		hose("line", "second", 2.5, 2, 200),
		fog("nozzle", "line", 250, 100),
	})
	h.throttleFor(150, h.linePSI(0))
	p := h.part("second")
	t.Logf("150 psi in gives %.1f psi at %.0f rpm, %.0f gpm; %.1f psi came in", p.PSI, p.RPM, p.GPM, p.InletPSI)
	// 195 psi · (1500/1520)², less what the flow takes [C]
	h.near("rise", p.PSI-p.InletPSI, 195*1500*1500/1520.0/1520-2e-5*p.GPM*p.GPM, 1.5)
	h.near("speed", p.RPM, 1500, 1)
	h.sound()
}

// TestRelayFromOpenWater: a pumper that drafts stands for a static source.
func TestRelayFromOpenWater(t *testing.T) {
	s := ground()
	s.Line = fireground.LineDef{}
	s.Lay = layout.Plan{
		{ID: "pond", Pond: &layout.PondDef{LiftFt: 10}},
		{ID: "suction", From: []string{"pond"}, Hose: &fireground.HoseDef{SizeIn: 6, LossC: 0.05, LengthFt: 20, Hard: true}},
		pumper("source", "suction", 50),
		hose("relay", "source", 5, 0.08, 300),
		{ID: "inlet", From: []string{"relay"}, Intake: &layout.IntakeDef{Cv: 2000}},
		fog("nozzle", "discharge1", 500, 100),
	}
	h := at(t, s)
	h.inGear()
	h.openAll()
	h.throttleFor(100, func() float64 { return h.part("nozzle").PSI })
	src := h.part("source")
	t.Logf("source draws %.2f psi and gives %.1f at %.0f rpm; we have %.1f", src.InletPSI, src.PSI, src.RPM, h.o.IntakePSI)
	h.between("suction, psi", src.InletPSI, -6, -4.3) // 10 ft are 4.3 psi [C]
	h.near("source", src.PSI, 50, 1)
	h.near("nozzle", h.part("nozzle").GPM, 500, 5)
	h.sound()
}

// TestFurtherOutlets: with the hydrant's other outlets open its pressure follows the 0.54 power of the
// drop (NFPA 291, read at second hand): 65/45 at 1000.
func TestFurtherOutlets(t *testing.T) {
	s := ground()
	s.Line = fireground.LineDef{}
	for _, id := range []string{"one", "two"} {
		s.Lay = append(s.Lay, layout.Part{ID: id, From: []string{"hydrant"}, Outlet: &layout.OutletDef{SizeIn: 2.5}})
	}
	h := at(t, s)
	h.in.Lay[0].Open = 1
	h.in.Hydrant.Open = 1
	h.in.Supply.LengthFt, h.in.Supply.AtHydrant, h.in.Supply.AtEngine = 25, 1, 1
	h.run(60)
	one := *h.part("one")
	h.near("pitot", one.PSI, h.o.HydrantPSI, 0.6)
	h.near("flow by the pitot", one.GPM, 29.84*0.9*6.25*math.Sqrt(one.PSI), 1)
	h.near("residual", h.o.HydrantPSI, 65-20*math.Pow(one.GPM/1000, 1.852), 0.5)
	h.in.Lay[1].Open = 1
	h.run(30)
	q := h.part("one").GPM + h.part("two").GPM
	t.Logf("one outlet %.0f gpm at %.1f psi; two %.0f at %.1f", one.GPM, one.PSI, q, h.o.HydrantPSI)
	h.near("residual with two", h.o.HydrantPSI, 65-20*math.Pow(q/1000, 1.852), 0.6)
	h.sound()
}
