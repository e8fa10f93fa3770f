package hydraulics

import (
	"math"

	"steadyneedle/sim/unit"
)

// Nozzle pressures that streams are meant to be used at. Source: common practice.
const (
	HandlineTip     unit.PSI = 50  // smooth bore, held by hand
	MasterTip       unit.PSI = 80  // smooth bore of a master stream
	FogNozzle       unit.PSI = 100 // fog
	LowPressureFog1 unit.PSI = 50
	LowPressureFog2 unit.PSI = 75
)

// SmoothBore is the discharge of a smooth-bore tip: 29.7 d² √NP, gpm from inches and psi.
// Source: common practice, in every handbook.
func SmoothBore(tip unit.Inches, np unit.PSI) unit.GPM {
	return unit.GPM(29.7 * float64(tip) * float64(tip) * root(np))
}

// Pitot is the flow from an open outlet by its pitot pressure: 29.84 c d² √p. The coefficient c is
// 0.90 for an outlet that is rounded inside, 0.80 square, 0.70 projecting. Source: NFPA 291, from memory.
func Pitot(c float64, outlet unit.Inches, p unit.PSI) unit.GPM {
	return unit.GPM(29.84 * c * float64(outlet) * float64(outlet) * root(p))
}

// Fog is the discharge of a fog nozzle of fixed orifice, rated for flow at a pressure, when it works at
// np: rated √(NP/NPr). Source: the orifice law, common practice.
func Fog(rated unit.GPM, at, np unit.PSI) unit.GPM {
	return unit.GPM(float64(rated) * root(np/at))
}

// SmoothBoreReaction is the push of a smooth-bore stream on those who hold it: 1.57 d² NP, lbf.
// Source: common practice.
func SmoothBoreReaction(tip unit.Inches, np unit.PSI) unit.Lbf {
	return unit.Lbf(1.57 * float64(tip) * float64(tip) * float64(np))
}

// FogReaction is the push of a fog stream: 0.0505 Q √NP, lbf. Source: common practice.
func FogReaction(q unit.GPM, np unit.PSI) unit.Lbf {
	return unit.Lbf(0.0505 * float64(q) * root(np))
}

// root is √p, 0 for a pressure below zero: nothing flows out then.
func root(p unit.PSI) float64 { return math.Sqrt(max(float64(p), 0)) }
