package control

import (
	"fmt"
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Handle is a T-handle on a rod: pushed in it is shut, pulled toward the operator it opens. On the
// panel it comes down as it is pulled.
type Handle struct {
	Top    draw.Point // middle of the slot's upper end
	Travel float64
	Grip   float64 // width of the T
	Tag    *theme.Plate
}

const gripHalf = 12.0

// Box is the slot with the grip's width.
func (h Handle) Box() draw.Rect {
	return draw.Rect{X: h.Top.X - h.Grip/2, Y: h.Top.Y - gripHalf - 3, W: h.Grip, H: h.Travel + 2*gripHalf + 6}
}

// Still paints the slot and its scale of quarters.
func (h Handle) Still(cv *draw.Canvas, th *theme.Theme) {
	slot := draw.Rect{X: h.Top.X - 10, Y: h.Top.Y - 14, W: 20, H: h.Travel + 28}
	cv.Fill(draw.Round(slot.Inset(-2), 12), draw.Down(slot, draw.Darker(th.PlateLo, 0.5), draw.Fade(th.Edge, 0.7)))
	cv.Fill(draw.Round(slot, 10), draw.Across(slot, draw.Darker(th.Groove, 0.5), th.Groove, draw.Darker(th.Groove, 0.3)))
	for i := range 5 {
		y := cv.Snap(h.Top.Y + h.Travel*float64(i)/4)
		w := 7.0
		if i%2 == 1 {
			w = 4
		}
		cv.Fill(draw.Box(draw.Rect{X: h.Top.X + 15, Y: y - 0.75, W: w, H: 1.5}), draw.Solid(draw.Fade(th.Text, 0.65)))
	}
}

// Moving puts the rod and the grip.
func (h Handle) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	out := math.Round(v * h.Travel)
	if out > 0 {
		rod := draw.Rect{X: -5, W: 10, H: out + 2}
		art := sh.Get(fmt.Sprintf("rod/%s/%v", th.Name, out), rod, func(cv *draw.Canvas) {
			cv.Fill(draw.Box(rod), alongX(rod, metal(th)))
			cv.Fill(draw.Box(draw.Rect{X: -5, W: 10, H: 5}), draw.Down(draw.Rect{H: 5}, draw.Fade(th.Shade, 0.8), draw.Fade(th.Shade, 0)))
		})
		f.Put(art, draw.Pt(h.Top.X, h.Top.Y-2))
	}
	tag := ""
	if h.Tag != nil {
		tag = h.Tag.Name
	}
	box := draw.Rect{X: -h.Grip/2 - 8, Y: -gripHalf - 6, W: h.Grip + 16, H: 2*gripHalf + 22}
	art := sh.Get(fmt.Sprintf("grip/%s/%v/%s", th.Name, h.Grip, tag), box, func(cv *draw.Canvas) { h.grip(cv, th) })
	f.Put(art, draw.Pt(h.Top.X, h.Top.Y+out))
}

func (h Handle) grip(cv *draw.Canvas, th *theme.Theme) {
	bar := draw.Rect{X: -h.Grip / 2, Y: -gripHalf, W: h.Grip, H: 2 * gripHalf}
	p := draw.Round(bar, gripHalf)
	cv.Shadow(p, 0, 5, 9, draw.Fade(th.Shade, 0.75))
	cv.Fill(p, draw.Solid(draw.Darker(th.SteelLo, 0.5)))
	in := bar.Inset(1)
	cv.Fill(draw.Round(in, gripHalf), alongY(in, metal(th)))
	if h.Tag != nil { // a band of the line's color round the middle of the grip
		band := draw.Rect{X: -11, Y: in.Y, W: 22, H: in.H}
		cv.Fill(draw.Box(band), draw.Down(band, draw.Darker(h.Tag.Back, 0.25), draw.Lighter(h.Tag.Back, 0.25), h.Tag.Back, draw.Darker(h.Tag.Back, 0.35)))
	}
	for _, x := range []float64{-h.Grip/2 + 13, h.Grip/2 - 13} { // turned grooves
		for k := -1.0; k <= 1; k++ {
			cv.Fill(draw.Box(draw.Rect{X: x + k*4 - 0.6, Y: in.Y + 2, W: 1.2, H: in.H - 4}), draw.Solid(draw.Fade(th.Shade, 0.3)))
		}
	}
}

// Drag pulls along the slot.
func (h Handle) Drag(from, to draw.Point, v float64) float64 { return v + (to.Y-from.Y)/h.Travel }

// Click does nothing: a handle is pulled.
func (h Handle) Click(draw.Point, float64) (float64, bool) { return 0, false }

// Round is false.
func (h Handle) Round() bool { return false }
