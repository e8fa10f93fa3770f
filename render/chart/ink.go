package chart

import "steadyneedle/render/draw"

// Colors on paper: Okabe and Ito's, darkened until they stand 3:1 against it; each line also has a dash of
// its own and its name beside it.
var (
	paper  = draw.Hex(0xfcfbf7)
	ink    = draw.Hex(0x15181b)
	soft   = draw.Hex(0x4a5157)
	rule   = draw.Hex(0xcfcbc0)
	Colors = []draw.Color{draw.Hex(0x15181b), draw.Hex(0x0063a0), draw.Hex(0x00724f), draw.Hex(0xb04a00), draw.Hex(0x9a3d78)}
	mark   = draw.Hex(0xb04a00)
)

// dashes of the lines beside the first: on and off.
var dashes = [][2]float64{{0, 0}, {0, 0}, {14, 7}, {4, 6}, {20, 5}}

// frame paints the paper and the title, and gives the area for lines.
func frame(cv *draw.Canvas, box draw.Rect, text float64, title, unit string) draw.Rect {
	cv.Fill(draw.Round(box, 10), draw.Solid(draw.Hex(0xf5f2ea)))
	cv.Text(draw.Pt(box.X+14, box.Y+8+text), draw.Left, draw.Style{Size: text, Weight: draw.Bold, Color: ink}, title)
	if unit != "" {
		cv.Text(draw.Pt(box.Right()-14, box.Y+8+text), draw.Right, draw.Style{Size: text, Color: soft}, unit)
	}
	a := draw.Rect{X: box.X + 14, Y: box.Y + 18 + text*1.15, W: box.W - 28}
	a.H = box.Bottom() - 14 - a.Y
	cv.Fill(draw.Box(a), draw.Solid(paper))
	cv.Fill(draw.Frame(a, 0, 1), draw.Solid(rule))
	return a
}

// stroke draws a line in the n-th color and dash; thin where it is a ghost of another time.
func stroke(cv *draw.Canvas, points []draw.Point, n int, ghost bool) {
	if len(points) < 2 {
		return
	}
	col, w := Colors[n%len(Colors)], 3.2
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
