package fireground

import (
	"math"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/unit"
)

const (
	mainBore = 8 * unit.MPerIn    // m, of the main under the street (assumption)
	mainWave = 4000 * unit.MPerFt // m/s, of water in iron pipe (from memory)
	// mainImpedance is what the main sets against a wave that comes out of the hose: two pipes, one each
	// way, ρa/(2A), Pa/(m³/s).
	mainImpedance = waterDensity * mainWave / (2 * quarterPi * mainBore * mainBore)
	// mostRadiated bounds the damping ratio. One lump of elasticity cannot both throw the first wave back in
	// full and lose what the main takes of the later ones: at 0.1 the first peak of a stopped supply hose
	// comes nearest to the method of characteristics, within 8 %, and the rest still dies in some turns.
	mostRadiated = 0.1
)

// Radiate lets a hydrant's main carry away what comes back to it through the hose. The main throws a wave
// back by the share |Zm − Zh|/(Zm + Zh) of the wave impedances alone (Allievi), so that a hose shut at its
// other end swings by that share less at each turn. The same loss is put into the damping of its
// elasticity: ζ = λ/√(π² + λ²), where λ, less the logarithm of that share, is 2 artanh of the ratio of the
// smaller impedance to the larger. What friction of unsteady flow adds is small against it, 1/(√2 Wo)
// (Zielke, for laminar flow): 0.012 in 1000 ft of 5 in. Call it after Lay.
func (h *Hose) Radiate() {
	if h.length <= 0 {
		return
	}
	hose := h.inertance / h.delay // ρa/A
	m := bound.AtMost(hose, mainImpedance) / bound.AtLeast(hose, mainImpedance)
	m2 := float64(m * m)
	lambda := float64(2 * float64(m*(1+float64(m2*(1.0/3+float64(m2*(0.2+m2/7)))))))
	zeta := bound.AtMost(lambda/math.Sqrt(float64(math.Pi*math.Pi)+float64(lambda*lambda)), mostRadiated)
	end := h.End
	end.Tau += float64(float64(2*zeta) * math.Sqrt(float64(h.inertance*end.Stretch)))
}
