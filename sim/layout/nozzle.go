package layout

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/flownet"
)

// nozzle is a nozzle with its shutoff.
type nozzle struct {
	plain
	*fireground.Nozzle
	def fireground.NozzleDef
}

func (q *laidPart) addNozzle(b *flownet.Builder, p *Part, from mouth, air *flownet.Node) {
	z := &nozzle{Nozzle: fireground.AddNozzle(b, p.ID, from.node, air, *p.Nozzle), def: *p.Nozzle}
	q.thing, q.ways, q.last.node = z, []*flownet.Link{z.Out}, from.node
}

func (z *nozzle) set(in *PartIn) { z.Set(in.Open) }

func (z *nozzle) tell(out *PartOut) {
	out.GPM = bound.AtLeast(out.GPM, 0)
	out.PSI = z.PSI()
	out.Reaction = z.def.ReactionLbf(out.PSI, out.GPM)
}
