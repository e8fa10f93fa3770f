package flownet_test

import (
	"math"
	"testing"

	"steadyneedle/sim/flownet"
)

// chain is a main, two vessels and an outlet; the first vessel holds a pocket of air.
func chain(t *testing.T, carry float64) (n *flownet.Net, a, b *flownet.Node, mid, out, vent *flownet.Link) {
	t.Helper()
	var build flownet.Builder
	air := build.Boundary("air", 0, 1)
	main := build.Boundary("main", 4e5, 0)
	a = build.Node(flownet.Node{Name: "a", Volume: 0.06, Stretch: 2e-9, Air: 0.009})
	b = build.Node(flownet.Node{Name: "b", Volume: 0.03, Stretch: 1e-9})
	build.Link(flownet.Link{Name: "in", From: main, To: a, R: 3e7, I: 1e6, Carry: -1})
	mid = build.Link(flownet.Link{Name: "mid", From: a, To: b, R: 1e7, I: 1e5, Carry: carry})
	out = build.Link(flownet.Link{Name: "out", From: b, To: air, R: 2e9, StartsShut: true})
	vent = build.Link(flownet.Link{Name: "vent", From: a, To: air, R: 4e12, Carry: 1000, StartsShut: true, GasR: 0.05})
	n, err := build.Build()
	if err != nil {
		t.Fatal(err)
	}
	return n, a, b, mid, out, vent
}

func steps(n *flownet.Net, seconds float64) {
	for range int(seconds * 240) {
		n.Step(dt)
	}
}

// TestAirStaysUntilFlow: with the outlet shut the pocket is pressed together and stays; with flow it
// goes on and out. What is in the vessels and what left add up.
func TestAirStaysUntilFlow(t *testing.T) {
	n, a, b, _, out, _ := chain(t, 1)
	steps(n, 20)
	inA, inB := a.Air, b.Air
	if inA < 0.008 || inA+inB > 0.009+1e-12 || inA+inB < 0.009-1e-12 {
		t.Errorf("at rest %.2f and %.2f L of air, want all 9 L still there, in the first vessel", inA*1000, inB*1000)
	}
	if v := n.AirVolume(a); math.Abs(v-inA*101325/(4e5+101325-2339)) > 1e-6 {
		t.Errorf("the pocket takes %.3f L at 4 bar", v*1000)
	}
	out.SetShut(false)
	most := 0.0
	for range 20 * 240 {
		n.Step(dt)
		most = max(most, n.VoidFraction(b))
	}
	if most < 0.005 {
		t.Error("no air came to the second vessel")
	}
	if left := a.Air + b.Air; left > 0.1*0.009 {
		t.Errorf("%.2f L of air are left after 20 s of flow", left*1000)
	}
	sound(t, n)
}

// TestCarry: the less slip, the longer air stays; none passes a link that forbids it.
func TestCarry(t *testing.T) {
	left := func(carry float64) float64 {
		n, a, _, _, out, _ := chain(t, carry)
		out.SetShut(false)
		steps(n, 5)
		sound(t, n)
		return a.Air
	}
	mixed, slow, none := left(1), left(0.1), left(-1)
	if !(mixed < 0.7*slow && slow < none) || math.Abs(none-0.009) > 1e-12 {
		t.Errorf("air left: mixed %.3f, slow %.3f, none passing %.3f L", mixed*1000, slow*1000, none*1000)
	}
}

// TestBleeder: a vent on top takes air first and then spits water.
func TestBleeder(t *testing.T) {
	n, a, _, _, _, vent := chain(t, 0.05)
	steps(n, 5)
	vent.SetShut(false)
	n.Step(dt)
	n.Step(dt)
	if l := vent; l.AirFlow() < 10*l.WaterFlow() {
		t.Errorf("the bleeder gives %.3g m³/s of water and %.3g of air, want air first", l.WaterFlow(), l.AirFlow())
	}
	steps(n, 60)
	if l := vent; l.AirFlow() > 0.1*l.WaterFlow() {
		t.Errorf("after a minute the bleeder still gives %.3g m³/s of air beside %.3g of water", l.AirFlow(), l.WaterFlow())
	}
	if left := a.Air; left > 0.001 {
		t.Errorf("%.2f L of air are left", left*1000)
	}
	sound(t, n)
}

// TestNozzleAdmitsAir: an outlet below atmospheric pressure takes air in, never water.
func TestNozzleAdmitsAir(t *testing.T) {
	var build flownet.Builder
	air := build.Boundary("air", 0, 1)
	deep := build.Boundary("deep", -3e4, 0)
	tip := build.Node(flownet.Node{Name: "tip", Volume: 0.02, Stretch: 1e-9})
	build.Link(flownet.Link{Name: "pipe", From: deep, To: tip, R: 1e9, I: 1e7})
	hole := build.Link(flownet.Link{Name: "hole", From: tip, To: air, R: 1e10, GasR: 0.02})
	n, err := build.Build()
	if err != nil {
		t.Fatal(err)
	}
	steps(n, 3)
	if tip.Air < 1e-3 {
		t.Error("no air came in")
	}
	if l := hole; math.Abs(l.WaterFlow()) > 1e-12 {
		t.Errorf("%g m³/s of water came out of the air", l.WaterFlow())
	}
	sound(t, n)
}
