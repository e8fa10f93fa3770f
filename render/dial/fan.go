package dial

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Fan is a small instrument: a needle that swings over a flat arc in a rectangular case, with its name
// on the lower cover. It keeps large numbers legible where a round dial would be too small for them.
type Fan struct {
	Box  draw.Rect
	Name string
}

// Half the sweep of a fan, degrees.
const fanHalf = 27.0

// FanScale is a scale of equal steps for a fan: numbers at both ends and in the middle, marks at every
// division, or every other one where they would run together.
func FanScale(lo, hi, division float64, unit string) *Scale {
	if (hi-lo)/division > 24 {
		division *= 2
	}
	half := (hi - lo) / 2
	longer := division * 2
	if !whole(half / longer) {
		longer = half
	}
	return &Scale{Parts: []Part{{lo, hi, -fanHalf, fanHalf, division, longer, half, half}}, Unit: unit}
}

const fanCover = 27.0

func (d Fan) pivot() draw.Point {
	return draw.Pt(d.Box.Center().X, d.Box.Bottom()-fanCover+25)
}

func (d Fan) reach() float64 { return d.Box.H - fanCover + 14 }

// Draw draws case, face and scale.
func (d Fan) Draw(cv *draw.Canvas, th *theme.Theme, s *Scale) {
	b := d.Box
	cv.Shadow(draw.Round(b, 9), 0, 3, 9, draw.Fade(th.Shade, 0.7))
	cv.Fill(draw.Round(b, 9), draw.Solid(draw.Darker(th.BezelLo, 0.6)))
	cv.Fill(draw.Round(b.Inset(1), 8), draw.Down(b, th.BezelHi, th.BezelLo, draw.Darker(th.BezelLo, 0.4)))
	in := b.Inset(5)
	cv.Fill(draw.Round(in, 5), draw.Down(in, th.Face, th.Face, th.FaceEdge))
	c, r := d.pivot(), d.reach()
	z := Size{R: r, Numeral: 18, Mark: 5, Mid: 7, Major: 10}
	for _, m := range s.marks() {
		length := [...]float64{z.Mark, z.Mid, z.Major}[m.size]
		width := [...]float64{1.1, 1.4, 2.2}[m.size]
		cv.Fill(draw.Segment(c.Polar(r, m.bearing), c.Polar(r-length, m.bearing), width), draw.Solid(th.Ink))
		if m.number {
			in := r - z.Major - 2
			if m.bearing > -fanHalf/2 && m.bearing < fanHalf/2 {
				in -= 21 // below its neighbors
			}
			d.numeral(cv, th, c, in, s, m)
		}
	}
	cv.Fill(draw.Frame(in, 5, 2), draw.Linear{From: draw.Pt(0, in.Y), To: draw.Pt(0, in.Bottom()),
		Stops: draw.Even(draw.Fade(th.Shade, 0.4), draw.Fade(th.Shade, 0.05))})
}

func (d Fan) numeral(cv *draw.Canvas, th *theme.Theme, c draw.Point, r float64, s *Scale, m mark) {
	st := draw.Style{Size: 18, Weight: draw.Bold, Color: th.Ink}
	text := s.label(m.value)
	w, h := st.Width(cv.Scale, text), st.Size*draw.CapHeight
	dir := (draw.Point{}).Polar(1, m.bearing)
	p := c.Polar(r, m.bearing)
	in := d.Box.Inset(8)
	x := max(in.X+w/2, min(in.Right()-w/2, p.X-dir.X*w*0.5))
	cv.Middle(draw.Pt(x, p.Y-dir.Y*h*0.55), draw.Center, st, text)
}

// Needle puts the needle and the cover over its root.
func (d Fan) Needle(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, s *Scale, v float64) {
	r, c := d.reach(), d.pivot()
	key := fmt.Sprintf("fan/%s/%v", th.Name, r)
	blade := sh.Get(key, draw.Around(draw.Point{}, 16, 2*r+8), func(cv *draw.Canvas) {
		cv.Fill(draw.Poly(draw.Pt(-2.5, -9), draw.Pt(-1.2, -r*0.6), draw.Pt(1.2, -r*0.6), draw.Pt(2.5, -9)), draw.Solid(th.Needle))
		cv.Fill(draw.Poly(draw.Pt(-1.2, -r*0.6+0.5), draw.Pt(-0.9, -r+5), draw.Pt(0, -r+2), draw.Pt(0.9, -r+5), draw.Pt(1.2, -r*0.6+0.5)), draw.Solid(th.Lance))
	})
	cover := sh.Get(fmt.Sprintf("cover/%s/%s/%s/%v", th.Name, d.Name, s.Unit, d.Box.W), draw.Rect{W: d.Box.W - 10, H: fanCover - 5}, func(cv *draw.Canvas) {
		box := draw.Rect{W: d.Box.W - 10, H: fanCover - 5}
		cv.Fill(draw.Round(box, 4), draw.Solid(th.LabelBack))
		cv.Fill(draw.Box(draw.Rect{W: box.W, H: 1}), draw.Solid(draw.Fade(th.Edge, 0.8)))
		cv.Middle(box.Center(), draw.Center, draw.Style{Size: 15, Weight: draw.Bold, Color: th.Label}, d.Name)
	})
	f.Turn(blade, c, s.Bearing(s.Read(v)))
	f.Put(cover, draw.Pt(d.Box.X+5, d.Box.Bottom()-fanCover))
}
