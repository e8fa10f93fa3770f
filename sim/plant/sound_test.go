package plant

import (
	"math"
	"testing"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/rig"
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

// jumble turns everything about at random, as no person would.
func jumble(d *state.Dice, in *In) {
	pick := func(x *float64) {
		switch d.Pick(40) {
		case 0:
			*x = 0
		case 1:
			*x = 1
		case 2:
			*x = d.Float64()
		}
	}
	for _, x := range []*float64{&in.Throttle, &in.TankToPump, &in.TankFill, &in.Intake, &in.Bleeder, &in.Recirculation,
		&in.Cooler, &in.PumpDrain, &in.Hydrant.Open, &in.Supply.Kink} {
		pick(x)
	}
	for i := range in.Lines {
		l := &in.Lines[i]
		pick(&in.Discharge[i])
		pick(&in.Drain[i])
		pick(&l.Kink)
		for k := range l.Nozzle {
			pick(&l.Nozzle[k])
		}
		switch d.Pick(200) {
		case 0:
			l.Attached = !l.Attached
		case 1:
			l.LengthFt = float64(50 * (1 + d.Pick(12)))
		case 2:
			l.CapOff = !l.CapOff
		case 3:
			l.Leak = 200 * d.Float64()
		case 4:
			l.Tight = 0.5 + 0.5*float64(d.Pick(2))
		}
	}
	switch d.Pick(120) {
	case 0:
		in.Primer = !in.Primer
	case 1:
		in.Supply.LengthFt = [...]float64{0, 15, 25, 50}[d.Pick(4)]
	case 2:
		in.Supply.AtEngine = 0.5 * float64(d.Pick(3))
	case 3:
		in.Supply.AtHydrant = 0.5 * float64(d.Pick(3))
	case 4:
		in.Hydrant.CapOff = !in.Hydrant.CapOff
	case 5:
		in.ReliefTurns = 10 * d.Float64()
	case 6:
		in.Shock.StaticDropPSI = 80 * d.Float64() * float64(d.Pick(2))
	case 7:
		in.Transmission = float64(min(1, d.Pick(3)))
	case 8:
		in.PumpShift = float64(min(1, d.Pick(3)))
	case 9:
		in.ParkingBrake = d.Pick(4) > 0
	case 10:
		in.EngineRun = d.Pick(4) > 0
	case 11:
		in.Series = !in.Series
	case 12:
		g := &in.Governor
		g.Pressure, g.Raise, g.Lower = d.Pick(2) > 0, d.Pick(3) > 0, d.Pick(4) == 0
		g.Preset, g.Idle = d.Pick(4) == 0, d.Pick(8) == 0
	case 13:
		f := &in.Faults
		*f = Faults{LineGauge: f.LineGauge}
		f.Relief, f.PilotClogged, f.ClapperOpen = rig.Stuck(d.Pick(4)), d.Float64(), d.Pick(2) > 0
		f.RadiatorGone, f.TankLampsOff, f.PrimerDead = d.Float64(), 2*d.Float64()-1, d.Pick(2) > 0
		f.SuctionLeakGPM = 60 * d.Float64()
		f.IntakeGauge, f.LineGauge[0] = Gauge{Off: 50 * d.Float64()}, Gauge{Stuck: d.Pick(2) > 0}
	}
}

// everything is a pumper with all parts that an apparatus may have.
func everything() Setup {
	s := withGovernor()
	i, t, f := rig.DefaultIntakeRelief(), rig.DefaultThermalRelief(), rig.DefaultTransfer()
	s.Rig.IntakeRelief, s.Rig.ThermalRelief, s.Rig.Pump.Transfer = &i, &t, &f
	return s
}

// faulty reports the first number of Out that is none, or beyond reason.
func (o *Out) faulty() (string, float64) {
	for _, c := range []struct {
		name      string
		v, lo, hi float64
	}{
		{"rpm", o.EngineRPM, 0, 2600}, {"intake psi", o.IntakePSI, -14.8, 2500}, {"discharge psi", o.DischargePSI, -14.8, 3000},
		{"pump gpm", o.PumpGPM, -6000, 6000}, {"pump °F", o.PumpF, 30, 500}, {"casing water", o.CasingWater, 0, 1},
		{"tank gal", o.TankGal, 0, 540}, {"tank °F", o.TankF, 30, 220}, {"head factor", o.HeadFactor, 0, 1}, {"supply psi", o.SupplyPSI, -14.8, 3000},
		{"hydrant gpm", o.HydrantGPM, -6000, 6000}, {"relief lift", o.ReliefLift, 0, 1}, {"coolant °F", o.CoolantF, 30, 400},
		{"intake needle", o.IntakeNeedle, -30.5, 400}, {"discharge needle", o.DischargeNeedle, 0, 400}, {"damage", o.Damage, 0, 1},
	} {
		if !(c.v >= c.lo && c.v <= c.hi) {
			return c.name, c.v
		}
	}
	for i := range o.Lines {
		l := &o.Lines[i]
		if !(l.ValvePSI >= -14.8 && l.ValvePSI < 4000) || !(math.Abs(l.GPM) < 6000) || !(l.Fill >= 0 && l.Fill <= 1) {
			return "line", l.ValvePSI
		}
		for k := range l.NozzleGPM {
			if !(l.NozzleGPM[k] >= 0 && l.NozzleGPM[k] < 4000) || math.IsNaN(l.ReactionLbf[k]) {
				return "nozzle gpm", l.NozzleGPM[k]
			}
		}
	}
	return "", 0
}

// Whatever hands do, numbers stay numbers, water is neither made nor lost, and Newton's method
// converges within its cap.
func TestRandomHands(t *testing.T) {
	for seed := range uint64(12) {
		s := ground()
		switch seed % 4 {
		case 3:
			s = everything()
		case 1:
			s = wye()
		case 2:
			s.Draft = &fireground.DraftDef{LiftFt: 10, SuctionFt: 20, SuctionIn: 6}
		}
		h := at(t, s)
		var d state.Dice
		d.Seed(seed, "random hands")
		if seed%4 > 0 {
			h.inGear()
		}
		for n := range 60 * 120 {
			if n%6 == 0 {
				jumble(&d, &h.in)
			}
			h.run(tick)
			if name, v := h.o.faulty(); name != "" {
				t.Fatalf("seed %d, tick %d: %s is %v", seed, n, name, v)
			}
		}
		c := h.p.net.Counters()
		if c.CapMet > 0 {
			t.Errorf("seed %d: the cap on iterations was met %d times of %d", seed, c.CapMet, c.Steps)
		}
		if b := h.p.net.Balance(); math.Abs(b.Error) > 1e-6*(1+b.Moved) {
			t.Errorf("seed %d: %v m³ of water unexplained of %v moved", seed, b.Error, b.Moved)
		}
		w := state.Hasher()
		if h.p.Walk(&w); !w.OK() {
			t.Errorf("seed %d: a NaN in the state", seed)
		}
	}
}

// A plant restored from a snapshot goes on bit for bit as the first did.
func TestSnapshot(t *testing.T) {
	for _, s := range []Setup{ground(), wye(), everything()} {
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
	h := at(t, everything())
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
	s := ground()
	p, err := New(s)
	if err != nil {
		b.Fatal(err)
	}
	h := &hands{p: p, in: p.NewIn(), o: p.Out()}
	h.inGear()
	h.onHydrant()
	for i := range 3 {
		h.line(i)
	}
	h.in.Throttle = 0.3
	b.ReportAllocs()
	for b.Loop() {
		p.Step(&h.in)
	}
}
