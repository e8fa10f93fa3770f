package flownet

import (
	"fmt"
	"math"

	"steadyneedle/sim/unit"
)

// Fault is what is wrong with a network that cannot be built.
type Fault uint8

const (
	BadNode     Fault = iota + 1 // a link names a node that does not exist, or joins a node to itself
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
	nodes []Node
	links []Link
}

// Node adds a free node. Water is set by Build so that the node is at the pressure P given here.
func (b *Builder) Node(n Node) NodeID {
	n.fixed = false
	b.nodes = append(b.nodes, n)
	return NodeID(len(b.nodes) - 1)
}

// Boundary adds a node whose pressure (Pa, gauge) is given. void says what it gives when flow comes
// out of it: 0 water, 1 air.
func (b *Builder) Boundary(name string, p, void float64) NodeID {
	b.nodes = append(b.nodes, Node{Name: name, P: p, Void: void, fixed: true})
	return NodeID(len(b.nodes) - 1)
}

// Link adds a link.
func (b *Builder) Link(l Link) LinkID {
	b.links = append(b.links, l)
	return LinkID(len(b.links) - 1)
}

// At gives access to a node that was added, nil if there is none.
func (b *Builder) At(id NodeID) *Node {
	if int(id) < 0 || int(id) >= len(b.nodes) {
		return nil
	}
	return &b.nodes[id]
}

// Build checks everything, fixes the order of elimination and returns the network, or a *BuildError.
func (b *Builder) Build() (*Net, error) {
	if err := b.check(); err != nil {
		return nil, err
	}
	n := &Net{
		Patm:  unit.PaAtm,
		nodes: append([]Node(nil), b.nodes...),
		links: append([]Link(nil), b.links...),
	}
	n.prepare()
	return n, nil
}

func bad(what, name string, f Fault) error { return &BuildError{What: what + " " + name, Fault: f} }

func (b *Builder) check() error {
	free := false
	for i := range b.nodes {
		n := &b.nodes[i]
		free = free || !n.fixed
		if !n.sound() {
			return bad("node", n.Name, BadNumber)
		}
	}
	if !free {
		return &BuildError{Fault: Empty}
	}
	for i := range b.links {
		if err := b.checkLink(&b.links[i]); err != nil {
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

func (b *Builder) checkLink(l *Link) error {
	last := NodeID(len(b.nodes))
	if l.From < 0 || l.To < 0 || l.From >= last || l.To >= last || l.From == l.To {
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
		for i := range b.links {
			l := &b.links[i]
			if seen[l.From] != seen[l.To] {
				seen[l.From], seen[l.To], again = true, true, true
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
