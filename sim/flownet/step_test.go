package flownet_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"steadyneedle/sim/flownet"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

const dt = 1.0 / 240

func hash(n *flownet.Net) uint64 {
	w := state.Hasher()
	n.Walk(&w)
	return w.Sum()
}

// sound fails on what is no number, on a met cap and on water that doesn't add up to 1e-9 of what flowed.
func sound(t *testing.T, n *flownet.Net) {
	t.Helper()
	w := state.Hasher()
	if n.Walk(&w); !w.OK() {
		t.Fatal("a NaN in the state")
	}
	if c := n.Counters(); c.CapMet > 0 || c.Most > flownet.MaxIterations {
		t.Errorf("the cap of iterations was met: %+v", c)
	}
	if b := n.Balance(); math.Abs(b.Error) > 1e-9*b.Moved {
		t.Errorf("water doesn't add up: %+v", b)
	}
}

// play turns the reference network's valves and pump as a bad-tempered hand would, tick by tick.
type play struct {
	*reference
	dice *rand.Rand
	open [3]float64 // nozzles: opening, and where it is going
	goal [3]float64
}

func newPlay(t *testing.T, seed uint64) *play {
	r := newReference(t, 0.01)
	for _, g := range r.gates {
		g.R = 1e-5 * rUnit // a 2½ in valve of some 316 gpm at 1 psi
	}
	r.Settle()
	r.ResetCounters()
	return &play{reference: r, dice: rand.New(rand.NewPCG(seed, 7)), open: [3]float64{1, 1, 1}, goal: [3]float64{1, 1, 1}}
}

// turn is one substep's worth of hand: positions move at up to 2 per second.
func (p *play) turn() {
	for i := range p.open {
		if p.dice.IntN(300) == 0 {
			p.goal[i] = max(0, 1.4*p.dice.Float64()-0.3)
		}
		p.open[i] += max(min(p.goal[i]-p.open[i], 2*dt), -2*dt)
		l := p.noz[i]
		if l.SetShut(p.open[i] < 1e-3); !l.Shut() {
			k := [3]float64{26.1, 26.1, 37.6}[i] * p.open[i]
			l.R = rUnit / k / k
		}
	}
	if p.dice.IntN(500) == 0 {
		l := p.gates[p.dice.IntN(3)]
		l.SetShut(!l.Shut())
	}
	if p.dice.IntN(800) == 0 {
		p.pump.omega = 1.2 * p.dice.Float64()
	}
	if p.dice.IntN(900) == 0 {
		l := p.relief
		l.SetShut(!l.Shut())
	}
	if p.dice.IntN(1000) == 0 {
		l := p.mainL
		l.SetShut(!l.Shut())
	}
}

// TestRandomPlay: twenty hands for a minute each; valves slammed, pump and main cut in and out.
func TestRandomPlay(t *testing.T) {
	limit := float64(unit.PSIOf(2339 - unit.PaAtm))
	worst, all, steps := 0, 0, 0
	for seed := range uint64(20) {
		p := newPlay(t, seed)
		for range 60 * 240 {
			p.turn()
			p.Step(dt)
			if x := p.psi(p.intake); x < limit {
				t.Fatalf("hand %d: intake at %.2f psi, below the vapor limit", seed, x)
			}
			for i, g := range p.noz {
				if g.Shut() && g.Q() != 0 {
					t.Fatalf("flow through shut nozzle %d", i)
				}
			}
		}
		sound(t, p.Net)
		c := p.Counters()
		worst, all, steps = max(worst, c.Most), all+c.Iterations, steps+c.Steps
	}
	t.Logf("%.3f iterations a step, %d at worst", float64(all)/float64(steps), worst)
}

// TestQuietIsOneIteration: at rest a step takes one iteration.
func TestQuietIsOneIteration(t *testing.T) {
	p := newPlay(t, 1)
	for range 240 {
		p.Step(dt)
	}
	if c := p.Counters(); c.Iterations != c.Steps {
		t.Errorf("%+v, want one iteration a step", c)
	}
}

// TestSteadyIsWhereStepsEnd: stepping from another state ends at the steady solution.
func TestSteadyIsWhereStepsEnd(t *testing.T) {
	p, q := newPlay(t, 1), newPlay(t, 1)
	p.pump.omega, q.pump.omega = 0.3, 1
	p.Settle()
	p.pump.omega = 1
	for range 20 * 240 {
		p.Step(dt)
	}
	q.Settle()
	for i := range p.Links() {
		a, b := p.gpm(p.Link(i)), q.gpm(q.Link(i))
		if math.Abs(a-b) > 1e-3 {
			t.Errorf("%s: %.5f gpm after 20 s, steady %.5f", p.Link(i).Name, a, b)
		}
	}
}

// TestFinerSteps: a surge is the same at 1/240 and at 1/3840 s.
func TestFinerSteps(t *testing.T) {
	surge := func(per int) (peak, at float64) {
		p := newPlay(t, 1)
		for i := range 4 * 240 * per {
			open := 1 - float64(i+1)/float64(240*per) // shut in 1 s
			l := p.noz[2]
			if l.SetShut(open <= 0); !l.Shut() {
				l.R = rUnit / (37.6 * 37.6 * open * open)
			}
			p.Step(dt / float64(per))
			if x := p.psi(p.tips[2]); x > peak {
				peak, at = x, float64(i)/float64(240*per)
			}
		}
		sound(t, p.Net)
		return peak, at
	}
	p, at := surge(1)
	q, qt := surge(16)
	t.Logf("peak %.2f psi at %.3f s, finer %.2f at %.3f", p, at, q, qt)
	if math.Abs(p-q) > 0.01*q || math.Abs(at-qt) > 0.02 {
		t.Errorf("peak %.1f psi at %.3f s, at 1/3840 s %.1f at %.3f", p, at, q, qt)
	}
}

// TestSnapshot: what was saved runs on to the same bits, in the same network and in another.
func TestSnapshot(t *testing.T) {
	a, b := newPlay(t, 3), newPlay(t, 3)
	for range 2000 {
		a.turn()
		a.Step(dt)
	}
	s := state.Saver(nil)
	a.Walk(&s)
	saved, omega := slices.Clone(s.Saved()), a.pump.omega
	run := func(p *play) []uint64 {
		l := state.Loader(saved)
		if p.Walk(&l); !l.OK() {
			t.Fatal("the snapshot doesn't fit")
		}
		p.pump.omega = omega
		var hashes []uint64
		for i := range 500 {
			g := p.noz[i%3]
			g.SetShut(i%7 == 0)
			p.Step(dt)
			hashes = append(hashes, hash(p.Net))
		}
		return hashes
	}
	first := run(a)
	if !slices.Equal(first, run(a)) {
		t.Error("the same network runs on differently")
	}
	if !slices.Equal(first, run(b)) {
		t.Error("another network runs on differently")
	}
	if first[10] == first[11] {
		t.Error("the hash doesn't see a step")
	}
}

// TestCheckValve traps the last pressure behind it, and lets flow through again at once.
func TestCheckValve(t *testing.T) {
	var b flownet.Builder
	air := b.Boundary("air", 0, 1)
	main := b.Boundary("main", 8e5, 0)
	end := b.Node(flownet.Node{Name: "end", Volume: 0.02, Stretch: 1e-9})
	check := b.Link(flownet.Link{Name: "check", From: main, To: end, R: 1e8, I: 1e6, Check: true})
	out := b.Link(flownet.Link{Name: "out", From: end, To: air, R: 1e10})
	n, err := b.Build()
	if err != nil {
		t.Fatal(err)
	}
	step := func(seconds float64) {
		for range int(seconds * 240) {
			n.Step(dt)
		}
	}
	step(2)
	flow := check.Q()
	if want := math.Sqrt(8e5 / 1.01e10); math.Abs(flow/want-1) > 1e-3 {
		t.Fatalf("%.6f m³/s, want %.6f", flow, want)
	}
	out.SetShut(true)
	step(2)
	trapped := end.P
	main.P = 1e5
	step(60)
	if p := end.P; p < trapped-1000 || trapped < 7.9e5 {
		t.Errorf("%.0f Pa of %.0f are left after a minute behind the check valve", p, trapped)
	}
	if q := check.Q(); math.Abs(q) > 1e-8 {
		t.Errorf("%g m³/s flow back", q)
	}
	out.SetShut(false)
	main.P = 8e5
	step(2)
	if q := check.Q(); math.Abs(q/flow-1) > 1e-3 {
		t.Errorf("%.6f m³/s after it opened again, want %.6f", q, flow)
	}
	sound(t, n)
}

// TestTrapped: between two shut valves the pressure stays, with storage and without.
func TestTrapped(t *testing.T) {
	for _, volume := range []float64{0, 0.01} {
		r := newReference(t, volume)
		r.Settle()
		r.gates[1].SetShut(true)
		r.noz[1].SetShut(true)
		for range 240 * 20 { // the hose's ends swing against each other for a while
			r.Step(dt)
		}
		before := r.tips[1].P
		for range 240 * 60 {
			r.Step(dt)
		}
		if p := r.tips[1].P; math.Abs(p-before) > 50 || before < 1e5 {
			t.Errorf("volume %g: %.0f Pa, were %.0f", volume, p, before)
		}
		if !r.Settle() {
			t.Error("a steady state with a closed-off part isn't found")
		}
		sound(t, r.Net)
	}
}
