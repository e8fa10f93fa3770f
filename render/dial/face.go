package dial

import (
	"strings"

	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
)

// Size holds a dial's measures in units, all from its outer radius.
type Size struct {
	R                float64 // outer edge of the bezel
	Bezel            float64 // width
	Numeral          float64 // type size
	Name             float64 // type size of the unit
	Mark, Mid, Major float64 // lengths
}

// SizeOf gives the measures for an outer radius. Numerals stay at 18 units or above, so that they are
// at least 14 px high in the smallest window.
func SizeOf(r float64) Size {
	return Size{
		R: r, Bezel: max(6, r*0.085),
		Numeral: max(18, min(27, r*0.155)), Name: max(15, min(19, r*0.135)),
		Mark: max(4, r*0.06), Mid: max(6.5, r*0.1), Major: max(9, r*0.145),
	}
}

// face is the radius of the dial's face inside its bezel.
func (z Size) face() float64 { return z.R - z.Bezel }

// rim is the radius where marks begin.
func (z Size) rim() float64 { return z.face() - max(3, z.R*0.035) }

// Draw draws bezel, face, marks, numbers and unit at c.
func Draw(cv *draw.Canvas, th *theme.Theme, c draw.Point, z Size, s *Scale) {
	bezel(cv, th, c, z)
	f := z.face()
	cv.Fill(draw.Circle(c, f), draw.Radial{Center: c.Add(draw.Pt(-f*0.18, -f*0.25)), R: f * 1.35,
		Stops: []draw.Stop{{T: 0, C: th.Face}, {T: 0.62, C: th.Face}, {T: 1, C: th.FaceEdge}}})
	if !th.Plain { // the glass catches the sky
		shine := new(draw.Path).Arc(c, f*0.985, -112, 36).Quad(c.Polar(f*0.42, -38), c.Polar(f*0.985, -112)).Close()
		cv.Fill(shine, draw.Linear{From: c.Add(draw.Pt(-f, -f)), To: c, Stops: draw.Even(draw.Fade(th.SteelHi, 0.5), draw.Fade(th.SteelHi, 0))})
	}
	for _, r := range s.Ranges {
		cv.Fill(draw.Sector(c, z.rim(), z.rim()-max(2.5, z.R*0.026), s.Bearing(r.Lo), s.Bearing(r.Hi)), draw.Solid(th.Warn))
	}
	for _, m := range s.marks() {
		drawMark(cv, th, c, z, m)
		if m.number {
			numeral(cv, th, c, z, s, m)
		}
	}
	words(cv, th, c, z, s)
	// the bezel's lip throws a shadow on the face
	cv.Fill(draw.Ring(c, f, f-max(2, z.R*0.02)), draw.Linear{From: draw.Pt(c.X, c.Y-f), To: draw.Pt(c.X, c.Y+f),
		Stops: draw.Even(draw.Fade(th.Shade, 0.45), draw.Fade(th.Shade, 0.04))})
}

// bezel is a turned ring of metal with a dark seat, standing a little above the plate.
func bezel(cv *draw.Canvas, th *theme.Theme, c draw.Point, z Size) {
	cv.Shadow(draw.Circle(c, z.R), 0, z.R*0.045, max(6, z.R*0.1), draw.Fade(th.Shade, 0.7))
	hi, lo := th.BezelHi, th.BezelLo
	turned := draw.Conic{Center: c, Stops: draw.Even(hi, draw.Mix(hi, lo, 0.55), lo, draw.Darker(lo, 0.25),
		draw.Mix(hi, lo, 0.6), draw.Darker(lo, 0.35), lo, draw.Mix(hi, lo, 0.3), hi)}
	cv.Fill(draw.Circle(c, z.R), draw.Solid(draw.Darker(lo, 0.6)))
	cv.Fill(draw.Circle(c, z.R-1), turned)
	in := z.R - z.Bezel*0.62
	cv.Fill(draw.Circle(c, in), draw.Linear{From: draw.Pt(c.X, c.Y-in), To: draw.Pt(c.X, c.Y+in),
		Stops: draw.Even(draw.Darker(lo, 0.55), lo, hi)})
	cv.Fill(draw.Circle(c, z.face()+1), draw.Solid(draw.Darker(lo, 0.75)))
}

func drawMark(cv *draw.Canvas, th *theme.Theme, c draw.Point, z Size, m mark) {
	length := [...]float64{z.Mark, z.Mid, z.Major}[m.size]
	width := [...]float64{max(1, z.R*0.0085), max(1.3, z.R*0.013), max(2.2, z.R*0.022)}[m.size]
	cv.Fill(draw.Segment(c.Polar(z.rim(), m.bearing), c.Polar(z.rim()-length, m.bearing), width), draw.Solid(th.Ink))
}

// numeral stands upright just inside its mark.
func numeral(cv *draw.Canvas, th *theme.Theme, c draw.Point, z Size, s *Scale, m mark) {
	st := draw.Style{Size: z.Numeral, Weight: draw.Bold, Color: th.Ink}
	text := s.label(m.value)
	w, h := st.Width(cv.Scale, text), st.Size*draw.CapHeight
	r := z.rim() - z.Major - z.R*0.008
	p := c.Polar(r, m.bearing)
	dir := (draw.Point{}).Polar(1, m.bearing)
	// move the number inwards by half its box along the bearing, so that its corner keeps clear of the mark
	p = draw.Pt(p.X-dir.X*w/2, p.Y-dir.Y*h/2)
	// a needle at rest must not strike the number of its end through: that stands off into the gap
	switch gap := h * 0.62; {
	case m.bearing <= s.Parts[0].From:
		p = p.Polar(gap, m.bearing-90)
	case m.bearing >= s.Parts[len(s.Parts)-1].To:
		p = p.Polar(gap, m.bearing+90)
	}
	cv.Middle(p, draw.Center, st, text)
}

// words are the units: below the hub or, on a small dial, at the foot of the face; in the gap between the ends
// stand the factor of a tachometer and the unit of vacuum on a compound gauge.
func words(cv *draw.Canvas, th *theme.Theme, c draw.Point, z Size, s *Scale) {
	at := func(share float64) draw.Point { return draw.Pt(c.X, c.Y+z.face()*share) }
	unit, factor := s.Unit, s.Below
	if head, tail, ok := strings.Cut(unit, " × "); ok && factor == "" {
		unit, factor = head, "× "+tail
	}
	st := draw.Style{Size: z.Name, Color: th.InkSoft}
	high := 0.46
	switch { // above the numbers of the ends
	case z.R < 80:
		high = 0.37
	case s.Below != "":
		high = 0.4
	}
	if factor == "" && z.R < 92 { // below the numbers of the ends, clear of the needle's tail
		cv.Middle(at(0.83), draw.Center, st, unit)
		return
	}
	cv.Middle(at(high), draw.Center, st, unit)
	if factor == "" {
		return
	}
	if s.Below != "" {
		st.Color = th.Warn
	}
	cv.Middle(at(0.81), draw.Center, st, factor)
}
