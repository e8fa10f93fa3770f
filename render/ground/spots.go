package ground

import (
	"steadyneedle/render/draw"
	"steadyneedle/sim/world"
)

// measures of the plan, from its own corner; sizes are not to scale, and the street is cut short.
const (
	curbTop    = 82.0
	curbBottom = 174.0
	rigW       = 312.0
	rigH       = 58.0
	rigTop     = 93.0
	spotR      = 15.0
	intakeAt   = 0.66 // of the apparatus's length, from its rear end
	onWalk     = 66.0 // where one stands on the sidewalk, clear of hose and chocks
)

// hydrantX is where the hydrant stands.
func (g *Ground) hydrantX() float64 { return g.plan.Right() - 200 }

// rigX is the rear end of the apparatus for a stage of its way.
func (g *Ground) rigX(stage int, off float64) float64 {
	switch stage {
	case 0:
		return g.plan.X + 76
	case 1:
		return g.plan.X + 430
	case 2:
		return g.plan.X + g.plan.W*0.5
	}
	return g.hydrantX() - rigW*intakeAt - 46 + off*1.6
}

func (g *Ground) layoutSpots() {
	s := g.scene(g.eyes)
	x := g.rigX(s.stage, s.off)
	y := g.plan.Y + rigTop
	add := func(p world.Place, name, about string, at, label draw.Point, al draw.Align) {
		g.spots = append(g.spots, Spot{p, name, about, draw.Around(g.onPage(at), 2*spotR*g.zoom, 2*spotR*g.zoom), g.onPage(label), al})
	}
	mid, walk := y+rigH/2, g.plan.Y+onWalk
	add(world.Cab, "Cab", "Driver's seat: brakes, transmission, pump shift, lights.", draw.Pt(x+rigW-34, mid), draw.Pt(x+rigW+10, mid), draw.Left)
	add(world.Panel, "Panel", "Pump operator's position, left side.", draw.Pt(x+rigW*0.56, walk), draw.Pt(x+rigW*0.56-20, walk), draw.Right)
	add(world.Wheels, "Left rear wheel", "Wheel chocks go here. Stay out of the way of traffic.", draw.Pt(x+rearWheel, walk), draw.Pt(x+rearWheel-20, walk), draw.Right)
	add(world.RearStep, "Rear step", "Hose bed, hose and tools at the back.", draw.Pt(x-26, mid), draw.Pt(x-2, mid+27), draw.Right)
	add(world.Hydrant, "Hydrant", "Cap, coupling and valve. Stand clear of the coupling when it is charged.", draw.Pt(g.hydrantX(), g.plan.Y+36), draw.Pt(g.hydrantX()+24, g.plan.Y+36), draw.Left)
	add(world.TankTop, "Tank top", "On top, at the fill tower: look into the tank.", draw.Pt(x+rigW*0.36, mid), draw.Pt(x+rigW*0.36, y+rigH+14), draw.Center)
	add(world.Round, "Walk round", "Once round the scene: hose, couplings, under the apparatus.", draw.Pt(x+rigW*0.68, y+rigH+16), draw.Pt(x+rigW*0.68+22, y+rigH+16), draw.Left)
}
