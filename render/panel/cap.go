package panel

import (
	"fmt"

	"steadyneedle/render/control"
	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Cap is a discharge outlet: its cap on, or off and the outlet open. A click takes it off or puts it on.
type Cap struct {
	At    draw.Point
	R     float64
	Line  int
	Plate theme.Plate
}

var _ control.Face = Cap{}

// Box is the outlet.
func (c Cap) Box() draw.Rect { return draw.Around(c.At, 2*c.R, 2*c.R) }

// Still paints the flange and the open outlet.
func (c Cap) Still(cv *draw.Canvas, th *theme.Theme) {
	cv.Shadow(draw.Circle(c.At, c.R), 0, 3, 8, draw.Fade(th.Shade, 0.8))
	cv.Fill(draw.Circle(c.At, c.R), draw.Conic{Center: c.At, Stops: draw.Even(th.SteelHi, th.SteelLo, th.Steel, th.SteelLo, th.SteelHi, th.SteelLo, th.Steel, th.SteelLo, th.SteelHi)})
	cv.Fill(draw.Circle(c.At, c.R-6), draw.Solid(draw.Darker(th.SteelLo, 0.5)))
	for r := c.R - 8; r > c.R-15; r -= 2.4 { // threads
		cv.Fill(draw.Ring(c.At, r, r-1), draw.Solid(draw.Fade(th.SteelHi, 0.5)))
	}
	cv.Fill(draw.Circle(c.At, c.R-15), draw.Radial{Center: c.At, R: c.R - 15, Stops: draw.Even(draw.Hex(0x020303), draw.Hex(0x14191c))})
}

// Moving puts the cap while it is on.
func (c Cap) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, v float64) {
	if v < 0.5 {
		return
	}
	plate := c.Plate
	art := sh.Get(fmt.Sprintf("cap/%s/%s/%v", th.Name, plate.Name, c.R), draw.Around(draw.Point{}, 2*c.R+24, 2*c.R+24), func(cv *draw.Canvas) {
		o := draw.Point{}
		r := c.R - 3
		for _, a := range []float64{90, 270} { // lugs
			cv.Fill(draw.Round(draw.Around(o.Polar(r+1, a), 10, 16), 3), draw.Solid(th.SteelLo))
		}
		cv.Shadow(draw.Circle(o, r), 0, 2, 6, draw.Fade(th.Shade, 0.7))
		cv.Fill(draw.Circle(o, r), draw.Conic{Center: o, Stops: draw.Even(th.SteelHi, th.Steel, th.SteelLo, th.Steel, th.SteelHi, th.Steel, th.SteelLo, th.Steel, th.SteelHi)})
		cv.Fill(draw.Circle(o, r*0.74), draw.Solid(draw.Darker(plate.Back, 0.3)))
		cv.Fill(draw.Circle(o, r*0.70), draw.Radial{Center: draw.Pt(-r*0.3, -r*0.4), R: r * 1.3, Stops: draw.Even(draw.Lighter(plate.Back, 0.12), plate.Back, draw.Darker(plate.Back, 0.25))})
		cv.Middle(o, draw.Center, draw.Style{Size: 22, Weight: draw.Bold, Color: plate.Text}, fmt.Sprint(c.Line))
	})
	f.Put(art, c.At)
}

// Drag leaves it as it is.
func (c Cap) Drag(_, _ draw.Point, v float64) float64 { return v }

// Click takes the cap off or puts it on.
func (c Cap) Click(_ draw.Point, v float64) (float64, bool) {
	if v < 0.5 {
		return 1, true
	}
	return 0, true
}

// Round is true.
func (c Cap) Round() bool { return true }
