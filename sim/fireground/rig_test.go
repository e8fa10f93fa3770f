package fireground

import (
	"math"
	"testing"

	"steadyneedle/sim/flownet"
	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/unit"
)

// bench is a source of constant pressure, a valve, one hose and a nozzle.
type bench struct {
	*flownet.Net
	hose    *Hose
	nozzle  *Nozzle
	source  *flownet.Node
	stub    *flownet.Node
	gate    *flownet.Link
	valve   Valve
	dt      float64
	seconds float64
}

// newBench builds one; sourceR is the loss before the valve, psi/gpm².
func newBench(tb testing.TB, psi, sourceR float64, hose HoseDef, tip NozzleDef) *bench {
	tb.Helper()
	var b flownet.Builder
	air := b.Boundary("air", 0, 1)
	t := &bench{dt: 1.0 / 240, valve: Valve{Law: hydraulics.Ball, R: ValveR(400)}}
	t.source = b.Boundary("source", psi*unit.PaPerPSI, 0)
	t.stub = b.Node(flownet.Node{Name: "stub", Volume: 0.002, Stretch: 1e-11})
	t.gate = b.Link(flownet.Link{Name: "valve", From: t.source, To: t.stub, R: sourceR * rUnit, StartsShut: true})
	t.hose = AddHose(&b, "line", t.stub, air)
	t.nozzle = AddNozzle(&b, "nozzle", t.hose.End, air, tip)
	n, err := b.Build()
	if err != nil {
		tb.Fatal(err)
	}
	t.Net = n
	t.hose.Lay(n, hose, hose.LengthFt, 0, 0)
	return t
}

// step takes one substep.
func (b *bench) step() {
	b.hose.Update(b.Net)
	b.Step(b.dt)
	b.seconds += b.dt
}

func (b *bench) run(seconds float64) {
	for end := b.seconds + seconds - b.dt/2; b.seconds < end; {
		b.step()
	}
}

func (b *bench) endPSI() float64 { return float64(unit.PSIOf(b.hose.End.P)) }
func (b *bench) gpm() float64    { return float64(unit.GPMOf(b.hose.Run.Q())) }

// check fails on a NaN, on a met cap, and where the account of water doesn't close to 1e-9 of what flowed.
func (b *bench) check(tb testing.TB) {
	tb.Helper()
	for i := range b.Nodes() {
		if n := b.Node(i); math.IsNaN(n.P) || math.IsNaN(n.Water) || math.IsNaN(n.Air) {
			tb.Fatalf("node %s is not a number", n.Name)
		}
	}
	if c := b.Counters(); c.CapMet > 0 {
		tb.Errorf("the cap of iterations was met: %+v", c)
	}
	if x := b.Balance(); math.Abs(x.Error) > 1e-9*max(x.Moved, 1e-3) {
		tb.Errorf("water doesn't add up: %+v", x)
	}
}
