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
const fanHalf = 41.0

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

// The needle's root lies under the cover; the numbers stand beyond the arc, where it never reaches.
func (d Fan) pivot() draw.Point {
	return draw.Pt(d.Box.Center().X, d.Box.Bottom()-4)
}

func (d Fan) reach() float64 { return d.Box.H - 45 }

// Draw draws case, face and scale.
func (d Fan) Draw(cv *draw.Canvas, th *theme.Theme, s *Scale) {
	b := d.Box
	cv.Shadow(draw.Round(b, 9), 0, 3, 9, draw.Fade(th.Shade, 0.7))
	cv.Fill(draw.Round(b, 9), draw.Solid(draw.Darker(th.BezelLo, 0.6)))
	cv.Fill(draw.Round(b.Inset(1), 8), draw.Down(b, th.BezelHi, th.BezelLo, draw.Darker(th.BezelLo, 0.4)))
	in := b.Inset(5)
	cv.Fill(draw.Round(in, 5), draw.Down(in, th.Face, th.Face, th.FaceEdge))
	c, r := d.pivot(), d.reach()
	cv.Fill(draw.Sector(c, r+0.8, r-0.8, -fanHalf, fanHalf), draw.Solid(th.Ink))
	for _, m := range s.marks() {
		length := [...]float64{5, 7.5, 10}[m.size]
		width := [...]float64{1.1, 1.5, 2.4}[m.size]
		cv.Fill(draw.Segment(c.Polar(r, m.bearing), c.Polar(r-length, m.bearing), width), draw.Solid(th.Ink))
		if m.number {
			d.numeral(cv, in, th, s, m)
		}
	}
	cv.Fill(draw.Frame(in, 5, 2), draw.Linear{From: draw.Pt(0, in.Y), To: draw.Pt(0, in.Bottom()),
		Stops: draw.Even(draw.Fade(th.Shade, 0.4), draw.Fade(th.Shade, 0.05))})
}

// numeral puts the middle number over the arc's crown and those of the ends over its shoulders.
func (d Fan) numeral(cv *draw.Canvas, in draw.Rect, th *theme.Theme, s *Scale, m mark) {
	st := draw.Style{Size: 18, Weight: draw.Bold, Color: th.Ink}
	text := s.label(m.value)
	switch {
	case m.bearing < -fanHalf/2:
		cv.Middle(draw.Pt(in.X+3, in.Y+26), draw.Left, st, text)
	case m.bearing > fanHalf/2:
		cv.Middle(draw.Pt(in.Right()-3, in.Y+26), draw.Right, st, text)
	default:
		cv.Middle(draw.Pt(in.Center().X, in.Y+11), draw.Center, st, text)
	}
}

// Needle puts the needle and the cover over its root.
func (d Fan) Needle(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, s *Scale, v float64) {
	r, c := d.reach(), d.pivot()
	key := fmt.Sprintf("fan/%s/%v", th.Name, r)
	blade := sh.Get(key, draw.Around(draw.Point{}, 16, 2*r+8), func(cv *draw.Canvas) {
		cv.Fill(draw.Poly(draw.Pt(-2.6, -14), draw.Pt(-1, -r+3), draw.Pt(0, -r+1), draw.Pt(1, -r+3), draw.Pt(2.6, -14)), draw.Solid(th.Needle))
		cv.Fill(draw.Poly(draw.Pt(-1.7, -r+15), draw.Pt(-1, -r+3), draw.Pt(0, -r+1), draw.Pt(1, -r+3), draw.Pt(1.7, -r+15)), draw.Solid(th.Lance))
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
