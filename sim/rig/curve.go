package rig

// curve is a function drawn with straight lines through points of rising x; level beyond its ends.
type curve []point

type point struct{ x, y float64 }

// newCurve scales pairs of numbers into a curve.
func newCurve(points [][2]float64, xUnit, yUnit float64) curve {
	c := make(curve, len(points))
	for i, p := range points {
		c[i] = point{float64(p[0] * xUnit), float64(p[1] * yUnit)}
	}
	return c
}

// at is the curve's height; 0 without points.
func (c curve) at(x float64) float64 {
	if len(c) == 0 {
		return 0
	}
	low := &c[0]
	if x <= low.x {
		return low.y
	}
	for i := range c {
		high := &c[i]
		if x < high.x {
			return low.y + float64((high.y-low.y)*((x-low.x)/(high.x-low.x)))
		}
		low = high
	}
	return low.y
}

// lag moves x toward its goal with time constant tau over dt (backward Euler, so that it never
// overshoots).
func lag(x, goal, tau, dt float64) float64 { return x + float64((goal-x)*(dt/(tau+dt))) }
