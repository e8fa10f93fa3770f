package fireground

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"steadyneedle/sim/flownet"
	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

// wye is a trunk with two branches, each with a nozzle.
type wye struct {
	*flownet.Net
	source  *flownet.Node
	gate    *flownet.Link
	valve   Valve
	trunk   *Hose
	branch  [2]*Hose
	nozzle  [2]*Nozzle
	defs    [2]HoseDef
	trunkIs HoseDef
}

func newWye(tb testing.TB, psi float64) *wye {
	tb.Helper()
	var b flownet.Builder
	air := b.Boundary("air", 0, 1)
	w := &wye{valve: Valve{Law: hydraulics.Ball, R: ValveR(400)}, trunkIs: HoseDef{SizeIn: 2.5, LossC: 2, LengthFt: 200}}
	w.source = b.Boundary("source", psi*unit.PaPerPSI, 0)
	stub := b.Node(flownet.Node{Name: "stub", Volume: 0.002, Stretch: 1e-11})
	w.gate = b.Link(flownet.Link{Name: "valve", From: w.source, To: stub, R: 1e-7 * rUnit, I: 1e5, StartsShut: true})
	w.trunk = AddHose(&b, "trunk", stub, air)
	for i := range w.branch {
		w.branch[i] = AddHose(&b, "branch", w.trunk.End, air)
		w.nozzle[i] = AddNozzle(&b, "nozzle", w.branch[i].End, air, NozzleDef{RatedGPM: 150, RatedPSI: 100})
		w.defs[i] = HoseDef{SizeIn: 1.75, LossC: 15.5, LengthFt: 150}
	}
	n, err := b.Build()
	if err != nil {
		tb.Fatal(err)
	}
	w.Net = n
	w.lay()
	return w
}

func (w *wye) lay() {
	w.trunk.Lay(w.Net, w.trunkIs, 200, 0, 0)
	for i, h := range w.branch {
		h.Lay(w.Net, w.defs[i], 150, 0, 0.02)
	}
}

func (w *wye) step(dt float64) {
	w.trunk.Update(w.Net)
	w.branch[0].Update(w.Net)
	w.branch[1].Update(w.Net)
	w.Step(dt)
}

func (w *wye) walk(s *state.Walker) {
	w.Walk(s)
	w.trunk.Walk(s)
	w.branch[0].Walk(s)
	w.branch[1].Walk(s)
}

// TestWye: 200 ft of 2½ to two 150 ft of 1¾, fog 150 at 100: 188.3 psi [computed: 100 + 52.3 + 36].
func TestWye(t *testing.T) {
	w := newWye(t, 188.3)
	for i := range 240 * 120 {
		w.valve.Set(w.gate, min(float64(i)/960, 1))
		w.nozzle[0].Set(1)
		w.nozzle[1].Set(1)
		w.gate.K = min(w.gate.K, 1e9)
		if i > 960 {
			w.gate.K = 0 // the table has no valve
		}
		w.step(1.0 / 240)
	}
	for i, z := range w.nozzle {
		if p := z.PSI(); math.Abs(p-100) > 0.5 {
			t.Errorf("nozzle %d at %.2f psi, want 100", i, p)
		}
	}
	trouble(t, w.Net)
}

func trouble(t *testing.T, n *flownet.Net) {
	t.Helper()
	s := state.Hasher()
	if n.Walk(&s); !s.OK() {
		t.Fatal("a NaN in the state")
	}
	if c := n.Counters(); c.CapMet > 0 {
		t.Errorf("the cap of iterations was met: %+v", c)
	}
	if b := n.Balance(); math.Abs(b.Error) > 1e-9*b.Moved {
		t.Errorf("water doesn't add up: %+v", b)
	}
}

// hands moves valve, nozzles, kinks and source at random, at up to full travel in half a second.
type hands struct {
	dice           *rand.Rand
	now, goal      [4]float64
	source, kinked float64
}

func (h *hands) turn(w *wye, dt float64) {
	for i := range h.now {
		if h.dice.IntN(400) == 0 {
			h.goal[i] = min(max(1.6*h.dice.Float64()-0.3, 0), 1)
		}
		h.now[i] += max(min(h.goal[i]-h.now[i], 2*dt), -2*dt)
	}
	w.valve.Set(w.gate, h.now[0])
	w.nozzle[0].Set(h.now[1])
	w.nozzle[1].Set(h.now[2])
	w.trunk.Kink(h.now[3] * h.kinked)
	if h.dice.IntN(1200) == 0 {
		h.kinked = math.Round(h.dice.Float64())
		h.source = -8 + 208*h.dice.Float64()
	}
	p := &w.source.P
	*p += max(min(h.source*unit.PaPerPSI-*p, 1e6*dt), -1e6*dt)
	if h.dice.IntN(10000) == 0 {
		w.lay()
	}
}

// TestRandomHands: no NaN, no met cap, no lost water, nothing below the vapor limit.
func TestRandomHands(t *testing.T) {
	worst, all, steps := 0, 0, 0
	for seed := range uint64(20) {
		w := newWye(t, 106)
		h := &hands{dice: rand.New(rand.NewPCG(seed, 11)), source: 106}
		for range 60 * 240 {
			h.turn(w, 1.0/240)
			w.step(1.0 / 240)
			for i := range w.Nodes() {
				if p := w.Node(i).P; p < 2339-unit.PaAtm {
					t.Fatalf("hands %d: %s at %.0f Pa", seed, w.Node(i).Name, p)
				}
			}
		}
		trouble(t, w.Net)
		c := w.Counters()
		worst, all, steps = max(worst, c.Most), all+c.Iterations, steps+c.Steps
	}
	t.Logf("%.3f iterations a step, %d at worst", float64(all)/float64(steps), worst)
}

// TestFillingAtFinerSteps: filling through the wye takes the same time, and charges to the same
// pressure, at 1/240 and 1/3840 s.
func TestFillingAtFinerSteps(t *testing.T) {
	run := func(per int) (full, end float64) {
		w := newWye(t, 106)
		w.nozzle[0].Set(0.3)
		for i := range 60 * 240 * per {
			seconds := float64(i) / float64(240*per)
			w.valve.Set(w.gate, min(seconds/4, 1))
			w.step(1 / float64(240*per))
			if full == 0 && !w.branch[0].Filling() && !w.branch[1].Filling() {
				full = seconds
			}
		}
		return full, float64(unit.PSIOf(w.branch[0].End.P))
	}
	a, p := run(1)
	b, q := run(16)
	t.Logf("full after %.3f and %.3f s, %.3f and %.3f psi", a, b, p, q)
	if math.Abs(a-b) > 0.1 || a == 0 || math.Abs(p-q) > 0.2 {
		t.Errorf("full after %.2f s at %.2f psi, at finer steps %.2f s, %.2f psi", a, p, b, q)
	}
}

// TestHoseSnapshot: a hose saved while it fills runs on to the same bits.
func TestHoseSnapshot(t *testing.T) {
	w := newWye(t, 106)
	onward := func(n int) uint64 {
		for range n {
			w.valve.Set(w.gate, 0.5)
			w.nozzle[1].Set(0.5)
			w.step(1.0 / 240)
		}
		s := state.Hasher()
		w.walk(&s)
		return s.Sum()
	}
	onward(900)
	s := state.Saver(nil)
	w.walk(&s)
	saved := slices.Clone(s.Saved())
	first := onward(3000)
	l := state.Loader(saved)
	if w.walk(&l); !l.OK() {
		t.Fatal("the snapshot doesn't fit")
	}
	if onward(3000) != first {
		t.Error("it runs on differently")
	}
}

func BenchmarkWyeStep(b *testing.B) {
	w := newWye(b, 106)
	w.valve.Set(w.gate, 1)
	w.nozzle[0].Set(1)
	w.nozzle[1].Set(1)
	for range 240 * 60 {
		w.step(1.0 / 240)
	}
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		i++
		w.nozzle[0].Set(0.6 + 0.4*math.Abs(float64(i&1023)/512-1))
		w.step(1.0 / 240)
	}
}
