package flownet

import "steadyneedle/sim/bound"

// giver is the node that gave last, or would give now.
func (l *Link) giver() *Node {
	w := &l.work
	if w.q < 0 || w.q == 0 && l.From.P < l.To.P {
		return l.To
	}
	return l.From
}

// mix settles how much of a link's flow is air in this step, from the node that gives, and how the
// link's volumes and losses follow from that.
func (n *Net) mix(l *Link) {
	w := &l.work
	w.unmix()
	from, to := l.giver(), l.To
	back := from == l.To
	if back {
		to = l.From
	}
	void := from.store.void
	if void < noticeable || !to.airy() {
		return
	}
	slip := l.Carry
	if slip == 0 {
		slip = 1
	}
	part := float64(slip * void)
	air := part / (1 - void + part)
	w.water = 1 - air
	// Air that goes to a place of another pressure takes another room there.
	there := w.water
	if !to.fixed {
		there += float64(air * bound.AtMost(from.absolute(n.Patm)/to.absolute(n.Patm), mostSwell))
	}
	if back {
		w.takeOn, w.giveBack = 1, there
	} else {
		w.giveBack, w.takeOn = 1, there
	}
	if l.GasR > 0 {
		w.thin = 1 - float64(air*(1-l.GasR))
	}
	w.mixed = true
}

// unmix lets nothing but water through the link.
func (w *linkWork) unmix() {
	w.mixed, w.water, w.giveBack, w.takeOn, w.thin = false, 1, 1, 1, 1
}

// mostSwell bounds the ratio by which air swells in one step; the amount is right in any case.
const mostSwell = 4

// airy reports whether air can be at the node.
func (n *Node) airy() bool { return n.fixed || n.Volume > 0 }

// absolute is the node's pressure counted from the vapor pressure, Pa.
func (n *Node) absolute(patm float64) float64 { return bound.AtLeast(n.P+n.base(patm), 1) }

// finish books water and air where the flows took them.
func (n *Net) finish(dt float64) {
	b := n.books
	for _, v := range n.free {
		if v.WaterIn == 0 && v.AirIn == 0 {
			continue
		}
		in := float64(v.WaterIn * dt)
		v.Water += in
		b.enter(in)
		v.Air += float64(v.AirIn * dt)
	}
	for _, l := range n.open {
		w := &l.work
		water := float64(w.q * dt)
		if w.mixed {
			n.carry(l, float64(water*(1-w.water)))
			water = float64(water * w.water)
		}
		l.From.Water -= water
		l.To.Water += water
		if w.entry != 0 {
			b.enter(float64(float64(w.entry) * water))
		}
	}
	n.books = b
}

// carry moves air along with the flow; room is what it takes at the node it leaves.
func (n *Net) carry(l *Link, room float64) {
	from, to := l.From, l.To
	if room < 0 {
		from, to, room = to, from, -room
	}
	amount := float64(room*from.absolute(n.Patm)) / n.Patm
	if !from.fixed {
		amount = bound.AtMost(amount, float64(0.5*from.Air))
		from.Air -= amount
	}
	if !to.fixed {
		to.Air += amount
	}
}

// MoveAir carries up to amount (m³ at atmospheric pressure) of air from one node to another, as a
// primer does towards a boundary, and returns what was there to be moved.
func (n *Net) MoveAir(from, to *Node, amount float64) float64 {
	if !from.fixed {
		amount = bound.AtMost(amount, from.Air)
		from.Air -= amount
	}
	if !to.fixed {
		to.Air += amount
	}
	return amount
}

// VoidFraction is the share of a node's room that is air or vapor, 0…1.
func (n *Net) VoidFraction(v *Node) float64 {
	if v.fixed {
		return v.Void
	}
	v.store.gas = v.gasNow(n.Patm)
	return v.voidFraction()
}

// AirVolume is the room that a node's air takes at the pressure it has, m³.
func (n *Net) AirVolume(v *Node) float64 {
	if v.fixed {
		return 0
	}
	return float64(v.Air*n.Patm) / v.absolute(n.Patm)
}
