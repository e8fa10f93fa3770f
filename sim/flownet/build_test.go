package flownet_test

import (
	"errors"
	"math"
	"testing"

	"steadyneedle/sim/flownet"
)

// TestBuildErrors: what cannot be a network is refused with an error of a type that says what.
func TestBuildErrors(t *testing.T) {
	link := func(l flownet.Link) func(b *flownet.Builder) {
		return func(b *flownet.Builder) {
			l.From, l.To = two(b)
			b.Link(l)
		}
	}
	beside := func(add func(b *flownet.Builder)) func(b *flownet.Builder) {
		return func(b *flownet.Builder) { joined(b); add(b) }
	}
	for _, c := range []struct {
		name  string
		fault flownet.Fault
		make  func(b *flownet.Builder)
	}{
		{"empty", flownet.Empty, func(b *flownet.Builder) { b.Boundary("x", 0, 0) }},
		{"closed part", flownet.NoBoundary, beside(func(b *flownet.Builder) {
			i, j := b.Node(flownet.Node{}), b.Node(flownet.Node{})
			b.Link(flownet.Link{From: i, To: j, R: 1})
		})},
		{"lone node", flownet.NoBoundary, func(b *flownet.Builder) { two(b) }},
		{"no node", flownet.BadNode, func(b *flownet.Builder) { i, _ := two(b); b.Link(flownet.Link{From: i, R: 1}) }},
		{"another network's node", flownet.BadNode, func(b *flownet.Builder) {
			_, far := two(new(flownet.Builder))
			i, _ := two(b)
			b.Link(flownet.Link{From: i, To: far, R: 1})
		}},
		{"loop", flownet.BadNode, func(b *flownet.Builder) { _, j := two(b); b.Link(flownet.Link{From: j, To: j, R: 1}) }},
		{"negative loss", flownet.BadNumber, link(flownet.Link{R: -1})},
		{"NaN loss", flownet.BadNumber, link(flownet.Link{R: math.NaN()})},
		{"endless inertance", flownet.BadNumber, link(flownet.Link{I: math.Inf(1)})},
		{"NaN rise", flownet.BadNumber, link(flownet.Link{R: 1, Rise: math.NaN()})},
		{"zero-length pipe", flownet.NoLoss, link(flownet.Link{})},
		{"exponent 1.9", flownet.BadExponent, link(flownet.Link{R: 1, Exponent: 1.9})},
		{"main without flow", flownet.BadNumber, link(flownet.Link{R: 1, Exponent: flownet.HazenWilliams})},
		{"negative volume", flownet.BadNumber, beside(func(b *flownet.Builder) { b.Node(flownet.Node{Volume: -1}) })},
		{"NaN pressure", flownet.BadNumber, beside(func(b *flownet.Builder) { b.Boundary("y", math.NaN(), 0) })},
	} {
		var b flownet.Builder
		c.make(&b)
		_, err := b.Build()
		var e *flownet.BuildError
		if !errors.As(err, &e) || e.Fault != c.fault || err.Error() == "" {
			t.Errorf("%s: %v, want fault %d", c.name, err, c.fault)
		}
	}
	var b flownet.Builder
	joined(&b)
	if _, err := b.Build(); err != nil {
		t.Errorf("a sound network is refused: %v", err)
	}
	if _, err := b.Build(); err == nil {
		t.Error("a builder that has given its network away builds it once more")
	}
}

// two adds a main and a node, with nothing between.
func two(b *flownet.Builder) (main, end *flownet.Node) {
	return b.Boundary("main", 1e5, 0), b.Node(flownet.Node{Name: "end"})
}

// joined makes a network that can be built.
func joined(b *flownet.Builder) {
	main, end := two(b)
	b.Link(flownet.Link{Name: "pipe", From: main, To: end, R: 1})
}
