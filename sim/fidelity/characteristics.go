package fidelity

import (
	"math"

	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/unit"
)

// surge is the pressure at the nozzle, psi, tick by tick, and the highest of it, of 200 ft of 1¾ in hose with C = 15.5, fed at a
// steady 155.3 psi, whose 15/16 in tip is shut, its area evenly, in seconds, until so many seconds after; by the method of
// characteristics over eighty reaches. wave is in ft/s. It shares nothing with the model.
func surge(wave, seconds, after float64) (history []float64, peak float64) {
	const (
		reaches = 80
		length  = 200.0
		feed    = 155.289492
		start   = 184.385990 // gpm
		tipIn   = 15.0 / 16
	)
	perGPM := float64(hydraulics.Velocity(1, 1.75)) // ft/s
	impedance := float64(hydraulics.Joukowsky(unit.FtPerS(wave), 1))
	loss := func(v float64) float64 { // psi over one reach
		return signed(float64(hydraulics.FrictionLoss(15.5, unit.GPM(v/perGPM), length/reaches)), v)
	}
	tip := float64(29.7 * float64(tipIn*float64(tipIn*perGPM))) // ft/s in the hose for each √psi at the tip
	var p, v [reaches + 1]float64
	for i := range p {
		v[i] = float64(start * perGPM)
		p[i] = feed - float64(float64(i)*loss(v[i]))
	}
	dt := length / reaches / wave
	for t := dt; t < seconds+after; t += dt {
		q, u := p, v
		up := func(i int) float64 { return q[i-1] + float64(impedance*u[i-1]) - loss(u[i-1]) }
		down := func(i int) float64 { return q[i+1] - float64(impedance*u[i+1]) + loss(u[i+1]) }
		p[0], v[0] = feed, (feed-down(0))/impedance
		for i := 1; i < reaches; i++ {
			a, b := up(i), down(i)
			p[i], v[i] = float64(0.5*(a+b)), (a-b)/float64(2*impedance)
		}
		a := up(reaches)
		k := float64(impedance * float64(tip*max(0, 1-t/seconds)))
		r := float64(0.5 * (math.Sqrt(float64(k*k)+float64(4*max(0, a))) - k))
		p[reaches] = float64(r * r)
		v[reaches] = (a - p[reaches]) / impedance
		peak = max(peak, p[reaches])
		for t >= float64(float64(len(history)+1)*tick) {
			history = append(history, p[reaches])
		}
	}
	return history, peak
}

// surgePeak is the highest pressure alone.
func surgePeak(wave, seconds float64) float64 {
	_, peak := surge(wave, seconds, 2)
	return peak
}

// signed gives x, which is not negative, the sign of s.
func signed(x, s float64) float64 {
	if s < 0 {
		return -x
	}
	return x
}
