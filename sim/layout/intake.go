package layout

import (
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/hydraulics"
)

// intake is a further way into the apparatus's own pump, with a valve and a check valve.
type intake struct {
	plain
	link *flownet.Link
	v    fireground.Valve
}

func (q *laidPart) addIntake(b *flownet.Builder, p *Part, from mouth, eye *flownet.Node) {
	z := &intake{v: fireground.Valve{Law: hydraulics.Gate, R: fireground.ValveR(p.Intake.Cv)}}
	z.link = b.Link(flownet.Link{Name: p.ID, From: from.node, To: eye, I: fittingLag, StartsShut: true, Check: true})
	q.thing, q.ways, q.last.node = z, []*flownet.Link{z.link}, eye
}

func (z *intake) set(in *PartIn) { z.v.Set(z.link, in.Open) }
