package draw

import "math"

type verb uint8

const (
	moveTo verb = iota
	lineTo
	quadTo
	cubeTo
	closeIt
)

// Path is an outline of straight and curved pieces.
type Path struct {
	verbs  []verb
	points []Point
	card   Rect // what it is, where it was made by Round
}

// Move begins a new piece at p.
func (p *Path) Move(a Point) *Path {
	p.verbs, p.points = append(p.verbs, moveTo), append(p.points, a)
	return p
}

// Line goes straight to a.
func (p *Path) Line(a Point) *Path {
	p.verbs, p.points = append(p.verbs, lineTo), append(p.points, a)
	return p
}

// Quad curves to b, drawn toward a.
func (p *Path) Quad(a, b Point) *Path {
	p.verbs, p.points = append(p.verbs, quadTo), append(p.points, a, b)
	return p
}

// Cube curves to c, drawn toward a and then b.
func (p *Path) Cube(a, b, c Point) *Path {
	p.verbs, p.points = append(p.verbs, cubeTo), append(p.points, a, b, c)
	return p
}

// Close goes back to where the piece began.
func (p *Path) Close() *Path {
	p.verbs = append(p.verbs, closeIt)
	return p
}

// Arc adds a circular arc about c from bearing from to bearing to, in degrees clockwise from straight
// up. It goes on from the last point with a straight line unless the path is empty or just closed.
func (p *Path) Arc(c Point, r, from, to float64) *Path {
	n := int(math.Ceil(math.Abs(to-from) / 45))
	if n == 0 {
		return p
	}
	step := (to - from) / float64(n)
	start := c.Polar(r, from)
	if len(p.verbs) == 0 || p.verbs[len(p.verbs)-1] == closeIt {
		p.Move(start)
	} else {
		p.Line(start)
	}
	k := 4.0 / 3 * math.Tan(step*math.Pi/180/4) * r
	for i := range n {
		a := from + step*float64(i)
		b := a + step
		p0, p1 := c.Polar(r, a), c.Polar(r, b)
		t0, t1 := (Point{}).Polar(k, a+90), (Point{}).Polar(k, b+90)
		p.Cube(p0.Add(t0), p1.Sub(t1), p1)
	}
	return p
}

// Circle is a full circle.
func Circle(c Point, r float64) *Path { return new(Path).Arc(c, r, 0, 360).Close() }

// Ring is the area between two circles about c.
func Ring(c Point, outer, inner float64) *Path {
	return new(Path).Arc(c, outer, 0, 360).Close().Arc(c, inner, 360, 0).Close()
}

// Sector is the piece of a ring from bearing from to bearing to, clockwise.
func Sector(c Point, outer, inner, from, to float64) *Path {
	return new(Path).Arc(c, outer, from, to).Arc(c, inner, to, from).Close()
}

// Box is a rectangle.
func Box(r Rect) *Path {
	return Poly(Pt(r.X, r.Y), Pt(r.Right(), r.Y), Pt(r.Right(), r.Bottom()), Pt(r.X, r.Bottom()))
}

// Poly is a closed polygon.
func Poly(points ...Point) *Path {
	p := new(Path).Move(points[0])
	for _, q := range points[1:] {
		p.Line(q)
	}
	return p.Close()
}

// Round is a rectangle with corners rounded to radius k.
func Round(r Rect, k float64) *Path {
	k = min(k, r.W/2, r.H/2)
	if k <= 0 {
		return Box(r)
	}
	l, t, b, e := r.X+k, r.Y+k, r.Bottom()-k, r.Right()-k
	p := new(Path)
	p.Arc(Pt(e, t), k, 0, 90).Arc(Pt(e, b), k, 90, 180)
	p.Arc(Pt(l, b), k, 180, 270).Arc(Pt(l, t), k, 270, 360)
	p.card = r
	return p.Close()
}

// Frame is the band of width w just inside a rounded rectangle's edge.
func Frame(r Rect, k, w float64) *Path {
	p := Round(r, k)
	p.card = Rect{}
	p.hole(Round(r.Inset(w), max(0, k-w)))
	return p
}

// Cut is what lies inside outer and outside inner.
func Cut(outer, inner *Path) *Path {
	p := new(Path).Join(outer)
	p.hole(inner)
	return p
}

// hole adds q with its direction turned round, so that it cuts out of p.
func (p *Path) hole(q *Path) {
	pts := q.flat(0.25)
	for _, ring := range pts {
		for i := len(ring) - 1; i >= 0; i-- {
			if i == len(ring)-1 {
				p.Move(ring[i])
			} else {
				p.Line(ring[i])
			}
		}
		p.Close()
	}
}

// Join adds the pieces of q to p.
func (p *Path) Join(q *Path) *Path {
	p.verbs = append(p.verbs, q.verbs...)
	p.points = append(p.points, q.points...)
	return p
}

// flat turns the path into polygons whose sides are about step long on curves.
func (p *Path) flat(step float64) [][]Point {
	var all [][]Point
	var now []Point
	end := func() {
		if len(now) > 1 {
			all = append(all, now)
		}
		now = nil
	}
	i := 0
	var at Point
	for _, v := range p.verbs {
		switch v {
		case moveTo:
			end()
			at = p.points[i]
			now = append(now, at)
			i++
		case lineTo:
			at = p.points[i]
			now = append(now, at)
			i++
		case quadTo:
			a, b := p.points[i], p.points[i+1]
			now = curve(now, at, at.Add(a.Sub(at).Mul(2.0/3)), b.Add(a.Sub(b).Mul(2.0/3)), b, step)
			at = b
			i += 2
		case cubeTo:
			now = curve(now, at, p.points[i], p.points[i+1], p.points[i+2], step)
			at = p.points[i+2]
			i += 3
		case closeIt:
			if len(now) > 0 && now[0] != now[len(now)-1] {
				now = append(now, now[0])
			}
			end()
		}
	}
	end()
	return all
}

func curve(to []Point, a, b, c, d Point, step float64) []Point {
	length := b.Sub(a).Len() + c.Sub(b).Len() + d.Sub(c).Len()
	n := max(4, min(64, int(length/step/4)))
	for i := 1; i <= n; i++ {
		t := float64(i) / float64(n)
		s := 1 - t
		q := a.Mul(s * s * s).Add(b.Mul(3 * s * s * t)).Add(c.Mul(3 * s * t * t)).Add(d.Mul(t * t * t))
		to = append(to, q)
	}
	return to
}

// Bounds is the box of the path's points.
func (p *Path) Bounds() Rect {
	if len(p.points) == 0 {
		return Rect{}
	}
	a, b := p.points[0], p.points[0]
	for _, q := range p.points {
		a = Pt(min(a.X, q.X), min(a.Y, q.Y))
		b = Pt(max(b.X, q.X), max(b.Y, q.Y))
	}
	return Rect{a.X, a.Y, b.X - a.X, b.Y - a.Y}
}

// Inside cuts a convex polygon to a rectangle.
func (p *Path) Inside(r Rect) *Path {
	flat := p.flat(1)
	if len(flat) == 0 {
		return new(Path)
	}
	pts := flat[0]
	cut := func(keep func(Point) bool, cross func(a, b Point) Point) {
		var out []Point
		for i, b := range pts {
			a := pts[(i+len(pts)-1)%len(pts)]
			if keep(a) != keep(b) {
				out = append(out, cross(a, b))
			}
			if keep(b) {
				out = append(out, b)
			}
		}
		pts = out
	}
	atX := func(x float64) func(a, b Point) Point {
		return func(a, b Point) Point { return a.Add(b.Sub(a).Mul((x - a.X) / (b.X - a.X))) }
	}
	atY := func(y float64) func(a, b Point) Point {
		return func(a, b Point) Point { return a.Add(b.Sub(a).Mul((y - a.Y) / (b.Y - a.Y))) }
	}
	cut(func(q Point) bool { return q.X >= r.X }, atX(r.X))
	cut(func(q Point) bool { return q.X <= r.Right() }, atX(r.Right()))
	cut(func(q Point) bool { return q.Y >= r.Y }, atY(r.Y))
	cut(func(q Point) bool { return q.Y <= r.Bottom() }, atY(r.Bottom()))
	if len(pts) < 3 {
		return new(Path)
	}
	return Poly(pts...)
}
