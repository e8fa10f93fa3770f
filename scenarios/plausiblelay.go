package scenarios

import (
	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/layout"
)

// bores of hose of which the trade knows the friction coefficient, and the span that makes of hose leave
// plausible: makes differ by -26 to +33 % (Fire Engineering, "Larger attack lines"); half and double
// leave room for old hose and for other ways of counting.
var bores = []struct{ size, c float64 }{
	{0.75, 1100}, {1, 150}, {1.25, 80}, {1.5, 24}, {1.75, 15.5}, {2, 8}, {2.5, 2}, {3, 0.8}, {3.5, 0.34}, {4, 0.2}, {4.5, 0.1}, {5, 0.08}, {6, 0.05},
}

// plausibleLay refuses numbers that are possible one by one, but that no hose or nozzle has.
func (l *loading) plausibleLay(at *reader.Node, plan layout.Plan) {
	for i := range plan {
		p := &plan[i]
		if p.Hose != nil {
			l.plausibleHose(at.Items[i], p.ID, p.Hose)
		}
		if d := p.Nozzle; d != nil && d.RatedPSI > 0 {
			if q := nozzleGPM(d); q > mostNozzleGPM {
				l.fail(at.Items[i], "lay: %s: %.0f gpm at %g psi, expected at most %d from one nozzle", p.ID, q, d.RatedPSI, mostNozzleGPM)
			}
		}
	}
}

const mostNozzleGPM = 3000

func (l *loading) plausibleHose(at *reader.Node, id string, h *fireground.HoseDef) {
	for _, b := range bores {
		if h.SizeIn == b.size && (h.LossC < b.c/2 || h.LossC > 2*b.c) {
			l.fail(at, "lay: %s: hose of %g in with loss_c %g, expected about %g for that size", id, h.SizeIn, h.LossC, b.c)
		}
	}
	if h.Hard && h.SizeIn < 2 {
		l.fail(at, "lay: %s: hard suction hose of %g in, expected 2 in or more", id, h.SizeIn)
	}
}
