package draw

// Length is how long a path is, in units.
func (p *Path) Length() float64 {
	sum := 0.0
	for _, line := range p.flat(0.5) {
		for i := 1; i < len(line); i++ {
			sum += line[i].Sub(line[i-1]).Len()
		}
	}
	return sum
}

// Split cuts an open path of one piece at a share of its length, 0 to 1: what lies before, what lies
// after, and the point and the bearing (degrees) of the cut.
func (p *Path) Split(share float64) (head, rest *Path, at Point, bearing float64) {
	head, rest = new(Path), new(Path)
	pieces := p.flat(0.5)
	if len(pieces) == 0 {
		return head, rest, Point{}, 0
	}
	line := pieces[0]
	left := p.Length() * clamp01(share)
	head.Move(line[0])
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		d := b.Sub(a).Len()
		if d < left || d == 0 {
			head.Line(b)
			left -= d
			continue
		}
		at, bearing = a.Add(b.Sub(a).Mul(left/d)), a.Bearing(b)
		head.Line(at)
		rest.Move(at)
		for _, q := range line[i:] {
			rest.Line(q)
		}
		return head, rest, at, bearing
	}
	end := line[len(line)-1]
	return head, rest, end, line[max(0, len(line)-2)].Bearing(end)
}
