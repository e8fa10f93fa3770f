package control

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Pick is a slide with two positions, each with its word: left is the lower value. The one that is
// chosen is raised and bright.
type Pick struct {
	Area  draw.Rect
	Words [2]string
}

// Box is the slide.
func (p Pick) Box() draw.Rect { return p.Area }

// Still paints the well and both words.
func (p Pick) Still(cv *draw.Canvas, th *theme.Theme) {
	cv.Fill(draw.Round(p.Area, p.Area.H/2), draw.Solid(draw.Darker(th.Groove, 0.35)))
	for i, w := range p.Words {
		cv.Middle(p.half(i).Center(), draw.Center, draw.Style{Size: 15, Color: th.Soft}, w)
	}
}

func (p Pick) half(i int) draw.Rect {
	w := p.Area.W / 2
	return draw.Rect{X: p.Area.X + w*float64(i), Y: p.Area.Y, W: w, H: p.Area.H}
}

// Moving puts the chosen half.
func (p Pick) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	i := 0
	if v >= 0.5 {
		i = 1
	}
	half := p.half(i)
	box := draw.Around(draw.Point{}, half.W, half.H)
	art := sh.Get(fmt.Sprintf("pick/%s/%s/%v/%v", th.Name, p.Words[i], half.W, half.H), box, func(cv *draw.Canvas) {
		r := box.Inset(2)
		cv.Fill(draw.Round(r, r.H/2), draw.Down(r, draw.Lighter(th.Steel, 0.25), th.Steel))
		cv.Middle(draw.Point{}, draw.Center, draw.Style{Size: 15, Weight: draw.Bold, Color: th.Ink}, p.Words[i])
	})
	f.Put(art, half.Center())
}

// Drag moves with the pointer.
func (p Pick) Drag(from, to draw.Point, v float64) float64 { return v + (to.X-from.X)/(p.Area.W/2) }

// Parts are the two halves.
func (p Pick) Parts() []draw.Rect { return []draw.Rect{p.half(0), p.half(1)} }

// Click chooses the half that was clicked.
func (p Pick) Click(at draw.Point, _ float64) (float64, bool) {
	if at.X < p.Area.Center().X {
		return 0, true
	}
	return 1, true
}

// Round is false.
func (p Pick) Round() bool { return false }
