package scenarios

import (
	"math"
	"testing"

	"steadyneedle/sim/world"
)

// TestALayRuns reads the drill that has every part, opens it part by part as its people would, and looks
// that water comes where it belongs.
func TestALayRuns(t *testing.T) {
	d, err := small(t).Drill("laid", Options{Start: map[string]float64{
		"transmission": 0, "pump_shift": 1, "hydrant_valve": 1, "hydrant_cap": 0, "supply_length": 2, "supply_at_engine": 2, "supply_at_hydrant": 2,
		"intake": 1, "discharge1": 1, "discharge2": 1, "discharge3": 1, "discharge4": 1, "plug_open": 1, "second_intake_open": 1,
		"right_gate": 1, "right_nozzle_open": 1, "floor_valve_open": 1, "pack_tip_open": 1, "gun_fog_open": 1, "flow_test_open": 0.5, "exposure_open": 1,
	}})
	if err != nil {
		t.Fatal(err)
	}
	w, err := world.New(d.Setup)
	if err != nil {
		t.Fatal(err)
	}
	signal := map[string]int{}
	for i, s := range w.Signals() {
		signal[s.Name] = i
	}
	read := func(name string) float64 {
		i, ok := signal[name]
		if !ok {
			t.Fatalf("no signal %s", name)
		}
		return w.Truth().V[i]
	}
	set := func(name string, v float64) {
		c, ok := w.Control(name)
		if !ok {
			t.Fatalf("no control %s", name)
		}
		a := world.Action{At: w.Now(), By: world.Instructor, Control: c, Value: v}
		if err := w.Check(a); err != nil {
			t.Fatal(err)
		}
		w.Step([]world.Action{a})
	}
	run := func(seconds int) {
		for range seconds * world.TicksPerSecond {
			w.Step(nil)
		}
	}
	run(10)
	set("transmission", 1)
	run(10)
	set("throttle", 0.35)
	run(120)
	for _, name := range []string{"source_gpm", "second_intake_gpm", "exposure_gpm", "left_nozzle_gpm", "right_nozzle_gpm", "pack_tip_gpm", "gun_fog_gpm", "flow_test_gpm"} {
		if q := read(name); !(q > 40) {
			t.Errorf("%s: %.1f, want water", name, q)
		}
	}
	for _, name := range []string{"trunk_fill", "left_fill", "pack_fill", "relay_fill"} {
		if x := read(name); !(x > 0.98) {
			t.Errorf("%s: %.3f, want it full", name, x)
		}
	}
	if p := read("source_psi"); math.Abs(p-80) > 3 && read("source_rpm") > 701 {
		t.Errorf("the source holds %.1f psi at %.0f rpm, want 80", p, read("source_rpm"))
	}
	before := read("second_intake_gpm")
	set("relay_burst", 2)
	run(10)
	if q, lost := read("second_intake_gpm"), read("relay_lost"); !(q < before) || !(lost > 200) {
		t.Errorf("relay hose burst: %.0f gpm come in of %.0f, %.0f are lost", q, before, lost)
	}
	set("left_gate", 0)
	run(30)
	if q, right := read("trunk_gpm"), read("right_nozzle_gpm"); math.Abs(q-right) > 1 {
		t.Errorf("with one gate shut the trunk takes %.1f gpm, its open line gives %.1f", q, right)
	}
}

// TestFaultsOfALay: each is told at its place in the file.
func TestFaultsOfALay(t *testing.T) {
	f := "drills/laid.yaml"
	for _, c := range []struct{ from, to, say string }{
		{"{id: wye, from: trunk, wye:", "^{id: wye, from: trunck, wye:", `lay: wye: comes from "trunck"`},
		{"- {id: left_nozzle, from: left, nozzle", "- ^{id: left_nozzle, from: right, nozzle", `comes from "right", expected discharge1`},
		{"- {id: two, from: discharge3, hose", "- ^{id: two, from: discharge5, hose", "discharges 1 to 4"},
		{"- {id: trunk, from: discharge1, hose", "- ^{id: trunk, hose", "lay: trunk: is a hose and comes from 0"},
		{"siamese: {loss_psi: 25, at_gpm: 500}", "siamese: {loss_psi: 25, at_gpm: ^50000}", "expected a number from 5 to 5000"},
		{"from: [one, two], siamese", "from: [one, ^2], siamese", "put it in quotes"},
		{"size_in: 2.5, loss_c: 2, length_ft: 200, limit", "size_in: 2.5, loss_c: 2, length_ft: ^0, limit", "expected a number from 1 to 5000"},
		{"- {id: pack, from: floor_valve, hose: {size_in: 2.5, loss_c: 2,", "- ^{id: pack, from: floor_valve, hose: {size_in: 2.5, loss_c: 20,", "expected about 2 for that size"},
		{"riser: {size_in: 6", "^risr: {size_in: 6", `did you mean "riser"?`},
		{"floor_psi: 5}", "floor_psi: 5, ^floor_height: 9}", "unknown key"},
		{"valve: {law: gate, cv: 400}", "valve: {law: gate}", `"cv" is missing`},
		{"- {id: flow_test, from: hydrant", "- ^{id: supply, from: hydrant", "supply_psi stands for something else"},
		{"- {id: flow_test, from: hydrant", "- ^{id: nozzle1, from: hydrant", "nozzle1_psi stands for something else"},
		{"left_gate: 1}", "^left_gat: 1}", `did you mean "left_gate"?`},
		{"set: relay_burst, value: 1", "set: radio_dead, value: ^0.5", "expected 0 or 1"},
		{"set: relay_burst, value: 1", "set: relay_burst, value: ^9", "expected 0 to 6"},
	} {
		only(t, f, c.from, c.to, c.say)
	}
}
