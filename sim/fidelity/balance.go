package fidelity

import (
	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/unit"
)

// balanced is the source of what is worked out here.
var balanced = Source{Computed, "curve of the pump, law of the hydrant (NFPA 291) and the losses of hoses and openings solved together by bisection"}

// Openings are in gpm at 1 psi, the square root of the reciprocal of a loss in psi/gpm².
const (
	streetValve = 300.0 // discharge valve of Engine 41, open
	streetIn    = 900.0 // its intake valve, open
)

// inRow is the opening that openings in a row make.
func inRow(cv ...float64) float64 {
	loss := 0.0
	for _, k := range cv {
		loss += 1 / float64(k*k)
	}
	return 1 / root(loss)
}

// hoseCv is the opening that a hose makes of its friction, C (Q/100)² L/100.
func hoseCv(c, ft float64) float64 { return 1 / root(float64(c*ft)/1e6) }

// tipCv is that of a smooth-bore tip, 29.7 d².
func tipCv(in float64) float64 { return float64(29.7 * float64(in*in)) }

// streetBalance is the discharge pressure, psi, of Engine 41 on the street's hydrant at a shaft speed, with
// out open from the manifold to the air and around open back to the intake. It shares nothing with the
// solver.
func streetBalance(rpm, out, around float64) float64 {
	d := rig.Default().Pump
	w := rpm / d.RatedRPM
	supply := inRow(hoseCv(0.2, 25), streetIn)
	lo, hi := 0.0, 600.0
	for range 60 {
		p := float64(0.5 * (lo + hi))
		q := float64(out * root(p))
		loss := q / supply
		intake := float64(hydraulics.ResidualAtFlow(1000, 65, 45, unit.GPM(q))) - float64(loss*loss)
		through := q + float64(around*root(p-intake))
		rise := float64(d.ShutoffPSI*float64(w*w)) - float64(d.LossPSI*float64(through*through))
		if intake+rise > p {
			lo = p
		} else {
			hi = p
		}
	}
	return lo
}

// across is the pressure behind the first of two openings in a row, with p before them and none behind.
func across(p, first, second float64) float64 {
	k := inRow(first, second) / second
	return float64(p * float64(k*k))
}
