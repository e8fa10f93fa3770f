package draw

import (
	"image"
	"math"

	"golang.org/x/image/vector"
)

// Canvas draws on an image. Scale is pixels per unit; Origin is the unit point at pixel (0, 0).
type Canvas struct {
	Img    *image.RGBA
	Scale  float64
	Origin Point
	Words  []Word  // every line of text that was drawn
	Cards  []Card  // every rounded rectangle that was filled, where nothing is painted
	top    float64 // px above this canvas, where it is a band of a larger one
	band   bool
	base   Point // its origin as it was made
	ras    vector.Rasterizer
	mask   image.Alpha
}

// Word is a line of text and the box of its capitals and descenders, in units.
type Word struct {
	Text string
	Box  Rect
}

// Card is a rounded rectangle, in units, and how many lines of text had been drawn when it was filled.
type Card struct {
	Box   Rect
	Words int
}

// New makes an empty canvas that shows r at scale, its size rounded up to whole pixels.
func New(r Rect, scale float64) *Canvas {
	w, h := int(math.Ceil(r.W*scale-1e-9)), int(math.Ceil(r.H*scale-1e-9))
	return &Canvas{
		Img:    image.NewRGBA(image.Rect(0, 0, max(1, w), max(1, h))),
		Scale:  scale,
		Origin: Pt(r.X, r.Y),
	}
}

// Band makes a canvas of the rows from top to bottom, in pixels, of what New(r, scale) would show whole.
// r begins at the origin. Bands painted alike and put together are the whole.
func Band(r Rect, scale float64, top, bottom int) *Canvas {
	c := New(Rect{W: r.W, H: float64(bottom-top) / scale}, scale)
	c.Origin.Y = float64(top) / scale
	c.top, c.band, c.base = float64(top), true, c.Origin
	return c
}

// Dry makes a canvas without pixels: nothing is painted, but what is written is noted in Words, and in
// Cards what may lie under it. Layouts are checked on it.
func Dry(r Rect, scale float64) *Canvas {
	return &Canvas{Img: image.NewRGBA(image.Rectangle{}), Scale: scale, Origin: Pt(r.X, r.Y)}
}

func (c *Canvas) dry() bool { return c.Img.Rect.Empty() }

// px turns a point in units into pixels.
func (c *Canvas) px(p Point) (float64, float64) {
	if c.band { // as exactly as on the whole; a painter may have moved the origin
		p = p.Sub(c.Origin.Sub(c.base))
		return p.X * c.Scale, p.Y*c.Scale - c.top
	}
	return (p.X - c.Origin.X) * c.Scale, (p.Y - c.Origin.Y) * c.Scale
}

// unit turns pixels into a point in units.
func (c *Canvas) unit(x, y float64) (float64, float64) {
	return x/c.Scale + c.Origin.X, y/c.Scale + c.Origin.Y
}

// Snap moves a length in units to the nearest whole pixel, so that thin lines stay sharp.
func (c *Canvas) Snap(v float64) float64 { return math.Round(v*c.Scale) / c.Scale }

// bounds is the pixel box of a path, grown by margin pixels and cut to box.
func (c *Canvas) bounds(p *Path, margin float64, box image.Rectangle) image.Rectangle {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, q := range p.points {
		x, y := c.px(q)
		x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x), max(y1, y)
	}
	if x0 > x1 {
		return image.Rectangle{}
	}
	r := image.Rect(int(math.Floor(x0-margin)), int(math.Floor(y0-margin)),
		int(math.Ceil(x1+margin)), int(math.Ceil(y1+margin)))
	return r.Intersect(box)
}

// cover rasterizes p into the canvas's mask for the pixel box b.
func (c *Canvas) cover(p *Path, b image.Rectangle) *image.Alpha {
	c.ras.Reset(b.Dx(), b.Dy())
	at := func(q Point) (float32, float32) {
		x, y := c.px(q)
		return float32(x - float64(b.Min.X)), float32(y - float64(b.Min.Y))
	}
	i := 0
	for _, v := range p.verbs {
		switch v {
		case moveTo:
			c.ras.MoveTo(at(p.points[i]))
			i++
		case lineTo:
			c.ras.LineTo(at(p.points[i]))
			i++
		case quadTo:
			ax, ay := at(p.points[i])
			bx, by := at(p.points[i+1])
			c.ras.QuadTo(ax, ay, bx, by)
			i += 2
		case cubeTo:
			ax, ay := at(p.points[i])
			bx, by := at(p.points[i+1])
			dx, dy := at(p.points[i+2])
			c.ras.CubeTo(ax, ay, bx, by, dx, dy)
			i += 3
		case closeIt:
			c.ras.ClosePath()
		}
	}
	n := b.Dx() * b.Dy()
	if cap(c.mask.Pix) < n {
		c.mask.Pix = make([]uint8, n)
	}
	c.mask.Pix = c.mask.Pix[:n]
	clear(c.mask.Pix)
	c.mask.Stride, c.mask.Rect = b.Dx(), image.Rect(0, 0, b.Dx(), b.Dy())
	c.ras.DrawOp = 0
	c.ras.Draw(&c.mask, c.mask.Rect, image.Opaque, image.Point{})
	return &c.mask
}

// Fill paints the inside of p.
func (c *Canvas) Fill(p *Path, paint Paint) {
	if c.dry() && p.card != (Rect{}) {
		c.Cards = append(c.Cards, Card{p.card, len(c.Words)})
	}
	b := c.bounds(p, 1, c.Img.Bounds())
	if b.Empty() {
		return
	}
	c.lay(c.cover(p, b), b.Min, paint)
}

// lay puts paint on the image through a mask whose corner is at pixel m.
func (c *Canvas) lay(mask *image.Alpha, m image.Point, paint Paint) {
	solid, plain := paint.(Solid)
	for y := range mask.Rect.Dy() {
		row := mask.Pix[y*mask.Stride:]
		i := c.Img.PixOffset(m.X, m.Y+y)
		for x := range mask.Rect.Dx() {
			if a := uint32(row[x]); a != 0 {
				col := Color(solid)
				if !plain {
					ux, uy := c.unit(float64(m.X+x)+0.5, float64(m.Y+y)+0.5)
					col = paint.At(ux, uy)
				}
				over(c.Img.Pix[i:i+4:i+4], col, a)
			}
			i += 4
		}
	}
}

// over blends a straight-alpha color, thinned by cover/255, onto one premultiplied pixel.
func over(d []uint8, s Color, cover uint32) {
	a := uint32(s.A) * cover // 0 … 255²
	if a == 255*255 {
		d[0], d[1], d[2], d[3] = s.R, s.G, s.B, 255
		return
	}
	k := 255*255 - a
	mix := func(dst, src uint8) uint8 {
		return uint8((uint32(dst)*k + uint32(src)*a + 255*255/2) / (255 * 255))
	}
	d[0], d[1], d[2], d[3] = mix(d[0], s.R), mix(d[1], s.G), mix(d[2], s.B), mix(d[3], 255)
}
