package fireground

import (
	"math"

	"steadyneedle/sim/flownet"
)

// Law is how a valve's free area follows its travel.
type Law uint8

const (
	Ball      Law = iota // quarter turn: little at first, most in the middle
	Gate                 // rising wedge: near the wedge's height
	Butterfly            // disc: 1 − cos of the angle
)

// Valve is a valve's loss: R open, more by the square of the area that is missing.
type Valve struct {
	Law Law
	R   float64 // Pa/(m³/s)², full open
}

// ValveR is the open loss of a valve of flow coefficient cv (gpm at 1 psi), Pa/(m³/s)².
func ValveR(cv float64) float64 { return rUnit / float64(cv*cv) }

// Area is the free share of the bore at position x, 0 shut … 1 open; exactly 0 at 0 and 1 at 1.
func (l Law) Area(x float64) float64 {
	x = min(max(x, 0), 1)
	x2 := float64(x * x)
	switch l {
	case Gate:
		return float64(x * (1.6 - float64(0.6*x)))
	case Butterfly:
		// 1 − cos(πx/2) as a polynomial, within 0.01
		return float64(x2 * (1.2337 - float64(0.2337*x2)))
	}
	// overlap of two round bores that slide across one another, within 0.01
	return float64(float64(x*math.Sqrt(x)) * (1.2 - float64(0.2*x)))
}

// Set brings a link to the valve at position x: shut exactly at 0, otherwise R/area² in K.
func (v Valve) Set(l *flownet.Link, x float64) {
	a := v.Law.Area(x)
	l.Shut = a < leastArea
	if !l.Shut {
		l.K = v.R / float64(a*a)
	}
}

// leastArea is where a valve seats: below it no water passes.
const leastArea = 1e-4
