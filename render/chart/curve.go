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
	Before     []Was   // where it stood earlier, oldest first

	TopGPM, TopPSI float64
	Pressure, Flow string // names of the units
}

// Was is where the pump worked some time ago.
type Was struct{ GPM, PSI float64 }

// Draw paints it whole.
func (c *Curve) Draw(cv *draw.Canvas) {
	a := frame(cv, c.Box, c.Text, "", "")
	name := draw.Style{Size: c.Text, Weight: draw.Bold, Color: colors[1]}
	cv.Text(draw.Pt(c.Box.X+14, c.Box.Y+8+c.Text), draw.Left, name, fmt.Sprintf("Pump, %.0f rpm", c.RPM))
	name.Color = colors[2]
	cv.Text(draw.Pt(c.Box.Right()-14, c.Box.Y+8+c.Text), draw.Right, name, "Lines")
	for _, v := range marks(c.TopGPM) {
		cv.Fill(draw.Box(draw.Rect{X: cv.Snap(c.at(a, v, 0).X), Y: a.Y, W: 1, H: a.H}), draw.Solid(draw.Fade(rule, 0.7)))
	}
	for _, v := range marks(c.TopPSI) {
		cv.Fill(draw.Box(draw.Rect{X: a.X, Y: cv.Snap(c.at(a, 0, v).Y), W: a.W, H: 1}), draw.Solid(draw.Fade(rule, 0.7)))
	}
	pump := c.sample(a, func(q float64) float64 { return c.IntakePSI + c.ShutoffPSI - c.LossPSI*q*q })
	stroke(cv, pump, 1, false)
	if c.GPM > 5 {
		k := c.PSI / (c.GPM * c.GPM)
		stroke(cv, c.sample(a, func(q float64) float64 { return k * q * q }), 2, false)
	}
	c.figures(cv, a)
	c.trail(cv, a)
}

// figures writes the marks' values, each on a bit of paper, so that no line runs through it. The last one of each
// has the unit; one that finds no room beside it is left out.
func (c *Curve) figures(cv *draw.Canvas, a draw.Rect) {
	st := draw.Style{Size: c.Text * 0.9, Color: soft}
	pad := max(3, st.Size*0.12)
	var written []draw.Rect
	write := func(at draw.Point, text string) {
		w := st.Width(cv.Scale, text)
		at.X = min(at.X, a.Right()-pad-1-w)
		at.Y = max(at.Y, a.Y+st.Size*0.85) // the highest mark's may stand below its line
		box := draw.Rect{X: at.X - pad, Y: at.Y - st.Size*0.8, W: w + 2*pad, H: st.Size * 1.05}
		for _, b := range written {
			if b.Overlaps(box) {
				return
			}
		}
		written = append(written, box)
		cv.Fill(draw.Round(box, 4), draw.Solid(draw.Fade(paper, 0.9)))
		cv.Text(at, draw.Left, st, text)
	}
	flows, pressures := marks(c.TopGPM), marks(c.TopPSI)
	for i := len(flows) - 1; i >= 0; i-- {
		write(draw.Pt(cv.Snap(c.at(a, flows[i], 0).X)+5, a.Bottom()-6), label(flows[i], c.Flow, i == len(flows)-1))
	}
	for i := len(pressures) - 1; i >= 0; i-- {
		write(draw.Pt(a.X+2+pad, cv.Snap(c.at(a, 0, pressures[i]).Y)-3), label(pressures[i], c.Pressure, i == len(pressures)-1))
	}
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
