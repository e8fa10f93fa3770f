package chart

import (
	"fmt"
	"math"

	"steadyneedle/render/draw"
)

// Curve plots discharge pressure against flow: what the pump can do at its speed, what the lines ask
// for, and where the two meet.
type Curve struct {
	Box  draw.Rect
	Text float64

	ShutoffPSI float64 // net, at the present speed, no flow
	LossPSI    float64 // psi/gpm²
	RPM        float64
	IntakePSI  float64
	GPM, PSI   float64 // where it works
	StaticPSI  float64 // what the lines ask for at no flow: height
	Before     []Was   // where it stood earlier, oldest first

	TopGPM, TopPSI float64
	Pressure, Flow string // names of the units
}

// Was is where the pump worked some time ago.
type Was struct{ GPM, PSI float64 }

// Draw paints it whole.
func (c *Curve) Draw(cv *draw.Canvas) {
	a := frame(cv, c.Box, c.Text, "", "")
	name := draw.Style{Size: c.Text, Weight: draw.Bold, Color: Colors[1]}
	cv.Text(draw.Pt(c.Box.X+14, c.Box.Y+8+c.Text), draw.Left, name, fmt.Sprintf("Pump, %.0f rpm", c.RPM))
	name.Color = Colors[2]
	cv.Text(draw.Pt(c.Box.Right()-14, c.Box.Y+8+c.Text), draw.Right, name, "Lines")
	soft := draw.Style{Size: c.Text * 0.9, Color: soft}
	flows := marks(c.TopGPM)
	for i, v := range flows {
		x := cv.Snap(c.at(a, v, 0).X)
		cv.Fill(draw.Box(draw.Rect{X: x, Y: a.Y, W: 1, H: a.H}), draw.Solid(draw.Fade(rule, 0.7)))
		text := label(v, c.Flow, i == len(flows)-1)
		at := min(x+4, a.Right()-4-soft.Width(cv.Scale, text))
		cv.Text(draw.Pt(at, a.Bottom()-6), draw.Left, soft, text)
	}
	pressures := marks(c.TopPSI)
	for i, v := range pressures {
		y := cv.Snap(c.at(a, 0, v).Y)
		cv.Fill(draw.Box(draw.Rect{X: a.X, Y: y, W: a.W, H: 1}), draw.Solid(draw.Fade(rule, 0.7)))
		cv.Text(draw.Pt(a.X+6, y-3), draw.Left, soft, label(v, c.Pressure, i == len(pressures)-1))
	}
	pump := c.sample(a, func(q float64) float64 { return c.IntakePSI + c.ShutoffPSI - c.LossPSI*q*q })
	stroke(cv, pump, 1, false)
	if c.GPM > 5 {
		k := (c.PSI - c.StaticPSI) / (c.GPM * c.GPM)
		stroke(cv, c.sample(a, func(q float64) float64 { return c.StaticPSI + k*q*q }), 2, false)
	}
	c.trail(cv, a)
}

// label writes a mark, the last one with its unit.
func label(v float64, unit string, last bool) string {
	if last {
		return fmt.Sprintf("%.0f %s", v, unit)
	}
	return fmt.Sprintf("%.0f", v)
}

// trail shows the point where it works, and how it came there.
func (c *Curve) trail(cv *draw.Canvas, a draw.Rect) {
	for i, w := range c.Before {
		p := c.at(a, w.GPM, w.PSI)
		r := 2 + 2*float64(i+1)/float64(len(c.Before))
		if a.Has(p) {
			cv.Fill(draw.Circle(p, r), draw.Solid(draw.Fade(mark, 0.35)))
		}
	}
	p := c.at(a, c.GPM, c.PSI)
	p.X, p.Y = max(a.X, min(a.Right(), p.X)), max(a.Y, min(a.Bottom(), p.Y))
	cv.Fill(draw.Circle(p, 9), draw.Solid(paper))
	cv.Fill(draw.Circle(p, 7), draw.Solid(mark))
}

func (c *Curve) at(a draw.Rect, gpm, psi float64) draw.Point {
	return draw.Pt(a.X+a.W*gpm/c.TopGPM, a.Bottom()-a.H*psi/c.TopPSI)
}

// sample follows a law across the plot, as long as it stays in it.
func (c *Curve) sample(a draw.Rect, psi func(q float64) float64) []draw.Point {
	var list []draw.Point
	const n = 60
	for i := 0; i <= n; i++ {
		q := c.TopGPM * float64(i) / n
		v := psi(q)
		if v < 0 || v > c.TopPSI {
			if len(list) > 0 {
				break
			}
			continue
		}
		list = append(list, c.at(a, q, v))
	}
	return list
}

// marks are one to three round values below a top.
func marks(top float64) []float64 {
	step := math.Pow(10, math.Floor(math.Log10(top)))
	for _, k := range [...]float64{0.2, 0.25, 0.5, 1, 2} {
		if top/(k*step) <= 3.5 {
			step *= k
			break
		}
	}
	var list []float64
	for v := step; v < top*0.97; v += step {
		list = append(list, v)
	}
	return list
}
