package card

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
)

// icon draws a small picture of the thing on a card about the point at, 22 units high, in one color.
type icon func(cv *draw.Canvas, at draw.Point, col, hole draw.Color)

// icons of things that are worn, carried or worked by hand away from the panel, by their control.
var icons = map[string]icon{
	"helmet": helmet, "clothing": coat, "portable_radio": radio, "seat_belt": belt,
	"compartments": door, "hydrant_cap": cap, "tighten_leak": drop, "line_straight": straight, "supply_straight": straight,
}

const iconW = 23.0

// pen makes points about at.
func pen(at draw.Point) func(x, y float64) draw.Point {
	return func(x, y float64) draw.Point { return at.Add(draw.Pt(x, y)) }
}

func helmet(cv *draw.Canvas, at draw.Point, col, hole draw.Color) {
	p := pen(at)
	cv.Fill(draw.Sector(p(0, 3), 8.5, 0.1, -90, 90), draw.Solid(col))
	cv.Fill(draw.Round(draw.Rect{X: at.X - 11, Y: at.Y + 2.5, W: 22, H: 3.5}, 1.7), draw.Solid(col))
	cv.Fill(draw.Poly(p(-3, 2), p(-3, -4), p(0, -6.5), p(3, -4), p(3, 2)), draw.Solid(hole))
}

func coat(cv *draw.Canvas, at draw.Point, col, hole draw.Color) {
	p := pen(at)
	cv.Fill(draw.Poly(p(-2.5, -10), p(2.5, -10), p(7, -8), p(10.5, 3), p(7.2, 4.2), p(5.6, -1), p(6.4, 11), p(-6.4, 11), p(-5.6, -1), p(-7.2, 4.2), p(-10.5, 3), p(-7, -8)), draw.Solid(col))
	cv.Fill(draw.Box(draw.Rect{X: at.X - 6.4, Y: at.Y + 5.5, W: 12.8, H: 1.8}), draw.Solid(hole))
	cv.Fill(draw.Box(draw.Rect{X: at.X - 0.6, Y: at.Y - 9, W: 1.2, H: 14}), draw.Solid(hole))
}

func radio(cv *draw.Canvas, at draw.Point, col, hole draw.Color) {
	cv.Fill(draw.Round(draw.Rect{X: at.X - 5, Y: at.Y - 4, W: 10, H: 15}, 2), draw.Solid(col))
	cv.Fill(draw.Round(draw.Rect{X: at.X - 4.5, Y: at.Y - 12, W: 2.6, H: 10}, 1.3), draw.Solid(col))
	for i := range 3 {
		cv.Fill(draw.Box(draw.Rect{X: at.X - 3, Y: at.Y - 1 + 2.6*float64(i), W: 6, H: 1.2}), draw.Solid(hole))
	}
}

func belt(cv *draw.Canvas, at draw.Point, col, hole draw.Color) {
	p := pen(at)
	cv.Fill(draw.Segment(p(-9, -10), p(6, 7), 4), draw.Solid(col))
	cv.Fill(draw.Round(draw.Rect{X: at.X + 0.5, Y: at.Y + 1.5, W: 10, H: 9}, 2), draw.Solid(col))
	cv.Fill(draw.Round(draw.Rect{X: at.X + 3, Y: at.Y + 4, W: 5, H: 4}, 1), draw.Solid(hole))
	cv.Fill(draw.Segment(p(-10, 8), p(1, 7), 3), draw.Solid(col))
}

func door(cv *draw.Canvas, at draw.Point, col, hole draw.Color) {
	cv.Fill(draw.Round(draw.Rect{X: at.X - 9, Y: at.Y - 10, W: 18, H: 20}, 2), draw.Solid(col))
	for i := range 4 {
		cv.Fill(draw.Box(draw.Rect{X: at.X - 7, Y: at.Y - 7.5 + 3.6*float64(i), W: 14, H: 1.1}), draw.Solid(hole))
	}
	cv.Fill(draw.Round(draw.Rect{X: at.X - 3, Y: at.Y + 6, W: 6, H: 2}, 1), draw.Solid(hole))
}

func cap(cv *draw.Canvas, at draw.Point, col, hole draw.Color) {
	for i := range 3 {
		cv.Fill(draw.Round(draw.Around(at.Polar(8.5, float64(i)*120), 6, 6), 1.5), draw.Solid(col))
	}
	cv.Fill(draw.Circle(at, 8.5), draw.Solid(col))
	cv.Fill(draw.Ring(at, 5.6, 4.4), draw.Solid(hole))
}

func drop(cv *draw.Canvas, at draw.Point, col, hole draw.Color) {
	p := pen(at)
	cv.Fill(new(draw.Path).Move(p(0, -11)).Cube(p(4, -5), p(7.5, -1), p(7.5, 3.5)).Cube(p(7.5, 12.5), p(-7.5, 12.5), p(-7.5, 3.5)).Cube(p(-7.5, -1), p(-4, -5), p(0, -11)).Close(), draw.Solid(col))
	cv.Fill(draw.Stroke(new(draw.Path).Arc(p(0, 3.5), 4.4, 190, 260), 1.4), draw.Solid(hole))
}

func straight(cv *draw.Canvas, at draw.Point, col, hole draw.Color) {
	p := pen(at)
	cv.Fill(draw.Segment(p(-11, 0), p(11, 0), 7), draw.Solid(col))
	for _, x := range []float64{-7, 7} {
		cv.Fill(draw.Box(draw.Around(p(x, 0), 3.2, 10)), draw.Solid(col))
		cv.Fill(draw.Box(draw.Around(p(x, 0), 1, 7)), draw.Solid(hole))
	}
	cv.Fill(draw.Segment(p(-4, -0.6), p(4, -0.6), 1), draw.Solid(hole))
}

// putIcon paints a card's picture, if it has one.
func (c *placed) putIcon(cv *draw.Canvas, th *theme.Theme) {
	if c.icon != nil {
		c.icon(cv, draw.Pt(c.box.X+pad+9.5, c.box.Y+c.box.H/2), th.CardText, th.CardHi)
	}
}
