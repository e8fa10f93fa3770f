package fireground

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/unit"
)

// Hydrant is a hydrant on its main.
type Hydrant struct {
	Main   *flownet.Node // boundary: the main at rest
	Outlet *flownet.Node // in the barrel, behind the outlet
	Supply *flownet.Link // main and hydrant valve
	Flush  *flownet.Link // open outlet to the air
	def    HydrantDef
	valve  Valve
}

const (
	barrel      = 0.01   // m³ behind the valve; air of a dry barrel is counted with the hose (assumption)
	barrelGives = 3e-10  // m³/Pa
	hydrantCv   = 3000.0 // gpm at 1 psi, valve and barrel full open (assumption)
	flushCv     = 640.0  // gpm at 1 psi: 4½ in outlet, 29.84 · 0.9 · 4.5² (NFPA 291, from memory), with a turn
)

// OwnLossPSI is what the hydrant's own valve and barrel take of the drop at FlowGPM: no flow test shows less.
func (d *HydrantDef) OwnLossPSI() float64 {
	k := d.FlowGPM / hydrantCv
	return float64(k * k)
}

// FlowsTooFreely reports whether the residual pressure is higher than the hydrant's own loss allows.
func (d *HydrantDef) FlowsTooFreely() bool {
	drop := d.StaticPSI - d.ResidualPSI
	return d.StaticPSI > 0 && drop > 0 && drop < float64(0.999*d.OwnLossPSI())
}

// AddHydrant adds a hydrant to a network that is being built, shut and capped. air is a boundary at
// no pressure that gives air.
func AddHydrant(b *flownet.Builder, def HydrantDef, air *flownet.Node) *Hydrant {
	h := &Hydrant{def: def, valve: Valve{Law: hydraulics.Gate, R: ValveR(hydrantCv)}}
	h.Main = b.Boundary("main", float64(def.StaticPSI*unit.PaPerPSI), 0)
	h.Outlet = b.Node(flownet.Node{Name: "hydrant", Volume: barrel, Stretch: barrelGives})
	exponent := def.Exponent
	if exponent != flownet.Quadratic {
		exponent = flownet.HazenWilliams
	}
	q := float64(def.FlowGPM * unit.M3SPerGPM)
	drop := float64((def.StaticPSI - def.ResidualPSI) * unit.PaPerPSI)
	r := drop/float64(q*q) - h.valve.R
	h.Supply = b.Link(flownet.Link{Name: "main", From: h.Main, To: h.Outlet, R: bound.AtLeast(r, 0), K: h.valve.R,
		Exponent: exponent, QRef: q, StartsShut: true, I: mainInertance})
	h.Flush = b.Link(flownet.Link{Name: "hydrant outlet", From: h.Outlet, To: air, R: ValveR(flushCv), StartsShut: true, GasR: gasThin})
	return h
}

// mainInertance is that of the column which follows at once: 10 m of 6 in (assumption).
const mainInertance = 998.16 * 10 / 0.01824

// Set opens the hydrant's valve (0…1), opens or caps the outlet to the air, and takes drop psi from
// the static pressure.
func (h *Hydrant) Set(open float64, toAir bool, drop float64) {
	h.valve.Set(h.Supply, open)
	h.Flush.SetShut(!toAir)
	h.Main.P = float64((h.def.StaticPSI - drop) * unit.PaPerPSI)
}
