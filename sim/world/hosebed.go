package world

import (
	"fmt"

	"steadyneedle/sim/rig"
	"steadyneedle/sim/unit"
)

// piece is one supply hose as it can be taken from the apparatus.
type piece struct{ sizeIn, lossC, couplingIn, lengthFt float64 }

// name is the piece as people call it.
func (p piece) name() string {
	return fmt.Sprintf("%g ft of %s in", p.lengthFt, unit.Eighths(p.sizeIn))
}

// fallbackFt are the pieces of the drill's own supply hose, where the apparatus carries none of that size.
var fallbackFt = []float64{15, 25, 50}

// pieces are the supply hoses that there are to take, in the order of the options of supply_length after
// "none". Hose of the size that the ground gives is of the make that it gives; where the apparatus carries
// none of that size, it is there all the same, with couplings that fit.
func (s *Setup) pieces() []piece {
	plan := &s.Ground.Supply
	bed, carried := s.Rig.SupplyHose, false
	for i := range bed {
		carried = carried || bed[i].SizeIn == plan.SizeIn
	}
	var list []piece
	add := func(h *rig.SupplyHoseDef) {
		for _, ft := range h.LengthsFt {
			list = append(list, piece{h.SizeIn, h.LossC, h.CouplingIn, ft})
		}
	}
	if !carried && plan.SizeIn > 0 {
		add(&rig.SupplyHoseDef{SizeIn: plan.SizeIn, LossC: plan.LossC, CouplingIn: s.Rig.Intake.CouplingIn, LengthsFt: fallbackFt})
	}
	for i := range bed {
		h := bed[i]
		if h.SizeIn == plan.SizeIn {
			h.LossC = plan.LossC
		}
		add(&h)
	}
	return list
}

// taken is the supply hose that lies on the ground; all of it is 0 where none does.
func (w *World) taken() piece {
	if n := int(w.at[supplyLength]); n > 0 {
		return w.pieces[n-1]
	}
	return piece{}
}

// needsAdapters reports whether the couplings of the hose taken are of another size than those of intake
// and hydrant.
func (w *World) needsAdapters() bool {
	p := w.taken()
	return p.lengthFt > 0 && p.couplingIn != w.setup.Rig.Intake.CouplingIn
}
