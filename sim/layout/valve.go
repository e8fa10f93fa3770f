package layout

import (
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/hydraulics"
)

// gate is a valve with its body behind it.
type gate struct {
	plain
	valve fireground.Valve
	link  *flownet.Link
	out   *flownet.Node
}

func newGate(b *flownet.Builder, name string, from *flownet.Node, carry float64, v fireground.Valve) *gate {
	g := &gate{valve: v, out: addBody(b, name)}
	g.link = b.Link(flownet.Link{Name: name, From: from, To: g.out, I: fittingLag, StartsShut: true, Carry: carry})
	return g
}

// gateCv is the outlet of a gated wye, gpm at 1 psi: a quarter-turn ball of 1½ in loses about 1 psi at
// 150 gpm (assumption).
const gateCv = 150

// addGate adds the quarter-turn valve at a gated wye's outlet to a part.
func addGate(b *flownet.Builder, part string, wye *flownet.Node) *gate {
	return newGate(b, part+" gate", wye, 1, fireground.Valve{Law: hydraulics.Ball, R: fireground.ValveR(gateCv)})
}

func (g *gate) set(open float64) { g.valve.Set(g.link, open) }

// valve is a gate that is a part of its own.
type valve struct{ *gate }

func (v valve) set(in *PartIn) { v.gate.set(in.Open) }

// law is the valve's, ball unless given.
func (d *ValveDef) law() (law hydraulics.ValveLaw, ok bool) {
	if d.Law == "" {
		return hydraulics.Ball, true
	}
	return hydraulics.ValveLawNamed(d.Law)
}

func (q *laidPart) addValve(b *flownet.Builder, p *Part, from mouth) {
	law, _ := p.Valve.law()
	carry := 1.0
	if from.airFirst {
		carry = airFirst
	}
	g := newGate(b, p.ID, from.node, carry, fireground.Valve{Law: law, R: fireground.ValveR(p.Valve.Cv)})
	q.thing, q.last, q.ways = valve{g}, mouth{node: g.out, body: body, airFirst: from.airFirst}, []*flownet.Link{g.link}
}
