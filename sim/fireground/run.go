package fireground

import (
	"math"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/unit"
)

const (
	fullAt     = 0.98 // of the content at which a hose counts as full, if no pressure told so before
	closesAt   = 0.3  // of the content from which pressure at the end tells that it has closed up
	leastFill  = 0.02 // least length of water column, as a share, that friction and inertance see
	collapseAt = 0.5  // share of its volume below which a hose that has been full limits its flow …
	collapse   = 12.0 // … up to this many times its friction when flat (assumption)
	kinkShut   = 0.999
	// inLeak is what couplings of soft supply hose let in: 2 L/s at 5 psi of vacuum (assumption).
	inLeak   = 2e-3
	inLeakAt = 5 * unit.PaPerPSI
)

// Update brings the run's coefficients up to how far the hose is filled, and lets air in at the
// couplings where there is vacuum (supply hose only).
func (h *Hose) Update(net *flownet.Net) {
	h.End.AirIn = 0
	if !(h.End.Water >= h.enough) {
		h.update(net)
	}
}

func (h *Hose) update(net *flownet.Net) {
	if h.length <= 0 {
		h.enough = math.Inf(-1)
		return
	}
	run, end := h.Run, h.End
	x := bound.Within(end.Water/h.content, 0, 1)
	if h.filling && (x >= fullAt || end.P > giveSoft && x > closesAt) {
		h.filling = false
	}
	run.SetShut(h.kink >= kinkShut)
	run.R, run.I, run.Rise = h.r, h.inertance, h.rise
	run.K = 0
	h.enough = math.Inf(1)
	switch {
	case h.filling:
		// The column that moves is as long as the hose is filled, and its front takes on momentum.
		column := bound.AtLeast(x, leastFill)
		run.R = float64(h.r * column)
		run.I = float64(h.inertance * column)
		run.Rise = float64(h.rise * x)
		run.K = waterDensity / float64(h.area*h.area)
	case !h.soft && h.rise > 0:
		// In a suction hose that has taken in air the column stands no higher than its water reaches: the
		// prime is lost with it.
		run.Rise = float64(h.rise * bound.Within((1-h.gas(net))/fullAt, 0, 1))
	case h.soft && x < collapseAt:
		t := float64((collapseAt - x) / collapseAt)
		run.R = float64(h.r * (1 + float64(float64(collapse*t)*t)))
	default:
		h.enough = float64(collapseAt * h.content)
	}
	if h.kink > 0 && !run.Shut() {
		open := 1 - h.kink
		run.K += float64(kinkLoss*h.kink) / float64(float64(h.area*h.area)*float64(open*open))
	}
}

// thinnest is the share of the air's pressure below which gas is not reckoned to expand further: what is
// void there is vapor, and vapor does not shorten the column that air pressure must carry (assumption).
const thinnest = 0.2

// gas is the share of the hose that air takes, at the pressure it has.
func (h *Hose) gas(net *flownet.Net) float64 {
	end := h.End
	return float64(end.Air/h.content*net.Patm) / bound.AtLeast(end.P+net.Patm-end.Vapor, float64(thinnest*net.Patm))
}

// kinkLoss is the loss of a half-open kink in velocity heads times density (assumption).
const kinkLoss = 0.5 * waterDensity
