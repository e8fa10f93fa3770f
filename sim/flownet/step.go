package flownet

import (
	"math"

	"steadyneedle/sim/bound"
)

// prepare numbers rows, lays out the matrix and fills the nodes to their pressures.
func (n *Net) prepare() {
	n.Tau = DefaultTau
	free := []int{}
	index := make([]int, len(n.nodes))
	for i := range n.nodes {
		index[i] = -1
		if !n.nodes[i].fixed {
			index[i] = len(free)
			free = append(free, i)
		}
	}
	p := newPlanner(len(free))
	for i := range n.links {
		if a, b := index[n.links[i].From], index[n.links[i].To]; a >= 0 && b >= 0 {
			p.join(a, b)
		}
	}
	lu, row := p.compile()
	for i := range n.nodes {
		s := &n.nodes[i].store
		s.row = int32(len(free))
		if k := index[i]; k >= 0 {
			s.row, s.diag = int32(row[k]), p.at(k, k)
		}
	}
	for i := range n.links {
		l := &n.links[i]
		w := &l.work
		w.water = 1
		a, b := index[l.From], index[l.To]
		w.fromRow, w.toRow = n.nodes[l.From].store.row, n.nodes[l.To].store.row
		if a >= 0 {
			w.ff = p.at(a, a)
		}
		if b >= 0 {
			w.tt = p.at(b, b)
		}
		if a >= 0 && b >= 0 {
			w.ft, w.tf = p.at(a, b), p.at(b, a)
		}
	}
	for _, i := range free {
		n.free = append(n.free, int32(i))
	}
	n.open, n.pumps = make([]int32, 0, len(n.links)), make([]int32, 0, len(n.links))
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
	n.begin(dt)
	n.iterate(1/dt, tolerance, MaxIterations)
	n.finish(dt)
}

// begin evaluates everything at the old state and fixes what stays so during the step. A dt of 0
// stands for an endless one.
func (n *Net) begin(dt float64) {
	for _, i := range n.free {
		v := &n.nodes[i]
		v.evaluate(n.Patm)
		v.store.old = v.Water
		v.store.low, v.store.high = math.Inf(-1), math.Inf(1)
		v.store.loose = 0
		if dt > 0 {
			tau := v.Tau
			if tau <= 0 {
				tau = n.Tau
			}
			v.store.loose = 1 / (dt + tau)
		}
	}
	n.open, n.pumps = n.open[:0], n.pumps[:0]
	for i := range n.links {
		l := &n.links[i]
		w := &l.work
		if l.Shut {
			w.q, w.old, w.water = 0, 0, 1
			continue
		}
		n.open = append(n.open, int32(i))
		if l.Gain != nil {
			n.pumps = append(n.pumps, int32(i))
		}
		w.old = w.q
		n.mix(l)
		w.curve = w.r + w.k
	}
}

// iterate is Newton's method; perDt is 1/dt, 0 for a steady solution.
func (n *Net) iterate(perDt, tol float64, most int) bool {
	done := false
	used := 0
	for !done && used < most {
		used++
		n.assemble(perDt)
		n.lu.solve()
		share := n.share()
		done = n.apply(share, perDt > 0) <= tol && share == 1
		if !done {
			for _, i := range n.free {
				n.nodes[i].evaluate(n.Patm)
			}
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
func (n *Net) assemble(perDt float64) {
	n.lu.clear()
	a, b := n.lu.a, n.lu.b
	for _, i := range n.free {
		v := &n.nodes[i]
		s := &v.store
		a[s.diag] = float64(s.slope*s.loose) + leastSlope
		b[s.row] = v.WaterIn - float64((s.equal-s.old)*s.loose)
		if perDt == 0 {
			if below := -v.base(n.Patm) - v.P; below > 0 {
				a[s.diag] += cavitySlope
				b[s.row] += float64(cavitySlope * below)
			}
		}
	}
	inertial := perDt
	if n.Inertialess {
		inertial = 0
	}
	for _, i := range n.open {
		l := &n.links[i]
		w := &l.work
		l.linearize(n.nodes[l.From].P, n.nodes[l.To].P, inertial)
		f, t := float64(w.cond*w.fromPart), float64(w.cond*w.toPart)
		q := w.q + w.dq
		a[w.ff] += float64(w.giveBack * f)
		a[w.ft] -= float64(w.giveBack * t)
		a[w.tt] += float64(w.takeOn * t)
		a[w.tf] -= float64(w.takeOn * f)
		b[w.fromRow] -= float64(w.giveBack * q)
		b[w.toRow] += float64(w.takeOn * q)
	}
}

// share is how much of the Newton step is taken: all of it unless a pump's suction would move
// farther than its law can be followed.
func (n *Net) share() float64 {
	s := 1.0
	for _, i := range n.pumps {
		l := &n.links[i]
		from := &n.nodes[l.From]
		d := n.lu.b[l.work.fromRow]
		most := from.bracket(d)
		if l.UpLimit > 0 {
			most = bound.AtMost(most, bound.AtLeast(l.UpLimit, float64(0.5*n.absolute(from))))
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
		s.low, s.high = math.Inf(-1), math.Inf(1) // the rest of the network has moved the solution away
	}
	if target := n.P + d; target > s.high || target < s.low {
		return bound.AtLeast(math.Abs(float64(0.5*(s.low+s.high))-n.P), leastRange)
	}
	return math.Inf(1)
}

// leastRange is a range of suction within which no pump's law bends, Pa.
const leastRange = 100

// apply takes the step and returns the worst that its straight lines miss, Pa.
func (n *Net) apply(share float64, storing bool) float64 {
	x := n.lu.b
	if share < 1 {
		for i := range x {
			x[i] = float64(share * x[i])
		}
	}
	worst := 0.0
	for _, i := range n.open {
		l := &n.links[i]
		worst = bound.AtLeast(worst, l.advance(x[l.work.fromRow], x[l.work.toRow], share))
	}
	for _, i := range n.free {
		v := &n.nodes[i]
		if storing {
			worst = bound.AtLeast(worst, v.land(x[v.store.row], n.Patm))
		} else {
			v.P += x[v.store.row]
		}
	}
	return worst
}
