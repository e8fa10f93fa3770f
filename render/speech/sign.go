package speech

import "steadyneedle/render/draw"

// pose is a figure's arms: shoulder to elbow to hand, left and right, in units of a figure 100 high
// with the neck at the origin, and marks that say how the hands move.
type pose struct {
	left, right [3]draw.Point
	marks       func(line func(points ...draw.Point), head func(at draw.Point, deg float64))
}

var (
	shoulderL = draw.Pt(-14, 6)
	shoulderR = draw.Pt(14, 6)
	restL     = [3]draw.Point{shoulderL, {X: -20, Y: 24}, {X: -19, Y: 42}}
	restR     = [3]draw.Point{shoulderR, {X: 20, Y: 24}, {X: 19, Y: 42}}
)

var poses = map[string]pose{
	"sign_water": {restL, [3]draw.Point{shoulderR, {X: 18, Y: -16}, {X: 18, Y: -38}}, nil},
	"sign_ready": {restL, [3]draw.Point{shoulderR, {X: 26, Y: 14}, {X: 42, Y: 4}}, func(line func(...draw.Point), head func(draw.Point, float64)) {
		for _, d := range []float64{-4, 0, 4} {
			line(draw.Pt(42, 4), draw.Pt(50, 0+d*1.4))
		}
	}},
	"sign_more": {restL, [3]draw.Point{shoulderR, {X: 24, Y: 16}, {X: 42, Y: 12}}, func(line func(...draw.Point), head func(draw.Point, float64)) {
		line(draw.Pt(42, 2), draw.Pt(42, -20))
		head(draw.Pt(42, -26), 0)
	}},
	"sign_less": {restL, [3]draw.Point{shoulderR, {X: 24, Y: 12}, {X: 42, Y: 8}}, func(line func(...draw.Point), head func(draw.Point, float64)) {
		line(draw.Pt(42, 18), draw.Pt(42, 38))
		head(draw.Pt(42, 44), 180)
	}},
	"sign_good": {restL, [3]draw.Point{shoulderR, {X: 26, Y: 18}, {X: 32, Y: 2}}, func(line func(...draw.Point), head func(draw.Point, float64)) {
		line(draw.Pt(32, 2), draw.Pt(32, -12))
		line(draw.Pt(27, 4), draw.Pt(38, 4))
	}},
	"sign_stop": {[3]draw.Point{shoulderL, {X: -16, Y: -14}, {X: 14, Y: -38}}, [3]draw.Point{shoulderR, {X: 16, Y: -14}, {X: -14, Y: -38}}, nil},
	"sign_shut_down": {restL, [3]draw.Point{shoulderR, {X: 30, Y: 8}, {X: 44, Y: 12}}, func(line func(...draw.Point), head func(draw.Point, float64)) {
		line(draw.Pt(44, 22), draw.Pt(24, 30), draw.Pt(-6, 26))
		head(draw.Pt(-12, 24), -80)
	}},
	"sign_pick_up": {restL, [3]draw.Point{shoulderR, {X: 20, Y: -16}, {X: 14, Y: -36}}, func(line func(...draw.Point), head func(draw.Point, float64)) {
		c := draw.Pt(8, -42)
		var ring []draw.Point
		for i := range 11 {
			p := c.Polar(13, float64(i)*28-90)
			ring = append(ring, draw.Pt(p.X*1.15, c.Y+(p.Y-c.Y)*0.5))
		}
		line(ring...)
		head(ring[len(ring)-1], 160)
	}},
	"sign_go": {restL, [3]draw.Point{shoulderR, {X: 28, Y: 2}, {X: 34, Y: -16}}, func(line func(...draw.Point), head func(draw.Point, float64)) {
		line(draw.Pt(42, -26), draw.Pt(50, -14), draw.Pt(48, 2))
		head(draw.Pt(45, 8), 200)
	}},
	"sign_kink": {[3]draw.Point{shoulderL, {X: -24, Y: 22}, {X: -9, Y: 22}}, [3]draw.Point{shoulderR, {X: 24, Y: 22}, {X: 9, Y: 22}}, func(line func(...draw.Point), head func(draw.Point, float64)) {
		line(draw.Pt(-26, 36), draw.Pt(0, 30), draw.Pt(26, 36))
		head(draw.Pt(-31, 39), -120)
		head(draw.Pt(31, 39), 120)
	}},
}

// crews are the crew's own gestures, by the pose they share with the candidate's; waving on has its own.
var crews = map[string]string{"crew_wants_water_sign": "sign_water", "crew_picking_up": "sign_pick_up", "crew_go_sign": "sign_go"}

// Has reports whether there is a drawing for a gesture.
func Has(name string) bool {
	if own, ok := crews[name]; ok {
		name = own
	}
	_, ok := poses[name]
	return ok
}

// Pictogram draws the gesture of that name in r: a figure, its arms, and how they move.
func Pictogram(cv *draw.Canvas, r draw.Rect, name string, body, motion draw.Color) {
	if own, ok := crews[name]; ok {
		name = own
	}
	p, ok := poses[name]
	if !ok {
		return
	}
	k := r.H / 116
	origin := draw.Pt(r.Center().X-4*k, r.Y+58*k)
	at := func(q draw.Point) draw.Point { return origin.Add(q.Mul(k)) }
	cv.Fill(draw.Circle(at(draw.Pt(0, -13)), 10*k), draw.Solid(body))
	torso := draw.Poly(at(draw.Pt(-17, 2)), at(draw.Pt(17, 2)), at(draw.Pt(13, 52)), at(draw.Pt(-13, 52)))
	cv.Fill(draw.Stroke(draw.Polyline(at(draw.Pt(-13, 5)), at(draw.Pt(13, 5))), 7*k), draw.Solid(body))
	cv.Fill(torso, draw.Solid(body))
	for _, arm := range [][3]draw.Point{p.left, p.right} {
		cv.Fill(draw.Stroke(draw.Polyline(at(arm[0]), at(arm[1]), at(arm[2])), 8.5*k), draw.Solid(body))
		cv.Fill(draw.Circle(at(arm[2]), 6*k), draw.Solid(motion))
	}
	if p.marks == nil {
		return
	}
	p.marks(func(points ...draw.Point) {
		run := make([]draw.Point, len(points))
		for i := range points {
			run[i] = at(points[i])
		}
		cv.Fill(draw.Stroke(draw.Polyline(run...), 3.4*k), draw.Solid(motion))
	}, func(q draw.Point, deg float64) {
		c := at(q)
		cv.Fill(draw.Poly(c, c.Polar(10*k, deg+150), c.Polar(10*k, deg-150)), draw.Solid(motion))
	})
}
