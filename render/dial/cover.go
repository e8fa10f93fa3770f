package dial

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
)

// Cover lies over a round instrument of radius r at c that a class must not read yet.
func Cover(sh *stage.Shelf, f *stage.Frame, c draw.Point, r float64) {
	f.Put(sh.Get(fmt.Sprintf("covered/%v", r), draw.Around(draw.Point{}, 2*r+4, 2*r+4), func(cv *draw.Canvas) {
		cv.Fill(draw.Circle(draw.Point{}, r), draw.Solid(theme.Paper.Cover))
		cv.Fill(draw.Ring(draw.Point{}, r, r-1.5), draw.Solid(theme.Paper.Soft))
		cv.Middle(draw.Point{}, draw.Center, draw.Style{Size: r, Weight: draw.Bold, Color: theme.Paper.Chalk}, "?")
	}), c)
}

// Cover lies over the face, and leaves the name.
func (d Fan) Cover(sh *stage.Shelf, f *stage.Frame) {
	box := draw.Rect{W: d.Box.W - 8, H: d.Box.H - fanCover - 4}
	f.Put(sh.Get(fmt.Sprintf("covered/fan/%v/%v", box.W, box.H), box, func(cv *draw.Canvas) {
		cv.Fill(draw.Round(box, 5), draw.Solid(theme.Paper.Cover))
		cv.Middle(box.Center(), draw.Center, draw.Style{Size: box.H * 0.7, Weight: draw.Bold, Color: theme.Paper.Chalk}, "?")
	}), draw.Pt(d.Box.X+4, d.Box.Y+4))
}
