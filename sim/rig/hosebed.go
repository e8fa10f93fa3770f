package rig

import "fmt"

// SupplyHoseDef is one size of supply hose as the apparatus carries it: in pieces, each of its own length.
type SupplyHoseDef struct {
	SizeIn     float64   `file:"size_in" range:"1.5..6" need:"yes"`
	LossC      float64   `file:"loss_c" range:"0.01..100" need:"yes"` // psi = C (Q/100)² L/100, with gpm and ft
	CouplingIn float64   `file:"coupling_in" range:"1.5..6" need:"yes"`
	LengthsFt  []float64 `file:"lengths_ft" range:"5..200" size:"1..8" need:"yes"` // one for each piece
}

// LineHoseDef is one load of the hose bed, from which a line can be laid.
type LineHoseDef struct {
	SizeIn float64 `file:"size_in" range:"1..4" need:"yes"`
	LossC  float64 `file:"loss_c" range:"0.1..200" need:"yes"` // psi = C (Q/100)² L/100, with gpm and ft
}

// defaultLineHose is Engine 41's; coefficients as defaultSupplyHose's.
func defaultLineHose() []LineHoseDef {
	return []LineHoseDef{{SizeIn: 2.5, LossC: 2}, {SizeIn: 3, LossC: 0.8}}
}

// MostPieces is how many pieces of supply hose an apparatus carries at most: as many as one card shows.
const MostPieces = 8

// defaultSupplyHose is Engine 41's. Coefficients: handouts of the Renton and Rohnert Park fire
// departments [S]; sizes of couplings and lengths: assumption.
func defaultSupplyHose() []SupplyHoseDef {
	return []SupplyHoseDef{
		{SizeIn: 4, LossC: 0.2, CouplingIn: 4, LengthsFt: []float64{15, 25, 50}},
		{SizeIn: 5, LossC: 0.08, CouplingIn: 5, LengthsFt: []float64{25, 50}},
		{SizeIn: 3, LossC: 0.8, CouplingIn: 2.5, LengthsFt: []float64{25, 50}},
	}
}

// checkHoseBed looks at the hose that is carried.
func (d *Def) checkHoseBed() error {
	for i := range d.LineHose {
		h, name := &d.LineHose[i], fmt.Sprintf("line_hose[%d].", i+1)
		if err := firstBad([]number{above0(name+"size_in", h.SizeIn), above0(name+"loss_c", h.LossC)}); err != nil {
			return err
		}
		for j := range d.LineHose[:i] {
			if d.LineHose[j].SizeIn == h.SizeIn {
				return &FieldError{name + "size_in", h.SizeIn, "each size once"}
			}
		}
	}
	if err := firstBad([]number{above0("intake.coupling_in", d.Intake.CouplingIn)}); err != nil {
		return err
	}
	pieces := 0
	for i := range d.SupplyHose {
		h := &d.SupplyHose[i]
		name := fmt.Sprintf("supply_hose[%d].", i+1)
		list := []number{above0(name+"size_in", h.SizeIn), above0(name+"loss_c", h.LossC), above0(name+"coupling_in", h.CouplingIn)}
		for _, ft := range h.LengthsFt {
			list = append(list, within(name+"lengths_ft", ft, 1, most))
		}
		if err := firstBad(list); err != nil {
			return err
		}
		for j := range d.SupplyHose[:i] {
			if d.SupplyHose[j].SizeIn == h.SizeIn {
				return &FieldError{name + "size_in", h.SizeIn, "each size once"}
			}
		}
		pieces += len(h.LengthsFt)
	}
	if pieces > MostPieces {
		return &FieldError{"supply_hose", pieces, fmt.Sprintf("at most %d pieces", MostPieces)}
	}
	return nil
}
