package world

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/layout"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/state"
)

func ferryStreet() Setup {
	return Setup{
		Rig:  rig.Default(),
		Seed: 1,
		Ground: Ground{
			Hydrant:      fireground.HydrantDef{StaticPSI: 65, ResidualPSI: 45, FlowGPM: 1000},
			Supply:       fireground.HoseDef{SizeIn: 4, LossC: 0.2},
			FireToPlugFt: 575, PlugSetback: 16, Discharge: 1, AirF: 68, WaterF: 60,
			Line: fireground.LineDef{
				Trunk:  fireground.HoseDef{SizeIn: 2.5, LossC: 2},
				Nozzle: &fireground.NozzleDef{TipIn: 1.125, RatedPSI: 50, People: 2},
			},
		},
		Start: map[string]float64{"tank_to_pump": 1},
	}
}

// hand works a world by control names.
type hand struct {
	t *testing.T
	*World
}

func build(t *testing.T) hand {
	t.Helper()
	w, err := New(ferryStreet())
	if err != nil {
		t.Fatal(err)
	}
	return hand{t, w}
}

func (h hand) action(by Source, control string, value float64) Action {
	h.t.Helper()
	id, ok := h.Control(control)
	if !ok {
		h.t.Fatalf("no control %q", control)
	}
	return Action{At: h.Now(), By: by, From: h.Place(), Control: id, Value: value}
}

func (h hand) do(by Source, control string, value float64) {
	h.t.Helper()
	a := h.action(by, control, value)
	if err := h.Check(a); err != nil {
		h.t.Fatal(err)
	}
	h.Step([]Action{a})
}

func (h hand) set(control string, value float64) { h.t.Helper(); h.do(Candidate, control, value) }

func (h hand) wait(seconds float64) {
	for range TicksIn(seconds) {
		h.Step(nil)
	}
}

func (h hand) is(signal string) float64 {
	h.t.Helper()
	id, ok := h.Signal(signal)
	if !ok {
		h.t.Fatalf("no signal %q", signal)
	}
	return h.Truth().V[id]
}

func (h hand) until(signal string, value, most float64) float64 {
	h.t.Helper()
	for i := range TicksIn(most) {
		if h.is(signal) == value {
			return i.Seconds()
		}
		h.Step(nil)
	}
	h.t.Fatalf("%s is %g after %g s, want %g", signal, h.is(signal), most, value)
	return 0
}

// layToHydrant drives from the start to the hydrant.
func (h hand) layToHydrant() {
	h.t.Helper()
	h.set("parking_brake", 0)
	h.set("transmission", 1)
	h.set("lay_offset", 7)
	h.set("drive", 1)
	h.until("stage", 1, 60)
	h.set("drive", 1)
	h.until("stage", 3, 120)
	h.set("parking_brake", 1)
	h.set("front_brake_lock", 1)
}

func (h hand) walkTo(p Place) {
	h.t.Helper()
	h.set("walk", float64(p))
	h.until("place", float64(p), 60)
}

func TestEverySignalHasItsOwnName(t *testing.T) {
	s := ferryStreet()
	seen := map[string]bool{}
	for _, g := range SignalsOf(&s) {
		if seen[g.Name] {
			t.Errorf("two signals are named %q", g.Name)
		}
		seen[g.Name] = true
	}
	if len(candidateSpeech) < 26 {
		t.Errorf("only %d phrases and gestures", len(candidateSpeech))
	}
}

func TestLay(t *testing.T) {
	h := build(t)
	h.layToHydrant()
	if n := h.is("sections_laid"); n != 12 {
		t.Errorf("%g sections of 50 ft lie over 575 ft, want 12", n)
	}
	if h.is("offset_error_share") != 0 {
		t.Error("hose laid at 7 ft counts as off the lane")
	}
	h.wait(1)
	if c := h.is("clock"); c < 0.5 || c > 1.2 {
		t.Errorf("the clock shows %g s a second after both brakes were set", c)
	}
}

func TestOffsetOutsideTheLaneCounts(t *testing.T) {
	h := build(t)
	h.set("parking_brake", 0)
	h.set("transmission", 1)
	h.set("drive", 1)
	h.until("stage", 1, 60)
	h.set("drive", 1) // the hose still lies 4 ft off the curb
	h.until("stage", 3, 120)
	if s := h.is("offset_error_share"); s != 1 {
		t.Errorf("share outside the lane %g, want 1", s)
	}
}

func TestBrakeHoldsTheApparatus(t *testing.T) {
	h := build(t)
	h.set("transmission", 1)
	h.set("drive", 1)
	h.wait(5)
	if h.is("speed") != 0 || h.is("stage") != 0 {
		t.Error("the apparatus rolled with the parking brake set")
	}
}

func TestWalkingTakesItsTime(t *testing.T) {
	h := build(t)
	h.set("walk", float64(Panel))
	if got := h.until("place", float64(Panel), 20); math.Abs(got-4) > 0.1 { // cab to panel 4 s (assumption)
		t.Errorf("cab to panel took %g s, want 4", got)
	}
	h.set("walk", float64(Hydrant))
	if got := h.until("place", float64(Hydrant), 20); math.Abs(got-16/walkFtS) > 0.1 {
		t.Errorf("16 ft to the hydrant took %g s", got)
	}
}

func TestCheckRefuses(t *testing.T) {
	h := build(t)
	for _, c := range []struct {
		control string
		value   float64
		why     error
	}{
		{"throttle", 0.5, ErrReach}, // from the cab
		{"parking_brake", math.NaN(), ErrValue},
		{"parking_brake", 0.5, ErrValue}, // a switch has no middle
		{"transmission", 7, ErrValue},
		{"nozzle1", 1, ErrNotTheir},
		{"crew_good", 1, ErrNotTheir},
	} {
		if err := h.Check(h.action(Candidate, c.control, c.value)); !errors.Is(err, c.why) {
			t.Errorf("%s %g: %v, want %v", c.control, c.value, err, c.why)
		}
	}
	if err := h.Check(Action{Control: 9999}); !errors.Is(err, ErrUnknown) {
		t.Errorf("control 9999: %v", err)
	}
	h.wait(1)
	late := h.action(Candidate, "horn", 1)
	late.At = 3
	if err := h.Check(late); !errors.Is(err, ErrPast) {
		t.Errorf("an action at tick 3 in tick 60: %v", err)
	}
}

// A start that no hand could bring about is refused before the first step.
func TestStartRefuses(t *testing.T) {
	for name, v := range map[string]float64{"line_hose": math.NaN(), "supply_length": 1.5, "throttle": math.Inf(1), "no_such": 1} {
		s := ferryStreet()
		s.Start = map[string]float64{name: v}
		if _, err := New(s); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s at %g: %v", name, v, err)
		}
	}
}

// An apparatus that has arrived has laid its line as it should, on either side of the street.
func TestArrivedHasLaidRight(t *testing.T) {
	for _, across := range []bool{false, true} {
		s := ferryStreet()
		s.Ground.Arrived, s.Ground.FireAcross = true, across
		w, err := New(s)
		if err != nil {
			t.Fatal(err)
		}
		h := hand{t, w}
		if h.is("crossed_wrong") != 0 || h.is("offset_error_share") != 0 || h.is("sections_laid") != 12 || h.is("place") != float64(Panel) {
			t.Errorf("across %v: crossed wrong %v, off the lane %v, %v sections, at place %v", across, h.is("crossed_wrong"), h.is("offset_error_share"), h.is("sections_laid"), h.is("place"))
		}
	}
}

func TestHoseDoesNotReach(t *testing.T) {
	h := build(t)
	h.layToHydrant()
	h.walkTo(RearStep)
	h.set("supply_length", 1) // 15 ft for a reach of 16
	h.walkTo(Hydrant)
	if err := h.Check(h.action(Candidate, "supply_at_hydrant", 2)); !errors.Is(err, ErrCannot) {
		t.Errorf("coupling under the cap: %v", err)
	}
	h.set("hydrant_cap", 0)
	h.until("hydrant_cap", 0, 5)
	if err := h.Check(h.action(Candidate, "supply_at_hydrant", 2)); !errors.Is(err, ErrCannot) {
		t.Errorf("a hose of 15 ft over 16: %v", err)
	}
	if err := h.Check(h.action(Candidate, "hydrant_valve", 1)); !errors.Is(err, ErrCannot) {
		t.Errorf("hydrant turned without a wrench: %v", err)
	}
}

func TestHearing(t *testing.T) {
	h := build(t)
	h.layToHydrant()
	h.do(Crew, "crew_wants_water", 1)
	if h.is("crew_wants_water_heard") != 0 {
		t.Error("the radio is heard without a radio")
	}
	h.wait(2)
	h.set("portable_radio", 1)
	h.wait(2)
	if h.is("crew_wants_water_heard") != 0 {
		t.Error("words spoken before the radio was taken are heard afterwards")
	}
	h.do(Crew, "crew_wants_water", 1)
	if h.is("crew_wants_water_heard") != 2 {
		t.Error("the radio is not heard with a radio at hand")
	}
}

func TestGestureIsSeenByLookingRound(t *testing.T) {
	h := build(t)
	h.do(Crew, "crew_go_sign", 1)
	h.wait(2)
	if h.is("crew_go_sign_heard") != 0 {
		t.Error("a gesture behind the cab is seen without the mirror")
	}
	h.set("look_round", 1)
	h.wait(1.1)
	if h.is("crew_go_sign_heard") != 1 {
		t.Error("a gesture is not seen in the mirror")
	}
	h.set("look_round", 0)
	h.do(Crew, "crew_go_sign", 1)
	h.wait(gestureS + 1)
	h.set("look_round", 1)
	h.wait(2)
	if h.is("crew_go_sign_heard") != 1 {
		t.Error("a gesture is seen after it was over")
	}
}

func TestReadingHidesTheTruth(t *testing.T) {
	h := build(t)
	var r Reading
	h.Read(Cab, &r)
	for i, g := range h.Signals() {
		if g.Seen.Has(Cab) == math.IsNaN(r.V[i]) {
			t.Errorf("from the cab %s reads %g", g.Name, r.V[i])
		}
	}
	id, _ := h.Signal("tank_gal")
	if !math.IsNaN(r.V[id]) {
		t.Error("the tank is looked into from the cab")
	}
}

func TestChocks(t *testing.T) {
	h := build(t)
	h.layToHydrant()
	h.walkTo(Wheels)
	h.set("chock_front", 1)
	h.wait(4.5)
	if h.is("chocks_set") != 1 || h.is("chock_fault") != 1 {
		t.Error("a chock that is not locked holds")
	}
	h.set("chock_front_lock", 1)
	if h.is("chock_fault") != 0 {
		t.Error("a chock set right does not hold")
	}
	h.set("chock_front_skew", 8)
	if h.is("chock_fault") != 1 {
		t.Error("a chock 8 degrees off square holds")
	}
}

func TestUncouplingUnderPressureIsCounted(t *testing.T) {
	h := build(t)
	h.layToHydrant()
	h.walkTo(RearStep)
	h.set("wrench", 1)
	h.set("supply_length", 2)
	h.walkTo(Panel)
	h.set("supply_at_engine", 2)
	h.until("supply_at_engine", 2, 10)
	h.walkTo(Hydrant)
	h.set("hydrant_cap", 0)
	h.until("hydrant_cap", 0, 5)
	h.set("supply_at_hydrant", 2)
	h.until("supply_at_hydrant", 2, 10)
	h.set("hydrant_valve", 1)
	h.wait(20)
	if p := h.is("supply_trapped_psi"); p < 40 {
		t.Fatalf("supply hose on an open hydrant holds %g psi", p)
	}
	h.set("supply_at_hydrant", 0)
	if h.is("live_uncoupling") != 1 {
		t.Error("a coupling opened under pressure is not counted")
	}
}

func TestSavedWorldRunsOnToTheSameHash(t *testing.T) {
	h := build(t)
	h.layToHydrant()
	k := state.Saver(nil)
	h.Walk(&k)
	saved := k.Saved()
	run := func() uint64 {
		h.walkTo(Panel)
		h.wait(5)
		return h.Hash()
	}
	first := run()
	l := state.Loader(saved)
	h.Walk(&l)
	if !l.OK() {
		t.Fatal("the snapshot does not fit")
	}
	if again := run(); again != first {
		t.Errorf("hash %x after the restore, %x before", again, first)
	}
}

func TestStepDoesNotAllocate(t *testing.T) {
	h := build(t)
	if n := testing.AllocsPerRun(200, func() { h.Step(nil) }); n != 0 {
		t.Errorf("%g allocations a step", n)
	}
}

// threeLines is Ferry Street with the pump in gear on its hydrant and three lines flowing.
func threeLines() Setup {
	s := ferryStreet()
	s.Ground.Line = fireground.LineDef{}
	s.Start = map[string]float64{"hydrant_valve": 1, "hydrant_cap": 0, "supply_length": 2, "supply_at_engine": 2, "supply_at_hydrant": 2,
		"intake": 1, "pump_shift": 1, "throttle": 0.2}
	for n := 1; n <= 3; n++ {
		line := fmt.Sprintf("line_%d", n)
		s.Ground.Lay = append(s.Ground.Lay,
			layout.Part{ID: line, From: []string{fmt.Sprintf("discharge%d", n)}, Hose: &fireground.HoseDef{SizeIn: 2.5, LossC: 2, LengthFt: 600}},
			layout.Part{ID: line + "_tip", From: []string{line}, Nozzle: &fireground.NozzleDef{TipIn: 1.125, RatedPSI: 50}})
		s.Start[line+"_tip_open"], s.Start[fmt.Sprintf("discharge%d", n)] = 1, 1
	}
	return s
}

func BenchmarkStep(b *testing.B) {
	for name, s := range map[string]Setup{"parked": ferryStreet(), "three lines": threeLines()} {
		b.Run(name, func(b *testing.B) {
			w, err := New(s)
			if err != nil {
				b.Fatal(err)
			}
			gear, _ := w.Control("transmission")
			for w.Now() < TicksIn(120) {
				w.Step(nil)
				if w.Now() == TicksIn(10) && name != "parked" {
					w.Step([]Action{{At: w.Now(), By: Instructor, Control: gear, Value: 1}})
				}
			}
			if q := w.out.PumpGPM; name != "parked" && q < 500 {
				b.Fatalf("%.0f gpm", q)
			}
			b.ReportAllocs()
			for b.Loop() {
				w.Step(nil)
			}
		})
	}
}

// TestHoseBursts: a hole in the supply hose costs the intake its pressure, one in the line the nozzle.
func TestHoseBursts(t *testing.T) {
	s := ferryStreet()
	s.Start = map[string]float64{"hydrant_valve": 1, "hydrant_cap": 0, "supply_length": 2, "supply_at_engine": 2, "supply_at_hydrant": 2, "intake": 1}
	w, err := New(s)
	if err != nil {
		t.Fatal(err)
	}
	h := hand{t, w}
	h.wait(30)
	before := h.is("supply_psi")
	h.do(Fault, "supply_burst", 3)
	h.wait(10)
	if now := h.is("supply_psi"); !(now < before-10) {
		t.Errorf("supply hose at %.1f psi with a 3 in hole, before %.1f", now, before)
	}
	h.do(Fault, "supply_burst", 0)
	h.wait(20)
	if now := h.is("supply_psi"); math.Abs(now-before) > 1 {
		t.Errorf("supply hose at %.1f psi when it is whole again, before %.1f", now, before)
	}
}
