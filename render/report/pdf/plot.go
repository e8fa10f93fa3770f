package pdf

import (
	"fmt"
	"math"
)

const (
	plotH  = 52.0
	rpmTop = 3000.0
)

// looks are colors (Okabe and Ito's, darkened for paper) and dashes of the lines.
var looks = []struct {
	r, g, b int
	dash    []float64
}{{179, 107, 0, nil}, {0, 114, 178, []float64{2.4, 1.4}}, {0, 102, 76, []float64{0.8, 0.8}}}

// plot draws pressures and speed over time, the line's band, and a mark for each finding.
func (p page) plot() {
	p.Ln(3)
	p.legend()
	c := p.newChart()
	if b := p.s.Band; b != nil && b.To > b.From {
		p.SetFillColor(246, 226, 190)
		p.Rect(c.x(b.From.Seconds()), c.y(b.Hi, c.top), c.x(b.To.Seconds())-c.x(b.From.Seconds()), c.y(b.Lo, c.top)-c.y(b.Hi, c.top), "F")
	}
	c.axes()
	for i := range p.s.Main() {
		c.line(i)
	}
	p.SetDashPattern(nil, 0)
	p.SetDrawColor(163, 33, 15)
	p.SetLineWidth(0.2)
	for _, f := range p.s.Findings {
		at := c.x(f.At.Seconds())
		p.Line(at, c.y0-1, at, c.y0+plotH)
	}
	p.SetY(c.y0 + plotH + 5)
}

// chart is where the plot stands on its page, and its scales.
type chart struct {
	page
	x0, y0, w float64
	end       float64 // s
	top       float64 // of the scale of pressures
}

func (p page) newChart() chart {
	c := chart{page: p, x0: left + 9, y0: p.GetY() + 2, w: width - 22, end: math.Max(1, p.s.Length.Seconds()), top: 200}
	for _, s := range p.s.Main() {
		for _, v := range s.V {
			if s.Unit != "rpm" && v > c.top {
				c.top = math.Ceil(v/100) * 100
			}
		}
	}
	return c
}

func (c *chart) x(seconds float64) float64 { return c.x0 + c.w*math.Min(1, seconds/c.end) }

// y is the height of a value on a scale from 0 to top.
func (c *chart) y(v, top float64) float64 {
	return c.y0 + plotH*(1-math.Max(0, math.Min(1, v/top)))
}

func (c *chart) axes() {
	c.style("", 7, 80)
	c.SetLineWidth(0.1)
	c.SetDrawColor(200, 205, 208)
	for i := range 5 {
		k := float64(i) / 4
		at := c.y(k, 1)
		c.Line(c.x0, at, c.x0+c.w, at)
		c.Text(left, at+1, fmt.Sprintf("%.0f", k*c.top))
		c.Text(c.x0+c.w+1, at+1, fmt.Sprintf("%.0f", k*rpmTop))
	}
	step := 60.0
	for c.end/step > 12 {
		step *= 2
	}
	for s := 0.0; s <= c.end; s += step {
		c.Text(c.x(s)-1, c.y0+plotH+3.5, fmt.Sprintf("%.0f min", s/60))
	}
}

// line draws the i-th of the sheet's main series; where it has no number there is a gap.
func (c *chart) line(i int) {
	s, l := c.s.Main()[i], looks[i%len(looks)]
	c.SetDrawColor(l.r, l.g, l.b)
	c.SetLineWidth(0.35)
	c.SetDashPattern(l.dash, 0)
	top := c.top
	if s.Unit == "rpm" {
		top = rpmTop
	}
	pen := false
	for n, v := range s.V {
		switch {
		case math.IsNaN(v):
			pen = false
		case pen:
			c.LineTo(c.x(float64(n)), c.y(v, top))
		default:
			c.MoveTo(c.x(float64(n)), c.y(v, top))
			pen = true
		}
	}
	c.DrawPath("D")
}

func (p page) legend() {
	x, y := left+9, p.GetY()
	for i, s := range p.s.Main() {
		l := looks[i%len(looks)]
		p.SetDrawColor(l.r, l.g, l.b)
		p.SetLineWidth(0.5)
		p.SetDashPattern(l.dash, 0)
		p.Line(x, y, x+8, y)
		p.SetDashPattern(nil, 0)
		p.style("", 8, 40)
		name := fmt.Sprintf("%s (%s)", s.Name, s.Unit)
		p.Text(x+10, y+1, name)
		x += 16 + p.GetStringWidth(name)
	}
	p.SetY(y + 2)
}
