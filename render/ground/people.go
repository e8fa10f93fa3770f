package ground

import (
	"steadyneedle/render/draw"
	"steadyneedle/render/theme"
)

// paintPeople draws the people of the street where they stand, by the numbers of world.Stands.
func (g *Ground) paintPeople(cv *draw.Canvas, th *theme.Theme, s scene, x float64) {
	for i := range g.info.People {
		if s.people[i] > 0 {
			firefighter(cv, th, g.standing(s.people[i], x).Add(draw.Pt(0, float64(i)*13)), th.Grip)
		}
	}
}

// standing is where one who stands somewhere is drawn.
func (g *Ground) standing(stand int, x float64) draw.Point {
	top := g.plan.Y + rigTop
	return [...]draw.Point{
		{},
		{X: x + 90, Y: g.plan.Y + 70},            // clear: on the sidewalk
		{X: x + rigW*intakeAt, Y: top - 12},      // over the intake coupling
		{X: g.hydrantX() - 26, Y: g.plan.Y + 70}, // over the hydrant coupling
		{X: x - 64, Y: top + 24},                 // in the bight of the line
		{X: x + rigW*0.40 + 10, Y: top - 16},     // before the discharges
		{X: x - 52, Y: top + rigH},               // at the hose bed
	}[stand]
}
