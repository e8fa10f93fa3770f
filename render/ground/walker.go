package ground

import (
	"fmt"

	"steadyneedle/render/card"
	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/sim/world"
)

func (g *Ground) spotAt(p world.Place) (draw.Point, bool) {
	for _, s := range g.spots {
		if s.Place == p {
			return s.Box.Center(), true
		}
	}
	return draw.Point{}, false
}

// putWalker shows someone on the way: a dashed track and a figure that comes along it.
func (g *Ground) putWalker(sh *stage.Shelf, f *stage.Frame, th *theme.Theme) {
	from, to, share, ok := g.at.Walk()
	if !ok {
		return
	}
	a, okA := g.spotAt(from)
	b, okB := g.spotAt(to)
	if !okA || !okB {
		return
	}
	track := sh.Once("track", fmt.Sprintf("track/%s/%v/%v", th.Name, a, b), g.planBox(), func(cv *draw.Canvas) {
		for _, d := range draw.Dashes(draw.Polyline(a, b), 7, 6) {
			cv.Fill(draw.Stroke(d, 3), draw.Solid(th.Focus))
		}
		cv.Fill(draw.Ring(b, spotR*g.zoom+5, spotR*g.zoom+2), draw.Solid(th.Focus))
	})
	f.Put(track, draw.Point{})
	figure := g.zoomed(sh, "walker/"+th.Name, draw.Around(draw.Point{}, 44, 44), func(cv *draw.Canvas) {
		cv.Shadow(draw.Circle(draw.Point{}, spotR), 0, 2, 5, draw.Fade(th.Shade, 0.7))
		cv.Fill(draw.Circle(draw.Point{}, spotR), draw.Solid(th.Focus))
		person(cv, draw.Point{}, th.FocusDark)
	})
	f.Put(figure, a.Add(b.Sub(a).Mul(share)))
}

// heardBox is the room that the cards have left on the right, if it is worth using.
func (g *Ground) heardBox() (draw.Rect, bool) {
	free := g.columns - g.deck.Columns
	if free < 1 {
		return draw.Rect{}, false
	}
	w := g.column*float64(free) + card.Gap*float64(free-1)
	y := g.under() + 40
	return draw.Rect{X: g.box.Right() - 4 - w, Y: y, W: w, H: g.box.Bottom() - y}, true
}

// putHeard lists what was said last where there is room for it.
func (g *Ground) putHeard(sh *stage.Shelf, f *stage.Frame, th *theme.Theme) {
	r, ok := g.heardBox()
	if !ok {
		return
	}
	st := draw.Style{Size: 15, Color: th.CardText}
	y := r.Bottom() - 14
	heard := g.at.Heard()
	for i := len(heard) - 1; i >= 0; i-- {
		l := &heard[i]
		lines := st.Wrap(sh.Scale, r.W-150, l.Text)
		y -= 20 * float64(len(lines))
		if y < r.Y+34 {
			break
		}
		who := draw.Style{Size: 15, Weight: draw.Bold, Color: th.Say}
		if l.Mine {
			who.Color = th.CardSoft
		}
		sh.Text(f, draw.Pt(r.X+14, y+14), draw.Left, who, l.Who)
		for k, text := range lines {
			sh.Text(f, draw.Pt(r.X+130, y+14+20*float64(k)), draw.Left, st, text)
		}
		y -= 5
	}
}

func (g *Ground) heardFrame(cv *draw.Canvas, th *theme.Theme) {
	r, ok := g.heardBox()
	if !ok {
		return
	}
	cv.Fill(draw.Round(r, 8), draw.Solid(th.Card))
	cv.Fill(draw.Frame(r, 8, 1), draw.Solid(th.Rule))
	cv.Middle(draw.Pt(r.X+14, r.Y+20), draw.Left, draw.Style{Size: 15, Weight: draw.Bold, Color: th.Heading, Track: 1.2}, "What was said")
}
