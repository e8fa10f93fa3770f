package layout

import (
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/unit"
)

// addFitting adds a body of metal with one way in from each inlet: wye, siamese, appliance, monitor.
// Each way takes the loss at its share of the flow, so that the given loss is met when all of them are
// used alike. Clappers shut a way against water from inside.
func (q *laidPart) addFitting(b *flownet.Builder, p *Part, from []mouth, loss LossDef, clappers bool) {
	q.thing = plain{}
	q.last = mouth{node: addBody(b, p.ID), body: body}
	n := float64(len(from))
	rise := float64(float64(p.rise()*psiPerFt) * unit.PaPerPSI)
	for _, m := range from {
		q.ways = append(q.ways, b.Link(flownet.Link{Name: p.ID, From: m.node, To: q.last.node,
			R: float64(loss.r() * float64(n*n)), I: fittingLag, Rise: rise, Check: clappers}))
	}
}
