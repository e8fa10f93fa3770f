package draw

// Stroke is the outline of a line of width w along p, with round joins and ends.
func Stroke(p *Path, w float64) *Path {
	out := new(Path)
	for _, line := range p.flat(0.5) {
		for i, a := range line {
			out.Join(Circle(a, w/2))
			if i > 0 {
				out.Join(bar(line[i-1], a, w))
			}
		}
	}
	return out
}

// Segment is a straight bar of width w from a to b with square ends.
func Segment(a, b Point, w float64) *Path { return bar(a, b, w) }

// Polyline is an open path through points.
func Polyline(points ...Point) *Path {
	p := new(Path).Move(points[0])
	for _, q := range points[1:] {
		p.Line(q)
	}
	return p
}

// bar turns the same way as Circle does, so that pieces of a stroke add and never cut each other.
func bar(a, b Point, w float64) *Path {
	d := b.Sub(a)
	n := d.Len()
	if n == 0 {
		return new(Path)
	}
	s := Pt(-d.Y/n*w/2, d.X/n*w/2)
	return Poly(a.Sub(s), b.Sub(s), b.Add(s), a.Add(s))
}

// Bend is an open path through points whose corners are rounded to radius r: a pipe's run.
func Bend(r float64, points ...Point) *Path {
	p := new(Path).Move(points[0])
	for i := 1; i < len(points)-1; i++ {
		a, b, c := points[i-1], points[i], points[i+1]
		u, v := a.Sub(b), c.Sub(b)
		k := min(r, u.Len()/2, v.Len()/2)
		if k <= 0 {
			continue
		}
		p.Line(b.Add(u.Mul(k/u.Len()))).Quad(b, b.Add(v.Mul(k/v.Len())))
	}
	return p.Line(points[len(points)-1])
}

// Dashes cuts a path into dashes of length on with gaps of length off.
func Dashes(p *Path, on, off float64) []*Path {
	var out []*Path
	for _, line := range p.flat(0.5) {
		left, drawing := on, true
		now := new(Path).Move(line[0])
		for i := 1; i < len(line); i++ {
			a, b := line[i-1], line[i]
			for {
				d := b.Sub(a)
				if d.Len() <= left {
					left -= d.Len()
					if drawing {
						now.Line(b)
					}
					break
				}
				a = a.Add(d.Mul(left / d.Len()))
				if drawing {
					out = append(out, now.Line(a))
					left = off
				} else {
					now, left = new(Path).Move(a), on
				}
				drawing = !drawing
			}
		}
		if drawing {
			out = append(out, now)
		}
	}
	return out
}
