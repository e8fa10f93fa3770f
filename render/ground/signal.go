package ground

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/speech"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
)

// signS is how long a gesture stays on the plan after it was seen, in seconds.
const signS = 8

// lastSign is the gesture of the crew that was seen last, while it is fresh.
func (g *Ground) lastSign() *view.Line {
	heard, r := g.at.Heard(), g.at.Reading()
	for i := len(heard) - 1; i >= 0; i-- {
		l := &heard[i]
		if (r.At - l.At).Seconds() > signS {
			return nil
		}
		if l.Shown && !l.Mine && speech.Has(l.Sign) {
			return l
		}
	}
	return nil
}

// putSign draws the crew's gesture beside the fire building, where they stand.
func (g *Ground) putSign(sh *stage.Shelf, f *stage.Frame, th *theme.Theme) {
	l := g.lastSign()
	if l == nil {
		return
	}
	box := draw.Rect{W: 70, H: 76}
	art := sh.Get("sign/"+th.Name+l.Sign, box.Inset(-10), func(cv *draw.Canvas) {
		cv.Shadow(draw.Round(box, 9), 0, 3, 9, draw.Fade(th.Shade, 0.8))
		cv.Fill(draw.Poly(draw.Pt(2, 50), draw.Pt(2, 66), draw.Pt(-9, 62)), draw.Solid(th.Say))
		cv.Fill(draw.Round(box, 9), draw.Solid(th.Card))
		cv.Fill(draw.Frame(box, 9, 2), draw.Solid(th.Say))
		speech.Pictogram(cv, box.Inset(5), l.Sign, th.Text, th.Caution)
	})
	fire := g.fireBox()
	at := draw.Pt(fire.Right()+14, fire.Y-1)
	if g.info.FireAcross {
		at.Y = fire.Bottom() - box.H + 4
	}
	f.Put(art, g.onPage(at))
}
