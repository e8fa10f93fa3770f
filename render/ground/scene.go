package ground

import (
	"math"

	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
)

// scene is what lies on the street, in as few steps as the plan shows. Two equal scenes look the same.
type scene struct {
	stage         int
	off           float64
	supply        int // length chosen
	atRig, atPlug int
	water         bool // in the supply
	kinked        bool
	parted, slack bool
	lineTo        int
	coupled       int
	full          bool // water in the line
	front, rear   int
	leak, kink    bool
	offset        float64
	crossing      int
	doors         bool
}

func (g *Ground) scene(e *view.Eyes) scene {
	whole := func(name string) int { return int(math.Floor(e.Named(name) + 0.01)) }
	s := scene{
		off: math.Round(e.Named("stop_at_hydrant")), supply: whole("supply_length"),
		atRig: whole("supply_at_engine"), atPlug: whole("supply_at_hydrant"),
		water: e.Signal("supply_fill") > 0.3, kinked: e.Signal("supply_kink") > 0.02,
		parted: whole("line_break") > 0, slack: whole("line_slack") > 0, lineTo: whole("line_to"), coupled: whole("line_coupling"),
		front: whole("chock_front"), rear: whole("chock_rear"), leak: e.Lit("line_leak_seen"), kink: e.Lit("line_kink_seen"),
		offset: math.Round(e.Named("lay_offset")), crossing: whole("lay_crossing"), doors: e.Named("compartments") < 0.5,
	}
	if v := e.Signal("stage"); !math.IsNaN(v) {
		s.stage = int(v)
	}
	for n := 1; n <= len(g.info.Lines); n++ {
		if n == s.lineTo && e.Named(dischargeName(n)) > 0.05 {
			s.full = true
		}
	}
	return s
}

func dischargeName(n int) string { return "discharge" + string(rune('0'+n)) }

func (g *Ground) paintScene(cv *draw.Canvas, th *theme.Theme, s scene) {
	x := g.rigX(s.stage, s.off)
	if s.stage >= 2 {
		g.paintLay(cv, th, s, x)
	}
	g.paintRig(cv, th, s, x)
	if s.stage == 3 {
		g.paintSupply(cv, th, s, x)
		g.paintChocks(cv, th, s, x)
	}
}

// paintLay draws the line from the fire to the back of the apparatus, and on to its discharge.
func (g *Ground) paintLay(cv *draw.Canvas, th *theme.Theme, s scene, x float64) {
	f := g.fireBox()
	start := draw.Pt(f.X+f.W*0.62, f.Bottom())
	lane := g.plan.Y + curbTop + 8 + s.offset*2
	rear := draw.Pt(x-4, g.plan.Y+rigTop+rigH*0.5)
	points := []draw.Point{start}
	if g.info.FireAcross {
		start.Y = f.Y
		points[0] = start
		cross := start.X + 12
		if s.crossing == 2 {
			cross = g.plan.X + g.plan.W*0.6
			points = append(points, draw.Pt(start.X, g.plan.Y+curbBottom-14), draw.Pt(cross, g.plan.Y+curbBottom-14))
		}
		points = append(points, draw.Pt(cross, lane))
	} else {
		points = append(points, draw.Pt(start.X, lane))
	}
	end := draw.Pt(x-58, lane)
	points = append(points, end)
	if s.stage == 3 && s.lineTo > 0 {
		d := g.outlet(s, x)
		points = append(points, draw.Pt(x-40, g.plan.Y+curbTop+4), draw.Pt(d.X-26, g.plan.Y+curbTop+4), d)
	} else if !s.parted {
		points = append(points, rear)
	}
	run := draw.Bend(16, points...)
	w := 5.0
	if s.full {
		w = 7.5
	}
	cv.Fill(draw.Stroke(run.Moved(draw.Pt(0, 2)), w), draw.Solid(draw.Fade(th.Shade, 0.4)))
	cv.Fill(draw.Stroke(run, w), draw.Solid(th.Hose))
	if s.full {
		cv.Fill(draw.Stroke(run, 2), draw.Solid(th.Water))
	}
	g.couplings(cv, th, points[len(points)-1], s)
	if s.leak {
		p := draw.Pt(g.plan.X+g.plan.W*0.6, lane)
		cv.Fill(draw.Circle(p, 8), draw.Solid(draw.Fade(th.Water, 0.8)))
		mark(cv, th, p.Add(draw.Pt(0, 20)), "drip")
	}
	if s.kink {
		p := draw.Pt(g.plan.X+g.plan.W*0.55, lane)
		cv.Fill(draw.Stroke(draw.Polyline(p.Add(draw.Pt(-9, 0)), p.Add(draw.Pt(0, -11)), p.Add(draw.Pt(4, 6)), p.Add(draw.Pt(12, 0))), 4), draw.Solid(th.Hose))
		mark(cv, th, p.Add(draw.Pt(0, 20)), "kink")
	}
	crew(cv, th, start.Add(draw.Pt(0, 2)))
}

func (g *Ground) couplings(cv *draw.Canvas, th *theme.Theme, end draw.Point, s scene) {
	cv.Fill(draw.Round(draw.Around(end, 10, 9), 2), draw.Solid(th.SteelHi))
	if s.lineTo > 0 {
		joint(cv, th, end, s.coupled)
	}
}

// outlet is where a discharge leaves the panel.
func (g *Ground) outlet(s scene, x float64) draw.Point {
	return draw.Pt(x+rigW*0.40+float64(s.lineTo)*16, g.plan.Y+rigTop+2)
}

// joint is a coupling: bright and round when tight, amber and open when hand-tight, gray when off.
func joint(cv *draw.Canvas, th *theme.Theme, p draw.Point, tight int) {
	switch tight {
	case 0:
		cv.Fill(draw.Round(draw.Around(p, 10, 9), 2), draw.Solid(th.SteelLo))
	case 1:
		cv.Fill(draw.Circle(p, 7), draw.Solid(th.FocusDark))
		cv.Fill(draw.Ring(p, 6.5, 3), draw.Solid(th.Caution))
	default:
		cv.Fill(draw.Circle(p, 7), draw.Solid(th.FocusDark))
		cv.Fill(draw.Circle(p, 5.5), draw.Solid(th.SteelHi))
	}
}

func mark(cv *draw.Canvas, th *theme.Theme, p draw.Point, word string) {
	st := draw.Style{Size: 15, Weight: draw.Bold, Color: th.Text}
	w := st.Width(cv.Scale, word)
	cv.Fill(draw.Round(draw.Around(p, w+10, 19), 5), draw.Solid(draw.Fade(th.Strip, 0.8)))
	cv.Middle(p, draw.Center, st, word)
}

func crew(cv *draw.Canvas, th *theme.Theme, p draw.Point) {
	for _, d := range []draw.Point{{X: -9, Y: 6}, {X: 9, Y: 2}} {
		c := p.Add(d)
		cv.Fill(draw.Circle(c, 6.5), draw.Solid(draw.Darker(th.Hose, 0.45)))
		cv.Fill(draw.Circle(c, 3.6), draw.Solid(th.Hose))
	}
}

// paintSupply draws the supply hose between hydrant and intake.
func (g *Ground) paintSupply(cv *draw.Canvas, th *theme.Theme, s scene, x float64) {
	if s.supply == 0 {
		return
	}
	plug := draw.Pt(g.hydrantX(), g.plan.Y+69)
	intake := draw.Pt(x+rigW*0.66, g.plan.Y+rigTop+2)
	a, b := plug, intake
	if s.atPlug == 0 {
		a = plug.Add(draw.Pt(-18, 10))
	}
	if s.atRig == 0 {
		b = intake.Add(draw.Pt(22, -10))
	}
	slack := float64(s.supply) * 15
	run := new(draw.Path).Move(a).Cube(a.Add(draw.Pt(slack, 6)), b.Add(draw.Pt(slack*0.8, -10)), b)
	w := 6.0
	if s.water {
		w = 9
	}
	cv.Fill(draw.Stroke(run.Moved(draw.Pt(0, 2)), w), draw.Solid(draw.Fade(th.Shade, 0.45)))
	cv.Fill(draw.Stroke(run, w), draw.Solid(th.Supply))
	joint(cv, th, a, s.atPlug)
	joint(cv, th, b, s.atRig)
	if s.kinked {
		mark(cv, th, draw.Pt(max(a.X, b.X)+slack*0.7+30, (a.Y+b.Y)/2), "kink")
	}
}

func (g *Ground) paintChocks(cv *draw.Canvas, th *theme.Theme, s scene, x float64) {
	at := func(n, side int) {
		if n == 0 {
			return
		}
		wx := x + 62
		if n == 2 {
			wx = x + rigW - 70
		}
		p := draw.Pt(wx+float64(side)*26, g.plan.Y+rigTop+7)
		cv.Fill(draw.Poly(p.Add(draw.Pt(-8*float64(side), -6)), p.Add(draw.Pt(9*float64(side), 0)), p.Add(draw.Pt(-8*float64(side), 6))), draw.Solid(th.Caution))
	}
	at(s.front, 1)
	at(s.rear, -1)
}
