package ground

import (
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
)

// town paints the street that nothing changes: grass, sidewalks, road, houses and trees.
func (g *Ground) town(cv *draw.Canvas, th *theme.Theme) {
	p := g.plan
	cv.Fill(draw.Round(p, 10), draw.Down(p, draw.Darker(th.Grass, 0.12), th.Grass))
	road := draw.Rect{X: p.X, Y: p.Y + curbTop, W: p.W, H: curbBottom - curbTop}
	g.sidewalk(cv, th, draw.Rect{X: p.X, Y: road.Y - 17, W: p.W, H: 17})
	g.sidewalk(cv, th, draw.Rect{X: p.X, Y: road.Bottom(), W: p.W, H: 12})
	cv.Fill(draw.Box(road), draw.Down(road, draw.Darker(th.Road, 0.1), th.Road, th.Road, draw.Darker(th.Road, 0.14)))
	g.sideStreet(cv, th, road)
	for _, y := range []float64{road.Y, road.Bottom()} {
		cv.Fill(draw.Box(draw.Rect{X: p.X, Y: cv.Snap(y - 1.5), W: p.W, H: 3}), draw.Solid(th.Curb))
	}
	mid := road.Y + road.H*0.78
	for _, d := range draw.Dashes(draw.Polyline(draw.Pt(p.X+8, mid), draw.Pt(p.Right()-8, mid)), 26, 18) {
		cv.Fill(draw.Stroke(d, 2), draw.Solid(draw.Fade(th.Text, 0.45)))
	}
	for _, x := range []float64{0.23, 0.58} { // covers in the road
		c := draw.Pt(p.X+p.W*x, road.Y+road.H*0.5)
		cv.Fill(draw.Circle(c, 6), draw.Solid(draw.Darker(th.Road, 0.3)))
		cv.Fill(draw.Ring(c, 6, 5), draw.Solid(draw.Lighter(th.Road, 0.12)))
	}
	g.houses(cv, th)
	g.trees(cv, th)
	cv.Fill(draw.Cut(draw.Box(p.Inset(-2)), draw.Round(p, 10)), draw.Solid(th.Room))
}

// sidewalk is slabs with joints.
func (g *Ground) sidewalk(cv *draw.Canvas, th *theme.Theme, r draw.Rect) {
	cv.Fill(draw.Box(r), draw.Solid(th.Walk))
	for x := r.X + 20; x < r.Right(); x += 26 {
		cv.Fill(draw.Box(draw.Rect{X: cv.Snap(x), Y: r.Y, W: 1, H: r.H}), draw.Solid(draw.Fade(th.Shade, 0.28)))
	}
}

// sideStreet is the street at whose corner the hydrant stands.
func (g *Ground) sideStreet(cv *draw.Canvas, th *theme.Theme, road draw.Rect) {
	s := draw.Rect{X: g.plan.Right() - 62, Y: g.plan.Y, W: 46, H: road.Y - g.plan.Y + 2}
	cv.Fill(draw.Box(draw.Rect{X: s.X - 9, Y: s.Y, W: s.W + 18, H: s.H}), draw.Solid(th.Walk))
	cv.Fill(draw.Box(s), draw.Solid(th.Road))
	for _, x := range []float64{s.X, s.Right()} {
		cv.Fill(draw.Box(draw.Rect{X: cv.Snap(x - 1), Y: s.Y, W: 2, H: s.H - 2}), draw.Solid(th.Curb))
	}
	for i := range 5 { // the crosswalk
		y := road.Y + 10 + float64(i)*16
		cv.Fill(draw.Box(draw.Rect{X: s.X - 22, Y: y, W: 12, H: 9}), draw.Solid(draw.Fade(th.Text, 0.4)))
	}
}

// houses line the street: roofs with hip and chimney, seen from above.
func (g *Ground) houses(cv *draw.Canvas, th *theme.Theme) {
	p := g.plan
	for i, x := 0, p.X+20.0; x < p.Right()-330; i, x = i+1, x+130 {
		if f := g.fireBox(); x+100 > f.X-12 && x < f.Right()+12 && f.Y < p.Center().Y {
			continue
		}
		r := draw.Rect{X: x, Y: p.Y + 9, W: 92 + float64((i*23)%14), H: 36 + float64((i*37)%13)}
		path := draw.Rect{X: r.X + r.W*0.4, Y: r.Bottom(), W: 9, H: p.Y + curbTop - 17 - r.Bottom()}
		cv.Fill(draw.Box(path), draw.Solid(draw.Mix(th.Walk, th.Grass, 0.35)))
		roof(cv, th, r, draw.Mix(th.Roof, th.Building, float64(i%3)*0.35))
	}
}

// roof is a hip roof: four slopes, each in its own light.
func roof(cv *draw.Canvas, th *theme.Theme, r draw.Rect, col draw.Color) {
	cv.Shadow(draw.Round(r, 2), 3, 4, 9, draw.Fade(th.Shade, 0.55))
	d := r.H / 2
	a, b := draw.Pt(r.X+d, r.Y+d), draw.Pt(r.Right()-d, r.Y+d)
	tl, tr, br, bl := draw.Pt(r.X, r.Y), draw.Pt(r.Right(), r.Y), draw.Pt(r.Right(), r.Bottom()), draw.Pt(r.X, r.Bottom())
	cv.Fill(draw.Poly(tl, tr, b, a), draw.Solid(draw.Lighter(col, 0.12)))
	cv.Fill(draw.Poly(tr, br, b), draw.Solid(draw.Darker(col, 0.08)))
	cv.Fill(draw.Poly(bl, a, b, br), draw.Solid(draw.Darker(col, 0.2)))
	cv.Fill(draw.Poly(tl, a, bl), draw.Solid(col))
	for y := r.Y + 5; y < r.Bottom()-2; y += 5 { // courses of shingles
		in := math.Min(math.Abs(y-r.Y), math.Abs(r.Bottom()-y))
		cv.Fill(draw.Box(draw.Rect{X: r.X + in, Y: cv.Snap(y), W: r.W - 2*in, H: 1}), draw.Solid(draw.Fade(th.Shade, 0.14)))
	}
	chimney := draw.Rect{X: a.X + 8, Y: a.Y - 9, W: 8, H: 8}
	cv.Shadow(draw.Box(chimney), 2, 3, 3, draw.Fade(th.Shade, 0.6))
	cv.Fill(draw.Box(chimney), draw.Solid(draw.Lighter(th.Building, 0.15)))
	cv.Fill(draw.Box(chimney.Inset(2.4)), draw.Solid(draw.Darker(th.Building, 0.6)))
}

// trees stand between the houses and along the near sidewalk.
func (g *Ground) trees(cv *draw.Canvas, th *theme.Theme) {
	p := g.plan
	for i, x := 0, p.X+136.0; x < p.Right()-330; i, x = i+1, x+130 {
		if f := g.fireBox(); x > f.X-22 && x < f.Right()+22 && f.Y < p.Center().Y {
			continue
		}
		tree(cv, th, draw.Pt(x, p.Y+26+float64((i*19)%22)), 12+float64((i*7)%4))
	}
	for x := p.X + 470.0; x < p.Right()-380; x += 118 {
		tree(cv, th, draw.Pt(x, p.Bottom()-9), 9)
	}
}

// tree is a crown seen from above: leaves in three tones over their shadow.
func tree(cv *draw.Canvas, th *theme.Theme, c draw.Point, r float64) {
	crown := new(draw.Path)
	for i := range 7 {
		crown.Join(draw.Circle(c.Polar(r*0.62, float64(i)*51.4), r*0.46))
	}
	crown.Join(draw.Circle(c, r*0.7))
	cv.Shadow(crown, 3, 4, 6, draw.Fade(th.Shade, 0.5))
	cv.Fill(crown, draw.Solid(draw.Darker(th.Leaf, 0.2)))
	for i := range 5 {
		cv.Fill(draw.Circle(c.Polar(r*0.42, float64(i)*72+20), r*0.36), draw.Solid(th.Leaf))
	}
	cv.Fill(draw.Circle(c.Add(draw.Pt(-r*0.28, -r*0.3)), r*0.4), draw.Solid(draw.Lighter(th.Leaf, 0.16)))
}
