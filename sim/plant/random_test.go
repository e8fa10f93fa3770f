package plant

import (
	"math"
	"os"
	"strconv"
	"testing"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/layout"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/state"
)

// hoursEnv says how many hours the plant is worked at random; half an hour unless given.
const hoursEnv = "STEADYNEEDLE_RANDOM_HOURS"

func randomHours(t *testing.T) float64 {
	t.Helper()
	text := os.Getenv(hoursEnv)
	if text == "" {
		return 0.5
	}
	hours, err := strconv.ParseFloat(text, 64)
	if err != nil || !(hours > 0) {
		t.Fatalf("%s is %q, expected a number of hours", hoursEnv, text)
	}
	return hours
}

// Whatever hands do with whatever lies there, numbers stay numbers, no pressure falls to absolute zero,
// water is neither made nor lost, and Newton's method converges within its cap.
func TestRandomHands(t *testing.T) {
	const seconds, parts = 90, 4
	runs := uint64(math.Ceil(randomHours(t) * 3600 / seconds))
	for part := range uint64(parts) {
		t.Run(strconv.FormatUint(part, 10), func(t *testing.T) {
			t.Parallel()
			for seed := part; seed < runs; seed += parts {
				randomRun(t, seed, seconds)
			}
		})
	}
}

func randomRun(t *testing.T, seed uint64, seconds int) {
	var d state.Dice
	d.Seed(seed, "random hands")
	h := at(t, anySetup(&d))
	if d.Pick(4) > 0 {
		h.inGear()
	}
	for n := range 60 * seconds {
		if n%6 == 0 {
			jumble(&d, &h.in)
		}
		h.run(tick)
		if name, v := h.o.faulty(); name != "" {
			t.Fatalf("seed %d, tick %d: %s is %v", seed, n, name, v)
		}
		if name, v := h.p.impossible(); name != "" {
			t.Fatalf("seed %d, tick %d: %s is at %v Pa absolute", seed, n, name, v)
		}
	}
	h.accounts(seed)
}

// accounts holds the solver's accounts of a run.
func (h *hands) accounts(seed uint64) {
	h.t.Helper()
	c := h.p.net.Counters()
	if c.CapMet > 0 {
		h.t.Errorf("seed %d: the cap on iterations was met %d times of %d", seed, c.CapMet, c.Steps)
	}
	if b := h.p.net.Balance(); math.Abs(b.Error) > 1e-9*(1+b.Moved) {
		h.t.Errorf("seed %d: %v m³ of water unexplained of %v moved", seed, b.Error, b.Moved)
	}
	w := state.Hasher()
	if h.p.Walk(&w); !w.OK() {
		h.t.Errorf("seed %d: a NaN in the state", seed)
	}
}

// impossible finds a node at no absolute pressure or less.
func (p *Plant) impossible() (string, float64) {
	for i := range p.net.Nodes() {
		n := p.net.Node(i)
		if abs := n.P + p.patm; !(abs > 0) {
			return n.Name, abs
		}
	}
	return "", 0
}

// anySetup is a legal setup drawn at random: another source, other hose, other weather each time, and
// sometimes a plan on discharges.
func anySetup(d *state.Dice) Setup {
	s := ground()
	s.Seed = d.Uint64()
	s.AirF, s.WaterF = d.Between(-20, 120), d.Between(33, 100)
	s.Rig.Tank.Gallons = d.Between(200, 1500)
	s.Rig.Tank.StartFraction = d.Float64()
	s.Rig.Engine.Droop = d.Between(0, 0.1)
	s.Rig.Pump.RatedGPM = d.Between(500, 2000)
	anyProtection(d, &s.Rig)
	switch d.Pick(3) {
	case 0:
		s.Draft = &fireground.DraftDef{LiftFt: d.Between(0, 22), SuctionFt: d.Between(10, 40), SuctionIn: d.Between(4, 6), ElevationFt: d.Between(0, 7000)}
	default:
		static := d.Between(15, 130)
		s.Hydrant = fireground.HydrantDef{StaticPSI: static, ResidualPSI: static * d.Between(0.2, 0.95), FlowGPM: d.Between(200, 2500), ElevationFt: d.Between(-40, 40)}
		s.Supply = anyHose(d, 3, 5)
		s.Supply.Hard = d.Pick(6) == 0
	}
	s.Line = fireground.LineDef{Trunk: anyHose(d, 1.5, 3)}
	if d.Pick(2) == 0 {
		z := anyNozzle(d)
		s.Line.Nozzle = &z
	} else {
		for range 2 + d.Pick(2) {
			s.Line.Branches = append(s.Line.Branches, fireground.BranchDef{Hose: anyHose(d, 1, 2), Nozzle: anyNozzle(d)})
		}
	}
	if n := len(s.Rig.Discharges); n >= 2 && d.Pick(2) == 0 {
		s.Lay = anyPlan(d)
	}
	return s
}

// anyProtection gives the apparatus what others have.
func anyProtection(d *state.Dice, r *rig.Def) {
	if d.Pick(3) == 0 {
		g := rig.DefaultGovernor()
		r.Governor, r.Relief = &g, nil
	}
	if d.Pick(3) == 0 {
		s := rig.DefaultIntakeRelief()
		r.IntakeRelief = &s
	}
	if d.Pick(3) == 0 {
		t := rig.DefaultThermalRelief()
		r.ThermalRelief = &t
	}
	if d.Pick(3) == 0 {
		t := rig.DefaultTransfer()
		r.Pump.Transfer = &t
	}
}

// anyHose has friction near that of its size: C goes about with the fifth power (computed).
func anyHose(d *state.Dice, low, high float64) fireground.HoseDef {
	in := d.Between(low, high)
	return fireground.HoseDef{SizeIn: in, LossC: 2 * math.Pow(2.5/in, 5) * d.Between(0.7, 1.4), LengthFt: d.Between(25, 800), WaveFtS: d.Between(300, 1200)}
}

func anyNozzle(d *state.Dice) fireground.NozzleDef {
	if d.Pick(2) == 0 {
		return fireground.NozzleDef{TipIn: d.Between(0.25, 1.5), RatedPSI: 50, RiseFt: d.Between(-30, 60)}
	}
	return fireground.NozzleDef{RatedGPM: d.Between(20, 500), RatedPSI: d.Between(50, 100), RiseFt: d.Between(-30, 60)}
}

// anyPlan hangs something on the first discharges.
func anyPlan(d *state.Dice) layout.Plan {
	run := func(id, from string) layout.Part {
		h := anyHose(d, 1.75, 4)
		return layout.Part{ID: id, From: []string{from}, RiseFt: d.Between(-20, 60), Hose: &h}
	}
	end := func(id, from string) layout.Part {
		z := anyNozzle(d)
		z.RiseFt = 0
		return layout.Part{ID: id, From: []string{from}, Nozzle: &z}
	}
	loss := layout.LossDef{PSI: d.Between(2, 30), GPM: d.Between(200, 800)}
	switch d.Pick(4) {
	case 0:
		return layout.Plan{run("trunk", "discharge1"), {ID: "wye", From: []string{"trunk"}, Wye: &layout.WyeDef{Gated: d.Pick(2) == 0}},
			run("left", "wye"), end("left_end", "left"), run("right", "wye"), end("right_end", "right")}
	case 1:
		return layout.Plan{run("first", "discharge1"), run("second", "discharge2"),
			{ID: "siamese", From: []string{"first", "second"}, Siamese: &layout.SiameseDef{Loss: loss, Open: d.Pick(2) == 0}},
			run("on", "siamese"), {ID: "gun", From: []string{"on"}, Monitor: &loss}, end("gun_end", "gun")}
	case 2:
		return layout.Plan{run("relay", "discharge1"), {ID: "second_pump", From: []string{"relay"}, Pumper: &layout.PumperDef{PSI: d.Between(60, 250)}},
			run("line", "second_pump"), end("line_end", "line")}
	}
	return layout.Plan{run("up", "discharge1"), {ID: "riser", From: []string{"up"}, Riser: &layout.RiserDef{SizeIn: 6, LossC: 0.05, Floors: 1 + float64(d.Pick(12)), FloorFt: 12}},
		{ID: "outlet", From: []string{"riser"}, Valve: &layout.ValveDef{Cv: d.Between(100, 400)}}, run("pack", "outlet"), end("pack_end", "pack")}
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
	for i := range in.Lay {
		y := &in.Lay[i]
		pick(&y.Open)
		pick(&y.Gate)
		pick(&y.Kink)
		switch d.Pick(400) {
		case 0:
			y.Burst = 2 * d.Float64()
		case 1:
			y.Burst, y.Leak = 0, 0
		case 2:
			y.Leak = 200 * d.Float64()
		}
	}
	breakThings(d, &in.Faults)
	g := &in.Governor
	for _, b := range []*bool{&g.Pressure, &g.Raise, &g.Lower, &g.Preset, &g.Idle, &in.Series} {
		if d.Pick(30) == 0 {
			*b = !*b
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
	}
}

// breakThings breaks something now and then, and mends it.
func breakThings(d *state.Dice, f *Faults) {
	gauge := func(g *Gauge) { g.Stuck, g.Off = d.Pick(2) == 0, d.Between(-20, 20) }
	switch d.Pick(400) {
	case 0:
		f.Relief = rig.Stuck(d.Pick(4))
	case 1:
		f.PilotClogged = d.Float64()
	case 2:
		f.ClapperOpen = !f.ClapperOpen
	case 3:
		f.RadiatorGone = d.Float64()
	case 4:
		f.TankLampsOff = d.Between(-0.3, 0.3)
	case 5:
		f.PrimerDead = !f.PrimerDead
	case 6:
		f.SuctionLeakGPM = d.Between(0, 40)
	case 7:
		gauge(&f.IntakeGauge)
	case 8:
		gauge(&f.LineGauge[0])
	case 9:
		*f = Faults{LineGauge: f.LineGauge}
	}
}

// faulty reports the first number of Out that is none, or beyond reason.
func (o *Out) faulty() (string, float64) {
	for _, c := range []struct {
		name      string
		v, lo, hi float64
	}{
		{"rpm", o.EngineRPM, 0, 2600}, {"intake psi", o.IntakePSI, -14.8, 2500}, {"discharge psi", o.DischargePSI, -14.8, 3000},
		{"pump gpm", o.PumpGPM, -6000, 6000}, {"pump °F", o.PumpF, 30, 500}, {"casing water", o.CasingWater, 0, 1},
		{"tank gal", o.TankGal, 0, 1600}, {"tank °F", o.TankF, 30, 220}, {"head factor", o.HeadFactor, 0, 1}, {"supply psi", o.SupplyPSI, -14.8, 3000},
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
