package cab

import (
	"fmt"
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
)

// horizon is where road and sky meet.
func (c *Cab) horizon() draw.Point { return draw.Pt(c.glass.Center().X, c.glass.Y+c.glass.H*0.48) }

// street paints what is seen through the windshield.
func (c *Cab) street(cv *draw.Canvas, th *theme.Theme) {
	g, h := c.glass, c.horizon()
	high, low := draw.Hex(0x6d8fa8), draw.Hex(0xc9d3d2)
	if c.info.Night {
		high, low = draw.Hex(0x070b12), draw.Hex(0x1d2733)
	}
	cv.Fill(draw.Round(g, 14), draw.Down(draw.Rect{Y: g.Y, H: h.Y - g.Y}, high, low))
	landR := draw.Rect{X: g.X, Y: h.Y, W: g.W, H: g.Bottom() - h.Y}
	cv.Fill(draw.Box(landR), draw.Down(landR, draw.Mix(th.Grass, low, 0.35), th.Grass))
	c.row(cv, th, -1)
	c.row(cv, th, 1)
	left, right := draw.Pt(g.X+g.W*0.14, g.Bottom()), draw.Pt(g.X+g.W*0.9, g.Bottom())
	road := draw.Poly(h.Add(draw.Pt(-10, 0)), h.Add(draw.Pt(12, 0)), right, left)
	cv.Fill(road, draw.Down(landR, draw.Mix(th.Road, low, 0.3), th.Road))
	for _, e := range [][2]draw.Point{{h.Add(draw.Pt(-10, 0)), left}, {h.Add(draw.Pt(12, 0)), right}} {
		cv.Fill(draw.Segment(e[0], e[1], 3), draw.Solid(th.Curb))
	}
	cv.Fill(draw.Cut(draw.Box(g.Inset(-3)), draw.Round(g.Inset(2), 13)), draw.Solid(th.Room))
	frame := draw.Frame(g.Inset(-1), 15, 9)
	cv.Fill(frame, draw.Solid(draw.Hex(0x0a0d0f)))
	cv.Fill(draw.Frame(g.Inset(7), 9, 1.5), draw.Solid(draw.Fade(th.Edge, 0.6)))
	c.mirror(cv, th)
}

// row is a row of houses that runs to the horizon on one side.
func (c *Cab) row(cv *draw.Canvas, th *theme.Theme, side float64) {
	h := c.horizon()
	for i := 0; i < 5; i++ {
		near := math.Pow(0.58, float64(i))
		x0, x1 := 500*near, 500*near*0.66
		base, top := 48*near, 118*near
		col := draw.Mix(th.Building, draw.Hex(0xa8aeb0), 0.12+0.13*float64(i))
		if c.info.Night {
			col = draw.Darker(th.Building, 0.15*float64(i))
		}
		wall := draw.Poly(h.Add(draw.Pt(side*x0, base)), h.Add(draw.Pt(side*x0, -top)), h.Add(draw.Pt(side*x1, -top*0.66)), h.Add(draw.Pt(side*x1, base*0.66)))
		cv.Fill(wall.Inside(c.glass), draw.Solid(col))
		for k := range 3 {
			t := 0.18 + 0.28*float64(k)
			x := x0 + (x1-x0)*t
			y := -top * (0.62 - 0.1*t)
			w := draw.Rect{X: h.X + side*x - 9*near, Y: h.Y + y, W: 18 * near, H: 26 * near}
			if c.glass.Inset(9).Holds(w) {
				glow := draw.Hex(0x2b3338)
				if c.info.Night && (i+k)%3 == 0 {
					glow = draw.Hex(0xe9c27a)
				}
				cv.Fill(draw.Box(w), draw.Solid(draw.Mix(glow, col, 0.25)))
			}
		}
	}
}

func (c *Cab) mirrorBox() draw.Rect {
	return draw.Rect{X: c.glass.X + 24, Y: c.glass.Y + 62, W: 74, H: 112}
}

// mirror is the left outside mirror.
func (c *Cab) mirror(cv *draw.Canvas, th *theme.Theme) {
	m := c.mirrorBox()
	cv.Shadow(draw.Round(m, 12), 0, 3, 9, draw.Fade(th.Shade, 0.7))
	cv.Fill(draw.Round(m, 12), draw.Solid(draw.Hex(0x0c0f11)))
	in := m.Inset(5)
	cv.Fill(draw.Round(in, 8), draw.Down(in, draw.Mix(th.Road, th.SteelHi, 0.5), th.Road))
	side := draw.Rect{X: in.Right() - 15, Y: in.Y, W: 15, H: in.H}
	cv.Fill(draw.Round(side, 5), draw.Across(side, draw.Darker(th.Rig, 0.2), th.Rig))
}

// outside puts what changes out there: the road that passes, and the crew in the mirror when one looks.
func (c *Cab) outside(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, e *view.Eyes) {
	g, h := c.glass, c.horizon()
	phase := 0.0
	if v := e.Signal("speed"); v > 0 && e.Now != nil {
		phase = math.Mod(e.Now.At.Seconds()*v/14, 1)
	}
	step := int(phase * 8)
	art := sh.Get(fmt.Sprintf("lane/%s/%d/%v", th.Name, step, g.W), draw.Rect{X: g.X, Y: h.Y, W: g.W, H: g.Bottom() - h.Y - 9}, func(cv *draw.Canvas) {
		vx := g.X + g.W*0.56 - h.X
		for k := range 9 {
			z := float64(k) + 1 - float64(step)/8
			if z < 0.3 {
				continue
			}
			t0, t1 := 1/(z+0.45), 1/z
			y0, y1 := (g.Bottom()-h.Y)*t0*0.6, (g.Bottom()-h.Y)*t1*0.6
			x0, x1 := vx*t0*0.6, vx*t1*0.6
			cv.Fill(draw.Poly(h.Add(draw.Pt(x0-1, y0)), h.Add(draw.Pt(x0+1, y0)), h.Add(draw.Pt(x1+3.5*t1, y1)), h.Add(draw.Pt(x1-3.5*t1, y1))), draw.Solid(draw.Fade(th.Text, 0.7)))
		}
	})
	f.Put(art, draw.Point{})
	if e.Named("look_round") < 0.5 {
		return
	}
	m := c.mirrorBox().Inset(5)
	crew := sh.Get("mirrorcrew/"+th.Name, m, func(cv *draw.Canvas) {
		p := draw.Pt(m.X+22, m.Y+54)
		cv.Fill(draw.Circle(p, 6), draw.Solid(th.Hose))
		cv.Fill(draw.Round(draw.Rect{X: p.X - 7, Y: p.Y + 6, W: 14, H: 24}, 5), draw.Solid(draw.Darker(th.Hose, 0.4)))
		cv.Fill(draw.Frame(m, 8, 2), draw.Solid(th.Focus))
	})
	f.Put(crew, draw.Point{})
}
