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
	p := g.plan
	cv.Fill(draw.Round(p, 10), draw.Solid(th.Grass))
	road := draw.Rect{X: p.X, Y: p.Y + curbTop, W: p.W, H: curbBottom - curbTop}
	walk := road.Inset(0)
	walk.Y, walk.H = road.Y-16, road.H+28
	cv.Fill(draw.Box(walk), draw.Solid(draw.Mix(th.Road, th.Curb, 0.35)))
	cv.Fill(draw.Box(road), draw.Down(road, th.Road, draw.Darker(th.Road, 0.12), th.Road))
	for _, y := range []float64{road.Y, road.Bottom()} {
		cv.Fill(draw.Box(draw.Rect{X: p.X, Y: cv.Snap(y - 1.5), W: p.W, H: 3}), draw.Solid(th.Curb))
	}
	mid := road.Y + road.H*0.78
	for _, d := range draw.Dashes(draw.Polyline(draw.Pt(p.X+8, mid), draw.Pt(p.Right()-8, mid)), 26, 18) {
		cv.Fill(draw.Stroke(d, 2), draw.Solid(draw.Fade(th.Text, 0.45)))
	}
	g.houses(cv, th)
	g.fire(cv, th)
	g.hydrant(cv, th)
	st := draw.Style{Size: 15, Color: th.Text}
	cv.Text(draw.Pt(p.X+16, p.Bottom()-6), draw.Left, draw.Style{Size: 16, Weight: draw.Bold, Color: th.Text}, g.info.Street+"; hydrant at "+g.info.HydrantAt)
	cv.Text(draw.Pt(p.Right()-16, p.Bottom()-6), draw.Right, st, "Plan not to scale. Click a spot to walk there.")
	cv.Fill(draw.Frame(p, 10, 1.5), draw.Solid(th.StripEdge))
	g.seenFrame(cv, th)
	g.heardFrame(cv, th)
	g.deck.Still(cv, th)
}

// houses line the street: quiet shapes that give it a scale.
func (g *Ground) houses(cv *draw.Canvas, th *theme.Theme) {
	p := g.plan
	col := draw.Mix(th.Grass, th.Building, 0.45)
	for i, x := 0, p.X+22.0; x < p.Right()-340; i, x = i+1, x+128 {
		if f := g.fireBox(); x+96 > f.X-10 && x < f.Right()+10 && f.Y < p.Center().Y {
			continue
		}
		h := 34.0 + float64((i*37)%15)
		r := draw.Rect{X: x, Y: p.Y + 10, W: 96, H: h}
		cv.Fill(draw.Round(r, 3), draw.Solid(col))
		cv.Fill(draw.Box(draw.Rect{X: r.X, Y: r.Center().Y - 1, W: r.W, H: 2}), draw.Solid(draw.Fade(th.Shade, 0.35)))
	}
	for x := p.X + 300.0; x < p.Right()-330; x += 152 {
		cv.Fill(draw.Circle(draw.Pt(x, p.Bottom()-11), 8), draw.Solid(draw.Lighter(th.Grass, 0.1)))
	}
}

// fire is the building where the work ends.
func (g *Ground) fire(cv *draw.Canvas, th *theme.Theme) {
	r := g.fireBox()
	cv.Shadow(draw.Round(r, 4), 0, 3, 10, draw.Fade(th.Shade, 0.6))
	cv.Fill(draw.Round(r, 4), draw.Solid(th.Building))
	cv.Fill(draw.Frame(r, 4, 2), draw.Solid(draw.Fade(th.Amber, 0.8)))
	c := draw.Pt(r.X+28, r.Center().Y+2)
	flame := new(draw.Path).Move(c.Add(draw.Pt(0, -20))).Cube(c.Add(draw.Pt(16, -6)), c.Add(draw.Pt(16, 14)), c.Add(draw.Pt(0, 16))).Cube(c.Add(draw.Pt(-16, 14)), c.Add(draw.Pt(-12, 0)), c.Add(draw.Pt(-6, -6))).Cube(c.Add(draw.Pt(-2, -2)), c.Add(draw.Pt(-4, -12)), c.Add(draw.Pt(0, -20))).Close()
	cv.Fill(flame, draw.Down(draw.Around(c, 30, 36), th.Amber, th.Red))
	st := draw.Style{Size: 15, Weight: draw.Bold, Color: th.BuildingText}
	lines := st.Wrap(cv.Scale, r.W-64, "Fire: "+g.info.FireAt)
	y := r.Center().Y - float64(len(lines)-1)*9
	for _, l := range lines {
		cv.Middle(draw.Pt(r.X+52, y), draw.Left, st, l)
		y += 18
	}
}

func (g *Ground) fireBox() draw.Rect {
	y := g.plan.Y + 8
	if g.info.FireAcross {
		y = g.plan.Bottom() - 40
	}
	return draw.Rect{X: g.plan.X + 452, Y: y, W: 214, H: 50}
}

func (g *Ground) hydrant(cv *draw.Canvas, th *theme.Theme) {
	c := draw.Pt(g.hydrantX(), g.plan.Y+62)
	cv.Shadow(draw.Circle(c, 9), 0, 2, 5, draw.Fade(th.Shade, 0.6))
	cv.Fill(draw.Box(draw.Around(c, 24, 7)), draw.Solid(th.Steel))
	cv.Fill(draw.Circle(c, 9), draw.Radial{Center: c.Add(draw.Pt(-3, -3)), R: 13, Stops: draw.Even(th.GripHi, th.Grip)})
	cv.Fill(draw.Circle(c, 3.4), draw.Solid(th.SteelHi))
}

func (g *Ground) seenFrame(cv *draw.Canvas, th *theme.Theme) {
	y := g.plan.Bottom() + 22
	where := map[world.Place]string{world.Walking: "Walking…", world.Cab: "You sit in the cab", world.Panel: "You stand at the panel",
		world.Wheels: "You stand at the left rear wheel", world.RearStep: "You stand at the rear step", world.Hydrant: "You stand at the hydrant",
		world.TankTop: "You stand on the tank top", world.Round: "You have walked round the scene"}[g.stands]
	cv.Middle(draw.Pt(g.box.X+6, y), draw.Left, draw.Style{Size: 19, Weight: draw.Bold, Color: th.Text}, where)
	under := "What is in reach here:"
	switch {
	case g.stands == world.Walking:
		under = "Nothing is in reach on the way."
	case g.stands == world.Cab:
		under = "The dash is under Cab, key 1."
	case len(g.deck.Widgets()) == 0:
		under = "Nothing to work here; look, or walk on."
	case g.stands == world.Panel:
		under = "Hose and tools in reach here; gauges and valves are under Panel, key 2."
	}
	cv.Middle(draw.Pt(g.box.X+g.column+18, y), draw.Left, draw.Style{Size: 16, Color: th.Soft}, under)
	r := g.seenBox()
	cv.Fill(draw.Round(r, 8), draw.Solid(th.Card))
	cv.Fill(draw.Frame(r, 8, 1), draw.Solid(th.Rule))
	cv.Middle(draw.Pt(r.X+14, r.Y+20), draw.Left, draw.Style{Size: 15, Weight: draw.Bold, Color: th.Heading, Track: 1.2}, "What you see")
}

func (g *Ground) seenBox() draw.Rect {
	return draw.Rect{X: g.box.X + 4, Y: g.plan.Bottom() + 40, W: g.column, H: g.seenH}
}

// Moving puts what lies on the street as it is now, the spots, where one stands, and the cards' states.
func (g *Ground) Moving(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, e *view.Eyes) {
	s := g.scene(e)
	key := fmt.Sprintf("plan/%s/%v/%+v", th.Name, g.plan, s)
	f.Put(sh.Once("plan", key, g.plan, func(cv *draw.Canvas) { g.paintScene(cv, th, s) }), draw.Point{})
	for _, sp := range g.spots {
		g.putSpot(sh, f, th, sp)
	}
	g.putWalker(sh, f, th)
	g.putSeen(sh, f, th, e)
	g.putHeard(sh, f, th)
	g.deck.Moving(sh, f, th, e)
}

func (g *Ground) putSpot(sh *stage.Shelf, f *stage.Frame, th *theme.Theme, sp Spot) {
	here := sp.Place == g.stands
	art := sh.Get(fmt.Sprintf("spot/%s/%v", th.Name, here), draw.Around(draw.Point{}, 44, 44), func(cv *draw.Canvas) {
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
	w := st.Width(sh.Scale, sp.Name)
	label := sh.Get("spotname/"+th.Name+sp.Name, draw.Around(draw.Point{}, w+14, 22), func(cv *draw.Canvas) {
		cv.Fill(draw.Round(draw.Around(draw.Point{}, w+12, 20), 5), draw.Solid(draw.Fade(th.Strip, 0.82)))
		cv.Middle(draw.Point{}, draw.Center, st, sp.Name)
	})
	at := sp.label
	switch sp.align {
	case draw.Left:
		at.X += w/2 + 4
	case draw.Right:
		at.X -= w/2 + 4
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
	y := r.Y + 44
	for _, s := range g.seen(e) {
		for _, line := range st.Wrap(sh.Scale, r.W-28, s) {
			sh.Text(f, draw.Pt(r.X+14, y), draw.Left, st, line)
			y += seenLine
		}
		y += 2
	}
}
