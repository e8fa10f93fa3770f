package fireground

import (
	"math"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/flownet"
)

const (
	softBehind  = 2000.0 // Pa below atmosphere at which the hose behind a valve lies flat (assumption)
	mostDamping = 0.2    // s (assumption)
	softPart    = 0.05   // share of the hose's content that can be drawn out behind a shut valve (assumption)
)

// Soften lets the hose's first part go flat behind a valve, whose body holds own m³: shut with the
// nozzle open, the column runs on and draws it empty. Were it stiff there, the column would part and
// strike back. Call it after Lay, dry, and only if nothing else hangs on the near node.
func (h *Hose) Soften(net *flownet.Net, own float64) {
	n := h.near
	n.Volume, n.Soft, n.Tau = own, flownet.SoftWall{}, 0
	if h.length > 0 {
		n.Tau = h.waveDamping()
		n.Volume += h.lend(net, softPart)
		n.Soft = flownet.SoftWall{Give: softBehind, Flat: bound.AtMost(own/n.Volume, 0.9), Floor: float64(0.05 * n.Stretch)}
	}
	net.SetWater(h.near, 0)
	net.SetAir(h.near, own)
}

// waveDamping is the damping of the elasticity at the hose's near end, s. It lies behind the hose's
// wave impedance ρa/A: resistance times elasticity is its share of the time a wave takes along the
// hose. Lumped without it, it would swing with the supply's column and make a relief valve hunt.
func (h *Hose) waveDamping() float64 {
	return bound.Within(float64(valveShare*h.delay), flownet.DefaultTau, mostDamping)
}

// lend takes a share of a hose that has just been laid out, and is dry, off its far end, and returns it
// as a volume in m³: the near end keeps it.
func (h *Hose) lend(net *flownet.Net, share float64) float64 {
	lent := float64(share * h.content)
	h.content -= lent
	h.enough = math.Inf(1)
	end := h.End
	end.Volume = h.content
	net.SetAir(h.End, float64((1-share)*end.Air))
	net.SetWater(h.End, 0)
	h.Update(net)
	return lent
}
