package layout

import (
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/flownet"
)

// hydrant is a hydrant beside the ground's own.
type hydrant struct {
	plain
	*fireground.Hydrant
}

func (q *laidPart) addHydrant(b *flownet.Builder, p *Part, air *flownet.Node) {
	h := hydrant{Hydrant: fireground.AddHydrant(b, *p.Hydrant, air)}
	q.thing, q.last, q.ways = h, mouth{node: h.Outlet, main: true}, []*flownet.Link{h.Supply}
}

func (h hydrant) set(in *PartIn) { h.Set(in.Open, false, 0) }
