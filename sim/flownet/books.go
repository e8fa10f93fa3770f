package flownet

import (
	"math"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/state"
)

// books is the running account of water.
type books struct{ first, entered, moved float64 }

func (b *books) enter(volume float64) {
	b.entered += volume
	b.moved += math.Abs(volume)
}

func (b *books) walk(w *state.Walker) {
	w.Float(&b.first)
	w.Float(&b.entered)
	w.Float(&b.moved)
}

func (n *Net) stored() float64 {
	sum := 0.0
	for _, v := range n.nodes {
		if !v.fixed {
			sum += v.Water
		}
	}
	return sum
}

// Balance gives the account of water since Build or the last Settle.
func (n *Net) Balance() Balance {
	s := n.stored()
	return Balance{Stored: s, Entered: n.books.entered, Moved: n.books.moved, Error: s - n.books.first - n.books.entered}
}

// fill gives every node the water that its pressure asks for, and begins a new account.
func (n *Net) fill() {
	for _, v := range n.nodes {
		if v.fixed {
			v.Water = 0
			continue
		}
		v.P = bound.AtLeast(v.P, 1-v.base(n.Patm))
	}
	n.evaluate()
	for _, v := range n.free {
		v.Water = v.store.equal
	}
	n.books = books{first: n.stored()}
}

// SetWater puts water into a node or takes it out by other ways than the network's, as when a hose
// is drained and rolled up; the pressure follows.
func (n *Net) SetWater(v *Node, water float64) {
	if v.fixed {
		return
	}
	n.books.enter(water - v.Water)
	v.Water = water
	if v.Volume > 0 {
		v.P = v.pressureFor(water, n.Patm)
	}
}

// SetAir sets a node's air (m³ at atmospheric pressure); the pressure follows.
func (n *Net) SetAir(v *Node, air float64) {
	if v.fixed {
		return
	}
	v.Air = bound.AtLeast(air, 0)
	if v.Volume > 0 {
		v.P = v.pressureFor(v.Water, n.Patm)
	}
}
