package fireground

import (
	"math"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/unit"
)

// Kink sets a kink: 0 none … 1 shut off.
func (h *Hose) Kink(k float64) {
	if h.kink != k {
		h.kink, h.enough = k, math.Inf(1)
	}
}

const (
	tornEdge = 0.8 // coefficient of discharge of a torn hole: sharp-edged, as a square outlet (NFPA 291, from memory)
	leakAt   = 10  // √100 psi: leaks are given at 100 psi
)

// Hole opens a hole of burstIn inches across at the hose's far end, and a coupling there that leaks leak
// gpm at 100 psi; 0 and 0 for a sound hose. Below zero pressure air comes in by the same way.
func (h *Hose) Hole(burstIn, leak float64) {
	cv := float64(float64(29.84*tornEdge)*float64(burstIn*burstIn)) + leak/leakAt
	l := h.hole
	l.SetShut(h.length <= 0 || !(cv > 0))
	if !l.Shut() {
		l.K = ValveR(cv)
	}
}

// SecondLineGPM is what a second hand line takes at 100 psi where it hangs on a hose's far end: 150 ft of 1¾ in
// hose and a tip of 15/16 in, 10 / √(15.5 · 1.5 / 10⁴ + 1/(29.7 d²)²) gpm.
const SecondLineGPM = 162.4

// LossGPM is the water lost through the hole, gpm.
func (h *Hose) LossGPM() float64 {
	return bound.AtLeast(h.hole.WaterFlow()/unit.M3SPerGPM, 0)
}

// InLeak sets the air that the couplings let in under vacuum (soft supply hose), in proportion to it: the
// harder it pulls, the farther their gaskets lift. leaks is how many
// pairs of couplings there are, 1 for the default. Call it after Update.
func (h *Hose) InLeak(leaks float64) {
	end := h.End
	if h.soft && h.length > 0 && end.P < 0 {
		end.AirIn = float64(float64(leaks*inLeak) * (-end.P / inLeakAt))
	}
}
