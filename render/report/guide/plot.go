package guide

import (
	"fmt"
	"html/template"
	"math"
	"strings"

	"steadyneedle/sim/fidelity"
)

// measures of a guide's plot, in SVG units.
const (
	wide  = 640.0
	high  = 270.0
	left  = 62.0
	right = 26.0
	upper = 30.0
	lower = 44.0
)

// Colors by Okabe and Ito, dark enough for white paper; the expected curve is dashed as well, and the
// measured one carries dots.
const (
	measuredColor = "#0072b2"
	expectedColor = "#8a4b00"
	bandColor     = "#f4d9a8"
)

// mostDots is up to how many points a curve gets a dot for each.
const mostDots = 40

// axis maps values onto a stretch of the page, with round numbers beside it.
type axis struct{ lo, hi, step, from, to float64 }

// newAxis covers lo to hi with four to eight round steps.
func newAxis(lo, hi, from, to float64) axis {
	if !(hi > lo) {
		lo, hi = lo-1, hi+1
	}
	step := math.Pow(10, math.Floor(math.Log10((hi-lo)/4)))
	for _, k := range []float64{1, 2, 5, 10} {
		if (hi-lo)/(k*step) <= 8 {
			step *= k
			break
		}
	}
	return axis{math.Floor(lo/step+1e-9) * step, math.Ceil(hi/step-1e-9) * step, step, from, to}
}

func (a axis) at(v float64) float64 { return a.from + (a.to-a.from)*(v-a.lo)/(a.hi-a.lo) }

// marks are the round numbers.
func (a axis) marks() []float64 {
	var list []float64
	for k := 0; ; k++ {
		v := a.lo + float64(k)*a.step
		if v > a.hi+a.step/2 {
			return list
		}
		list = append(list, v)
	}
}

// text writes a round number with the decimals of the step.
func (a axis) text(v float64) string {
	decimals := max(0, -int(math.Floor(math.Log10(a.step)+1e-9)))
	return fmt.Sprintf("%.*f", decimals, v+0)
}

// curve draws what was measured over what was expected; empty where there is nothing to plot.
func curve(r *fidelity.Result) template.HTML {
	c := r.Curve
	if c == nil || len(c.Points) < 2 {
		return ""
	}
	x, y := axes(c)
	var p strings.Builder
	fmt.Fprintf(&p, `<svg viewBox="0 0 %g %g" role="img" aria-label="%s" font-family="system-ui, sans-serif" font-size="12">`,
		wide, high, template.HTMLEscapeString(c.Y+" over "+c.X))
	for _, v := range y.marks() {
		fmt.Fprintf(&p, `<path d="M%g %.1fH%g" stroke="#ccd2d6"/><text x="%g" y="%.1f" text-anchor="end">%s</text>`,
			left, y.at(v), wide-right, left-7, y.at(v)+4, y.text(v))
	}
	for _, v := range x.marks() {
		fmt.Fprintf(&p, `<path d="M%.1f %gv5" stroke="#6b747a"/><text x="%.1f" y="%g" text-anchor="middle">%s</text>`,
			x.at(v), high-lower, x.at(v), high-lower+19, x.text(v))
	}
	fmt.Fprintf(&p, `<text x="%g" y="%g" text-anchor="middle">%s</text>`, (left+wide-right)/2, high-6, template.HTMLEscapeString(label(c.X, c.XUnit)))
	drawBand(&p, c, x, y)
	drawPath(&p, c, x, y)
	legend(&p, c)
	p.WriteString("</svg>")
	return template.HTML(p.String()) // made of numbers and escaped text only
}

func label(name, unit string) string {
	if unit == "" {
		return name
	}
	return name + " (" + unit + ")"
}

// axes cover all of a curve, bands included.
func axes(c *fidelity.Curve) (x, y axis) {
	loX, hiX, lo, hi := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, p := range c.Points {
		loX, hiX = min(loX, p.X), max(hiX, p.X)
		for _, v := range []float64{p.Measured, p.Expected - p.Tolerance, p.Expected + p.Tolerance} {
			if !math.IsNaN(v) && !math.IsInf(v, 0) {
				lo, hi = min(lo, v), max(hi, v)
			}
		}
	}
	return newAxis(loX, hiX, left, wide-right), newAxis(lo, hi, high-lower, upper)
}

// drawBand draws tolerance and expected curve.
func drawBand(p *strings.Builder, c *fidelity.Curve, x, y axis) {
	var upper, lower, middle []string
	for _, q := range c.Points {
		if math.IsNaN(q.Expected) {
			continue
		}
		at := func(v float64) string { return fmt.Sprintf("%.1f %.1f", x.at(q.X), y.at(v)) }
		upper = append(upper, at(q.Expected+q.Tolerance))
		lower = append([]string{at(q.Expected - q.Tolerance)}, lower...)
		middle = append(middle, at(q.Expected))
	}
	if len(middle) < 2 {
		return
	}
	if c.Reference == "" {
		fmt.Fprintf(p, `<path d="M%sL%sz" fill="%s" stroke="#c9a25e" stroke-width=".7"/>`, strings.Join(upper, "L"), strings.Join(lower, "L"), bandColor)
	}
	if !c.Bounds {
		fmt.Fprintf(p, `<path d="M%s" fill="none" stroke="%s" stroke-width="1.6" stroke-dasharray="7 5"/>`, strings.Join(middle, "L"), expectedColor)
	}
}

// drawPath draws what was measured, with a dot at each point unless they are many.
func drawPath(p *strings.Builder, c *fidelity.Curve, x, y axis) {
	var line []string
	for _, q := range c.Points {
		if !math.IsNaN(q.Measured) && !math.IsInf(q.Measured, 0) {
			line = append(line, fmt.Sprintf("%.1f %.1f", x.at(q.X), y.at(q.Measured)))
		}
	}
	fmt.Fprintf(p, `<path d="M%s" fill="none" stroke="%s" stroke-width="1.8" stroke-linejoin="round"/>`, strings.Join(line, "L"), measuredColor)
	if len(line) > mostDots {
		return
	}
	for _, xy := range line {
		at := strings.Fields(xy)
		fmt.Fprintf(p, `<circle cx="%s" cy="%s" r="3" fill="%s"/>`, at[0], at[1], measuredColor)
	}
}

// legend says what is what, above the plot.
func legend(p *strings.Builder, c *fidelity.Curve) {
	fmt.Fprintf(p, `<path d="M%g 13h24" stroke="%s" stroke-width="2"/><text x="%g" y="17">%s, measured</text>`,
		left, measuredColor, left+31, template.HTMLEscapeString(label(c.Y, c.YUnit)))
	if len(c.Points) <= mostDots {
		fmt.Fprintf(p, `<circle cx="%g" cy="13" r="3" fill="%s"/>`, left+12, measuredColor)
	}
	word := "expected"
	switch {
	case c.Bounds:
		word = "allowed"
	case c.Reference != "":
		word = c.Reference
	case !c.Judged():
		return
	}
	x := wide - right - 30 - 6.4*float64(len(word))
	if c.Reference == "" {
		fmt.Fprintf(p, `<path d="M%g 6h24v14h-24z" fill="%s" stroke="#c9a25e" stroke-width=".7"/>`, x, bandColor)
	}
	if !c.Bounds {
		fmt.Fprintf(p, `<path d="M%g 13h24" stroke="%s" stroke-width="1.6" stroke-dasharray="7 5"/>`, x, expectedColor)
	}
	fmt.Fprintf(p, `<text x="%g" y="17">%s</text>`, x+30, template.HTMLEscapeString(word))
}

// toleranceBar draws where in its tolerance a value lies.
func toleranceBar(r *fidelity.Result) template.HTML {
	const wide, high, half = 120.0, 14.0, 44.0
	off := (r.Measured - r.Expected) / r.Width()
	if r.Width() == 0 {
		off = 0
		if r.Measured != r.Expected {
			off = math.NaN()
		}
	}
	mark := ""
	if !math.IsNaN(off) {
		x := wide/2 + half*max(-1.3, min(1.3, off))
		color := measuredColor
		if !r.Pass {
			color = "#a3210f"
		}
		mark = fmt.Sprintf(`<path d="M%.1f 1v%g" stroke="%s" stroke-width="3"/>`, x, high-2, color)
	}
	return template.HTML(fmt.Sprintf(`<svg width="%g" height="%g" viewBox="0 0 %g %g" aria-hidden="true"><path d="M%g 3h%gv8h%gz" fill="%s" stroke="#c9a25e" stroke-width=".7"/><path d="M%g 3v8" stroke="%s"/>%s</svg>`,
		wide, high, wide, high, wide/2-half, 2*half, -2*half, bandColor, wide/2, expectedColor, mark))
}
