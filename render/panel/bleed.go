package panel

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
)

// putBleed shows what comes out of the open bleeder: spitting air and water, or solid water.
func (p *Panel) putBleed(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, e *view.Eyes) {
	if e.Named("bleeder") < 0.05 || !(e.Signal("supply_fill") > 0.02) {
		return
	}
	key, spits := "bleed/solid/", e.Lit("bleeder_air")
	if spits {
		key = "bleed/spits/"
	}
	art := sh.Get(key+th.Name, draw.Rect{X: -34, Y: -6, W: 34, H: 44}, func(cv *draw.Canvas) {
		run := new(draw.Path).Move(draw.Pt(-12, 2)).Cube(draw.Pt(-22, 2), draw.Pt(-27, 14), draw.Pt(-28, 34))
		if !spits {
			cv.Fill(draw.Stroke(run, 6), draw.Solid(th.Groove))
			cv.Fill(draw.Stroke(run, 4), draw.Solid(th.Water))
			return
		}
		for i, d := range draw.Dashes(run, 4, 5) {
			off := draw.Pt(float64(i%3)*3-3, float64(i%2)*4-2)
			cv.Fill(draw.Stroke(d.Moved(off), 3), draw.Solid(draw.Mix(th.Water, th.Text, 0.55)))
			cv.Fill(draw.Circle(d.Bounds().Center().Add(draw.Pt(-off.X-3, off.Y)), 1.6), draw.Solid(th.Text))
		}
	})
	f.Put(art, p.at(36, 316))
}
