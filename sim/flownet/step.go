package flownet

import (
	"math"

	"steadyneedle/sim/bound"
)

// prepare numbers rows, lays out the matrix and fills the nodes to their pressures.
func (n *Net) prepare() {
	n.Tau = DefaultTau
	index := make([]int, len(n.nodes)) // among the free ones; −1: a boundary
	for i, v := range n.nodes {
		v.unbound()
		if v.fixed {
			index[i] = -1
			n.fixed = append(n.fixed, v)
		} else {
			index[i] = len(n.free)
			n.free = append(n.free, v)
		}
	}
	p := newPlanner(len(n.free))
	for _, l := range n.links {
		if a, b := index[l.From.number], index[l.To.number]; a >= 0 && b >= 0 {
			p.join(a, b)
		}
	}
	lu := p.compile(n.free)
	place := func(i, j int) *float64 { // of the equation of node i, what node j does in it
		if index[i] < 0 || index[j] < 0 {
			return &lu.a[0]
		}
		return &lu.a[p.at(index[i], index[j])]
	}
	for _, l := range n.links {
		w, f, t := &l.work, l.From.number, l.To.number
		w.unmix()
		w.net = n
		w.plain = l.Exponent != HazenWilliams && l.Gain == nil && !l.Check
		w.fromPart, w.toPart = 1, 1
		if l.From.fixed {
			w.entry = 1
		}
		if l.To.fixed {
			w.entry--
		}
		w.ft, w.tf = place(f, t), place(t, f)
	}
	for _, list := range [...]*[]*Link{&n.open, &n.plain, &n.other, &n.pumps} {
		*list = make([]*Link, 0, len(n.links))
	}
	n.stale = true
	n.lu = lu
	n.fill()
}

// leastSlope keeps a node that nothing holds where it is, m³/s/Pa. It is part of the matrix only,
// so that it doesn't bend the solution.
const leastSlope = 1e-16

// tolerance of a step: what its straight lines may miss, Pa.
const tolerance = 5.0

// Step advances the network by dt seconds.
func (n *Net) Step(dt float64) {
	n.begin()
	n.iterate(dt, tolerance, MaxIterations)
	n.finish(dt)
}

// begin evaluates everything at the old state and fixes what stays so during the step.
func (n *Net) begin() {
	for _, v := range n.fixed {
		v.store.void = v.Void
	}
	n.evaluate()
	if n.stale {
		n.sortLinks()
	}
	for _, l := range n.open {
		w := &l.work
		w.old = w.q
		w.curve = l.R + l.K
		if w.mixed || l.From.store.void+l.To.store.void > 0 && l.Carry >= 0 {
			n.mix(l)
			w.curve = float64(w.curve * w.thin)
		}
	}
	for _, l := range n.pumps {
		l.From.unbound()
	}
}

// sortLinks brings the lists of links up to date, where one has been opened or shut.
func (n *Net) sortLinks() {
	n.stale = false
	n.open, n.plain, n.other, n.pumps = n.open[:0], n.plain[:0], n.other[:0], n.pumps[:0]
	for _, l := range n.links {
		if l.shut {
			l.work.q, l.work.old = 0, 0
			l.work.unmix()
			l.From.unbound() // a pump may have sucked there
			continue
		}
		n.open = append(n.open, l)
		if l.work.plain {
			n.plain = append(n.plain, l)
		} else {
			n.other = append(n.other, l)
		}
		if l.Gain != nil {
			n.pumps = append(n.pumps, l)
		}
	}
}

// iterate is Newton's method; a dt of 0 is endless, for a steady solution.
func (n *Net) iterate(dt, tol float64, most int) bool {
	done := false
	used := 0
	for !done && used < most {
		used++
		n.assemble(dt)
		n.lu.solve()
		for _, v := range n.fixed {
			v.store.side = 0 // its pressure is given
		}
		share := n.share()
		done = n.apply(share, dt > 0) <= tol && share == 1
		if !done {
			n.evaluate()
		}
	}
	n.count.Steps++
	n.count.Iterations += used
	n.count.Most = max(n.count.Most, used)
	if !done {
		n.count.CapMet++
	}
	return done
}

// assemble writes the linear equations for the change of the pressures.
func (n *Net) assemble(dt float64) {
	perDt, storing := 0.0, 0.0 // 1/dt, 1/(dt+τ)
	if dt > 0 {
		perDt, storing = 1/dt, 1/(dt+n.Tau)
	}
	n.lu.clear()
	for _, v := range n.free {
		s, loose := &v.store, storing
		if v.Tau > 0 && dt > 0 {
			loose = 1 / (dt + v.Tau)
		}
		s.diag = float64(s.slope*loose) + leastSlope
		s.side = v.WaterIn - float64((s.equal-v.Water)*loose)
		if dt == 0 {
			if below := -s.base - v.P; below > 0 {
				s.diag += cavitySlope
				s.side += float64(cavitySlope * below)
			}
		}
	}
	inertial := perDt
	if n.Inertialess {
		inertial = 0
	}
	for _, l := range n.other {
		l.linearize(inertial)
		l.enter()
	}
	for _, l := range n.plain {
		// What linearize does, without the calls, which would cost as much as the numbers.
		w, from, to := &l.work, &l.From.store, &l.To.store
		q2 := float64(w.q * w.q)
		s := math.Sqrt(q2 + smooth2)
		a, inertia := float64(w.curve*s), float64(l.I*inertial)
		w.cond = 1 / bound.AtLeast(a+float64(a*(q2/(q2+smooth2)))+inertia, leastResistance)
		w.dq = float64((l.From.P - l.To.P - l.Rise - float64(a*w.q) - float64(inertia*(w.q-w.old))) * w.cond)
		q, f, t := w.q+w.dq, float64(w.giveBack*w.cond), float64(w.takeOn*w.cond)
		from.diag += f
		*w.ft -= f
		to.diag += t
		*w.tf -= t
		from.side -= float64(w.giveBack * q)
		to.side += float64(w.takeOn * q)
	}
}

// enter adds the link's linear equation to those of the nodes at its ends.
func (l *Link) enter() {
	w, from, to := &l.work, &l.From.store, &l.To.store
	f, t := float64(w.cond*w.fromPart), float64(w.cond*w.toPart)
	q := w.q + w.dq
	from.diag += float64(w.giveBack * f)
	*w.ft -= float64(w.giveBack * t)
	to.diag += float64(w.takeOn * t)
	*w.tf -= float64(w.takeOn * f)
	from.side -= float64(w.giveBack * q)
	to.side += float64(w.takeOn * q)
}

// share is how much of the Newton step is taken: all of it unless a pump's suction would move
// farther than its law can be followed.
func (n *Net) share() float64 {
	s := 1.0
	for _, l := range n.pumps {
		from := l.From
		d := from.store.side
		most := from.bracket(d)
		if l.UpLimit > 0 {
			most = bound.AtMost(most, bound.AtLeast(l.UpLimit, float64(0.5*from.absolute(n.Patm))))
		}
		if math.Abs(d) > most {
			s = bound.AtMost(s, most/math.Abs(d))
		}
	}
	return s
}

// bracket says how far the node's pressure may move when the linear solution wants to move it by d.
// A pump's law bends both ways and can send Newton's method round in a circle; so each wish to go up
// or down narrows the range in which the solution is looked for, and a wish to leave it is cut to
// its middle.
func (n *Node) bracket(d float64) float64 {
	s := &n.store
	if d > 0 {
		s.low = bound.AtLeast(s.low, n.P)
	} else {
		s.high = bound.AtMost(s.high, n.P)
	}
	if s.high-s.low < leastRange {
		n.unbound() // the rest of the network has moved the solution away
	}
	if target := n.P + d; target > s.high || target < s.low {
		return bound.AtLeast(math.Abs(float64(0.5*(s.low+s.high))-n.P), leastRange)
	}
	return math.Inf(1)
}

// unbound lets the solution be looked for anywhere.
func (n *Node) unbound() { n.store.low, n.store.high = math.Inf(-1), math.Inf(1) }

// leastRange is a range of suction within which no pump's law bends, Pa.
const leastRange = 100

// apply takes the step and returns the worst that its straight lines miss, Pa.
func (n *Net) apply(share float64, storing bool) float64 {
	if share < 1 {
		for _, v := range n.free {
			v.store.side = float64(share * v.store.side)
		}
	}
	worst := 0.0
	for _, l := range n.other {
		worst = bound.AtLeast(worst, l.advance(share))
	}
	for _, l := range n.plain {
		w := &l.work // what advance does, without the call
		dq := float64(share*w.dq) + float64(w.cond*(l.From.store.side-l.To.store.side))
		if miss := float64(float64(dq*dq) * w.curve); miss > worst {
			worst = miss
		}
		if bend := float64(float64(math.Abs(dq)*w.curve) * w.cond); bend > steep {
			dq = alongParabola(dq, bend)
		}
		w.q += dq
	}
	for _, v := range n.free {
		line := v.P + v.store.side
		if !storing || v.straight(line) {
			v.P = line
			continue
		}
		worst = bound.AtLeast(worst, v.land(v.store.side, n.Patm))
	}
	return worst
}
