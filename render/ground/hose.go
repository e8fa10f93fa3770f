package ground

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
)

// hose is one hose as it lies: its run from where water enters, how far it has filled and how it is made.
type hose struct {
	run  *draw.Path
	wide float64 // when charged
	fill float64 // share of its length that water has reached
	col  draw.Color
}

// paint draws the part that water has not reached as a flat ribbon with a crease, and what is charged as
// a round, hard tube with its light along the top and couplings every so often.
func (h hose) paint(cv *draw.Canvas, th *theme.Theme) {
	charged, flat, front, bearing := h.run.Split(h.fill)
	if h.fill < 0.99 {
		w := h.wide * 1.05
		cv.Fill(draw.Stroke(flat, w), draw.Solid(draw.Darker(h.col, 0.62)))
		cv.Fill(draw.Stroke(flat, w-1.6), draw.Solid(draw.Darker(h.col, 0.16)))
		cv.Fill(draw.Stroke(flat, 1), draw.Solid(draw.Darker(h.col, 0.45)))
	}
	if h.fill > 0.01 {
		w := h.wide * 1.3
		cv.Fill(draw.Stroke(charged.Moved(draw.Pt(1, 3)), w), draw.Solid(draw.Fade(th.Shade, 0.45)))
		cv.Fill(draw.Stroke(charged, w), draw.Solid(draw.Darker(h.col, 0.45)))
		cv.Fill(draw.Stroke(charged, w-1.6), draw.Solid(h.col))
		cv.Fill(draw.Stroke(charged.Moved(draw.Pt(0, -w*0.16)), w*0.26), draw.Solid(draw.Lighter(h.col, 0.6)))
	}
	if h.fill > 0.01 && h.fill < 0.99 { // the water's front, on its way
		cv.Fill(draw.Poly(front.Polar(h.wide*1.7, bearing), front.Polar(h.wide*1.1, bearing+110), front.Polar(h.wide*1.1, bearing-110)), draw.Solid(th.Water))
	}
	n := int(h.run.Length() / 90)
	for i := 1; i < n; i++ {
		_, _, at, b := h.run.Split(float64(i) / float64(n))
		cv.Fill(draw.Segment(at.Polar(3.2, b), at.Polar(-3.2, b), h.wide*1.5), draw.Solid(draw.Darker(th.SteelLo, 0.5)))
		cv.Fill(draw.Segment(at.Polar(2.4, b), at.Polar(-2.4, b), h.wide*1.35), draw.Solid(th.Steel))
	}
}

// joint is a coupling at a hose's end: bright and whole when tight, an open amber ring when hand-tight,
// gray and square when off.
func joint(cv *draw.Canvas, th *theme.Theme, p draw.Point, tight int) {
	switch tight {
	case 0:
		cv.Fill(draw.Round(draw.Around(p, 11, 10), 2), draw.Solid(draw.Darker(th.SteelLo, 0.5)))
		cv.Fill(draw.Round(draw.Around(p, 9, 8), 2), draw.Solid(th.Steel))
	case 1:
		cv.Fill(draw.Circle(p, 7), draw.Solid(th.FocusDark))
		cv.Fill(draw.Ring(p, 6.5, 3), draw.Solid(th.Caution))
	default:
		cv.Fill(draw.Circle(p, 7), draw.Solid(th.FocusDark))
		cv.Fill(draw.Circle(p, 5.5), draw.Solid(th.SteelHi))
		cv.Fill(draw.Circle(p, 2), draw.Solid(th.SteelLo))
	}
}

// leak is a puddle with what sprays into it.
func leak(cv *draw.Canvas, th *theme.Theme, p draw.Point) {
	pool := new(draw.Path)
	for i, d := range []draw.Point{{X: -9, Y: 4}, {X: 0, Y: 7}, {X: 10, Y: 5}, {X: 3, Y: 1}} {
		pool.Join(draw.Circle(p.Add(d), 7-float64(i%2)*2))
	}
	cv.Fill(pool, draw.Solid(draw.Fade(th.Water, 0.55)))
	for i := range 5 {
		a := -60 + float64(i)*30
		cv.Fill(draw.Segment(p.Polar(4, a), p.Polar(10+float64(i%2)*3, a), 1.6), draw.Solid(draw.Lighter(th.Water, 0.4)))
	}
}

// kink is a sharp fold in a hose.
func kink(cv *draw.Canvas, th *theme.Theme, p draw.Point, bearing float64, h hose) {
	fold := draw.Polyline(p.Polar(-11, bearing), p.Polar(10, bearing-70), p.Polar(7, bearing+110), p.Polar(13, bearing))
	cv.Fill(draw.Stroke(fold, h.wide*1.3+1.6), draw.Solid(draw.Darker(h.col, 0.6)))
	cv.Fill(draw.Stroke(fold, h.wide*1.3), draw.Solid(draw.Darker(h.col, 0.1)))
	cv.Fill(draw.Segment(p.Polar(9, bearing-70), p.Polar(6, bearing+110), 1.2), draw.Solid(draw.Darker(h.col, 0.65)))
}

// mark is a word on a plate beside what it names.
func mark(cv *draw.Canvas, th *theme.Theme, p draw.Point, word string) {
	st := draw.Style{Size: 15, Weight: draw.Bold, Color: th.Text}
	w := st.Width(cv.Scale, word)
	cv.Fill(draw.Round(draw.Around(p, w+12, 20), 5), draw.Solid(draw.Fade(th.Strip, 0.88)))
	cv.Fill(draw.Frame(draw.Around(p, w+12, 20), 5, 1), draw.Solid(th.Caution))
	cv.Middle(p, draw.Center, st, word)
}
