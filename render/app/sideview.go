package app

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
)

// measures of the apparatus seen from its pump operator's side, in its own units; y is up from the road.
const (
	sideW = 430.0
	sideH = 132.0
)

// sideView is Engine 41 from its left: cab, pump panel, compartments and hose bed. Its measures
// are drawn k times as large, from its front bumper at foot on the road.
type sideView struct {
	cv   *draw.Canvas
	th   *theme.Theme
	foot draw.Point
	k    float64
}

func (v sideView) at(x, y float64) draw.Point { return draw.Pt(v.foot.X+x*v.k, v.foot.Y-y*v.k) }

func (v sideView) box(x0, y0, x1, y1 float64) draw.Rect {
	a := v.at(x0, y1)
	return draw.Rect{X: a.X, Y: a.Y, W: (x1 - x0) * v.k, H: (y1 - y0) * v.k}
}

func (v sideView) fill(r draw.Rect, round float64, p draw.Paint) {
	v.cv.Fill(draw.Round(r, round*v.k), p)
}

func (v sideView) paint() {
	v.road()
	v.body()
	v.cab()
	v.stripe()
	v.headlight()
	v.panel()
	v.compartments()
	v.wheel(78)
	v.wheel(322)
}

// road is what it stands on, running out to both sides.
func (v sideView) road() {
	r := v.box(-60, -3, sideW+60, 0)
	line := draw.Fade(v.th.Curb, 0.7)
	v.cv.Fill(draw.Box(r), draw.Across(r, draw.Fade(line, 0), line, line, draw.Fade(line, 0)))
	shade := v.box(10, -8, sideW-6, 6)
	v.cv.Shadow(draw.Round(shade, 8), 0, 0, 10*v.k, draw.Fade(v.th.Shade, 0.8))
}

func (v sideView) red(r draw.Rect) draw.Paint {
	red := v.th.Grip
	return draw.Down(r, draw.Lighter(red, 0.2), red, draw.Darker(red, 0.08), draw.Darker(red, 0.38))
}

func (v sideView) steel(r draw.Rect) draw.Paint {
	return draw.Down(r, v.th.SteelHi, v.th.Steel, v.th.SteelLo)
}

// body is the rear: painted side, running board, hose bed with its load, and a ladder along the top.
func (v sideView) body() {
	th := v.th
	for _, y := range []float64{112, 119} {
		r := v.box(206, y, 420, y+2.4)
		v.fill(r, 1, v.steel(r))
	}
	for x := 212.0; x < 416; x += 14 {
		r := v.box(x, 112, x+1.8, 121)
		v.cv.Fill(draw.Box(r), draw.Solid(th.Steel))
	}
	for _, x := range []float64{216, 408} { // the ladder's arms
		v.cv.Fill(draw.Box(v.box(x, 98, x+4, 113)), draw.Solid(th.SteelLo))
	}
	for i := range 2 { // flat hose, folded to and fro
		r := v.box(214, 98+float64(i)*5, 412, 102+float64(i)*5)
		col := draw.Darker(th.Hose, 0.2)
		v.fill(r, 2, draw.Down(r, draw.Lighter(col, 0.15), draw.Darker(col, 0.4)))
	}
	rear := v.box(150, 24, 424, 98)
	v.fill(rear, 4, v.red(rear))
	board := v.box(110, 20, 430, 26)
	v.fill(board, 1.5, v.steel(board))
}

// cab has its windshield to the left.
func (v sideView) cab() {
	th := v.th
	p := new(draw.Path).Move(v.at(12, 24)).Line(v.at(10, 62)).Quad(v.at(12, 70), v.at(20, 92)).Quad(v.at(24, 104), v.at(40, 104)).Line(v.at(142, 104)).Quad(v.at(150, 104), v.at(150, 96)).Line(v.at(150, 24)).Close()
	v.cv.Fill(p, v.red(v.box(10, 24, 150, 104)))
	glass := draw.Down(v.box(10, 62, 150, 98), draw.Hex(0x9fb9c6), draw.Hex(0x3c5261), draw.Hex(0x22313b))
	shield := new(draw.Path).Move(v.at(15, 66)).Line(v.at(24, 94)).Line(v.at(34, 96)).Line(v.at(34, 66)).Close()
	v.cv.Fill(shield, glass)
	for _, x := range [][2]float64{{40, 84}, {94, 138}} {
		r := v.box(x[0], 66, x[1], 96)
		v.fill(r, 3, draw.Solid(draw.Darker(th.Grip, 0.55)))
		v.fill(r.Inset(1.4*v.k), 2.4, glass)
	}
	for _, x := range []float64{37, 88, 144} { // door seams
		r := v.box(x, 30, x+1, 100)
		v.cv.Fill(draw.Box(r), draw.Solid(draw.Fade(th.Shade, 0.45)))
	}
	for _, x := range []float64{76, 130} {
		r := v.box(x, 56, x+8, 58.4)
		v.fill(r, 1, v.steel(r))
	}
	bar := v.box(48, 104, 104, 112)
	v.fill(bar, 3, draw.Across(bar, th.Red, th.Red, draw.Hex(0x3a6ea5), draw.Hex(0x3a6ea5)))
	v.fill(v.box(48, 109, 104, 111), 1, draw.Solid(draw.Fade(draw.Hex(0xffffff), 0.35)))
	bumper := v.box(0, 22, 16, 36)
	v.fill(bumper, 3, v.steel(bumper))
}

func (v sideView) headlight() {
	v.fill(v.box(12, 35, 22, 44), 3, draw.Solid(v.th.SteelHi))
	v.fill(v.box(13, 36, 21, 43), 2.4, draw.Solid(draw.Hex(0xfff3cf)))
}

// stripe runs along the whole side, between two lines.
func (v sideView) stripe() {
	white := draw.Mix(draw.Hex(0xf4f1e6), v.th.Grip, 0.06)
	v.cv.Fill(draw.Box(v.box(11, 45, 424, 53)), draw.Solid(white))
	for _, y := range []float64{42, 54.5} {
		v.cv.Fill(draw.Box(v.box(11, y, 424, y+1.4)), draw.Solid(draw.Mix(v.th.Hose, v.th.Grip, 0.2)))
	}
}

// panel is the operator's plate behind the cab: its gauges, handles and outlets.
func (v sideView) panel() {
	th := v.th
	r := v.box(156, 27, 204, 97)
	v.fill(r, 2, draw.Down(r, th.PlateHi, th.PlateLo))
	v.cv.Fill(draw.Frame(r, 2*v.k, v.k), draw.Solid(draw.Fade(th.SteelHi, 0.5)))
	for _, g := range []struct{ x, y, r float64 }{{167, 85, 7}, {183, 83, 9}, {163, 67, 4}, {174, 67, 4}, {185, 67, 4}, {196, 67, 4}} {
		v.cv.Fill(draw.Circle(v.at(g.x, g.y), g.r*v.k), draw.Solid(th.Steel))
		v.cv.Fill(draw.Circle(v.at(g.x, g.y), (g.r-1)*v.k), draw.Solid(th.Face))
		v.cv.Fill(draw.Segment(v.at(g.x, g.y), v.at(g.x-g.r*0.4, g.y+g.r*0.6), 0.9*v.k), draw.Solid(th.Needle))
	}
	for i, col := range []draw.Color{th.Hose, draw.Hex(0xf4f3ee), draw.Hex(0x2c63ad)} {
		x := 176 + float64(i)*10.4
		v.fill(v.box(x-3.5, 56, x+3.5, 59), 1, draw.Solid(th.SteelHi))
		v.cv.Fill(draw.Circle(v.at(x, 41), 4.6*v.k), draw.Solid(th.SteelHi))
		v.cv.Fill(draw.Circle(v.at(x, 41), 3.1*v.k), draw.Solid(col))
	}
	v.cv.Fill(draw.Circle(v.at(163, 42), 6*v.k), draw.Solid(th.SteelHi))
	v.cv.Fill(draw.Circle(v.at(163, 42), 4*v.k), draw.Solid(draw.Darker(th.SteelLo, 0.5)))
}

// compartments have roll-up doors.
func (v sideView) compartments() {
	for _, c := range [][4]float64{{212, 30, 284, 90}, {290, 58, 354, 90}, {360, 30, 418, 90}} {
		r := v.box(c[0], c[1], c[2], c[3])
		v.fill(r, 2, v.steel(r))
		for y := c[1] + 4; y < c[3]-2; y += 4 {
			v.cv.Fill(draw.Box(v.box(c[0]+1, y, c[2]-1, y+0.8)), draw.Solid(draw.Fade(v.th.Shade, 0.3)))
		}
		v.fill(v.box((c[0]+c[2])/2-8, c[1]+2, (c[0]+c[2])/2+8, c[1]+4), 1, draw.Solid(v.th.SteelHi))
		v.cv.Fill(draw.Frame(r, 2*v.k, v.k), draw.Solid(draw.Darker(v.th.Grip, 0.5)))
	}
}

func (v sideView) wheel(x float64) {
	th, c := v.th, v.at(x, 22)
	well := new(draw.Path).Arc(c, 29*v.k, -90, 90).Line(v.at(x+29, 20)).Line(v.at(x-29, 20)).Close()
	v.cv.Fill(well, draw.Solid(draw.Hex(0x0b0d0f)))
	v.cv.Fill(draw.Circle(c, 22*v.k), draw.Radial{Center: c, R: 22 * v.k, Stops: draw.Even(draw.Hex(0x101214), draw.Hex(0x23272a))})
	v.cv.Fill(draw.Circle(c, 13*v.k), draw.Linear{From: v.at(x-9, 31), To: v.at(x+9, 13), Stops: draw.Even(th.SteelHi, th.SteelLo, th.Steel)})
	v.cv.Fill(draw.Circle(c, 9*v.k), draw.Solid(draw.Darker(th.SteelLo, 0.25)))
	for i := range 8 {
		v.cv.Fill(draw.Circle(c.Polar(6.5*v.k, float64(i)*45), 1.1*v.k), draw.Solid(th.SteelHi))
	}
	v.cv.Fill(draw.Circle(c, 3.6*v.k), draw.Solid(th.Steel))
}
