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
