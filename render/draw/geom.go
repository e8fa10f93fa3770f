package draw

import "math"

// Point is a place on the canvas, in units; y grows downwards.
type Point struct{ X, Y float64 }

// Pt makes a point.
func Pt(x, y float64) Point { return Point{x, y} }

// Add returns p moved by q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns the way from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Mul returns p scaled by k.
func (p Point) Mul(k float64) Point { return Point{p.X * k, p.Y * k} }

// Len is the distance from the origin.
func (p Point) Len() float64 { return math.Hypot(p.X, p.Y) }

// Polar returns the point at distance r from p in the direction deg, clockwise from straight up.
func (p Point) Polar(r, deg float64) Point {
	s, c := math.Sincos(deg * math.Pi / 180)
	return Point{p.X + r*s, p.Y - r*c}
}

// Bearing is the direction from p to q in degrees, clockwise from straight up, in (−180, 180].
func (p Point) Bearing(q Point) float64 {
	return math.Atan2(q.X-p.X, p.Y-q.Y) * 180 / math.Pi
}

// Rect is a rectangle, in units.
type Rect struct{ X, Y, W, H float64 }

// Center is the rectangle's middle.
func (r Rect) Center() Point { return Point{r.X + r.W/2, r.Y + r.H/2} }

// Right is the right edge.
func (r Rect) Right() float64 { return r.X + r.W }

// Bottom is the lower edge.
func (r Rect) Bottom() float64 { return r.Y + r.H }

// Has reports whether p lies in r.
func (r Rect) Has(p Point) bool {
	return p.X >= r.X && p.X < r.X+r.W && p.Y >= r.Y && p.Y < r.Y+r.H
}

// Inset returns r made smaller by d on every side (larger where d is negative).
func (r Rect) Inset(d float64) Rect { return Rect{r.X + d, r.Y + d, r.W - 2*d, r.H - 2*d} }

// Move returns r moved by p.
func (r Rect) Move(p Point) Rect { return Rect{r.X + p.X, r.Y + p.Y, r.W, r.H} }

// Times is r with everything k times as large, about the point from which units are counted.
func (r Rect) Times(k float64) Rect { return Rect{r.X * k, r.Y * k, r.W * k, r.H * k} }

// Around is the rectangle of width w and height h about c.
func Around(c Point, w, h float64) Rect { return Rect{c.X - w/2, c.Y - h/2, w, h} }

// Overlaps reports whether r and s share any area.
func (r Rect) Overlaps(s Rect) bool {
	return r.X < s.Right() && s.X < r.Right() && r.Y < s.Bottom() && s.Y < r.Bottom()
}

// Holds reports whether s lies wholly in r.
func (r Rect) Holds(s Rect) bool {
	return s.X >= r.X && s.Y >= r.Y && s.Right() <= r.Right() && s.Bottom() <= r.Bottom()
}
