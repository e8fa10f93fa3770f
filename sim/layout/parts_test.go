package layout

import (
	"math"
	"slices"
	"testing"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/state"
)

func line(id, from string, size, c, ft float64) Part {
	return Part{ID: id, From: []string{from}, Hose: &fireground.HoseDef{SizeIn: size, LossC: c, LengthFt: ft}}
}

func fog(id, from string, gpm, psi float64) Part {
	return Part{ID: id, From: []string{from}, Nozzle: &fireground.NozzleDef{RatedGPM: gpm, RatedPSI: psi}}
}

// TestHoseInSeries: the losses of runs in series add ([C]).
func TestHoseInSeries(t *testing.T) {
	y := newYard(t, 160, Plan{line("a", "discharge1", 3, 0.8, 200), line("b", "a", 2.5, 2, 150), line("c", "b", 1.75, 15.5, 50), fog("tip", "c", 150, 100)})
	y.at("tip").Open = 1
	y.open(1)
	y.run(60)
	q := y.part("tip").GPM / 100
	y.near("a", y.part("a").InletPSI-y.part("a").PSI, 0.8*q*q*2, 0.05)
	y.near("b", y.part("b").InletPSI-y.part("b").PSI, 2*q*q*1.5, 0.05)
	y.near("c", y.part("c").InletPSI-y.part("c").PSI, 15.5*q*q*0.5, 0.05)
	y.near("tip", y.part("tip").PSI, y.part("c").PSI, 0.05)
	for _, id := range []string{"a", "b", "c"} {
		y.near("fill of "+id, y.part(id).Fill, 1, 0.01)
	}
	y.sound()
}

// TestGatedWye: each gate works its own line; a plain wye has none.
func TestGatedWye(t *testing.T) {
	for _, gated := range []bool{true, false} {
		y := newYard(t, 150, Plan{line("trunk", "discharge1", 2.5, 2, 100), {ID: "wye", From: from("trunk"), Wye: &WyeDef{Gated: gated}},
			line("a", "wye", 1.75, 15.5, 100), fog("x", "a", 100, 100), line("b", "wye", 1.75, 15.5, 100), fog("z", "b", 100, 100)})
		y.at("x").Open, y.at("z").Open = 1, 1
		y.at("a").Gate = 1
		y.open(1)
		y.run(60)
		if q := y.part("z").GPM; (q == 0) != gated {
			t.Errorf("gated %v: %.1f gpm behind a gate that is shut", gated, q)
		}
		y.at("b").Gate = 1
		y.run(60)
		y.near("the two lines", y.part("x").GPM, y.part("z").GPM, 0.2)
		y.sound()
	}
}

// TestSiamese: n like lines into one lose C/n² ([C]); a line that nothing comes from stays dry behind
// its clapper and fills without one.
func TestSiamese(t *testing.T) {
	for _, open := range []bool{false, true} {
		y := newYard(t, 140, Plan{line("a", "discharge1", 2.5, 2, 200), line("b", "discharge2", 2.5, 2, 200),
			{ID: "join", From: from("a", "b"), Siamese: &SiameseDef{Loss: LossDef{PSI: 10, GPM: 500}, Open: open}}, fog("tip", "join", 500, 80)})
		y.at("tip").Open = 1
		y.open(1)
		y.run(60)
		y.at("tip").Open = 0
		y.run(30)
		if wet := y.part("b").Fill > 0.5; wet != open {
			t.Errorf("without clappers %v: the other line is %.2f full", open, y.part("b").Fill)
		}
		y.at("tip").Open = 1
		y.open(1, 2)
		y.run(90)
		q := y.part("tip").GPM
		y.near("loss of two lines", y.part("a").InletPSI-y.part("a").PSI, 0.5*(q/100)*(q/100)*2, 0.2)
		y.near("loss of the siamese", y.part("a").PSI-y.part("join").PSI, 10*(q/500)*(q/500), 0.1)
		y.near("half each", y.part("a").GPM, y.part("b").GPM, 0.5)
		y.sound()
	}
}

// TestStandpipe fills a dry riser ten floors up: its air leaves through the nozzle, and what stands in
// it weighs 0.434 psi a foot ([C]).
func TestStandpipe(t *testing.T) {
	for _, wet := range []bool{false, true} {
		y := newYard(t, 150, Plan{line("supply", "discharge1", 3, 0.8, 100), line("other", "discharge2", 3, 0.8, 100),
			{ID: "connection", From: from("supply", "other"), Siamese: &SiameseDef{}},
			{ID: "riser", From: from("connection"), Riser: &RiserDef{SizeIn: 6, LossC: 0.05, Floors: 9, FloorFt: 12, Wet: wet}},
			{ID: "outlet", From: from("riser"), Valve: &ValveDef{Law: "gate", Cv: 400}},
			line("pack", "outlet", 2.5, 2, 150), fog("tip", "pack", 250, 75)})
		y.at("outlet").Open, y.at("tip").Open = 1, 1
		y.open(1)
		y.run(180)
		t.Logf("wet %v: riser %.3f full, %.1f psi at the outlet, %.1f gpm at the nozzle", wet, y.part("riser").Fill, y.part("riser").PSI, y.part("tip").GPM)
		y.near("full", y.part("riser").Fill, 1, 0.01)
		q := y.part("tip").GPM / 100
		rise := 9 * 12 * 998.16 * 9.80665 * 0.3048 / 6894.757
		y.near("riser", y.part("riser").InletPSI-y.part("riser").PSI, rise+0.05*q*q*1.08, 0.3)
		y.near("nozzle", y.part("tip").PSI, 75*q*q/6.25, 0.2)
		for k := 20; k >= 0; k-- { // slowly: a clapper traps what surge there is
			y.at("tip").Open = float64(k) / 20
			y.run(0.5)
		}
		y.run(30)
		y.near("no flow", y.part("riser").PSI, 150-rise, 2)
		y.sound()
	}
}

// TestBurst: a hole takes its orifice's flow, and pressure beyond it falls at once; mended, all is as before.
func TestBurst(t *testing.T) {
	y := newYard(t, 120, Plan{line("a", "discharge1", 2.5, 2, 300), line("b", "a", 2.5, 2, 300), fog("tip", "b", 250, 60)})
	y.at("tip").Open = 1
	y.open(1)
	y.run(60)
	before := y.part("tip").PSI
	y.at("a").Burst = 2
	y.run(0.5)
	if p := y.part("tip").PSI; p > 0.8*before {
		t.Errorf("half a second after a burst the nozzle has %.1f of %.1f psi", p, before)
	}
	y.run(30)
	a := y.part("a")
	y.near("flow of the hole", a.LossGPM, 29.84*0.8*4*math.Sqrt(a.PSI), 1)
	if !(y.part("tip").PSI < 0.4*before) {
		t.Errorf("nozzle %.1f psi beyond a 2 in hole, before %.1f", y.part("tip").PSI, before)
	}
	y.at("a").Burst, y.at("a").Leak = 0, 10
	y.run(60)
	y.near("leak of 10 gpm at 100 psi", y.part("a").LossGPM, math.Sqrt(y.part("a").PSI), 0.05)
	y.at("a").Leak = 0
	y.run(30)
	y.near("mended", y.part("tip").PSI, before, 0.1)
	y.at("b").Kink = 0.95
	y.run(20)
	if !(y.part("tip").PSI < 0.5*before) || !(y.part("b").InletPSI > 90) {
		t.Errorf("behind a kink %.1f psi, before it %.1f", y.part("tip").PSI, y.part("b").InletPSI)
	}
	y.at("b").Kink = 1
	y.run(5)
	if q := y.part("b").GPM; q != 0 {
		t.Errorf("%g gpm through a hose that is kinked shut", q)
	}
	y.sound()
}

// TestPlanSnapshot: a plan saved in the middle of filling, with a pumper in it, runs on to the same bits.
func TestPlanSnapshot(t *testing.T) {
	y := newYard(t, 60, Plan{line("a", "discharge1", 5, 0.08, 300), {ID: "next", From: from("a"), Pumper: &PumperDef{PSI: 120}},
		line("b", "next", 2.5, 2, 200), fog("tip", "b", 250, 60)})
	walk := func(w *state.Walker) { y.Walk(w); y.laid.Walk(w) }
	y.at("tip").Open = 1
	y.open(1)
	y.run(12)
	s := state.Saver(nil)
	walk(&s)
	saved := slices.Clone(s.Saved())
	onward := func() uint64 {
		y.run(20)
		h := state.Hasher()
		walk(&h)
		return h.Sum()
	}
	first := onward()
	l := state.Loader(saved)
	if walk(&l); !l.OK() {
		t.Fatal("the snapshot doesn't fit")
	}
	if onward() != first {
		t.Error("it runs on differently")
	}
	y.sound()
}

// TestPlanAllocatesNothing in a step.
func TestPlanAllocatesNothing(t *testing.T) {
	y := newYard(t, 60, Plan{line("a", "discharge1", 5, 0.08, 300), {ID: "next", From: from("a"), Pumper: &PumperDef{PSI: 120}},
		{ID: "wye", From: from("next"), Wye: &WyeDef{Gated: true}}, fog("x", "wye", 100, 100), fog("z", "wye", 100, 100)})
	y.at("x").Open, y.at("x").Gate = 1, 1
	y.open(1)
	y.run(5)
	if n := testing.AllocsPerRun(200, y.step); n != 0 {
		t.Errorf("%v allocations a step", n)
	}
}

// TestButterflyAndBall: both shut off and open fully; halfway the ball has more of its bore free than a
// butterfly, a gate more than both.
func TestButterflyAndBall(t *testing.T) {
	half := func(law string) float64 {
		y := newYard(t, 100, Plan{{ID: "v", From: from("discharge1"), Valve: &ValveDef{Law: law, Cv: 50}}, fog("tip", "v", 300, 100)})
		y.at("tip").Open, y.at("v").Open = 1, 1
		y.open(1)
		y.run(10)
		full := y.part("tip").GPM
		y.at("v").Open = 0.5
		y.run(10)
		q := y.part("tip").GPM / full
		y.at("v").Open = 0
		y.run(10)
		if y.part("v").GPM != 0 {
			t.Errorf("%s: %g gpm through a shut valve", law, y.part("v").GPM)
		}
		y.sound()
		return q
	}
	butterfly, ball, gate := half("butterfly"), half("ball"), half("gate")
	t.Logf("half open: butterfly %.2f, ball %.2f, gate %.2f of the flow", butterfly, ball, gate)
	if !(butterfly < ball && ball < gate && gate < 1) {
		t.Errorf("half open: butterfly %.2f, ball %.2f, gate %.2f of the flow", butterfly, ball, gate)
	}
}
