package flownet

import (
	"fmt"
	"math"

	"steadyneedle/sim/unit"
)

// Fault is what is wrong with a network that cannot be built.
type Fault uint8

const (
	BadNode     Fault = iota + 1 // a link has a node that is not the network's, or joins a node to itself
	BadNumber                    // NaN, infinite, or negative where it must not be
	BadExponent                  // neither 2 nor 1.852
	NoBoundary                   // a node has no path to any boundary
	NoLoss                       // a link with neither loss nor inertance
	Empty                        // no free node
)

var faultText = [...]string{BadNode: "names no node of the network, or one node twice", BadNumber: "has a number that is negative or no number",
	BadExponent: "has a loss exponent that is neither 2 nor 1.852", NoBoundary: "has no path to any boundary",
	NoLoss: "has neither loss nor inertance", Empty: "the network has no free node"}

// BuildError says which part of a network is wrong, and how.
type BuildError struct {
	What  string // "node" or "link" and its name
	Fault Fault
}

func (e *BuildError) Error() string {
	if e.What == "" {
		return "flownet: " + faultText[e.Fault]
	}
	return fmt.Sprintf("flownet: %s %s", e.What, faultText[e.Fault])
}

// Builder collects nodes and links. The zero value is ready.
type Builder struct {
	nodes []*Node
	links []*Link
}

// Node adds a free node. Water is set by Build so that the node is at the pressure P given here.
func (b *Builder) Node(n Node) *Node {
	n.fixed = false
	return b.add(&n)
}

// Boundary adds a node whose pressure (Pa, gauge) is given. void says what it gives when flow comes
// out of it: 0 water, 1 air.
func (b *Builder) Boundary(name string, p, void float64) *Node {
	return b.add(&Node{Name: name, P: p, Void: void, fixed: true})
}

func (b *Builder) add(n *Node) *Node {
	n.number = len(b.nodes)
	b.nodes = append(b.nodes, n)
	return n
}

// Link adds a link.
func (b *Builder) Link(l Link) *Link {
	l.shut = l.StartsShut
	b.links = append(b.links, &l)
	return &l
}

// Build checks everything, fixes the order of elimination and returns the network, or a
// *BuildError. The network takes over nodes and links, and the builder is empty afterwards.
func (b *Builder) Build() (*Net, error) {
	if err := b.check(); err != nil {
		return nil, err
	}
	n := &Net{
		Patm:  unit.PaAtm,
		nodes: b.nodes,
		links: b.links,
	}
	*b = Builder{}
	n.prepare()
	return n, nil
}

func bad(what, name string, f Fault) error { return &BuildError{What: what + " " + name, Fault: f} }

func (b *Builder) check() error {
	free := false
	for _, n := range b.nodes {
		free = free || !n.fixed
		if !n.sound() {
			return bad("node", n.Name, BadNumber)
		}
	}
	if !free {
		return &BuildError{Fault: Empty}
	}
	for _, l := range b.links {
		if err := b.checkLink(l); err != nil {
			return err
		}
	}
	return b.checkReach()
}

func (n *Node) sound() bool {
	for _, x := range [...]float64{n.Water, n.Air, n.Volume, n.Stretch, n.Vapor, n.Soft.Give, n.Soft.Floor, n.AirIn, n.Tau} {
		if !(x >= 0) || math.IsInf(x, 0) {
			return false
		}
	}
	return finite(n.P) && finite(n.WaterIn) && n.Void >= 0 && n.Void <= 1 && n.Soft.Flat >= 0 && n.Soft.Flat <= 0.9
}

func finite(x float64) bool { return x-x == 0 }

// has reports whether the node is one of the network's own.
func (b *Builder) has(n *Node) bool {
	return n != nil && n.number < len(b.nodes) && b.nodes[n.number] == n
}

func (b *Builder) checkLink(l *Link) error {
	if !b.has(l.From) || !b.has(l.To) || l.From == l.To {
		return bad("link", l.Name, BadNode)
	}
	for _, x := range [...]float64{l.R, l.K, l.I, l.QRef, l.UpLimit, l.GasR} {
		if !(x >= 0) || math.IsInf(x, 0) {
			return bad("link", l.Name, BadNumber)
		}
	}
	if !finite(l.Rise) || !finite(l.Carry) {
		return bad("link", l.Name, BadNumber)
	}
	switch l.Exponent {
	case 0, Quadratic:
	case HazenWilliams:
		if l.QRef == 0 {
			return bad("link", l.Name, BadNumber)
		}
	default:
		return bad("link", l.Name, BadExponent)
	}
	if l.R == 0 && l.K == 0 && l.I == 0 && l.Gain == nil {
		return bad("link", l.Name, NoLoss)
	}
	return nil
}

// checkReach looks along links, shut or not, from the boundaries outwards.
func (b *Builder) checkReach() error {
	seen := make([]bool, len(b.nodes))
	for i := range b.nodes {
		seen[i] = b.nodes[i].fixed
	}
	for again := true; again; {
		again = false
		for _, l := range b.links {
			if from, to := &seen[l.From.number], &seen[l.To.number]; *from != *to {
				*from, *to, again = true, true, true
			}
		}
	}
	for i, ok := range seen {
		if !ok {
			return bad("node", b.nodes[i].Name, NoBoundary)
		}
	}
	return nil
}
