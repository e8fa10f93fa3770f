package layout

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/hydraulics"
)

// outlet is an outlet open to the air, as of a hydrant in a flow test.
type outlet struct {
	plain
	link *flownet.Link
	v    fireground.Valve
	full float64 // gpm at 1 psi of pitot, without the coefficient
}

const usualCoefficient = 0.9 // a rounded outlet (NFPA 291, from memory)

func (q *laidPart) addOutlet(b *flownet.Builder, p *Part, from mouth, air *flownet.Node) {
	d := p.Outlet
	c := d.Coefficient
	if c == 0 {
		c = usualCoefficient
	}
	z := &outlet{full: float64(29.84 * float64(d.SizeIn*d.SizeIn))}
	z.full = float64(z.full * c)
	z.v = fireground.Valve{Law: hydraulics.Gate, R: fireground.ValveR(z.full)}
	z.link = b.Link(flownet.Link{Name: p.ID, From: from.node, To: air, I: fittingLag, StartsShut: true})
	q.thing, q.ways, q.last.node = z, []*flownet.Link{z.link}, from.node
}

func (z *outlet) set(in *PartIn) { z.v.Set(z.link, in.Open) }

// tell gives the pressure that a pitot gauge shows in the stream.
func (z *outlet) tell(out *PartOut) {
	out.GPM = bound.AtLeast(out.GPM, 0)
	k := out.GPM / z.full
	out.PSI = float64(k * k)
}
