package world

import (
	"errors"
	"math"
	"testing"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/layout"
	"steadyneedle/sim/rig"
)

// Nobody at the scene reaches a fault; a drill and an instructor set it, and set it back.
func TestFaultsAreNotTheCandidates(t *testing.T) {
	s := ferryStreet()
	d := rig.DefaultTransfer()
	s.Rig.Pump.Transfer = &d // so that no fault is missing
	w, err := New(s)
	if err != nil {
		t.Fatal(err)
	}
	h := hand{t, w}
	names := []string{"line1_gauge_stuck", "line1_gauge_off"}
	for i := range faultControls {
		names = append(names, faultControls[i].Name)
	}
	for _, name := range names {
		id, ok := h.Control(name)
		if !ok {
			t.Fatalf("no control %q", name)
		}
		if err := h.Check(h.action(Candidate, name, 1)); !errors.Is(err, ErrNotTheir) {
			t.Errorf("%s by the candidate: %v", name, err)
		}
		for _, by := range []Source{Fault, Instructor} {
			h.do(by, name, 1)
			h.wait(h.Controls()[id].TravelS)
			if v := h.Truth().V[h.signalID(name)]; v != 1 {
				t.Errorf("%s by the %s stands at %v", name, by, v)
			}
			h.do(by, name, h.Controls()[id].Start)
			h.wait(h.Controls()[id].TravelS)
			if v := h.Truth().V[h.signalID(name)]; v != 0 {
				t.Errorf("%s mended by the %s stands at %v", name, by, v)
			}
		}
	}
}

func (h hand) signalID(name string) SignalID {
	h.t.Helper()
	id, ok := h.Signal(name)
	if !ok {
		h.t.Fatalf("no signal %q", name)
	}
	return id
}

// A fault set here is seen there: on a needle, on the lamps, on the radio, in the hose.
func TestFaultsReachTheMachine(t *testing.T) {
	h := build(t)
	h.do(Fault, "discharge_gauge_off", 40)
	h.do(Fault, "line2_gauge_off", 15)
	h.do(Fault, "tank_lamps_off", 0.5)
	h.do(Fault, "supply_kinked", 0.4)
	for range 60 * 10 {
		h.Step(nil)
	}
	see := func(name string) float64 { return h.Truth().V[h.signalID(name)] }
	if see("discharge_gauge") < 30 || see("line2_gauge") < 8 || see("line1_gauge") > 8 || see("tank_lamps") != 5 || see("supply_kink") != 0.4 {
		t.Errorf("discharge %.0f, line 2 %.0f, line 1 %.0f psi, %v lamps, kink %v", see("discharge_gauge"), see("line2_gauge"), see("line1_gauge"), see("tank_lamps"), see("supply_kink"))
	}
	h.do(Instructor, "portable_radio", 1)
	if !h.radioHeard() {
		t.Error("the portable radio is not heard")
	}
	h.do(Fault, "radio_dead", 1)
	if h.radioHeard() {
		t.Error("a silent radio is heard")
	}
}

// A second line hangs on the laid line's end, or on the plan's first line; without either there is none.
func TestSecondLineUnasked(t *testing.T) {
	pumping := map[string]float64{"pump_shift": 1, "parking_brake": 1, "front_brake_lock": 1, "tank_to_pump": 1, "discharge1": 1}
	onLine := ferryStreet()
	onLine.Ground.Arrived = true
	onLine.Start = map[string]float64{"line_break": 1, "line_to": 1, "line_coupling": 2}
	onPlan := onLine
	onPlan.Ground.Line = fireground.LineDef{}
	onPlan.Ground.Lay = layout.Plan{
		{ID: "hose", From: []string{"discharge1"}, Hose: &fireground.HoseDef{SizeIn: 2.5, LossC: 2, LengthFt: 200}},
		{ID: "tip", From: []string{"hose"}, Nozzle: &fireground.NozzleDef{TipIn: 1.125, RatedPSI: 50}},
	}
	onPlan.Start = map[string]float64{}
	for name, s := range map[string]*Setup{"line1_leak": &onLine, "hose_lost": &onPlan} {
		for k, v := range pumping {
			s.Start[k] = v
		}
		w, err := New(*s)
		if err != nil {
			t.Fatal(err)
		}
		h := hand{t, w}
		h.until("pump_engaged", 1, 30)
		h.do(Instructor, "transmission", 1)
		h.wait(60)
		if lost := h.is(name); lost > 1 {
			t.Errorf("%s %.1f gpm before it was opened", name, lost)
		}
		before := h.is("pump_gpm")
		h.do(Crew, "second_line", 1)
		h.wait(10)
		if lost, more := h.is(name), h.is("pump_gpm")-before; lost < 60 || math.Abs(lost-more) > 5 {
			t.Errorf("%s %.1f gpm with a second line open, and the pump gives %.1f more", name, lost, more)
		}
		h.do(Crew, "second_line", 0)
		h.wait(10)
		if lost := h.is(name); lost > 1 {
			t.Errorf("%s %.1f gpm when it is shut again", name, lost)
		}
	}
	bare := onPlan
	bare.Ground.Lay = nil
	bare.Start = nil
	w, err := New(bare)
	if err != nil {
		t.Fatal(err)
	}
	h := hand{t, w}
	if err := h.Check(h.action(Instructor, "second_line", 1)); !errors.Is(err, ErrCannot) {
		t.Errorf("a second line where none is laid: %v", err)
	}
}

// What an apparatus does not have stays in the list under its number, and nobody can work it.
func TestFittedToTheApparatus(t *testing.T) {
	s := ferryStreet()
	g := rig.DefaultGovernor()
	s.Rig.Governor, s.Rig.Relief = &g, nil
	w, err := New(s)
	if err != nil {
		t.Fatal(err)
	}
	plain := build(t)
	h := hand{t, w}
	for i, c := range plain.Controls() {
		if h.Controls()[i].Name != c.Name {
			t.Fatalf("control %d is %s with a relief valve, %s with a governor", i, c.Name, h.Controls()[i].Name)
		}
	}
	for _, name := range []string{"relief_wheel", "throttle", "relief_stuck", "transfer"} {
		if err := h.Check(h.action(Instructor, name, 0)); !errors.Is(err, ErrCannot) {
			t.Errorf("%s on an apparatus without it: %v", name, err)
		}
	}
	if err := plain.Check(plain.action(Instructor, "governor_raise", 1)); !errors.Is(err, ErrCannot) {
		t.Errorf("governor on an apparatus without one: %v", err)
	}
	s.Start = map[string]float64{"relief_wheel": 3}
	if _, err := New(s); err == nil {
		t.Error("a start of what is missing is taken")
	}
	if v := h.Truth().V[h.signalID("governor_fitted")]; v != 1 || h.Truth().V[h.signalID("relief_fitted")] != 0 {
		t.Error("fitted flags are wrong")
	}
}
