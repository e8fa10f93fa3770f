package ground

import (
	"fmt"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
	"steadyneedle/sim/world"
)

// Still paints the street and the cards.
func (g *Ground) Still(cv *draw.Canvas, th *theme.Theme) {
	cv.Zoom(g.zoom, func() {
		g.town(cv, th)
		g.fire(cv, th)
		g.hydrant(cv, th)
	})
	p := g.planBox()
	st := draw.Style{Size: 15, Color: th.Text}
	cv.Text(draw.Pt(p.X+16, p.Bottom()-6), draw.Left, draw.Style{Size: 16, Weight: draw.Bold, Color: th.Text}, g.info.Street+"; hydrant at "+g.info.HydrantAt)
	cv.Text(draw.Pt(p.Right()-16, p.Bottom()-6), draw.Right, st, "Plan not to scale. Click a spot to walk there.")
	cv.Fill(draw.Frame(p, 10, 1.5), draw.Solid(th.StripEdge))
	g.seenFrame(cv, th)
	g.heardFrame(cv, th)
	g.deck.Still(cv, th)
}

// fire is the building where the work ends: its roof, smoke, and a plate that says which it is.
func (g *Ground) fire(cv *draw.Canvas, th *theme.Theme) {
	r := g.fireBox()
	roof(cv, th, r, th.Roof)
	for i := range 9 { // smoke drifts off to the right
		t := float64(i) / 8
		c := draw.Pt(r.X+30+t*66, r.Y+r.H*0.42-t*14+3*float64(i%2))
		cv.Fill(draw.Circle(c, 8+t*11), draw.Radial{Center: c, R: 8 + t*11, Stops: draw.Even(draw.Fade(th.Text, 0.30-0.2*t), draw.Fade(th.Text, 0))})
	}
	c := draw.Pt(r.X+27, r.Center().Y+2)
	cv.Fill(draw.Circle(c, 26), draw.Radial{Center: c, R: 26, Stops: draw.Even(draw.Fade(th.Amber, 0.55), draw.Fade(th.Amber, 0))})
	cv.Fill(flame(c, 1), draw.Down(draw.Around(c, 30, 36), th.Amber, th.Red))
	cv.Fill(flame(c.Add(draw.Pt(0, 6)), 0.5), draw.Solid(draw.Lighter(th.Amber, 0.6)))
	st := draw.Style{Size: 15, Weight: draw.Bold, Color: th.BuildingText}
	lines := st.Wrap(cv.Scale, r.W-70, "Fire: "+g.info.FireAt)
	w := 0.0
	for _, l := range lines {
		w = max(w, st.Width(cv.Scale, l))
	}
	h := float64(len(lines))*18 + 6
	cv.Fill(draw.Round(draw.Rect{X: r.X + 50, Y: r.Center().Y - h/2, W: w + 16, H: h}, 5), draw.Solid(draw.Fade(th.Building, 0.96)))
	y := r.Center().Y - float64(len(lines)-1)*9
	for _, l := range lines {
		cv.Middle(draw.Pt(r.X+58, y), draw.Left, st, l)
		y += 18
	}
	cv.Fill(draw.Frame(r.Inset(-1), 3, 2), draw.Solid(draw.Fade(th.Amber, 0.85)))
}

func flame(c draw.Point, k float64) *draw.Path {
	at := func(x, y float64) draw.Point { return c.Add(draw.Pt(x*k, y*k)) }
	return new(draw.Path).Move(at(0, -20)).Cube(at(16, -6), at(16, 14), at(0, 16)).Cube(at(-16, 14), at(-12, 0), at(-6, -6)).Cube(at(-2, -2), at(-4, -12), at(0, -20)).Close()
}

func (g *Ground) fireBox() draw.Rect {
	y := g.plan.Y + 8
	if g.info.FireAcross {
		y = g.plan.Bottom() - 40
	}
	return draw.Rect{X: g.plan.X + 452, Y: y, W: 214, H: 50}
}

// hydrant is seen from above, with the stretch of curb that must stay clear painted beside it.
func (g *Ground) hydrant(cv *draw.Canvas, th *theme.Theme) {
	c := draw.Pt(g.hydrantX(), g.plan.Y+62)
	cv.Fill(draw.Box(draw.Rect{X: c.X - 46, Y: g.plan.Y + curbTop - 2, W: 92, H: 4}), draw.Solid(th.Red))
	pad := draw.Circle(c, 13)
	cv.Fill(pad, draw.Solid(draw.Mix(th.Walk, th.Curb, 0.35)))
	cv.Shadow(draw.Circle(c, 9), 1, 3, 5, draw.Fade(th.Shade, 0.7))
	arms := draw.Around(c, 25, 8)
	cv.Fill(draw.Round(arms, 2), draw.Down(arms, th.SteelHi, th.SteelLo))
	steamer := draw.Rect{X: c.X - 5, Y: c.Y, W: 10, H: 12}
	cv.Fill(draw.Round(steamer, 2), draw.Across(steamer, th.SteelLo, th.SteelHi, th.SteelLo))
	cv.Fill(draw.Circle(c, 8.5), draw.Radial{Center: c.Add(draw.Pt(-3, -3)), R: 13, Stops: draw.Even(th.GripHi, th.Grip, draw.Darker(th.Grip, 0.4))})
	var nut []draw.Point
	for i := range 5 {
		nut = append(nut, c.Polar(4, float64(i)*72))
	}
	cv.Fill(draw.Poly(nut...), draw.Solid(th.SteelHi))
}

func (g *Ground) seenFrame(cv *draw.Canvas, th *theme.Theme) {
	y := g.under() + 22
	where := map[world.Place]string{world.Walking: "Walking…", world.Cab: "You sit in the cab", world.Panel: "You stand at the panel",
		world.Wheels: "You stand at the left rear wheel", world.RearStep: "You stand at the rear step", world.Hydrant: "You stand at the hydrant",
		world.TankTop: "You stand on the tank top", world.Round: "You have walked round the scene"}[g.stands]
	cv.Middle(draw.Pt(g.box.X+6, y), draw.Left, draw.Style{Size: 19, Weight: draw.Bold, Color: th.Text}, where)
	cv.Middle(draw.Pt(g.box.X+g.column+18, y), draw.Left, draw.Style{Size: 16, Color: th.Soft}, g.reach())
	g.caution(cv, th, y)
	r := g.seenBox()
	cv.Fill(draw.Round(r, 8), draw.Solid(th.Card))
	cv.Fill(draw.Frame(r, 8, 1), draw.Solid(th.Rule))
	cv.Middle(draw.Pt(r.X+14, r.Y+20), draw.Left, draw.Style{Size: 15, Weight: draw.Bold, Color: th.Heading, Track: 1.2}, "What you see")
}

// reach says what the cards below the heading are.
func (g *Ground) reach() string {
	switch {
	case g.stands == world.Walking:
		return "Nothing is in reach on the way."
	case g.stands == world.Cab:
		return "The dash is under Cab, key 1."
	case len(g.deck.Widgets()) == 0:
		return "Nothing to work here; look, or walk on."
	case g.stands == world.Panel:
		return "Hose in reach here; gauges and valves: Panel, key 2."
	}
	return "What is in reach here:"
}

func (g *Ground) seenBox() draw.Rect {
	return draw.Rect{X: g.box.X + 4, Y: g.under() + 40, W: g.column, H: g.seenH}
}

// Moving puts what lies on the street as it is now, the spots, where one stands, and the cards' states.
func (g *Ground) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, e *view.Eyes) {
	s := g.scene(e)
	key := fmt.Sprintf("plan/%s/%v/%+v", th.Name, g.plan, s)
	f.Put(sh.Once("plan", key, g.planBox(), func(cv *draw.Canvas) {
		cv.Zoom(g.zoom, func() { g.paintScene(cv, th, s) })
	}), draw.Point{})
	for _, sp := range g.spots {
		g.putSpot(sh, f, th, sp)
	}
	g.putWalker(sh, f, th)
	g.putSign(sh, f, th)
	g.putSeen(sh, f, th, e)
	g.putHeard(sh, f, th)
	g.deck.Moving(sh, f, th, e)
}

// zoomed is art of the plan, as large as the plan is drawn; r and what paint draws are in the plan's units.
func (g *Ground) zoomed(sh *stage.Shelf, key string, r draw.Rect, paint func(cv *draw.Canvas)) *stage.Art {
	k := g.zoom
	return sh.Get(fmt.Sprintf("%s/%v", key, k), draw.Rect{X: r.X * k, Y: r.Y * k, W: r.W * k, H: r.H * k}, func(cv *draw.Canvas) {
		cv.Zoom(k, func() { paint(cv) })
	})
}

func (g *Ground) putSpot(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, sp Spot) {
	here := sp.Place == g.stands
	art := g.zoomed(sh, fmt.Sprintf("spot/%s/%v", th.Name, here), draw.Around(draw.Point{}, 44, 44), func(cv *draw.Canvas) {
		o := draw.Point{}
		cv.Shadow(draw.Circle(o, spotR), 0, 2, 5, draw.Fade(th.Shade, 0.7))
		if here {
			cv.Fill(draw.Circle(o, spotR+4), draw.Solid(draw.Fade(th.Focus, 0.35)))
			cv.Fill(draw.Circle(o, spotR), draw.Solid(th.Focus))
			person(cv, o, th.FocusDark)
			return
		}
		cv.Fill(draw.Circle(o, spotR), draw.Solid(th.Card))
		cv.Fill(draw.Ring(o, spotR, spotR-2), draw.Solid(th.Text))
		person(cv, o, th.Soft)
	})
	f.Put(art, sp.Box.Center())
	st := draw.Style{Size: 15, Weight: draw.Bold, Color: th.Text}
	w := st.Width(sh.Scale*g.zoom, sp.Name)
	label := g.zoomed(sh, "spotname/"+th.Name+sp.Name, draw.Around(draw.Point{}, w+14, 22), func(cv *draw.Canvas) {
		cv.Fill(draw.Round(draw.Around(draw.Point{}, w+12, 20), 5), draw.Solid(draw.Fade(th.Strip, 0.82)))
		cv.Middle(draw.Point{}, draw.Center, st, sp.Name)
	})
	at := sp.label
	switch sp.align {
	case draw.Left:
		at.X += (w/2 + 4) * g.zoom
	case draw.Right:
		at.X -= (w/2 + 4) * g.zoom
	}
	f.Put(label, at)
}

// person is a small figure seen from the front.
func person(cv *draw.Canvas, c draw.Point, col draw.Color) {
	cv.Fill(draw.Circle(c.Add(draw.Pt(0, -5)), 3.6), draw.Solid(col))
	cv.Fill(draw.Sector(c.Add(draw.Pt(0, 9)), 8.5, 0.1, -90, 90), draw.Solid(col))
}

const seenLine = 18.0

var seenStyle = draw.Style{Size: 15}

func (g *Ground) putSeen(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, e *view.Eyes) {
	r := g.seenBox()
	st := seenStyle
	st.Color = th.CardText
	y := r.Y + 48
	for _, s := range g.seen(e) {
		for _, line := range st.Wrap(sh.Scale, r.W-28, s) {
			sh.Text(f, draw.Pt(r.X+14, y), draw.Left, st, line)
			y += seenLine
		}
		y += 2
	}
}
