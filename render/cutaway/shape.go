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
	throatX   = 488.0
	reliefX   = 608.0
	bypassY   = 476.0
	tankPipeX = 112.0
	riserX    = 248.0
	scroll    = 36.0 // by which the volute's radius grows round the casing
)

var center = draw.Pt(370, suctionY-6)

// tankBox is the booster tank.
var tankBox = draw.Rect{X: 50, Y: 66, W: 132, H: 128}

// barrel is the relief valve's body.
var barrel = draw.Rect{X: reliefX - 40, Y: 196, W: 80, H: 176}

// way is a run of pipe: where its middle lies and how wide its bore is.
type way struct {
	run  []draw.Point
	bore float64
}

var (
	intakeWay    = way{[]draw.Point{{X: 0, Y: suctionY}, {X: center.X - 10, Y: suctionY}}, wide}
	tankWay      = way{[]draw.Point{{X: tankPipeX, Y: tankBox.Bottom()}, {X: tankPipeX, Y: suctionY}}, narrow}
	dischargeWay = way{[]draw.Point{{X: throatX, Y: center.Y - 56}, {X: throatX, Y: mainY}, {X: sheetW, Y: mainY}}, wide}
	reliefWay    = way{[]draw.Point{{X: reliefX, Y: mainY}, {X: reliefX, Y: barrel.Y + 20}}, narrow}
	bypassWay    = way{[]draw.Point{{X: reliefX, Y: barrel.Y + 100}, {X: reliefX, Y: bypassY}, {X: riserX, Y: bypassY}, {X: riserX, Y: suctionY}}, narrow}
	recircWay    = way{[]draw.Point{{X: throatX + 70, Y: mainY}, {X: throatX + 70, Y: 40}, {X: 140, Y: 40}, {X: 140, Y: tankBox.Y + 6}}, thin}
)

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

// volute is the casing's inside: a spiral that widens in the sense of rotation, which is
// counterclockwise, from the tongue to the throat, and the throat itself.
func volute(grow float64) *draw.Path {
	p := new(draw.Path)
	const tongue, sweep = 49.0, 318.0
	p.Move(draw.Pt(throatX-wide/2-grow, center.Y-58))
	for a := 0.0; a <= sweep; a += 6 {
		p.Line(center.Polar(rimR+10+grow+scroll*a/sweep, tongue-a))
	}
	return p.Line(draw.Pt(throatX+wide/2+grow, center.Y-58)).Close()
}

// spokes spreads n points over a ring without a pattern that the eye finds (the plane's golden ratio).
func spokes(i int, inner, outer float64) (r, bearing float64) {
	u, v := math.Mod(float64(i)*0.7548777, 1), math.Mod(float64(i)*0.5698403, 1)
	return inner + (outer-inner)*u, 360 * v
}
