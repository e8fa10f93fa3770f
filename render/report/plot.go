package report

import (
	"fmt"
	"html/template"
	"math"
	"strings"
)

// measures of the timeline, in SVG units.
const (
	wide   = 960.0
	high   = 300.0
	left   = 50.0
	right  = 50.0
	upper  = 34.0
	lower  = 30.0
	rpmTop = 3000.0
)

// Okabe and Ito's colors, darkened where white paper needs it, and a dash for each.
var looks = []struct{ color, dash string }{{"#b36b00", ""}, {"#0072b2", "9 6"}, {"#00664c", "3 3"}}

type plotter struct {
	strings.Builder
	s   *Sheet
	end float64 // s
	top float64 // psi
}

// plot draws the timeline as SVG.
func plot(s *Sheet) template.HTML {
	main := *s
	main.Series = s.Main()
	s = &main
	p := &plotter{s: s, end: max(1, s.Length.Seconds()), top: 200}
	for i := range s.Series {
		for _, v := range s.Series[i].V {
			if s.Series[i].Unit != "rpm" && v > p.top {
				p.top = math.Ceil(v/100) * 100
			}
		}
	}
	fmt.Fprintf(p, `<svg viewBox="0 0 %g %g" role="img" aria-label="Pressures and engine speed over time" font-family="system-ui, sans-serif" font-size="13">`, wide, high)
	p.grid()
	p.band()
	for i := range s.Series {
		p.line(i)
	}
	for _, f := range s.Findings {
		x := p.x(f.At.Seconds())
		fmt.Fprintf(p, `<path d="M%.1f %gv%g" stroke="#a3210f" stroke-width="1"/><path d="M%.1f %gl-5 -8h10z" fill="#a3210f"><title>%s</title></path>`,
			x, upper, high-upper-lower, x, upper+4, template.HTMLEscapeString(f.Title))
	}
	p.WriteString("</svg>")
	return template.HTML(p.String()) //nolint: made of numbers and escaped text only
}

func (p *plotter) x(s float64) float64 { return left + (wide-left-right)*min(1, s/p.end) }

func (p *plotter) y(v, top float64) float64 {
	return high - lower - (high-upper-lower)*max(-0.02, min(1.02, v/top))
}

func (p *plotter) grid() {
	for i := range 5 {
		v := p.top * float64(i) / 4
		y := p.y(v, p.top)
		fmt.Fprintf(p, `<path d="M%g %.1fH%g" stroke="#ccd2d6"/><text x="%g" y="%.1f" text-anchor="end">%.0f</text><text x="%g" y="%.1f">%.0f</text>`,
			left, y, wide-right, left-6, y+4, v, wide-right+6, y+4, rpmTop*float64(i)/4)
	}
	step := 60.0
	for p.end/step > 14 {
		step *= 2
	}
	for s := 0.0; s <= p.end; s += step {
		fmt.Fprintf(p, `<text x="%.1f" y="%g" text-anchor="middle">%.0f min</text>`, p.x(s), high-8, s/60)
	}
	x := left
	for i := range p.s.Series {
		s := &p.s.Series[i]
		look := looks[i%len(looks)]
		fmt.Fprintf(p, `<path d="M%.1f 14h26" stroke="%s" stroke-width="2.5" stroke-dasharray="%s"/><text x="%.1f" y="18">%s (%s)</text>`,
			x, look.color, look.dash, x+32, template.HTMLEscapeString(s.Name), s.Unit)
		x += 32 + float64(len(s.Name)+len(s.Unit)+3)*8 + 20
	}
}

func (p *plotter) band() {
	b := p.s.Band
	if b == nil {
		return
	}
	x0, x1 := p.x(b.From.Seconds()), p.x(b.To.Seconds())
	y0, y1 := p.y(b.Hi, p.top), p.y(b.Lo, p.top)
	fmt.Fprintf(p, `<path d="M%.1f %.1fH%.1fV%.1fH%.1fz" fill="#f4d9a8" opacity=".7"><title>tolerance of the line's pressure</title></path>`, x0, y0, x1, y1, x0)
}

func (p *plotter) line(i int) {
	s := &p.s.Series[i]
	top := p.top
	if s.Unit == "rpm" {
		top = rpmTop
	}
	look := looks[i%len(looks)]
	var d strings.Builder
	verb := byte('M')
	for n, v := range s.V {
		if math.IsNaN(v) {
			verb = 'M'
			continue
		}
		fmt.Fprintf(&d, "%c%.1f %.1f", verb, p.x(float64(n)), p.y(v, top))
		verb = 'L'
	}
	fmt.Fprintf(p, `<path d="%s" fill="none" stroke="%s" stroke-width="1.8" stroke-dasharray="%s"/>`, d.String(), look.color, look.dash)
}
