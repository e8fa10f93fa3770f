package lamp

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Level is a column of five lamps that say how full the tank is, lit from the bottom.
type Level struct{ Box draw.Rect }

var levelMarks = [5]string{"F", "¾", "½", "¼", "E"}

// bar is the i-th lamp from the top.
func (l Level) bar(i int) draw.Rect {
	h := l.Box.H / float64(len(levelMarks))
	return draw.Rect{X: l.Box.X, Y: l.Box.Y + h*float64(i) + 2, W: 50, H: h - 5}
}

// Still paints the seats and the marks beside them.
func (l Level) Still(cv *draw.Canvas, th *theme.Theme) {
	for i, m := range levelMarks {
		b := l.bar(i)
		cv.Fill(draw.Round(b.Inset(-2), 4), draw.Solid(th.Groove))
		cv.Middle(draw.Pt(b.Right()+18, b.Center().Y), draw.Center, draw.Style{Size: 16, Weight: draw.Bold, Color: th.Soft}, m)
	}
}

// Moving puts the lamps, lit of them burning.
func (l Level) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, lit int) {
	for i := range levelMarks {
		b := l.bar(i)
		on := lit >= len(levelMarks)-i
		art := sh.Get(fmt.Sprintf("levelbar/%s/%v/%v", th.Name, b.H, on), draw.Rect{W: b.W, H: b.H}, func(cv *draw.Canvas) {
			box := draw.Rect{W: b.W, H: b.H}
			col := draw.Darker(th.Unlit, 0.15)
			if on {
				col = th.Water
			}
			cv.Fill(draw.Round(box, 3), draw.Down(box, draw.Lighter(col, 0.25), col, draw.Darker(col, 0.2)))
			if on { // a white core tells lit from dark without color
				cv.Fill(draw.Round(draw.Around(box.Center(), box.W*0.7, box.H*0.3), 2), draw.Solid(draw.Fade(draw.Hex(0xffffff), 0.75)))
			}
		})
		f.Put(art, draw.Pt(b.X, b.Y))
	}
}
