package pdf

import (
	"fmt"
	"math"

	"steadyneedle/sim/world"
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
	series := p.s.Main()
	top := 200.0
	for _, s := range series {
		for _, v := range s.V {
			if s.Unit != "rpm" && v > top {
				top = math.Ceil(v/100) * 100
			}
		}
	}
	p.Ln(3)
	p.legend()
	x0, y0, w := left+9, p.GetY()+2, width-22
	end := math.Max(1, p.s.Length.Seconds())
	x := func(seconds float64) float64 { return x0 + w*math.Min(1, seconds/end) }
	y := func(v, top float64) float64 { return y0 + plotH*(1-math.Max(0, math.Min(1, v/top))) }
	if b := p.s.Band; b != nil && b.To > b.From {
		p.SetFillColor(246, 226, 190)
		p.Rect(x(b.From.Seconds()), y(b.Hi, top), x(b.To.Seconds())-x(b.From.Seconds()), y(b.Lo, top)-y(b.Hi, top), "F")
	}
	p.style("", 7, 80)
	p.SetLineWidth(0.1)
	p.SetDrawColor(200, 205, 208)
	for i := range 5 {
		k := float64(i) / 4
		at := y(k, 1)
		p.Line(x0, at, x0+w, at)
		p.Text(left, at+1, fmt.Sprintf("%.0f", k*top))
		p.Text(x0+w+1, at+1, fmt.Sprintf("%.0f", k*rpmTop))
	}
	step := 60.0
	for end/step > 12 {
		step *= 2
	}
	for s := 0.0; s <= end; s += step {
		p.Text(x(s)-1, y0+plotH+3.5, fmt.Sprintf("%.0f min", s/60))
	}
	for i, s := range series {
		l := looks[i%len(looks)]
		p.SetDrawColor(l.r, l.g, l.b)
		p.SetLineWidth(0.35)
		p.SetDashPattern(l.dash, 0)
		t := top
		if s.Unit == "rpm" {
			t = rpmTop
		}
		pen := false
		for n, v := range s.V {
			switch {
			case math.IsNaN(v):
				pen = false
			case pen:
				p.LineTo(x(float64(n)), y(v, t))
			default:
				p.MoveTo(x(float64(n)), y(v, t))
				pen = true
			}
		}
		p.DrawPath("D")
	}
	p.SetDashPattern(nil, 0)
	p.SetDrawColor(163, 33, 15)
	p.SetLineWidth(0.2)
	for _, f := range p.s.Findings {
		at := x(world.Tick(f.At).Seconds())
		p.Line(at, y0-1, at, y0+plotH)
	}
	p.SetY(y0 + plotH + 5)
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
