package rig

// curve is a function drawn with straight lines through points of rising x; level beyond its ends.
type curve struct{ x, y []float64 }

// newCurve scales pairs of numbers into a curve.
func newCurve(points [][2]float64, xUnit, yUnit float64) curve {
	c := curve{x: make([]float64, len(points)), y: make([]float64, len(points))}
	for i, p := range points {
		c.x[i], c.y[i] = float64(p[0]*xUnit), float64(p[1]*yUnit)
	}
	return c
}

// at is the curve's height.
func (c curve) at(x float64) float64 {
	n := len(c.x)
	if n == 0 {
		return 0
	}
	if x <= c.x[0] {
		return c.y[0]
	}
	for i := 1; i < n; i++ {
		if x < c.x[i] {
			return c.y[i-1] + float64((c.y[i]-c.y[i-1])*((x-c.x[i-1])/(c.x[i]-c.x[i-1])))
		}
	}
	return c.y[n-1]
}

// lag moves x toward its goal with time constant tau over dt (backward Euler, so that it never
// overshoots).
func lag(x, goal, tau, dt float64) float64 { return x + float64((goal-x)*(dt/(tau+dt))) }
