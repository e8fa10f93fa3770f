package fireground

import (
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/hydraulics"
)

// Valve is a valve's loss: R open, more as its law says.
type Valve struct {
	Law hydraulics.ValveLaw
	R   float64 // Pa/(m³/s)², full open
}

// ValveR is the open loss of a valve of flow coefficient cv (gpm at 1 psi), Pa/(m³/s)².
func ValveR(cv float64) float64 { return rUnit / float64(cv*cv) }

// Set brings a link to the valve at position x: shut exactly at 0, otherwise with its loss in K.
func (v Valve) Set(l *flownet.Link, x float64) {
	l.SetShut(v.Law.Area(x) < leastArea)
	if !l.Shut() {
		l.K = float64(v.R * v.Law.Rise(x))
	}
}

// leastArea is where a valve seats: below it no water passes.
const leastArea = 1e-4
