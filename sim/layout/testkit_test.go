package layout

import (
	"math"
	"testing"

	"steadyneedle/sim/flownet"
	"steadyneedle/sim/unit"
)

// yard is a plan on bare sources of constant pressure behind valves, in place of an apparatus.
type yard struct {
	*flownet.Net
	t      testing.TB
	plan   Plan
	laid   *Laid
	in     []PartIn
	out    []PartOut
	valves []*flownet.Link
	source *flownet.Node
	dt     float64
	s      float64
}

func newYard(t testing.TB, psi float64, plan Plan) *yard {
	t.Helper()
	if err := plan.Check(Ground{Discharges: 3}); err != nil {
		t.Fatal(err)
	}
	var b flownet.Builder
	y := &yard{t: t, plan: plan, in: plan.In(), out: make([]PartOut, len(plan)), dt: 1.0 / 240}
	taps := Taps{Air: b.Boundary("air", 0, 1), Body: 4e-3, Patm: unit.PaAtm, Vapor: 1766, Density: 999}
	y.source = b.Boundary("source", psi*unit.PaPerPSI, 0)
	taps.Eye = y.source
	for range 3 {
		n := b.Node(flownet.Node{Name: "discharge", Volume: 4e-3, Stretch: metalGives, Air: 4e-3})
		taps.Discharges = append(taps.Discharges, n)
		y.valves = append(y.valves, b.Link(flownet.Link{Name: "valve", From: y.source, To: n, R: 1e7, I: 4e5, StartsShut: true}))
	}
	y.laid = plan.Add(&b, taps)
	net, err := b.Build()
	if err != nil {
		t.Fatal(err)
	}
	y.Net = net
	y.laid.Lay(net)
	return y
}

// open opens the valves of discharges.
func (y *yard) open(discharges ...int) {
	for _, n := range discharges {
		y.valves[n-1].SetShut(false)
	}
}

func (y *yard) at(id string) *PartIn    { return &y.in[y.plan.Index(id)] }
func (y *yard) part(id string) *PartOut { return &y.out[y.plan.Index(id)] }

func (y *yard) step() {
	y.laid.Set(y.in)
	y.laid.Update(y.Net, y.dt)
	y.Step(y.dt)
	y.s += y.dt
	y.laid.Tell(y.out)
}

func (y *yard) run(seconds float64) {
	for end := y.s + seconds - y.dt/2; y.s < end; {
		y.step()
	}
}

func (y *yard) near(what string, got, want, tol float64) {
	y.t.Helper()
	if !(math.Abs(got-want) <= tol) {
		y.t.Errorf("%s: %.5g, want %.5g ± %.3g", what, got, want, tol)
	}
}

// sound fails on a NaN, a met cap, a pressure below vapor and water that doesn't add up.
func (y *yard) sound() {
	y.t.Helper()
	for i := range y.Nodes() {
		n := y.Node(i)
		if !(n.P >= 1765-unit.PaAtm) || math.IsNaN(n.Water) || math.IsNaN(n.Air) {
			y.t.Fatalf("%s: %v Pa, %v m³ of water, %v of air", n.Name, n.P, n.Water, n.Air)
		}
	}
	if c := y.Counters(); c.CapMet > 0 {
		y.t.Errorf("the cap of iterations was met: %+v", c)
	}
	if b := y.Balance(); !(math.Abs(b.Error) <= 1e-9*max(b.Moved, 1e-3)) {
		y.t.Errorf("water doesn't add up: %+v", b)
	}
}
