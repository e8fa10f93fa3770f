package fidelity

import (
	"math"

	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/unit"
)

// column is the water of one hose, fed at a steady pressure at its near end and leaving by an opening at its
// far end.
type column struct {
	size, loss, ft float64                 // in; C; ft
	feed, start    float64                 // psi; gpm
	open           float64                 // of the far end, gpm at 1 psi
	behind         float64                 // psi beyond it
	left           func(x float64) float64 // what is left of the opening at a share x of the time of closure, 1 to 0
}

// tipped is the line of the reference network, with its nozzle's area shut evenly.
var tipped = column{1.75, 15.5, 200, 155.289492, 184.385990, 29.7 * (15.0 / 16) * (15.0 / 16), 0, func(x float64) float64 { return 1 - x }}

// stopped is the pressure at the far end, psi, tick by tick, and the highest of it, when the opening is shut in
// seconds, until so many seconds after; by the method of characteristics over eighty reaches. wave is in ft/s.
// It shares nothing with the model.
func (c *column) stopped(wave, seconds, after float64) (history []float64, peak float64) {
	const reaches = 80
	perGPM := float64(hydraulics.Velocity(1, unit.Inches(c.size))) // ft/s
	impedance := float64(hydraulics.Joukowsky(unit.FtPerS(wave), 1))
	loss := func(v float64) float64 { // psi over one reach
		return signed(float64(hydraulics.FrictionLoss(c.loss, unit.GPM(v/perGPM), unit.Feet(c.ft/reaches))), v)
	}
	out := float64(c.open * perGPM) // ft/s in the hose for each √psi over the opening
	var p, v [reaches + 1]float64
	for i := range p {
		v[i] = float64(c.start * perGPM)
		p[i] = c.feed - float64(float64(i)*loss(v[i]))
	}
	dt := c.ft / reaches / wave
	for t := dt; t < seconds+after; t += dt {
		q, u := p, v
		up := func(i int) float64 { return q[i-1] + float64(impedance*u[i-1]) - loss(u[i-1]) }
		down := func(i int) float64 { return q[i+1] - float64(impedance*u[i+1]) + loss(u[i+1]) }
		p[0], v[0] = c.feed, (c.feed-down(0))/impedance
		for i := 1; i < reaches; i++ {
			a, b := up(i), down(i)
			p[i], v[i] = float64(0.5*(a+b)), (a-b)/float64(2*impedance)
		}
		a := up(reaches) - c.behind
		k := float64(impedance * float64(out*c.left(min(1, t/seconds))))
		r := float64(0.5 * (math.Sqrt(float64(k*k)+float64(4*max(0, a))) - k))
		p[reaches] = float64(r * r)
		v[reaches] = (a - p[reaches]) / impedance
		p[reaches] += c.behind
		peak = max(peak, p[reaches])
		for t >= float64(float64(len(history)+1)*tick) {
			history = append(history, p[reaches])
		}
	}
	return history, peak
}

// surge is that of the reference network's line.
func surge(wave, seconds, after float64) (history []float64, peak float64) {
	return tipped.stopped(wave, seconds, after)
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
