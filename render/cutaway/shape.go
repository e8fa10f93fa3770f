package cutaway

import (
	"math"

	"steadyneedle/render/draw"
)

// The drawing is laid out on a sheet of 900 by 600 of its own units and scaled to its box.
const sheetW, sheetH = 900.0, 600.0

const (
	wall      = 8.0  // of metal
	wide      = 64.0 // bore of intake and discharge
	narrow    = 40.0 // by-pass
	thin      = 18.0 // recirculation and tank fill
	eyeR      = 42.0
	rimR      = 104.0
	suctionY  = 318.0
	mainY     = 138.0
	reliefX   = 608.0
	tankPipeX = 112.0
	riserX    = 248.0
	scroll    = 36.0  // by which the volute's radius grows round the casing
	throat    = 118.0 // of the volute, to the right of the axis
	mouth     = 58.0  // where the volute ends, above the axis
)

// tankBox is the booster tank.
var tankBox = draw.Rect{X: 50, Y: 66, W: 132, H: 128}

// barrel is the relief valve's body.
var barrel = draw.Rect{X: reliefX - 40, Y: 196, W: 80, H: 176}

// way is a run of pipe: where its middle lies and how wide its bore is.
type way struct {
	run  []draw.Point
	bore float64
}

// length of the run.
func (w *way) length() float64 {
	l := 0.0
	for i := 1; i < len(w.run); i++ {
		l += w.run[i].Sub(w.run[i-1]).Len()
	}
	return l
}

// along is the point at a distance along the run and the direction there, in degrees clockwise from up.
func (w *way) along(d float64) (draw.Point, float64) {
	for i := 1; i < len(w.run); i++ {
		leg := w.run[i].Sub(w.run[i-1])
		l := leg.Len()
		if d <= l || i == len(w.run)-1 {
			return w.run[i-1].Add(leg.Mul(min(1, d/l))), w.run[i-1].Bearing(w.run[i])
		}
		d -= l
	}
	return w.run[0], 0
}

// spokes spreads n points over a ring without a pattern that the eye finds (the plane's golden ratio).
func spokes(i int, inner, outer float64) (r, bearing float64) {
	u, v := math.Mod(float64(i)*0.7548777, 1), math.Mod(float64(i)*0.5698403, 1)
	return inner + (outer-inner)*u, 360 * v
}
