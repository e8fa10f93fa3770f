package world

import (
	"errors"
	"testing"

	"steadyneedle/sim/fireground"
)

// pieceNamed is the option of supply_length with a name.
func (h hand) pieceNamed(name string) float64 {
	h.t.Helper()
	id, _ := h.Control("supply_length")
	for i, o := range h.Controls()[id].Options {
		if o == name {
			return float64(i)
		}
	}
	h.t.Fatalf("no piece %q among %v", name, h.Controls()[id].Options)
	return 0
}

// TestPiecesOfTheApparatus: what can be taken is what the apparatus carries, of the drill's make where it
// gives one; a size that is not carried is there for the drill all the same.
func TestPiecesOfTheApparatus(t *testing.T) {
	s := ferryStreet()
	s.Ground.Supply.LossC = 0.25
	if got := s.pieces(); len(got) != 7 || got[1] != (piece{4, 0.25, 4, 25}) || got[3].lossC != 0.08 || got[6].name() != "50 ft of 3 in" {
		t.Errorf("pieces %v", got)
	}
	s.Ground.Supply = fireground.HoseDef{SizeIn: 4.5, LossC: 0.1}
	if got := s.pieces(); len(got) != 10 || got[0] != (piece{4.5, 0.1, 4, 15}) || got[0].name() != "15 ft of 4½ in" {
		t.Errorf("with a drill of 4½ in: %v", got)
	}
}

// TestAdapters: couplings of another size fit with adapters alone, and these stay while the hose hangs on
// them.
func TestAdapters(t *testing.T) {
	h := build(t)
	h.layToHydrant()
	h.walkTo(RearStep)
	h.set("supply_length", h.pieceNamed("25 ft of 5 in"))
	h.walkTo(Panel)
	if err := h.Check(h.action(Candidate, "supply_at_engine", 2)); !errors.Is(err, ErrCannot) {
		t.Errorf("5 in couplings on a 4 in intake: %v", err)
	}
	h.walkTo(RearStep)
	h.set("adapters", 1)
	h.walkTo(Panel)
	h.set("supply_at_engine", 2)
	h.until("supply_at_engine", 2, 10)
	if err := h.Check(h.action(Candidate, "adapters", 0)); !errors.Is(err, ErrCannot) {
		t.Errorf("adapters put away under the hose: %v", err)
	}
}

// TestSizeOfSupply: at the same flow smaller hose costs more of the intake's pressure, by the formula
// C (Q/100)² L/100 [C]; larger hose takes longer to fill.
func TestSizeOfSupply(t *testing.T) {
	type got struct{ psi, gpm, fillS float64 }
	try := func(name string) got {
		s := threeLines()
		s.Start["hydrant_valve"], s.Start["supply_straight"] = 0, 1
		w, err := New(s)
		if err != nil {
			t.Fatal(err)
		}
		h := hand{t, w}
		s.Start["supply_length"] = h.pieceNamed(name)
		if h.World, err = New(s); err != nil {
			t.Fatal(err)
		}
		h.do(Instructor, "hydrant_valve", 1)
		var g got
		for h.is("supply_fill") < 0.9 && g.fillS < 60 {
			h.wait(0.1)
			g.fillS += 0.1
		}
		h.do(Instructor, "transmission", 1)
		h.wait(60)
		g.gpm, g.psi = h.is("hydrant_gpm"), h.is("hydrant_psi")-h.is("supply_psi")
		return g
	}
	small, planned, large := try("25 ft of 3 in"), try("25 ft of 4 in"), try("25 ft of 5 in")
	for _, c := range []struct {
		got
		c float64
	}{{small, 0.8}, {planned, 0.2}, {large, 0.08}} {
		want := c.c * c.gpm / 100 * c.gpm / 100 * 25 / 100
		if c.gpm < 400 || c.psi < 0.9*want || c.psi > 1.1*want {
			t.Errorf("C %g: %.2f psi lost at %.0f gpm, expected %.2f", c.c, c.psi, c.gpm, want)
		}
	}
	if !(small.fillS < planned.fillS && planned.fillS < large.fillS) {
		t.Errorf("full after %.1f, %.1f and %.1f s for 3, 4 and 5 in", small.fillS, planned.fillS, large.fillS)
	}
}

// TestHoseToLay: the line is laid of the load that was chosen, not of another one once it is being laid; at
// the same flow smaller hose loses more, by C (Q/100)² L/100 [C].
func TestHoseToLay(t *testing.T) {
	h := build(t)
	if h.is("line_size") != 2.5 || h.is("line_c") != 2 {
		t.Errorf("the ground's own hose is %g in, C %g", h.is("line_size"), h.is("line_c"))
	}
	h.set("line_hose", 1)
	h.layToHydrant()
	if h.is("line_size") != 3 || h.is("line_c") != 0.8 {
		t.Errorf("chosen 3 in, laid %g in, C %g", h.is("line_size"), h.is("line_c"))
	}
	if err := h.Check(h.action(Candidate, "line_hose", 0)); !errors.Is(err, ErrCannot) {
		t.Errorf("another hose when the line is laid: %v", err)
	}
	loss := map[float64]float64{}
	for load, c := range map[float64]float64{0: 2, 1: 0.8} {
		s := ferryStreet()
		s.Ground.Arrived = true
		s.Start = map[string]float64{"hydrant_valve": 1, "hydrant_cap": 0, "supply_length": 2, "supply_straight": 1, "supply_at_engine": 2, "supply_at_hydrant": 2, "intake": 1,
			"line_hose": load, "line_break": 1, "line_slack": 1, "line_to": 1, "line_coupling": 2, "cap1": 0, "discharge1": 1, "nozzle1": 1}
		w, err := New(s)
		if err != nil {
			t.Fatal(err)
		}
		h := hand{t, w}
		h.wait(120)
		q := h.is("nozzle1_gpm")
		loss[load] = h.is("line1_psi") - h.is("nozzle1_psi")
		if want := c * q / 100 * q / 100 * h.is("laid_ft") / 100; q < 80 || loss[load] < 0.9*want || loss[load] > 1.1*want {
			t.Errorf("C %g: %.1f psi lost at %.0f gpm over %g ft, expected %.1f", c, loss[load], q, h.is("laid_ft"), want)
		}
	}
}
