package cab

import (
	"fmt"
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
)

// The street is seen in perspective from the driver's seat: feet to the right of the seat, above the
// road and ahead of the windshield.
const (
	eyeFt      = 8.0
	roadLeft   = -27.0 // curbs
	roadRight  = 9.0
	laneLine   = -9.0
	walkFt     = 6.0
	nearestFt  = 16.0
	lanePeriod = 40.0
)

// horizon is where road and sky meet.
func (c *Cab) horizon() draw.Point {
	return draw.Pt(c.glass.X+c.glass.W*0.55, c.glass.Y+c.glass.H*0.44)
}

// spot is where a point of the street is seen.
func (c *Cab) spot(x, up, ahead float64) draw.Point {
	k := c.glass.W * 0.5 / max(nearestFt, ahead)
	h := c.horizon()
	return draw.Pt(h.X+x*k, h.Y+(eyeFt-up)*k)
}

// sky is the two colors of the sky, at the top and at the horizon.
func (c *Cab) sky() (high, low draw.Color) {
	if c.info.Night {
		return draw.Hex(0x060a11), draw.Hex(0x1b2733)
	}
	return draw.Hex(0x5f8db0), draw.Hex(0xd3dcd9)
}

// street paints what is seen through the windshield.
func (c *Cab) street(cv *draw.Canvas, th *theme.Theme) {
	g, h := c.glass, c.horizon()
	high, low := c.sky()
	cv.Fill(draw.Round(g, 14), draw.Down(draw.Rect{Y: g.Y, H: h.Y - g.Y}, high, low))
	c.clouds(cv)
	land := draw.Rect{X: g.X, Y: h.Y, W: g.W, H: g.Bottom() - h.Y}
	cv.Fill(draw.Box(land), draw.Down(land, draw.Mix(th.Grass, low, 0.45), th.Grass))
	for i := range 22 { // a line of trees far off
		x := g.X + g.W*float64(i)/21
		cv.Fill(draw.Circle(draw.Pt(x, h.Y+2), 7+float64((i*5)%6)).Inside(g.Inset(4)), draw.Solid(draw.Mix(th.Leaf, low, 0.55)))
	}
	c.ground(cv, th, land, low)
	for z := 300.0; z >= 32; z -= 44 { // far to near
		i := int(z / 44)
		c.house(cv, th, -1, i, z, low)
		c.house(cv, th, 1, i+3, z+10, low)
		c.tree(cv, th, roadLeft-walkFt-3, z-8, low)
		c.tree(cv, th, roadRight+walkFt+3, z+2, low)
	}
	c.hood(cv, th)
	cv.Fill(draw.Cut(draw.Box(g.Inset(-3)), draw.Round(g.Inset(2), 13)), draw.Solid(th.Room))
	cv.Fill(draw.Frame(g.Inset(-1), 15, 9), draw.Solid(draw.Hex(0x0a0d0f)))
	cv.Fill(draw.Frame(g.Inset(7), 9, 1.5), draw.Solid(draw.Fade(th.Edge, 0.6)))
	c.mirror(cv, th)
}

func (c *Cab) clouds(cv *draw.Canvas) {
	if c.info.Night {
		return
	}
	g := c.glass
	for i, p := range []draw.Point{{X: 0.3, Y: 0.15}, {X: 0.42, Y: 0.11}, {X: 0.78, Y: 0.17}, {X: 0.9, Y: 0.1}, {X: 0.17, Y: 0.2}} {
		o := draw.Pt(g.X+g.W*p.X, g.Y+g.H*p.Y)
		w := 60 + 22*float64(i%3)
		for k := range 4 {
			q := o.Add(draw.Pt((float64(k)-1.5)*w*0.3, 2*float64(k%2)))
			r := w * 0.26
			cv.Fill(draw.Circle(q, r).Inside(g.Inset(8)), draw.Radial{Center: q, R: r, Stops: draw.Even(draw.Fade(draw.Hex(0xffffff), 0.3), draw.Fade(draw.Hex(0xffffff), 0))})
		}
	}
}

// flat is a strip of the ground from left to right, all the way to the horizon.
func (c *Cab) flat(left, right float64) *draw.Path {
	const far = 4000
	return draw.Poly(c.spot(left, 0, nearestFt), c.spot(left, 0, far), c.spot(right, 0, far), c.spot(right, 0, nearestFt)).Inside(c.glass)
}

func (c *Cab) ground(cv *draw.Canvas, th *theme.Theme, land draw.Rect, low draw.Color) {
	fading := func(col draw.Color) draw.Paint { return draw.Down(land, draw.Mix(col, low, 0.45), col, col) }
	cv.Fill(c.flat(roadLeft-walkFt, roadRight+walkFt), fading(draw.Lighter(th.Walk, 0.12)))
	cv.Fill(c.flat(roadLeft, roadRight), fading(th.Road))
	for _, x := range []float64{roadLeft, roadRight} {
		cv.Fill(c.flat(x-0.35, x+0.35), fading(th.Curb))
	}
	for _, side := range []float64{roadLeft - walkFt, roadRight} { // joints of the slabs
		for z := 22.0; z < 150; z *= 1.16 {
			cv.Fill(draw.Poly(c.spot(side, 0, z), c.spot(side+walkFt, 0, z), c.spot(side+walkFt, 0, z*1.012), c.spot(side, 0, z*1.012)).Inside(c.glass), draw.Solid(draw.Fade(th.Shade, 0.25)))
		}
	}
}

// house stands beside the street: the wall toward the road, the wall toward us, and its roof.
func (c *Cab) house(cv *draw.Canvas, th *theme.Theme, side float64, i int, z float64, low draw.Color) {
	edge := roadRight + walkFt + 9
	if side < 0 {
		edge = -(roadLeft - walkFt - 9)
	}
	x0, x1 := side*edge, side*(edge+34)
	tall, deep := 17+float64((i*7)%3)*5, 30.0
	haze := min(0.75, z/420)
	dress := func(col draw.Color) draw.Color { return draw.Mix(col, low, haze) }
	walls := []draw.Color{th.Building, draw.Mix(th.Building, draw.Hex(0x9a8f82), 0.35), draw.Mix(th.Building, draw.Hex(0x4f5d66), 0.5)}
	wall := walls[i%len(walls)]
	in := c.glass
	quad := func(a, b, d, e draw.Point) *draw.Path { return draw.Poly(a, b, d, e).Inside(in) }
	front := func(u, v float64) draw.Point { return c.spot(x0+(x1-x0)*u, tall*v, z) }
	along := func(u, v float64) draw.Point { return c.spot(x0, tall*v, z+deep*u) }
	cv.Fill(quad(along(0, 0), along(0, 1), along(1, 1), along(1, 0)), draw.Solid(dress(draw.Lighter(wall, 0.1))))
	cv.Fill(quad(front(0, 0), front(0, 1), front(1, 1), front(1, 0)), draw.Solid(dress(draw.Darker(wall, 0.15))))
	ridge := tall + 9
	mid := (x0 + x1) / 2
	roofCol := draw.Mix(th.Roof, draw.Hex(0x2f2a28), 0.3*float64(i%2))
	cv.Fill(draw.Poly(c.spot(x0, tall, z), c.spot(x1, tall, z), c.spot(mid, ridge, z)).Inside(in), draw.Solid(dress(draw.Darker(wall, 0.05))))
	cv.Fill(quad(c.spot(x0-side*1.5, tall-0.6, z-1), c.spot(x0-side*1.5, tall-0.6, z+deep), c.spot(mid, ridge+0.6, z+deep), c.spot(mid, ridge+0.6, z-1)), draw.Solid(dress(roofCol)))
	pane := func(at func(u, v float64) draw.Point, u, v float64, k int) {
		col := draw.Hex(0x31414c)
		if c.info.Night {
			col = draw.Hex(0x10161b)
			if (i*3+k)%4 == 0 {
				col = draw.Hex(0xf0cf86)
			}
		}
		const w, h = 0.08, 0.11
		cv.Fill(quad(at(u-w*1.25, v-h*1.15), at(u-w*1.25, v+h*1.15), at(u+w*1.25, v+h*1.15), at(u+w*1.25, v-h*1.15)), draw.Solid(dress(draw.Lighter(wall, 0.35))))
		cv.Fill(quad(at(u-w, v-h), at(u-w, v+h), at(u+w, v+h), at(u+w, v-h)), draw.Solid(dress(col)))
	}
	for k, u := range []float64{0.2, 0.5, 0.8} {
		pane(along, u, 0.74, k)
		if k != 1 {
			pane(along, u, 0.36, k+3)
		}
		pane(front, u, 0.72, k+1)
	}
	door := draw.Mix(th.Grip, wall, 0.4)
	cv.Fill(quad(along(0.45, 0), along(0.45, 0.44), along(0.57, 0.44), along(0.57, 0)), draw.Solid(dress(door)))
}

func (c *Cab) tree(cv *draw.Canvas, th *theme.Theme, x, z float64, low draw.Color) {
	haze := min(0.75, z/420)
	dress := func(col draw.Color) draw.Color { return draw.Mix(col, low, haze) }
	foot, head := c.spot(x, 0, z), c.spot(x, 13, z)
	k := c.glass.W * 0.5 / max(nearestFt, z)
	keep := func(p *draw.Path) *draw.Path { return p.Inside(c.glass) }
	cv.Fill(keep(draw.Segment(foot, head, max(1, 0.7*k))), draw.Solid(dress(draw.Hex(0x3d3129))))
	r := 4.4 * k
	for i := range 6 {
		cv.Fill(keep(draw.Circle(head.Polar(r*0.62, float64(i)*60), r*0.6)), draw.Solid(dress(draw.Darker(th.Leaf, 0.18))))
	}
	cv.Fill(keep(draw.Circle(head, r*0.72)), draw.Solid(dress(th.Leaf)))
	cv.Fill(keep(draw.Circle(head.Add(draw.Pt(-r*0.25, -r*0.3)), r*0.45)), draw.Solid(dress(draw.Lighter(th.Leaf, 0.14))))
}

// hood is the front of the cab under the glass, with the wipers at rest on it.
func (c *Cab) hood(cv *draw.Canvas, th *theme.Theme) {
	g := c.glass
	y := g.Bottom() - 9
	p := new(draw.Path).Move(draw.Pt(g.X, y+6)).Line(draw.Pt(g.X, y-7)).Quad(draw.Pt(g.Center().X, y-22), draw.Pt(g.Right(), y-7)).Line(draw.Pt(g.Right(), y+6)).Close()
	cv.Fill(p, draw.Down(draw.Rect{Y: y - 18, H: 24}, draw.Darker(th.Rig, 0.15), draw.Darker(th.Rig, 0.5)))
	for _, x := range []float64{0.2, 0.62} {
		a := draw.Pt(g.X+g.W*x, y-3)
		b := a.Add(draw.Pt(g.W*0.2, -14))
		cv.Fill(draw.Segment(a, b, 3), draw.Solid(draw.Hex(0x0b0e10)))
		cv.Fill(draw.Segment(b.Add(draw.Pt(-g.W*0.09, 3)), b.Add(draw.Pt(g.W*0.09, -3)), 2.2), draw.Solid(draw.Hex(0x0b0e10)))
	}
}

func (c *Cab) mirrorBox() draw.Rect {
	return draw.Rect{X: c.glass.X + 24, Y: c.glass.Y + 44, W: 78, H: 112}
}

// mirror is the left outside mirror: the road behind and the apparatus's own side.
func (c *Cab) mirror(cv *draw.Canvas, th *theme.Theme) {
	m := c.mirrorBox()
	cv.Shadow(draw.Round(m, 12), 0, 3, 9, draw.Fade(th.Shade, 0.7))
	cv.Fill(draw.Round(m, 12), draw.Down(m, draw.Hex(0x262c30), draw.Hex(0x0c0f11)))
	in := m.Inset(5)
	high, low := c.sky()
	cv.Fill(draw.Round(in, 8), draw.Down(draw.Rect{Y: in.Y, H: in.H * 0.42}, high, low))
	land := draw.Rect{X: in.X, Y: in.Y + in.H*0.42, W: in.W, H: in.H * 0.58}
	v := draw.Pt(in.X+in.W*0.5, land.Y)
	cv.Fill(draw.Cut(draw.Round(in, 8), draw.Box(draw.Rect{X: in.X, Y: in.Y, W: in.W, H: in.H * 0.42})), draw.Down(land, draw.Mix(th.Grass, low, 0.4), th.Grass))
	cv.Fill(draw.Poly(v, v.Add(draw.Pt(3, 0)), draw.Pt(in.Right(), in.Bottom()-3), draw.Pt(in.X+12, in.Bottom()-1)).Inside(in.Inset(1)), draw.Down(land, draw.Mix(th.Road, low, 0.4), th.Road))
	cv.Fill(draw.Poly(draw.Pt(in.Right()-13, in.Y+8), draw.Pt(in.Right(), in.Y+3), draw.Pt(in.Right(), in.Bottom()-6), draw.Pt(in.Right()-20, in.Bottom()-2)), draw.Across(draw.Rect{X: in.Right() - 20, W: 20}, draw.Darker(th.Rig, 0.35), th.Rig))
	cv.Fill(draw.Cut(draw.Box(in.Inset(-1)), draw.Round(in, 8)), draw.Solid(draw.Hex(0x0f1315)))
}

// outside puts what changes out there: the lane that passes, and the crew in the mirror when one looks.
func (c *Cab) outside(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, e *view.Eyes) {
	g, h := c.glass, c.horizon()
	const steps = 8
	step := 0
	if v := e.Signal("speed"); v > 0 && e.Now != nil {
		step = int(math.Mod(e.Now.At.Seconds()*v/lanePeriod, 1) * steps)
	}
	box := draw.Rect{X: g.X, Y: h.Y, W: g.W, H: g.Bottom() - h.Y - 26}
	art := sh.Get(fmt.Sprintf("lane/%s/%d/%v", th.Name, step, g), box, func(cv *draw.Canvas) {
		for k := range 12 {
			z := float64(k)*lanePeriod - lanePeriod*float64(step)/steps
			near, far := max(nearestFt, z), z+10
			if far <= nearestFt {
				continue
			}
			dash := draw.Poly(c.spot(laneLine-0.3, 0, near), c.spot(laneLine-0.3, 0, far), c.spot(laneLine+0.3, 0, far), c.spot(laneLine+0.3, 0, near))
			cv.Fill(dash.Inside(box), draw.Solid(draw.Fade(th.Text, max(0.25, 0.8-z/500))))
		}
	})
	f.Put(art, draw.Point{})
	if e.Named("look_round") < 0.5 {
		return
	}
	m := c.mirrorBox().Inset(5)
	crew := sh.Get("mirrorcrew/"+th.Name, m, func(cv *draw.Canvas) {
		p := draw.Pt(m.X+22, m.Y+58)
		cv.Fill(draw.Circle(p, 6), draw.Solid(th.Hose))
		cv.Fill(draw.Round(draw.Rect{X: p.X - 7, Y: p.Y + 6, W: 14, H: 24}, 5), draw.Solid(draw.Darker(th.Hose, 0.4)))
		cv.Fill(draw.Frame(m, 8, 2), draw.Solid(th.Focus))
	})
	f.Put(crew, draw.Point{})
}
