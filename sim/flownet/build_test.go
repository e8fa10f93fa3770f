package flownet_test

import (
	"errors"
	"math"
	"testing"

	"steadyneedle/sim/flownet"
)

// TestBuildErrors: what cannot be a network is refused with an error of a type that says what.
func TestBuildErrors(t *testing.T) {
	good := flownet.Link{Name: "pipe", From: 0, To: 1, R: 1}
	for _, c := range []struct {
		name  string
		fault flownet.Fault
		make  func(b *flownet.Builder)
	}{
		{"empty", flownet.Empty, func(b *flownet.Builder) { b.Boundary("x", 0, 0) }},
		{"closed part", flownet.NoBoundary, func(b *flownet.Builder) {
			two(b)
			i, j := b.Node(flownet.Node{}), b.Node(flownet.Node{})
			b.Link(flownet.Link{From: i, To: j, R: 1})
			b.Link(good)
		}},
		{"lone node", flownet.NoBoundary, two},
		{"unknown node", flownet.BadNode, func(b *flownet.Builder) { two(b); b.Link(flownet.Link{From: 0, To: 2, R: 1}) }},
		{"negative node", flownet.BadNode, func(b *flownet.Builder) { two(b); b.Link(flownet.Link{From: -1, To: 1, R: 1}) }},
		{"loop", flownet.BadNode, func(b *flownet.Builder) { two(b); b.Link(flownet.Link{From: 1, To: 1, R: 1}) }},
		{"negative loss", flownet.BadNumber, func(b *flownet.Builder) { two(b); b.Link(flownet.Link{From: 0, To: 1, R: -1}) }},
		{"NaN loss", flownet.BadNumber, func(b *flownet.Builder) { two(b); b.Link(flownet.Link{From: 0, To: 1, R: math.NaN()}) }},
		{"endless inertance", flownet.BadNumber, func(b *flownet.Builder) { two(b); b.Link(flownet.Link{From: 0, To: 1, I: math.Inf(1)}) }},
		{"NaN rise", flownet.BadNumber, func(b *flownet.Builder) { two(b); b.Link(flownet.Link{From: 0, To: 1, R: 1, Rise: math.NaN()}) }},
		{"zero-length pipe", flownet.NoLoss, func(b *flownet.Builder) { two(b); b.Link(flownet.Link{From: 0, To: 1}) }},
		{"exponent 1.9", flownet.BadExponent, func(b *flownet.Builder) { two(b); b.Link(flownet.Link{From: 0, To: 1, R: 1, Exponent: 1.9}) }},
		{"main without flow", flownet.BadNumber, func(b *flownet.Builder) {
			two(b)
			b.Link(flownet.Link{From: 0, To: 1, R: 1, Exponent: flownet.HazenWilliams})
		}},
		{"negative volume", flownet.BadNumber, func(b *flownet.Builder) { two(b); b.Node(flownet.Node{Volume: -1}); b.Link(good) }},
		{"NaN pressure", flownet.BadNumber, func(b *flownet.Builder) { two(b); b.Boundary("y", math.NaN(), 0); b.Link(good) }},
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
	two(&b)
	b.Link(good)
	if _, err := b.Build(); err != nil {
		t.Errorf("a sound network is refused: %v", err)
	}
}

func two(b *flownet.Builder) {
	b.Boundary("main", 1e5, 0)
	b.Node(flownet.Node{Name: "end"})
}
