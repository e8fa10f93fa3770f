package cab

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
)

// putObjective keeps the line's make in sight, once the objective has been given.
func (c *Cab) putObjective(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, e *view.Eyes) {
	if !(e.Signal("objective_heard") > 0) {
		return
	}
	top := c.worn.Bottom + 6
	box := draw.Rect{X: c.box.Right() - cardsW, Y: top, W: cardsW, H: c.box.Bottom() - top}
	art := sh.Get("objective/"+th.Name, box, func(cv *draw.Canvas) {
		cv.Fill(draw.Round(box, 8), draw.Solid(th.Card))
		cv.Fill(draw.Frame(box, 8, 1), draw.Solid(th.Rule))
		cv.Middle(draw.Pt(box.X+12, box.Y+17), draw.Left, draw.Style{Size: 15, Weight: draw.Bold, Color: th.Say}, "Your line (the objective in full: key M)")
		st := draw.Style{Size: 15, Color: th.CardText}
		lines := st.Wrap(cv.Scale, box.W-24, c.info.Load)
		if fit := int((box.H - 34) / 18); len(lines) > fit && fit > 0 {
			lines = lines[:fit]
			lines[fit-1] = st.Fit(cv.Scale, box.W-36, lines[fit-1]+" …")
		}
		for i, l := range lines {
			cv.Text(draw.Pt(box.X+12, box.Y+44+18*float64(i)), draw.Left, st, l)
		}
	})
	f.Put(art, draw.Point{})
}
