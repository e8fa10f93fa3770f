package cutaway

import "steadyneedle/render/draw"

// plan is where everything stands on the sheet: one impeller, or the two of a two-stage pump.
type plan struct {
	wheels []wheel

	intake, tank, discharge, relief, bypass, recirc way

	// Of a two-stage pump: each impeller's own way up to the discharge, that of the first parted by the transfer
	// valve; from there across to the second one's eye; and from the intake to it, parted by the clapper valve.
	low, high, second, cross, branch, behind way

	transfer draw.Point // the valve's middle
	clapper  draw.Point // the hinge, at the left wall of a way up
}

func (p *plan) two() bool { return len(p.wheels) == 2 }

// pipes are all ways, those behind first.
func (p *plan) pipes() []*way {
	list := []*way{&p.recirc, &p.tank, &p.bypass, &p.intake}
	if p.two() {
		list = append(list, &p.branch, &p.behind, &p.cross, &p.low, &p.high, &p.second)
	}
	return append(list, &p.relief, &p.discharge)
}

func recirculation() way {
	const x = 558
	return way{[]draw.Point{{X: x, Y: mainY}, {X: x, Y: 40}, {X: 140, Y: 40}, {X: 140, Y: tankBox.Y + 6}}, thin}
}

func fromTank() way {
	return way{[]draw.Point{{X: tankPipeX, Y: tankBox.Bottom()}, {X: tankPipeX, Y: suctionY}}, narrow}
}

func toRelief() way {
	return way{[]draw.Point{{X: reliefX, Y: mainY}, {X: reliefX, Y: barrel.Y + 20}}, narrow}
}

// single is a pump with one impeller.
func single() *plan {
	const bypassY = 476
	w := wheel{at: draw.Pt(370, suctionY-6), k: 1}
	w.ins = []inlet{{draw.Pt(riserX+10, suctionY), wide}}
	x := w.outlet().X
	return &plan{
		wheels:    []wheel{w},
		intake:    way{[]draw.Point{{X: 0, Y: suctionY}, {X: w.at.X - 10, Y: suctionY}}, wide},
		tank:      fromTank(),
		discharge: way{[]draw.Point{{X: x, Y: w.at.Y - 56}, {X: x, Y: mainY}, {X: sheetW, Y: mainY}}, wide},
		relief:    toRelief(),
		bypass:    way{[]draw.Point{{X: reliefX, Y: barrel.Y + 100}, {X: reliefX, Y: bypassY}, {X: riserX, Y: bypassY}, {X: riserX, Y: suctionY}}, narrow},
		recirc:    recirculation(),
	}
}

// double is a pump with two. In volume each takes from the intake and gives to the discharge; in pressure the
// transfer valve leads what the first gives to the eye of the second, and the clapper valve shuts the second off
// from the intake, which is then under less pressure.
func double() *plan {
	const (
		size                    = 0.48
		bore                    = 32.0
		acrossY, branchY, flapY = 208.0, 462.0, 424.0
	)
	one := wheel{at: draw.Pt(330, suctionY+6), k: size}
	two := wheel{at: draw.Pt(474, suctionY+6), k: size}
	one.ins = []inlet{{draw.Pt(riserX+8, suctionY), wide}}
	above, below := draw.Pt(two.at.X, two.at.Y-116*size), draw.Pt(two.at.X, two.at.Y+134*size)
	two.ins = []inlet{{above, bore}, {below, bore}}
	up, last := one.outlet(), two.outlet()
	transfer := draw.Pt(up.X, acrossY)
	return &plan{
		wheels:    []wheel{one, two},
		intake:    way{[]draw.Point{{X: 0, Y: suctionY}, {X: one.at.X - 10, Y: suctionY}}, wide},
		tank:      fromTank(),
		discharge: way{[]draw.Point{{X: up.X + 18, Y: mainY}, {X: sheetW, Y: mainY}}, wide},
		relief:    toRelief(),
		bypass:    way{[]draw.Point{{X: reliefX, Y: barrel.Y + 100}, {X: reliefX, Y: branchY}, {X: two.at.X, Y: branchY}}, bore},
		recirc:    recirculation(),
		low:       way{[]draw.Point{up.Add(draw.Pt(0, 2)), transfer}, bore},
		high:      way{[]draw.Point{transfer, {X: up.X, Y: mainY}}, bore},
		second:    way{[]draw.Point{last.Add(draw.Pt(0, 2)), {X: last.X, Y: mainY}}, bore},
		cross:     way{[]draw.Point{transfer, {X: two.at.X, Y: acrossY}, above.Add(draw.Pt(0, 10))}, bore},
		branch:    way{[]draw.Point{{X: riserX, Y: suctionY}, {X: riserX, Y: branchY}, {X: two.at.X, Y: branchY}, {X: two.at.X, Y: flapY}}, bore},
		behind:    way{[]draw.Point{{X: two.at.X, Y: flapY}, below.Add(draw.Pt(0, -10))}, bore},
		transfer:  transfer,
		clapper:   draw.Pt(two.at.X-bore/2, flapY),
	}
}
