package plant

import (
	"math"
	"testing"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/layout"
)

// reading is what a script takes down, with the difference that a sixteenth of the step may make.
type reading struct {
	what   string
	got    float64
	within float64
}

// TestFineSteps runs the same hands at 240 and at 3840 steps a second. What stands must stand at the same
// place; what moves must have come as far (tolerances: what an instrument on the panel resolves).
func TestFineSteps(t *testing.T) {
	for _, c := range []struct {
		name string
		run  func(*testing.T, int) []reading
	}{
		{"check valve of the tank", tankCheckScript}, {"clapper of a siamese", clapperScript}, {"cavitation at draft", cavitationScript},
		{"hose collapse", collapseScript}, {"burst", burstScript}, {"valve shut on a flowing line", shutScript},
	} {
		t.Run(c.name, func(t *testing.T) {
			coarse, fine := c.run(t, 4), c.run(t, 64)
			for i, a := range coarse {
				b := fine[i]
				t.Logf("%-40s %9.3f at 240 Hz, %9.3f at 3840 Hz", a.what, a.got, b.got)
				if !(math.Abs(a.got-b.got) <= a.within) {
					t.Errorf("%s: %.3f at 240 Hz, %.3f at 3840 Hz, want them within %g", a.what, a.got, b.got, a.within)
				}
			}
		})
	}
}

func atSteps(t *testing.T, s Setup, substeps int) *hands {
	s.Substeps = substeps
	return at(t, s)
}

// The hydrant comes on while the tank feeds the pump: the check valve takes over.
func tankCheckScript(t *testing.T, substeps int) []reading {
	h := atSteps(t, ground(), substeps)
	h.inGear()
	h.onTank()
	h.line(0)
	used := h.o.TankGal
	h.onHydrant()
	h.run(20)
	h.sound()
	return []reading{
		{"tank before the hydrant, gal", used, 0.3}, {"tank after, gal", h.o.TankGal, 0.5}, {"tank to pump, gpm", h.o.TankToPumpGPM, 0.01},
		{"intake, psi", h.o.IntakePSI, 0.1}, {"line, psi", h.o.Lines[0].ValvePSI, 0.1},
	}
}

// A nozzle shut in 3 s behind a siamese traps what surge there was behind the clappers.
func clapperScript(t *testing.T, substeps int) []reading {
	s := ground()
	s.Line = fireground.LineDef{}
	s.Lay = layout.Plan{
		hose("a", "discharge1", 2.5, 2, 200), hose("b", "discharge2", 2.5, 2, 200),
		{ID: "join", From: []string{"a", "b"}, Siamese: &layout.SiameseDef{Loss: layout.LossDef{PSI: 10, GPM: 350}}},
		hose("on", "join", 3, 0.8, 100), tip("nozzle", "on", 1.125, 50),
	}
	h := atSteps(t, s, substeps)
	h.inGear()
	h.onHydrant()
	h.openAll()
	flow := h.part("nozzle").GPM
	h.turn(&h.in.Discharge[1], 0, 3)
	h.run(10)
	one := h.part("nozzle").GPM
	h.turn(&h.in.Lay[4].Open, 0, 3)
	h.run(20)
	h.sound()
	return []reading{
		{"both lines, gpm", flow, 0.1}, {"one line, gpm", one, 0.1}, {"through the shut one, gpm", h.part("b").GPM, 0.01},
		{"trapped behind the clappers, psi", h.part("on").PSI, 3}, {"before them, psi", h.part("a").PSI, 0.5},
	}
}

// Big tips at draft, speed far up, and one of them gated down.
func cavitationScript(t *testing.T, substeps int) []reading {
	h := drafting(t, 0, substeps)
	h.primed(60)
	h.run(10)
	for i := range 3 {
		h.turn(&h.in.Lines[i].Nozzle[0], 1, 3)
	}
	h.turn(&h.in.Throttle, 620.0/1450, 3)
	h.run(15)
	q, psi := h.o.PumpGPM, h.o.DischargePSI
	h.turn(&h.in.Throttle, 1, 5)
	h.run(15)
	f, top := h.o.HeadFactor, h.o.PumpGPM
	h.turn(&h.in.Lines[0].Nozzle[0], 0.2, 1)
	g := h.o.HeadFactor
	h.sound()
	return []reading{{"gpm at 1300 rpm", q, 2}, {"psi", psi, 0.3}, {"gpm at full throttle", top, 4}, {"head factor there", f, 0.01}, {"head factor, one gated", g, 0.02}}
}

// A weak hydrant and too much throttle: the supply hose goes flat, and comes back.
func collapseScript(t *testing.T, substeps int) []reading {
	s := ground()
	s.Hydrant = fireground.HydrantDef{StaticPSI: 40, ResidualPSI: 15, FlowGPM: 300}
	s.Line.Nozzle.TipIn, s.Line.Trunk.LengthFt = 1.25, 200
	h := atSteps(t, s, substeps)
	h.in.ReliefTurns = 10
	h.inGear()
	h.onHydrant()
	h.line(0)
	h.turn(&h.in.Throttle, 0.6, 5)
	h.run(120)
	psi, intake, fill := h.o.DischargePSI, h.o.IntakePSI, h.o.SupplyFill
	h.turn(&h.in.Throttle, 0.2, 2)
	h.turn(&h.in.Discharge[0], 0.3, 2)
	back := h.until(60, func() bool { return h.o.IntakePSI > 10 })
	h.sound()
	return []reading{{"discharge of the flat hose, psi", psi, 2}, {"intake, psi", intake, 0.3}, {"supply hose filled", fill, 0.05}, {"s to recover", back, 1}}
}

// A 2 in hole in a flowing line.
func burstScript(t *testing.T, substeps int) []reading {
	s := ground()
	s.Line.Trunk.LengthFt = 200
	h := atSteps(t, s, substeps)
	h.inGear()
	h.onHydrant()
	h.line(0)
	h.in.Lines[0].Burst = 2
	h.run(0.5)
	soon := h.o.Lines[0].ValvePSI
	h.run(20)
	h.sound()
	return []reading{{"line gauge half a second on, psi", soon, 1}, {"in the end, psi", h.o.Lines[0].ValvePSI, 0.1}, {"lost, gpm", h.o.Lines[0].LeakGPM, 0.5}, {"nozzle, psi", h.o.Lines[0].NozzlePSI[0], 0.1}}
}

// The line's nozzle shut in half a second.
func shutScript(t *testing.T, substeps int) []reading {
	s := ground()
	s.Line.Trunk.LengthFt = 200
	h := atSteps(t, s, substeps)
	h.in.ReliefTurns = 10
	h.inGear()
	h.onHydrant()
	h.line(0)
	top := 0.0
	for k := range 180 {
		h.in.Lines[0].Nozzle[0] = max(0, 1-float64(k+1)/30)
		h.run(tick)
		top = max(top, h.p.psi(h.p.slots[0].trunk.End.P))
	}
	h.run(10)
	h.sound()
	return []reading{{"peak at the nozzle, psi", top, 0.05 * top}, {"at rest, psi", h.o.Lines[0].ValvePSI, 0.3}}
}
