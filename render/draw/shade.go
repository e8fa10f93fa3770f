package draw

import (
	"image"
	"math"
)

// Shadow lays a soft shadow of p, moved by (dx, dy) and blurred over about blur units.
func (c *Canvas) Shadow(p *Path, dx, dy, blur float64, col Color) {
	if c.dry() {
		return
	}
	moved := p.Moved(Pt(dx, dy))
	r := max(1, int(blur*c.Scale/2+0.5))
	margin := float64(3*r + 1)
	b := c.bounds(moved, margin, c.Img.Bounds().Inset(-3*r-1))
	if b.Empty() {
		return
	}
	mask := c.cover(moved, b)
	for range 3 { // three box blurs are a Gaussian to the eye
		blurRows(mask, r)
		blurColumns(mask, r)
	}
	cut := b.Intersect(c.Img.Bounds())
	if cut.Empty() {
		return
	}
	sub := mask.SubImage(cut.Sub(b.Min)).(*image.Alpha)
	sub.Rect = image.Rect(0, 0, cut.Dx(), cut.Dy())
	c.lay(sub, cut.Min, Solid(col))
}

// Moved returns a copy of the path moved by d.
func (p *Path) Moved(d Point) *Path {
	q := &Path{verbs: p.verbs, points: make([]Point, len(p.points))}
	for i, a := range p.points {
		q.points[i] = a.Add(d)
	}
	return q
}

// Scaled returns a copy of the path with all lengths from the origin times k.
func (p *Path) Scaled(k float64) *Path {
	q := &Path{verbs: p.verbs, points: make([]Point, len(p.points))}
	for i, a := range p.points {
		q.points[i] = a.Mul(k)
	}
	return q
}

func blurRows(m *image.Alpha, r int) {
	w := m.Rect.Dx()
	line := make([]uint8, w)
	for y := range m.Rect.Dy() {
		row := m.Pix[y*m.Stride : y*m.Stride+w]
		copy(line, row)
		blurLine(line, row, 1, r)
	}
}

func blurColumns(m *image.Alpha, r int) {
	h := m.Rect.Dy()
	line := make([]uint8, h)
	for x := range m.Rect.Dx() {
		for y := range h {
			line[y] = m.Pix[y*m.Stride+x]
		}
		blurLine(line, m.Pix[x:], m.Stride, r)
	}
}

// blurLine writes the running mean of line over 2r+1 samples to dst, stride apart.
func blurLine(line, dst []uint8, stride, r int) {
	n, sum := len(line), 0
	for i := 0; i < min(r, n); i++ {
		sum += int(line[i])
	}
	for i := range n {
		if j := i + r; j < n {
			sum += int(line[j])
		}
		if j := i - r - 1; j >= 0 {
			sum -= int(line[j])
		}
		dst[i*stride] = uint8(sum / (2*r + 1))
	}
}

// Grain gives the inside of r the fine brushed streaks of rolled metal: depth is the largest change of
// brightness, 0 to 1. The streaks are the same every time.
func (c *Canvas) Grain(r Rect, depth float64) {
	x0, y0 := c.px(Pt(r.X, r.Y))
	x1, y1 := c.px(Pt(r.Right(), r.Bottom()))
	first := int(math.Floor(y0))
	b := image.Rect(int(x0), first, int(x1), int(y1)).Intersect(c.Img.Bounds())
	var seed uint32
	next := func() float64 {
		seed ^= seed << 13
		seed ^= seed >> 17
		seed ^= seed << 5
		return float64(seed)/(1<<31) - 1
	}
	for y := b.Min.Y; y < b.Max.Y; y++ {
		seed = 2463534242 ^ uint32(y-first+1)*2654435761 // of this row, whatever part of it is painted
		next()
		line, fine := next(), 0.0
		for x := b.Min.X; x < b.Max.X; x++ {
			fine += (next() - fine) * 0.05
			k := 1 + depth*(0.45*line+fine)
			d := c.Img.Pix[c.Img.PixOffset(x, y):]
			for i := range 3 {
				d[i] = uint8(max(0, min(255, float64(d[i])*k+0.5)))
			}
		}
	}
}
