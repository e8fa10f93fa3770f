package debrief

import (
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
	"steadyneedle/sim/world"
)

// laneNames is the room for the names of lamps and valves.
const laneNames = 176.0

// LanesH is the height in which lamps and valves can be told apart.
const LanesH = 330.0

// lanes draws each lamp and valve as a lane of its own: filled as high as it stood open.
func (p Plot) lanes(cv *draw.Canvas, th *theme.Theme) {
	list := p.shown()
	if len(list) == 0 {
		return
	}
	a := p.Area()
	high := a.H / float64(len(list))
	cv.Middle(draw.Pt(p.Box.X+12, p.Box.Y+16), draw.Left, draw.Style{Size: 15, Color: th.CardSoft}, "lit, or how far open")
	name := draw.Style{Size: 15, Color: th.CardText}
	for i, s := range list {
		lane := draw.Rect{X: a.X, Y: a.Y + float64(i)*high, W: a.W, H: high - 2}
		cv.Middle(draw.Pt(a.X-8, lane.Center().Y), draw.Right, name, name.Fit(cv.Scale, laneNames-14, s.Name))
		cv.Fill(draw.Box(lane), draw.Solid(draw.Mix(th.Card, th.Rule, 0.35)))
		col := th.Water
		if s.Unit == "lamp" {
			col = th.Green
			if s.Name == "Relief lamp" {
				col = th.Amber
			}
		}
		p.fillLane(cv, lane, s.V, col)
	}
}

// fillLane draws runs of equal value as boxes.
func (p Plot) fillLane(cv *draw.Canvas, lane draw.Rect, v []float64, col draw.Color) {
	for from := 0; from < len(v); {
		to := from + 1
		for to < len(v) && math.Abs(v[to]-v[from]) < 0.02 {
			to++
		}
		if h := lane.H * max(0, min(1, v[from])); h > 0.02*lane.H {
			x := p.X(world.TicksIn(float64(from)))
			w := max(1, p.X(world.TicksIn(float64(to)))-x)
			cv.Fill(draw.Box(draw.Rect{X: x, Y: lane.Bottom() - h, W: w, H: h}), draw.Solid(col))
		}
		from = to
	}
}
