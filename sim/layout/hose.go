package layout

import (
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/state"
)

// hose is a run of hose.
type hose struct {
	*fireground.Hose
	def      fireground.HoseDef
	rise     float64 // ft
	body     float64 // m³ of the fitting that it begins at; 0: its first part doesn't go flat there
	full     bool    // stands full of water at first
	airFirst bool    // what it comes from gives its air before its water
	main     bool    // hangs on a hydrant
	// suction is hose before a pump: its couplings let air in under vacuum
	suction bool
}

func (q *laidPart) addHose(b *flownet.Builder, p *Part, from mouth, def fireground.HoseDef, air *flownet.Node) *hose {
	h := &hose{Hose: fireground.AddHose(b, p.ID, from.node, air), def: def, rise: p.rise(), body: from.body, airFirst: from.airFirst, main: from.main}
	if def.Hard {
		h.body = 0
	}
	q.thing, q.last, q.ways = h, mouth{node: h.End}, []*flownet.Link{h.Run}
	return h
}

func (h *hose) lay(net *flownet.Net) {
	h.Lay(net, h.def, h.def.LengthFt, h.rise, 0)
	if h.main {
		h.Radiate()
	}
	if h.airFirst {
		h.Run.Carry = airFirst
	}
	if h.body > 0 {
		h.Soften(net, h.body)
	}
	if h.full {
		net.SetAir(h.End, 0)
		net.SetWater(h.End, h.Content())
	}
}

func (h *hose) set(in *PartIn) {
	h.Kink(in.Kink)
	h.Hole(in.Burst, in.Leak)
}

func (h *hose) tell(out *PartOut) {
	out.Fill, out.LossGPM = h.Holds(), h.LossGPM()
}

func (h *hose) walk(w *state.Walker) { h.Walk(w) }
