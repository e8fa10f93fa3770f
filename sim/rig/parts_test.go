package rig

import (
	"math"
	"strings"
	"testing"

	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

// A ball valve shuts off most of its passage in the last part of the travel (common practice).
func TestValveOpening(t *testing.T) {
	v := NewValve(Default().Discharges[0].Valve)
	if v.Opening(0) != 0 || v.Opening(0.02) != 0 || v.Opening(1) != 1 {
		t.Errorf("ends: %v %v %v", v.Opening(0), v.Opening(0.02), v.Opening(1))
	}
	if half := v.Opening(0.5); half < 0.05 || half > 0.3 {
		t.Errorf("half travel opens %v", half)
	}
	if _, open := v.Resistance(0.01); open {
		t.Error("a shut valve is open")
	}
	r, open := v.Resistance(1)
	q := unit.GPM(300).M3S()
	if dp := r * q * q / unit.PaPerPSI; !open || math.Abs(dp-1) > 1e-9 {
		t.Errorf("Cv 300 at 300 gpm loses %v psi, want 1", dp)
	}
}

// TestAmberOutMeansShut: while its lamp is out the valve passes no water, whichever way the pressure goes:
// who sets it has nothing else to go by.
func TestAmberOutMeansShut(t *testing.T) {
	def := *Default().Relief
	r := NewRelief(def)
	lit := false
	for i := range 2 * 240 * 60 { // up 12 psi through the setting in a minute, and down again
		psi := def.StandbyPSI - 6 + 12*(1-math.Abs(float64(i)/(240*60)-1))
		r.Step(step, def.StandbyTurns(), unit.PSI(psi).Pa())
		lit = lit || r.Amber()
		if _, open := r.Resistance(); open && !r.Amber() {
			t.Fatalf("at %.2f psi, set to %.0f, it passes water with the lamp out", psi, def.StandbyPSI)
		}
	}
	if !lit {
		t.Error("the lamp never lit")
	}
}

// Full lift one span above the setting, seated below it; lamp with hysteresis (assumptions).
func TestReliefLiftsAndSeats(t *testing.T) {
	def := *Default().Relief
	r := NewRelief(def)
	hold := func(psi float64) {
		for range 240 * 5 {
			r.Step(step, def.StandbyTurns(), unit.PSI(psi).Pa())
		}
	}
	hold(140)
	if r.Lift() != 0 || r.Amber() || math.Abs(r.SetPSI()-150) > 1e-9 {
		t.Errorf("at 140 psi: lift %v, amber %v, set %v", r.Lift(), r.Amber(), r.SetPSI())
	}
	hold(160)
	if math.Abs(r.Lift()-0.5) > 0.01 || !r.Amber() {
		t.Errorf("10 of 20 psi above: lift %v, amber %v", r.Lift(), r.Amber())
	}
	hold(150.4)
	if !r.Amber() {
		t.Error("amber out between its two thresholds on the way down")
	}
	hold(149)
	if r.Lift() != 0 || r.Amber() {
		t.Errorf("below the setting: lift %v, amber %v", r.Lift(), r.Amber())
	}
	lo, hi := def.LowestPSI, def.LowestPSI+def.Turns*def.PSIPerTurn
	if lo > 50 || hi < 280 {
		t.Errorf("settings run from %v to %v psi, want 50 to 280 at least", lo, hi)
	}
}

// 4 rad/s and damping 0.7 overshoot by 4.6 % (second-order theory).
func TestNeedleMoves(t *testing.T) {
	d := GaugeDef{Low: 0, High: 400, RadS: 4, Damping: 0.7}
	n := NewNeedle(d, 1, "test")
	top := 0.0
	for range 60 * 5 {
		n.Step(1.0/60, 100)
		top = max(top, n.Read(0))
	}
	if top < 102 || top > 108 || math.Abs(n.Read(0)-100) > 0.1 {
		t.Errorf("needle tops out at %.1f and rests at %.1f", top, n.Read(0))
	}
	n.Step(10, 1e6)
	if n.Read(0) > 400 {
		t.Error("needle leaves the dial")
	}
}

func TestNeedleBiasComesFromTheSeed(t *testing.T) {
	d := Default().Instruments.Line
	seen := map[float64]bool{}
	for seed := range uint64(200) {
		a, b := NewNeedle(d, seed, "line 1"), NewNeedle(d, seed, "line 1")
		if a.Bias() != b.Bias() {
			t.Fatal("same seed, other bias")
		}
		if math.Abs(a.Bias()) > 6 {
			t.Errorf("bias %v beyond 6 psi", a.Bias())
		}
		seen[a.Bias()] = true
	}
	if len(seen) < 190 {
		t.Errorf("only %d different biases", len(seen))
	}
}

func TestPulseStaysInBounds(t *testing.T) {
	var p Pulse
	lo, hi, last := 0.0, 0.0, p.Value(0.5)
	for range 6000 {
		p.Step(1.0/60, 1)
		v := p.Value(0.5)
		if math.Abs(v-last) > 1.2 {
			t.Fatalf("pulsation jumps from %v to %v", last, v)
		}
		lo, hi, last = min(lo, v), max(hi, v), v
	}
	if lo < -1 || hi > 1 || hi-lo < 1 {
		t.Errorf("pulsation runs from %v to %v", lo, hi)
	}
}

func TestTankLevelAndOverflow(t *testing.T) {
	k := newTank(0.75)
	if math.Abs(k.Gallons()-375) > 1e-9 {
		t.Errorf("¾ tank holds %v gal", k.Gallons())
	}
	if k.Lamps() != [5]bool{true, true, true, true, false} {
		t.Errorf("lamps of a ¾ tank: %v", k.Lamps())
	}
	in := Flow{In: unit.GPM(185).M3S(), InKelvin: 300}
	late, full := 0.0, 0.0
	for s := 0.0; s < 60; s += step {
		k.Step(step, in)
		k.Look(step)
		if k.Lamps()[4] && late == 0 {
			late = k.Level()
		}
		if k.Overflowing() && full == 0 {
			full = s
		}
	}
	// 125 gal at 185 gpm: 40.5 s, computed.
	if math.Abs(full-40.5) > 0.5 {
		t.Errorf("overflow begins after %.1f s", full)
	}
	if late != 0 && late < 0.99 {
		t.Errorf("filling, the F lamp came on at %.2f: the ¾ lamp should stand alone too long", late)
	}
	if k.Kelvin() <= 289 || k.Kelvin() >= 300 {
		t.Errorf("mixed to %v K", k.Kelvin())
	}
	for range 240 * 5 {
		k.Step(step, Flow{})
		k.Look(step)
	}
	if k.Overflowing() || k.Gallons() > 500.001 || !k.Lamps()[4] {
		t.Errorf("after filling: overflow %v, %v gal, lamps %v", k.Overflowing(), k.Gallons(), k.Lamps())
	}
}

func newTank(share float64) Tank {
	d := Default().Tank
	d.StartFraction = share
	return NewTank(d, 289)
}

func TestTankVortex(t *testing.T) {
	for _, c := range []struct{ level, gpm, lo, hi float64 }{{0.5, 500, 0, 0}, {0.03, 500, 0.3, 0.9}, {0, 500, 1, 1}, {0.03, 50, 0, 0}} {
		k := newTank(c.level)
		if v := k.Void(unit.GPM(c.gpm).M3S()); v < c.lo || v > c.hi {
			t.Errorf("level %v at %v gpm draws %v air", c.level, c.gpm, v)
		}
	}
}

// Dead-headed at 150 psi net (about 100 hp into 100 L and 150 kg of iron) 60 → 140 °F takes about
// 11 min; 50 hp into 25 gal of water alone warms 10.2 °F a minute. Both computed.
func TestCasingWarms(t *testing.T) {
	d := Default().Pump
	rise := func(d PumpDef, hp, seconds float64) float64 {
		c := NewCasing(d, unit.Fahrenheit(60).K())
		for range int(seconds) {
			c.Step(1, 0, 288, unit.Horsepower(hp).W(), unit.Fahrenheit(60).K(), 1, 373, 999)
		}
		return c.F() - 60
	}
	if got := rise(d, 51, 660); math.Abs(got-80) > 16 {
		t.Errorf("51 hp for 11 min: %.0f °F", got)
	}
	d.CasingGal, d.CasingLb, d.LossBtuHrF = 25, 0, 0
	if got := rise(d, 50, 60); math.Abs(got-10.2) > 0.3 {
		t.Errorf("50 hp in 25 gal: %.2f °F in a minute, want 10.2", got)
	}
}

func TestCasingBoilsNoHotter(t *testing.T) {
	c := NewCasing(Default().Pump, 289)
	steam := 0.0
	for range 3600 {
		steam += c.Step(1, 0, 289, 80e3, 289, 1, 400, 999)
	}
	if c.Kelvin() > 400 || steam <= 0 || !c.Hot() {
		t.Errorf("%.0f K, %.1f kg of steam, lamp %v", c.Kelvin(), steam, c.Hot())
	}
}

// 211 L through a 12 L/s primer against a growing vacuum: about half a minute (computed).
func TestPrimerPullsDown(t *testing.T) {
	p := NewPrimer(Default().Primer)
	air, seconds := 0.211, 0.0
	for ; air > 0.211/3 && seconds < 100; seconds += step {
		abs := unit.PaAtm * air / 0.211
		a, _ := p.Step(step, abs-unit.PaAtm, unit.PaAtm, 1, 1)
		air -= a
	}
	if seconds < 20 || seconds > 90 {
		t.Errorf("a third of an atmosphere after %.0f s", seconds)
	}
	if _, water := p.Step(step, -1e4, unit.PaAtm, 0, 1); water <= 0 {
		t.Error("a primer run wet must throw water")
	}
	if p.RunS() < seconds {
		t.Error("the run is not timed")
	}
	p.Rest()
	if p.RunS() != 0 {
		t.Error("letting go does not end the run")
	}
}

// Saved and loaded, every part goes on exactly as it would have.
func TestWalkRestoresEveryPart(t *testing.T) {
	build := func() []walker {
		d := Default()
		e, dr, p, r, tk := NewEngine(d.Engine), NewDrive(d.Drive, d.Engine), NewPump(d.Pump), NewRelief(*d.Relief), NewTank(d.Tank, 289)
		pr, co, ca, n := NewPrimer(d.Primer), NewCooling(d.Cooling), NewCasing(d.Pump, 289), NewNeedle(d.Instruments.Line, 3, "x")
		gv, sp, th, tr := NewGovernor(DefaultGovernor(), d.Engine), NewSpring(DefaultIntakeRelief()), NewThermal(DefaultThermalRelief()), NewTransfer(DefaultTransfer())
		return []walker{&e, &dr, &p, &r, &tk, &pr, &co, &ca, &n, &Pulse{}, &gv, &sp, &th, &tr}
	}
	a, b := build(), build()
	advance(a, 400)
	save := state.Saver(nil)
	for _, x := range a {
		x.Walk(&save)
	}
	load := state.Loader(save.Saved())
	for _, x := range b {
		x.Walk(&load)
	}
	if !save.OK() || !load.OK() {
		t.Fatal("walk failed")
	}
	advance(a, 400)
	advance(b, 400)
	ha, hb := state.Hasher(), state.Hasher()
	for i := range a {
		a[i].Walk(&ha)
		b[i].Walk(&hb)
	}
	if ha.Sum() != hb.Sum() {
		t.Error("the restored parts went another way")
	}
}

type walker interface{ Walk(*state.Walker) }

func advance(parts []walker, steps int) {
	for range steps {
		for _, x := range parts {
			switch x := x.(type) {
			case *Engine:
				x.Step(step, true, 0.4, 100)
				x.Accessories(step, 0.2)
			case *Drive:
				x.Step(step, 80, true, false)
			case *Pump:
				x.Prepare(150, 0.05, unit.PaAtm, 1700, 999)
				x.Wear(step, 0.8, 1)
			case *Relief:
				x.Step(step, 4, 1.1e6)
			case *Tank:
				x.Step(step, Flow{In: 0.01, InKelvin: 300})
			case *Primer:
				x.Step(step, -1e4, unit.PaAtm, 0.5, 1)
			case *Cooling:
				x.Step(step, 1e5, 0.7, 290, 290, 0.5)
			case *Casing:
				x.Step(step, 0.01, 289, 3e4, 290, 1, 373, 999)
			case *Needle:
				x.Step(step, 150)
			case *Pulse:
				x.Step(step, 1)
			case *Governor:
				x.Step(step, true, GovernorHands{Pressure: true, Raise: true}, 90, 30)
			case *Spring:
				x.Step(step, 1e6)
			case *Thermal:
				x.Step(step, 330)
			case *Transfer:
				x.Step(step, true, 90)
			}
		}
	}
}

// TestValveLawAndTravel: three seconds of a 3 in ball valve's travel against 600 ft of 2½ in hose stop the
// water in well under one: what the law leaves open hardly matters until the last third.
func TestValveLawAndTravel(t *testing.T) {
	v := NewValve(ValveDef{SizeIn: 3, Cv: 400, Law: "ball"})
	const friction = 2*6/1e4 + 1/(37.59*37.59) // psi/gpm², hose and 1⅛ tip [C]
	flow := func(travel float64) float64 {
		a := v.Opening(travel)
		if a == 0 {
			return 0
		}
		return 1 / math.Sqrt(friction+1/(400*a*400*a))
	}
	// What strikes is the steepest fall: the time in which all of the flow would go at that pace.
	steepest := 0.0
	for i := range 300 {
		x := float64(i) / 300
		steepest = max(steepest, (flow(x+1.0/300)-flow(x))*100/flow(1)) // of the flow, per second of 3
	}
	t.Logf("at its steepest the flow goes as if all of it stopped in %.2f s of 3 s", 1/steepest)
	if !(1/steepest < 1) {
		t.Errorf("at its steepest the flow goes as if all of it stopped in %.2f s, want under one", 1/steepest)
	}
	for _, c := range []struct {
		d    ValveDef
		want float64
	}{{ValveDef{SizeIn: 2.5}, 0.4}, {ValveDef{SizeIn: 3}, 3}, {ValveDef{SizeIn: 5}, 3}, {ValveDef{SizeIn: 4, TravelS: 5}, 5}} {
		if got := c.d.Fastest(0.4); got != c.want {
			t.Errorf("%+v: %g s at the fastest, want %g", c.d, got, c.want)
		}
	}
	d := Default()
	d.Discharges[1].Valve.Law = "needle"
	if err := d.Check(); err == nil || !strings.Contains(err.Error(), "discharges[2].valve.law") {
		t.Errorf("an unknown law: %v", err)
	}
}
