package fireground

import (
	"math"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

const (
	waterDensity   = 998.16 // kg/m³ at 20 °C
	gravityPa      = 998.16 * unit.Gravity
	defaultWaveFtS = 600  // assumption: no published value for fabric hose was found
	nozzleShare    = 0.64 // of a hose's elasticity sits at its far end …
	valveShare     = 0.36 // … and the rest at the end the water comes from
	quarterPi      = 0.7853981633974483
)

// Hose is one laid hose in a network: the run of the water from one node to the hose's own end
// node, which stores its content. Call Update before every step of the network.
type Hose struct {
	Run  *flownet.Link // from the near end to the far end
	End  *flownet.Node // far end: nozzle, wye or intake hangs here
	hole *flownet.Link // where it has burst or leaks, to the air
	near *flownet.Node

	// what is laid; Lay sets it
	length, area, r, inertance, content, stretch, delay float64
	given                                               float64 // elasticity that the hose added to the near node
	rise                                                float64 // Pa, of the full hose
	filling                                             bool
	kink                                                float64
	soft                                                bool
	enough                                              float64 // m³ at its end with which the run's coefficients stay as they are
}

// AddHose adds a hose to a network that is being built, from a node that has volume of its own (a
// valve's outlet). air is a boundary at no pressure that gives air. The hose is built shut and empty:
// Lay lays it out once the network stands.
func AddHose(b *flownet.Builder, name string, near, air *flownet.Node) *Hose {
	h := &Hose{near: near}
	h.End = b.Node(flownet.Node{Name: name + " end", Volume: 1e-3})
	h.Run = b.Link(flownet.Link{Name: name, From: near, To: h.End, R: 1, I: 1, StartsShut: true, Carry: carryHose})
	h.hole = b.Link(flownet.Link{Name: name + " hole", From: h.End, To: air, R: 1, StartsShut: true, GasR: gasThin})
	return h
}

// Walk visits the hose's state.
func (h *Hose) Walk(w *state.Walker) {
	for _, p := range [...]*float64{&h.length, &h.area, &h.r, &h.inertance, &h.content, &h.stretch, &h.delay, &h.given, &h.rise, &h.kink} {
		w.Float(p)
	}
	w.Bool(&h.filling)
	w.Bool(&h.soft)
	if w.Loading() {
		h.enough = math.Inf(1)
	}
}

// Content is the volume kept at the hose's far end, m³: the whole hose's, less what Lend gave away.
func (h *Hose) Content() float64 { return h.content }

// Holds is the water in the hose over its content, 0…1; what Lend gave away is not looked at.
func (h *Hose) Holds() float64 {
	if h.content <= 0 {
		return 0
	}
	return bound.Within(h.End.Water/h.content, 0, 1)
}

// Filling is true until the hose has been full once since it was laid.
func (h *Hose) Filling() bool { return h.filling }
