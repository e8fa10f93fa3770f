package hydraulics

import (
	"math"
	"testing"

	"steadyneedle/sim/unit"
)

// surge is the peak pressure at the nozzle of 200 ft of 1¾ in hose, fed at a steady 155.289 psi, whose
// 15/16 tip is shut linearly over some seconds; by the method of characteristics.
func surge(wave unit.FtPerS, seconds float64) float64 {
	const (
		n      = 80
		length = 200.0
		feed   = 155.289492
		start  = 184.385990 // gpm
	)
	perGPM := float64(Velocity(1, 1.75))
	b := float64(Joukowsky(wave, 1))
	loss := func(v float64) float64 { // psi over one reach
		return math.Copysign(float64(FrictionLoss(15.5, unit.GPM(v/perGPM), length/n)), v)
	}
	tip := 29.7 * (15.0 / 16) * (15.0 / 16) * perGPM // ft/s in the hose for each √psi at the tip
	var p, v [n + 1]float64
	for i := range p {
		v[i] = start * perGPM
		p[i] = feed - float64(i)*loss(v[i])
	}
	dt := length / n / float64(wave)
	peak := 0.0
	for t := dt; t < seconds+2; t += dt {
		q, u := p, v
		for i := range p {
			up, down := 0.0, 0.0
			if i > 0 {
				up = q[i-1] + b*u[i-1] - loss(u[i-1])
			}
			if i < n {
				down = q[i+1] - b*u[i+1] + loss(u[i+1])
			}
			switch i {
			case 0:
				p[i] = feed
				v[i] = (p[i] - down) / b
			case n:
				k := b * tip * max(0, 1-t/seconds)
				root := (math.Sqrt(k*k+4*max(0, up)) - k) / 2
				p[i] = root * root
				v[i] = (up - p[i]) / b
			default:
				p[i] = (up + down) / 2
				v[i] = (up - down) / (2 * b)
			}
		}
		peak = max(peak, p[n])
	}
	return peak
}

// Peaks at the nozzle end, psi, by wave speed and time of closure [C]; no source publishes them.
func TestSurgeTable(t *testing.T) {
	const meter = 1 / unit.MPerFt
	closures := [...]float64{4, 2, 1, 0.5, 0.2}
	for _, c := range []struct {
		wave  unit.FtPerS
		peaks [len(closures)]float64
	}{
		{1200 * meter, [...]float64{187, 226, 330, 631, 1213}},
		{600 * meter, [...]float64{188, 228, 339, 555, 739}},
		{300 * meter, [...]float64{189, 234, 327, 406, 448}},
		{500, [...]float64{193, 233, 261, 282, 302}},
		{300, [...]float64{193, 206, 217, 227, 238}},
	} {
		for i, s := range closures {
			near(t, "surge", surge(c.wave, s), c.peaks[i], 0.02*c.peaks[i])
		}
	}
}
