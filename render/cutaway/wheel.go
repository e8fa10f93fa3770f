package cutaway

import "steadyneedle/render/draw"

// wheel is an impeller in its casing.
type wheel struct {
	at  draw.Point
	k   float64 // its size, of that of a single-stage pump
	ins []inlet
}

// inlet is where a pipe passes in front of the casing to the eye.
type inlet struct {
	from draw.Point
	bore float64
}

func (w *wheel) rim() float64 { return rimR * w.k }
func (w *wheel) eye() float64 { return eyeR * w.k }

// share is the radius at a share of the way that water is thrown, from within the eye to the rim.
func (w *wheel) share(x float64) float64 {
	in := w.eye() * 0.6
	return in + (w.rim()-in)*x
}

// outlet is the middle of the throat.
func (w *wheel) outlet() draw.Point { return w.at.Add(draw.Pt(throat, -mouth).Mul(w.k)) }

// box holds casing and throat.
func (w *wheel) box() draw.Rect { return draw.Around(w.at, 2*(rimR+70)*w.k, 2*(rimR+70)*w.k) }

// volute is the casing's inside, grown by so much: a spiral that widens in the sense of rotation, which is
// counterclockwise, from the tongue to the throat, and the throat itself.
func (w *wheel) volute(grow float64) *draw.Path {
	p := new(draw.Path)
	const tongue, sweep = 49.0, 318.0
	out, half := w.outlet(), wide/2*w.k+grow
	p.Move(draw.Pt(out.X-half, out.Y))
	for a := 0.0; a <= sweep; a += 6 {
		p.Line(w.at.Polar((rimR+10+scroll*a/sweep)*w.k+grow, tongue-a))
	}
	return p.Line(draw.Pt(out.X+half, out.Y)).Close()
}
