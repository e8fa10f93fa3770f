package layout

import (
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/unit"
)

const strainerCv = 5000 // gpm at 1 psi of strainer and entrance (assumption)

// addPond adds open water. It stands LiftFt below the near end of what follows; the suction hose and the
// pump behind it are taken to have been primed.
func (q *laidPart) addPond(b *flownet.Builder, p *Part) {
	q.thing = plain{}
	water := b.Boundary(p.ID, -float64(float64(p.Pond.LiftFt*psiPerFt)*unit.PaPerPSI), 0)
	q.last.node = b.Node(flownet.Node{Name: p.ID + " strainer", Volume: body, Stretch: metalGives})
	q.ways = []*flownet.Link{b.Link(flownet.Link{Name: p.ID, From: water, To: q.last.node, R: fireground.ValveR(strainerCv), I: fittingLag})}
}
