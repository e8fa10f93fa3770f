package flownet

import "steadyneedle/sim/bound"

const (
	// cavitySlope stops a node at the vapor pressure in a steady solution: the cavity that would grow
	// there supplies what the network cannot, m³/s for each Pa below.
	cavitySlope = 1e-3
	// firstFlow is where the iteration begins in a link at rest: at zero its slope says nothing.
	firstFlow      = 0.005 // m³/s
	steadyTol      = 1e-3  // Pa
	steadyAttempts = 100
)

// Settle finds the steady state: no storage, no inertance, no air carried. Nodes are then filled to
// their pressures and the account of water begins anew. It reports whether the iteration converged;
// the state is the last iterate if it did not.
func (n *Net) Settle() bool {
	cold := true
	for _, l := range n.links {
		cold = cold && l.work.q == 0
	}
	n.begin()
	for _, l := range n.links {
		w := &l.work
		w.unmix()
		w.curve = l.R + l.K
		if cold && !l.Shut() {
			w.q = firstFlow
		}
	}
	ok := n.iterate(0, steadyTol, steadyAttempts)
	n.fill()
	return ok
}

// Deficit is what a cavity would have to supply at a node that the last Settle stopped at the vapor
// pressure, m³/s; 0 where the network supplies itself.
func (n *Net) Deficit(v *Node) float64 {
	out := -v.WaterIn
	for _, l := range n.links {
		switch v {
		case l.From:
			out += l.work.q
		case l.To:
			out -= l.work.q
		}
	}
	return bound.AtLeast(out, 0)
}
