package ground

import (
	"fmt"
	"math"
	"slices"

	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
	"steadyneedle/render/view"
)

// scene is what lies on the street, in as few steps as the plan shows. Two equal scenes look the same.
type scene struct {
	stage         int
	off           float64
	supplyFt      float64 // length of the supply hose taken; 0 for none
	supplyIn      float64 // its size
	lineIn        float64 // size of the line's hose
	atRig, atPlug int
	supplyFill    float64 // share of the supply hose that water has reached, in steps
	lineFill      float64 // of the line
	kinked        bool
	parted, slack bool
	lineTo        int
	coupled       int
	front, rear   chock
	lights        bool
	leak, kink    bool
	people        [4]int // where each person of the street stands
	offset        float64
	crossing      int
	doors         bool
}

func (g *Ground) scene(e *view.Eyes) scene {
	whole := func(name string) int { return int(math.Floor(e.Named(name) + 0.01)) }
	s := scene{
		off: math.Round(e.Named("stop_at_hydrant")), supplyFt: e.Signal("supply_ft"), supplyIn: e.Signal("supply_size"), lineIn: e.Signal("line_size"),
		atRig: whole("supply_at_engine"), atPlug: whole("supply_at_hydrant"),
		kinked: e.Signal("supply_kink") > 0.02,
		parted: whole("line_break") > 0, slack: whole("line_slack") > 0, lineTo: whole("line_to"), coupled: whole("line_coupling"),
		front: chockOf(e, "chock_front"), rear: chockOf(e, "chock_rear"), lights: e.Named("emergency_lights") >= 0.5, leak: e.Lit("line_leak_seen"), kink: e.Lit("line_kink_seen"),
		offset: math.Round(e.Named("lay_offset")), crossing: whole("lay_crossing"), doors: e.Named("compartments") < 0.5,
	}
	for i := range g.info.People {
		s.people[i] = whole(g.info.People[i].ID + "_at")
	}
	if v := e.Signal("stage"); !math.IsNaN(v) {
		s.stage = int(v)
	}
	s.supplyFill = steps(e.Signal("supply_fill"))
	if s.lineTo > 0 && s.lineTo <= len(g.info.Lines) {
		seen := e.Signal(fmt.Sprintf("line%d_fill", s.lineTo))
		s.lineFill = steps(seen)
		if math.IsNaN(seen) && e.Named(fmt.Sprintf("discharge%d", s.lineTo)) > 0.05 {
			s.lineFill = 1 // out of sight, and its valve was left open
		}
	}
	return s
}

// steps rounds a share to what the plan shows, so that it is drawn anew no more than 32 times while a
// hose fills.
func steps(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return math.Round(max(0, min(1, v))*32) / 32
}

func (g *Ground) paintScene(cv *draw.Canvas, th *theme.Theme, s scene) {
	x := g.rigX(s.stage, s.off)
	if s.stage >= 2 {
		g.paintLay(cv, th, s, x)
	}
	g.paintRig(cv, th, s, x)
	if s.stage == 3 {
		g.paintSupply(cv, th, s, x)
		g.paintChocks(cv, th, s, x)
		g.paintPeople(cv, th, s, x)
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
	slices.Reverse(points) // water enters at the apparatus
	line := hose{draw.Bend(16, points...), max(3, 2*s.lineIn), s.lineFill, th.Hose}
	line.paint(cv, th)
	tight := s.coupled
	if s.lineTo == 0 {
		tight = 0
	}
	joint(cv, th, points[0], tight)
	if s.leak {
		_, _, at, _ := line.run.Split(0.7)
		leak(cv, th, at)
		mark(cv, th, at.Add(draw.Pt(0, 24)), "drip")
	}
	if s.kink {
		_, _, at, bearing := line.run.Split(0.55)
		kink(cv, th, at, bearing, line)
		mark(cv, th, at.Add(draw.Pt(0, 24)), "kink")
	}
	crew(cv, th, start.Add(draw.Pt(0, 4)))
}

// outlet is where a discharge leaves the panel.
func (g *Ground) outlet(s scene, x float64) draw.Point {
	return draw.Pt(x+rigW*0.40+float64(s.lineTo)*16, g.plan.Y+rigTop+2)
}

// crew are two at the nozzle, seen from above: helmets and shoulders.
func crew(cv *draw.Canvas, th *theme.Theme, p draw.Point) {
	firefighter(cv, th, p.Add(draw.Pt(-11, 4)), draw.Hex(0x1b1e20))
	firefighter(cv, th, p.Add(draw.Pt(10, 0)), th.Grip)
}

// firefighter is one of them.
func firefighter(cv *draw.Canvas, th *theme.Theme, c draw.Point, helmet draw.Color) {
	body := draw.Around(c, 19, 11)
	cv.Shadow(draw.Round(body, 5), 1, 3, 4, draw.Fade(th.Shade, 0.6))
	cv.Fill(draw.Round(body, 5), draw.Solid(draw.Darker(th.Hose, 0.62)))
	cv.Fill(draw.Box(draw.Rect{X: body.X + 3, Y: c.Y - 1, W: 13, H: 2}), draw.Solid(th.Hose))
	cv.Fill(draw.Circle(c, 5.6), draw.Solid(draw.Lighter(helmet, 0.3)))
	cv.Fill(draw.Circle(c, 4.6), draw.Radial{Center: c.Add(draw.Pt(-1.5, -2)), R: 7, Stops: draw.Even(draw.Lighter(helmet, 0.35), helmet)})
}

// paintSupply draws the supply hose between hydrant and intake.
func (g *Ground) paintSupply(cv *draw.Canvas, th *theme.Theme, s scene, x float64) {
	if !(s.supplyFt > 0) {
		return
	}
	plug := draw.Pt(g.hydrantX(), g.plan.Y+69)
	intake := draw.Pt(x+rigW*intakeAt, g.plan.Y+rigTop+2)
	a, b := plug, intake
	if s.atPlug == 0 {
		a = plug.Add(draw.Pt(-18, 10))
	}
	if s.atRig == 0 {
		b = intake.Add(draw.Pt(22, -10))
	}
	slack := s.supplyFt * 0.9
	run := new(draw.Path).Move(a).Cube(a.Add(draw.Pt(slack, 6)), b.Add(draw.Pt(slack*0.8, -10)), b)
	supply := hose{run, 1.6 * s.supplyIn, s.supplyFill, supplyColor(th, s.supplyIn)}
	supply.paint(cv, th)
	joint(cv, th, a, s.atPlug)
	joint(cv, th, b, s.atRig)
	if s.kinked {
		_, _, at, bearing := run.Split(0.5)
		kink(cv, th, at, bearing, supply)
		mark(cv, th, at.Add(draw.Pt(42, -14)), "kink")
	}
}

// supplyColor tells the sizes of supply hose apart: what is smaller than 4 in is as the lines are.
func supplyColor(th *theme.Theme, sizeIn float64) draw.Color {
	switch {
	case sizeIn < 4:
		return th.Hose
	case sizeIn > 4:
		return th.LargeSupply
	}
	return th.Supply
}
