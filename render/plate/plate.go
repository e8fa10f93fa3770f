// Package plate draws what is fixed to the panel and says something: label plates, headings, screws,
// the plate itself, and the engraved way of the water.
package plate

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
)

// Label is an engraved plate with its words centered at p; it returns its box.
func Label(cv *draw.Canvas, th *theme.Theme, p draw.Point, text string) draw.Rect {
	return Colored(cv, th, p, text, 0, theme.Plate{Back: th.LabelBack, Text: th.Label})
}

// Colored is a label of a line's color, at least w wide.
func Colored(cv *draw.Canvas, th *theme.Theme, p draw.Point, text string, w float64, col theme.Plate) draw.Rect {
	st := draw.Style{Size: 16, Weight: draw.Bold, Color: col.Text, Track: 0.3}
	r := draw.Around(p, max(w, st.Width(cv.Scale, text)+20), 25)
	cv.Shadow(draw.Round(r, 4), 0, 1.5, 4, draw.Fade(th.Shade, 0.6))
	cv.Fill(draw.Round(r, 4), draw.Solid(draw.Mix(col.Back, draw.Hex(0x8a9095), 0.45)))
	cv.Fill(draw.Round(r.Inset(1), 3), draw.Solid(col.Back))
	cv.Middle(p, draw.Center, st, text)
	return r
}

// Small is a word set straight on the plate.
func Small(cv *draw.Canvas, th *theme.Theme, p draw.Point, a draw.Align, text string) {
	cv.Middle(p, a, draw.Style{Size: 15, Color: th.Soft}, text)
}

// Panel is the metal plate that everything stands on.
func Panel(cv *draw.Canvas, th *theme.Theme, r draw.Rect) {
	p := draw.Round(r, 10)
	cv.Shadow(p, 0, 2, 8, draw.Fade(th.Shade, 0.8))
	cv.Fill(p, draw.Linear{From: draw.Pt(r.X, r.Y), To: draw.Pt(r.X+r.W*0.25, r.Bottom()),
		Stops: []draw.Stop{{T: 0, C: th.PlateHi}, {T: 0.55, C: draw.Mix(th.PlateHi, th.PlateLo, 0.75)}, {T: 1, C: th.PlateLo}}})
	if !th.Plain {
		cv.Grain(r.Inset(6), 0.035)
	}
	cv.Fill(draw.Frame(r, 10, 1.5), draw.Down(r, draw.Fade(th.Edge, 0.9), draw.Fade(th.Edge, 0.15), draw.Fade(th.Shade, 0.7)))
	for _, q := range []draw.Point{{X: r.X + 15, Y: r.Y + 15}, {X: r.Right() - 15, Y: r.Y + 15}, {X: r.X + 15, Y: r.Bottom() - 15}, {X: r.Right() - 15, Y: r.Bottom() - 15}} {
		Screw(cv, th, q)
	}
}

// Well is a recessed field.
func Well(cv *draw.Canvas, th *theme.Theme, r draw.Rect) {
	cv.Fill(draw.Round(r, 8), draw.Down(r, draw.Darker(th.Well, 0.35), th.Well))
	cv.Fill(draw.Frame(r, 8, 1.2), draw.Down(r, draw.Fade(th.Shade, 0.8), draw.Fade(th.Edge, 0.55)))
}

// Screw is a cap screw.
func Screw(cv *draw.Canvas, th *theme.Theme, p draw.Point) {
	cv.Fill(draw.Circle(p, 5.5), draw.Solid(draw.Darker(th.PlateLo, 0.6)))
	cv.Fill(draw.Circle(p, 4.6), draw.Linear{From: p.Add(draw.Pt(-4, -4)), To: p.Add(draw.Pt(4, 4)), Stops: draw.Even(th.SteelHi, th.SteelLo)})
	cv.Fill(draw.Circle(p, 2), draw.Solid(draw.Darker(th.SteelLo, 0.6)))
}

// Groove engraves a run of pipe of width w.
func Groove(cv *draw.Canvas, th *theme.Theme, run *draw.Path, w float64) {
	cv.Fill(draw.Stroke(run.Moved(draw.Pt(0, 1.2)), w+5), draw.Solid(draw.Fade(th.Edge, 0.55)))
	cv.Fill(draw.Stroke(run, w+5), draw.Solid(th.Groove))
	cv.Fill(draw.Stroke(run, w), draw.Solid(th.Dry))
	cv.Fill(draw.Stroke(run.Moved(draw.Pt(-w*0.12, -w*0.14)), w*0.3), draw.Solid(draw.Fade(draw.Lighter(th.Dry, 0.35), 0.5)))
}

// Water fills the same run.
func Water(cv *draw.Canvas, th *theme.Theme, run *draw.Path, w float64) {
	cv.Fill(draw.Stroke(run, w), draw.Solid(th.Water))
	cv.Fill(draw.Stroke(run.Moved(draw.Pt(-w*0.12, -w*0.14)), w*0.3), draw.Solid(draw.Fade(draw.Lighter(th.Water, 0.6), 0.6)))
}
