package plant

import (
	"fmt"
	"math"
	"testing"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/state"
)

// wye is the other lay of the drill: 300 ft of 3 in to two 150 ft 1¾ with fog nozzles 150 at 100.
func wye() Setup {
	s := ground()
	branch := fireground.BranchDef{
		Hose:   fireground.HoseDef{SizeIn: 1.75, LossC: 15.5, LengthFt: 150},
		Nozzle: fireground.NozzleDef{RatedGPM: 150, RatedPSI: 100},
	}
	s.Line = fireground.LineDef{
		Trunk:    fireground.HoseDef{SizeIn: 3, LossC: 0.8, LengthFt: 300},
		Branches: []fireground.BranchDef{branch, branch},
	}
	return s
}

// 300 ft of 3 in, wye, two 150 ft 1¾ lines of 150 gpm at 100 psi: 173.9 psi (computed).
func TestWyeLay(t *testing.T) {
	h := at(t, wye())
	h.inGear()
	h.onHydrant()
	h.in.ReliefTurns = 10
	h.line(0)
	h.throttleFor(173.9, h.linePSI(0))
	l := &h.o.Lines[0]
	for k := range 2 {
		h.near("nozzle psi", l.NozzlePSI[k], 100, 2)
		h.near("nozzle gpm", l.NozzleGPM[k], 150, 3)
		h.near("reaction, 0.0505 Q √NP", l.ReactionLbf[k], 75.75, 2)
	}
	h.near("discharge", l.GPM, 300, 6)
}

// A plant restored from a snapshot goes on bit for bit as the first did.
func TestSnapshot(t *testing.T) {
	for _, s := range []Setup{ground(), wye(), fullyFitted()} {
		a, b := at(t, s), at(t, s)
		var d state.Dice
		d.Seed(7, "snapshot")
		a.inGear()
		a.onHydrant()
		for range 400 {
			jumble(&d, &a.in)
			a.run(0.1)
		}
		save := state.Saver(nil)
		a.p.Walk(&save)
		load := state.Loader(save.Saved())
		b.p.Walk(&load)
		if !save.OK() || !load.OK() {
			t.Fatal("the snapshot does not fit")
		}
		if hash(a.p) != hash(b.p) {
			t.Fatal("restored, the plant hashes differently")
		}
		for n := range 400 {
			jumble(&d, &a.in)
			a.run(tick)
			b.p.Step(&a.in)
			if hash(a.p) != hash(b.p) {
				t.Fatalf("the restored plant went another way at step %d", n)
			}
		}
	}
}

func hash(p *Plant) uint64 {
	w := state.Hasher()
	p.Walk(&w)
	return w.Sum()
}

func TestStepAllocatesNothing(t *testing.T) {
	h := at(t, fullyFitted())
	h.in.Governor.Pressure, h.in.Governor.Raise = true, true
	if n := testing.AllocsPerRun(200, func() { h.p.Step(&h.in) }); n != 0 {
		t.Errorf("%v allocations a step of a pumper with everything", n)
	}
	h = pumping(t, ground())
	if n := testing.AllocsPerRun(200, func() { h.p.Step(&h.in) }); n != 0 {
		t.Errorf("%v allocations a step", n)
	}
	var d state.Dice
	d.Seed(1, "allocations")
	if n := testing.AllocsPerRun(200, func() {
		h.in.Lines[1].Attached = !h.in.Lines[1].Attached
		h.in.Supply.LengthFt = 75 - h.in.Supply.LengthFt
		h.p.Step(&h.in)
	}); n != 0 {
		t.Errorf("%v allocations a step while hose is laid", n)
	}
}

func TestBadSetups(t *testing.T) {
	for name, spoil := range map[string]func(*Setup){
		"no discharge":      func(s *Setup) { s.Rig.Discharges = nil },
		"no torque":         func(s *Setup) { s.Rig.Engine.Torque = nil },
		"dead hydrant":      func(s *Setup) { s.Hydrant = fireground.HydrantDef{} },
		"residual too high": func(s *Setup) { s.Hydrant.ResidualPSI = 70 },
		"no nozzle":         func(s *Setup) { s.Line.Nozzle = nil },
		"no line":           func(s *Setup) { s.Line.Trunk = fireground.HoseDef{} },
		"substeps":          func(s *Setup) { s.Substeps = 100000 },
		"NaN":               func(s *Setup) { s.Rig.Pump.ShutoffPSI = math.NaN() },
		"hot water":         func(s *Setup) { s.WaterF = 400 },
		"lift":              func(s *Setup) { s.Draft = &fireground.DraftDef{LiftFt: 99, SuctionFt: 20, SuctionIn: 6} },
	} {
		s := ground()
		spoil(&s)
		if p, err := New(s); err == nil || p != nil {
			t.Errorf("%s: no error", name)
		}
	}
}

func BenchmarkTick(b *testing.B) {
	for _, lines := range []int{3, 24} {
		b.Run(fmt.Sprintf("%d lines", lines), func(b *testing.B) { benchmarkLines(b, lines) })
	}
}

// benchmarkLines has lines of 600 ft flowing with their nozzles a crack open, so that the hydrant feeds them all.
func benchmarkLines(b *testing.B, lines int) {
	s := ground()
	for len(s.Rig.Discharges) < lines {
		s.Rig.Discharges = append(s.Rig.Discharges, s.Rig.Discharges[0])
	}
	if lines > 3 {
		s.Line.Nozzle.TipIn = 0.375
	}
	p, err := New(s)
	if err != nil {
		b.Fatal(err)
	}
	h := &hands{p: p, in: p.NewIn(), o: p.Out()}
	h.inGear()
	h.onHydrant()
	for i := range lines {
		h.line(i)
	}
	h.in.Throttle = 0.3
	h.run(10)
	if q := p.out.Lines[lines-1].GPM; !(q > 5) {
		b.Fatalf("%.1f gpm in the last line", q)
	}
	b.ReportAllocs()
	for b.Loop() {
		p.Step(&h.in)
	}
}
