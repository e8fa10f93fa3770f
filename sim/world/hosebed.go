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

// noLine is why no hose can be chosen for a line.
const noLine = "no line is laid in this drill"

// loads are the loads of the hose bed that the line can be laid from, in the order of the options of
// line_hose, and which of them is of the ground's own size, of its make. Where the apparatus carries none of
// that size, it is there all the same, first.
func (s *Setup) loads() (list []rig.LineHoseDef, ordered int) {
	own := &s.Ground.Line.Trunk
	ordered = -1
	for i, h := range s.Rig.LineHose {
		if h.SizeIn == own.SizeIn {
			h.LossC, ordered = own.LossC, i
		}
		list = append(list, h)
	}
	if ordered < 0 {
		list, ordered = append([]rig.LineHoseDef{{SizeIn: own.SizeIn, LossC: own.LossC}}, list...), 0
	}
	return list, ordered
}

// fitLoads makes the loads the options of a control.
func (s *Setup) fitLoads(c *Control) {
	if s.Ground.Line.None() {
		c.By, c.Missing = Nowhere, noLine
		return
	}
	list, ordered := s.loads()
	for _, h := range list {
		c.Options = append(c.Options, unit.Eighths(h.SizeIn)+" in")
	}
	c.Max, c.Start = float64(len(list)-1), float64(ordered)
}

// load is the hose that the line is laid of; all of it is 0 where there is no line.
func (w *World) load() rig.LineHoseDef {
	if w.setup.Ground.Line.None() {
		return rig.LineHoseDef{}
	}
	return w.loads[int(w.at[lineHose])]
}
