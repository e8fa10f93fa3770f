package flownet

import (
	"math"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/state"
)

// nodeStore is the storage law of a node, evaluated at its present pressure.
type nodeStore struct {
	base  float64 // Pa added to a gauge pressure to count from the vapor pressure, by the last evaluation
	equal float64 // m³ of water that would be at rest at this pressure
	slope float64 // m³/Pa, its derivative
	gas   float64 // m³ of air and vapor
	void  float64 // share of air and vapor in what it gives in this step, 0 where nobody would notice
	low   float64 // Pa between which the solution is looked for, where a pump sucks:
	high  float64 // see bracket

	diag float64 // m³/s/Pa, of the node's own pressure in its equation
	side float64 // m³/s, right side of the equation; once it is solved, Pa that the pressure changes
}

const (
	vaporAt20C    = 2339.0     // Pa, IAPWS-IF97
	waterGives    = 4.6e-10    // 1/Pa, compressibility of water; no vessel is stiffer than what fills it
	residual      = 1e-6       // share of the volume that is air at least: it holds the pressure above the vapor limit
	noticeable    = 1e-4       // void below which water counts as solid
	leastAbsolute = 1e-3       // Pa above the vapor limit that a node is taken to have at least
	smallMove     = 1.0 / 1024 // of the absolute pressure: below it a straight line serves
)

// base is what is added to a gauge pressure to count from the vapor pressure.
func (n *Node) base(patm float64) float64 {
	if n.Vapor > 0 {
		return patm - n.Vapor
	}
	return patm - vaporAt20C
}

// gasAmount is pressure times volume of the air, Pa m³.
func (n *Node) gasAmount(patm float64) float64 {
	return float64(bound.AtLeast(n.Air, float64(n.Volume*residual)) * patm)
}

// stiff is how far the wall gives where it is hard, m³/Pa.
func (n *Node) stiff() float64 { return bound.AtLeast(n.Stretch, float64(n.Volume*waterGives)) }

// wallAt gives the piece of the wall's law that holds at pressure p, as the volume it would have at
// zero pressure and its slope.
func (n *Node) wallAt(p float64) (volume, slope float64) {
	stiff := n.stiff()
	give := n.Soft.Give
	if p >= give || give <= 0 {
		return n.Volume, stiff
	}
	flat := float64(n.Volume * n.Soft.Flat)
	if p > 0 {
		return flat, stiff + (n.Volume-flat)/give
	}
	return flat, bound.AtLeast(n.Soft.Floor, float64(n.Volume*waterGives))
}

// evaluate brings the storage law of all nodes up to their pressures.
func (n *Net) evaluate() {
	for _, v := range n.free {
		s := &v.store
		s.base = v.base(n.Patm)
		if v.Volume <= 0 {
			s.equal, s.slope, s.gas, s.void = 0, 0, 0, 0
			continue
		}
		volume, slope := v.Volume, v.stiff()
		if v.P < v.Soft.Give {
			volume, slope = v.wallAt(v.P)
		}
		inv := 1 / bound.AtLeast(v.P+s.base, leastAbsolute)
		s.gas = float64(v.gasAmount(n.Patm) * inv) // as in gasNow, which VoidFraction asks for alone
		s.equal = volume + float64(slope*v.P) - s.gas
		s.slope = slope + float64(s.gas*inv)
		s.void = 0
		if s.gas >= float64(noticeable*(v.Water+s.gas)) {
			s.void = v.voidFraction()
		}
	}
}

// gasNow is the room that air and vapor take at the node's pressure, m³.
func (n *Node) gasNow(patm float64) float64 {
	if n.Volume <= 0 {
		return 0
	}
	return float64(n.gasAmount(patm) * (1 / bound.AtLeast(n.P+n.base(patm), leastAbsolute)))
}

// pressureFor solves the storage law for the pressure at which the node holds w of water.
func (n *Node) pressureFor(w, patm float64) float64 {
	b, amount := n.base(patm), n.gasAmount(patm)
	inside := n.Soft.Give // some pressure within the piece of the wall's law that holds
	if give := n.Soft.Give; give > 0 {
		volume, slope := n.wallAt(give)
		if w < volume+float64(slope*give)-amount/(b+give) {
			inside = float64(0.5 * give)
			if w < float64(n.Volume*n.Soft.Flat)-amount/b {
				inside = -1
			}
		}
	}
	volume, slope := n.wallAt(inside)
	// slope·u² − m·u − amount = 0 for u > 0, written without cancellation.
	m := w - volume + float64(slope*b)
	root := math.Sqrt(float64(m*m) + float64(float64(4*slope)*amount))
	if m >= 0 {
		return (m+root)/float64(2*slope) - b
	}
	return float64(2*amount)/(root-m) - b
}

// straight reports whether a straight line serves for a move to a pressure.
func (n *Node) straight(line float64) bool {
	return n.Volume <= 0 || math.Abs(line-n.P) < float64(smallMove*(n.P+n.store.base)) && n.onePiece(n.P, line)
}

// land moves the node's pressure by dp as the linear solution wants, but along the storage law: it
// keeps the water that the linear solution found and takes the pressure from the law. A move out of
// a soft stretch into a stiff one stops at the knee. It returns by how much the result differs from
// the straight line, Pa.
func (n *Node) land(dp, patm float64) float64 {
	line := n.P + dp
	p := n.pressureFor(n.store.equal+float64(n.store.slope*dp), patm)
	if n.P < 0 && p > n.P {
		// Up out of a cavity: the law turns stiff where gas and wall give alike.
		_, slope := n.wallAt(n.P)
		if knee := float64(2*math.Sqrt(n.gasAmount(patm)/slope)) - n.base(patm); n.P < knee && p > knee {
			p = bound.AtMost(p, bound.AtLeast(line, knee))
		}
	}
	if round := n.Soft.Give; n.P < round && p > round && round > 0 {
		p = bound.AtMost(p, bound.AtLeast(line, round))
	}
	if n.P > 0 && p < 0 && n.Soft.Give > 0 {
		p = bound.AtLeast(p, bound.AtMost(line, 0))
	}
	if s := &n.store; p > s.high {
		p = float64(0.5 * (n.P + s.high))
	} else if p < s.low {
		p = float64(0.5 * (n.P + s.low))
	}
	n.P = p
	return math.Abs(p - line)
}

// onePiece reports whether one piece of the wall's law holds at both pressures.
func (n *Node) onePiece(p, q float64) bool {
	give := n.Soft.Give
	return give <= 0 || (p >= give) == (q >= give) && (p > 0) == (q > 0)
}

// voidFraction is the share of the node's room that is air or vapor, by the last evaluation.
func (n *Node) voidFraction() float64 {
	if n.Volume <= 0 {
		return 0
	}
	room := n.Water + n.store.gas
	if n.store.gas >= room {
		return 1
	}
	return n.store.gas / room
}

func (n *Node) walk(w *state.Walker) {
	for _, p := range [...]*float64{&n.P, &n.Water, &n.Air, &n.Volume, &n.Stretch, &n.Vapor,
		&n.Soft.Give, &n.Soft.Flat, &n.Soft.Floor, &n.Tau, &n.AirIn, &n.WaterIn, &n.Void} {
		w.Float(p)
	}
}
