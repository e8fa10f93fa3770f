package chart

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
)

// colors of the lines; each has also a dash of its own and its name beside it.
var colors = theme.Paper.Lines

var (
	paper = theme.Paper.Plot
	ink   = theme.Paper.Ink
	soft  = theme.Paper.Soft
	rule  = theme.Paper.Rule
	mark  = theme.Paper.Mark
)

// dashes of the lines beside the first: on and off.
var dashes = [][2]float64{{0, 0}, {0, 0}, {14, 7}, {4, 6}, {20, 5}}

// frame paints the paper and the title, and gives the area for lines.
func frame(cv *draw.Canvas, box draw.Rect, text float64, title, unit string) draw.Rect {
	cv.Fill(draw.Round(box, 10), draw.Solid(theme.Paper.Sheet))
	cv.Text(draw.Pt(box.X+14, box.Y+8+text), draw.Left, draw.Style{Size: text, Weight: draw.Bold, Color: ink}, title)
	if unit != "" {
		cv.Text(draw.Pt(box.Right()-14, box.Y+8+text), draw.Right, draw.Style{Size: text, Color: soft}, unit)
	}
	a := area(box, text)
	cv.Fill(draw.Box(a), draw.Solid(paper))
	cv.Fill(draw.Frame(a, 0, 1), draw.Solid(rule))
	return a
}

// area is what a box leaves for lines, below its title.
func area(box draw.Rect, text float64) draw.Rect {
	a := draw.Rect{X: box.X + 14, Y: box.Y + 18 + text*1.15, W: box.W - 28}
	a.H = box.Bottom() - 14 - a.Y
	return a
}

// stroke draws a line in the n-th color and dash; thin where it is a ghost of another time.
func stroke(cv *draw.Canvas, points []draw.Point, n int, ghost bool) {
	if len(points) < 2 {
		return
	}
	col, w := colors[n%len(colors)], 3.2
	if ghost {
		col, w = draw.Mix(col, paper, 0.5), 2.2
	}
	path := draw.Polyline(points...)
	if d := dashes[n%len(dashes)]; d[0] > 0 {
		for _, piece := range draw.Dashes(path, d[0], d[1]) {
			cv.Fill(draw.Stroke(piece, w), draw.Solid(col))
		}
		return
	}
	cv.Fill(draw.Stroke(path, w), draw.Solid(col))
}
