package fireground

import (
	"math"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/unit"
)

// Nozzle is a nozzle with its shutoff on the end of a hose.
type Nozzle struct {
	Out *flownet.Link // to the air
	def NozzleDef
	tip float64 // Pa/(m³/s)² of the orifice
}

// AddNozzle adds a nozzle to a network that is being built. air is a boundary at no pressure that
// gives air (void 1): below zero a nozzle draws air in. It is built shut.
func AddNozzle(b *flownet.Builder, name string, end, air *flownet.Node, def NozzleDef) *Nozzle {
	z := &Nozzle{def: def, tip: def.R()}
	z.Out = b.Link(flownet.Link{Name: name, From: end, To: air, R: z.tip, StartsShut: true, GasR: gasThin})
	return z
}

// gasThin is the share of a loss that air meets: it is lighter, but soon as fast as it can go (assumption).
const gasThin = 0.02

// Set opens the shutoff: 0 shut … 1 open. Full open it adds nothing, for rated flow is taken at its
// base; partly open, the free area counts.
func (z *Nozzle) Set(open float64) {
	l := z.Out
	a := hydraulics.Ball.Area(open)
	l.SetShut(a < leastArea)
	if !l.Shut() {
		l.K = float64(z.tip * (1/float64(a*a) - 1))
	}
}

// R is the orifice's loss in Pa/(m³/s)²: Q = 29.7 d² √NP for a tip, Q = Qr √(NP/NPr) for fog.
func (d *NozzleDef) R() float64 {
	k := d.factor()
	return rUnit / float64(k*k)
}

// factor is gpm per √psi.
func (d *NozzleDef) factor() float64 {
	if d.TipIn > 0 {
		return float64(float64(29.7*d.TipIn) * d.TipIn)
	}
	return d.RatedGPM / math.Sqrt(d.RatedPSI)
}

// FlowGPM is the flow at a nozzle pressure of np psi.
func (d *NozzleDef) FlowGPM(np float64) float64 {
	return float64(d.factor() * math.Sqrt(bound.AtLeast(np, 0)))
}

// PSI is the nozzle pressure behind the orifice at the network's present flow.
func (z *Nozzle) PSI() float64 {
	q := bound.AtLeast(z.Out.WaterFlow(), 0) / unit.M3SPerGPM / z.def.factor()
	return float64(q * q)
}

// ReactionLbf is the force on those who hold it, at np psi and q gpm: 1.57 d² NP for a tip,
// 0.0505 Q √NP for fog (common practice, in every handbook).
func (d *NozzleDef) ReactionLbf(np, q float64) float64 {
	np = bound.AtLeast(np, 0)
	if d.TipIn > 0 {
		return float64(float64(float64(1.57*d.TipIn)*d.TipIn) * np)
	}
	return float64(float64(0.0505*q) * math.Sqrt(np))
}
