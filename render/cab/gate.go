package cab

import (
	"math"

	"steadyneedle/render/control"
	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Gate is a lever in an upright slot: one notch for each option, the first at the top.
type Gate struct {
	Area    draw.Rect
	Options []string
}

var _ control.Face = Gate{}

// Box is the plate of the slot with its words.
func (g Gate) Box() draw.Rect { return g.Area }

const gateX = 26.0 // middle of the slot, from the left

func (g Gate) notch(i int) float64 {
	n := max(1, len(g.Options)-1)
	return g.Area.Y + 26 + (g.Area.H-52)*float64(i)/float64(n)
}

// Still paints the plate, the slot and the words beside its notches.
func (g Gate) Still(cv *draw.Canvas, th *theme.Theme) {
	cv.Fill(draw.Round(g.Area, 7), draw.Down(g.Area, draw.Darker(th.PlateLo, 0.25), draw.Darker(th.PlateLo, 0.5)))
	cv.Fill(draw.Frame(g.Area, 7, 1.2), draw.Solid(draw.Fade(th.Edge, 0.8)))
	x := g.Area.X + gateX
	slot := draw.Rect{X: x - 6, Y: g.Area.Y + 14, W: 12, H: g.Area.H - 28}
	cv.Fill(draw.Round(slot.Inset(-2), 8), draw.Solid(draw.Fade(th.Edge, 0.6)))
	cv.Fill(draw.Round(slot, 6), draw.Across(slot, draw.Darker(th.Groove, 0.6), th.Groove))
	for i, name := range g.Options {
		y := g.notch(i)
		cv.Fill(draw.Box(draw.Rect{X: x + 8, Y: cv.Snap(y - 1), W: 14, H: 2}), draw.Solid(th.Soft))
		cv.Middle(draw.Pt(x+30, y), draw.Left, draw.Style{Size: 17, Weight: draw.Bold, Color: th.Text}, name)
	}
}

// Moving puts the lever's ball and its collar.
func (g Gate) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	art := sh.Get("gate/"+th.Name, draw.Around(draw.Point{}, 64, 64), func(cv *draw.Canvas) {
		o := draw.Point{}
		collar := draw.Around(o, 34, 12)
		cv.Fill(draw.Round(collar, 6), draw.Down(collar, th.Steel, th.SteelLo))
		cv.Shadow(draw.Circle(o, 15), 0, 5, 9, draw.Fade(th.Shade, 0.85))
		cv.Fill(draw.Circle(o, 15), draw.Radial{Center: draw.Pt(-5, -6), R: 24, Stops: draw.Even(th.GripHi, th.Grip, draw.Darker(th.Grip, 0.6))})
		cv.Fill(draw.Circle(draw.Pt(-5, -6), 3.4), draw.Solid(draw.Fade(th.SteelHi, 0.6)))
	})
	y := g.Area.Y + 26 + (g.Area.H-52)*max(0, min(1, v))
	f.Put(art, draw.Pt(g.Area.X+gateX, y))
}

// Drag moves the lever along its slot.
func (g Gate) Drag(from, to draw.Point, v float64) float64 {
	return v + (to.Y-from.Y)/(g.Area.H-52)
}

// Click sends the lever to the notch nearest to the pointer.
func (g Gate) Click(at draw.Point, _ float64) (float64, bool) {
	n := max(1, len(g.Options)-1)
	share := (at.Y - g.Area.Y - 26) / (g.Area.H - 52)
	return max(0, min(1, math.Round(share*float64(n))/float64(n))), true
}

// Round is false.
func (g Gate) Round() bool { return false }
