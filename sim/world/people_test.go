package world

import (
	"strings"
	"testing"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/rig"
)

func streetWith(people ...Person) Setup {
	return Setup{Rig: rig.Default(), Seed: 1, Ground: Ground{
		Hydrant: fireground.HydrantDef{StaticPSI: 65, ResidualPSI: 45, FlowGPM: 1000}, Supply: fireground.HoseDef{SizeIn: 4, LossC: 0.2},
		FireToPlugFt: 575, PlugSetback: 16, Discharge: 1, AirF: 68, WaterF: 60, Arrived: true, People: people,
		Line: fireground.LineDef{Trunk: fireground.HoseDef{SizeIn: 2.5, LossC: 2}, Nozzle: &fireground.NozzleDef{TipIn: 1.125, RatedPSI: 50, People: 2}},
	}}
}

// Where people stand is counted by place, is seen from the ground and not from the cab, and others move
// them; the candidate does not.
func TestPeopleInTheStreet(t *testing.T) {
	w, err := New(streetWith(Person{ID: "helper", Name: "A firefighter", Stands: "over the intake coupling"}, Person{ID: "other", Name: "A neighbor"}))
	if err != nil {
		t.Fatal(err)
	}
	helper, _ := w.Control("helper_at")
	count := func(name string) float64 {
		t.Helper()
		s, ok := w.Signal(name)
		if !ok {
			t.Fatal(name)
		}
		return w.Truth().V[s]
	}
	if count("people_at_intake") != 1 || count("people_in_bight") != 0 {
		t.Errorf("at the intake %v, in the bight %v", count("people_at_intake"), count("people_in_bight"))
	}
	var r Reading
	s, _ := w.Signal("helper_at")
	if w.Read(Panel, &r); r.V[s] != standsAtIntake {
		t.Errorf("from the panel the helper is seen at %v", r.V[s])
	}
	if w.Read(Cab, &r); r.V[s] == r.V[s] {
		t.Error("the helper is seen from the cab")
	}
	move := Action{At: w.Now(), By: Candidate, From: Panel, Control: helper, Value: standsInBight}
	if w.Check(move) == nil {
		t.Error("the candidate moves people about")
	}
	move.By = Crew
	if err := w.Check(move); err != nil {
		t.Fatal(err)
	}
	w.Step([]Action{move})
	if count("people_at_intake") != 0 || count("people_in_bight") != 0 {
		t.Error("somebody stands in the bight of a line that has not been parted")
	}
	part, _ := w.Control("line_break")
	w.Step([]Action{{At: w.Now(), By: Instructor, Control: part, Value: 1}})
	for range 5 * TicksPerSecond {
		w.Step(nil)
	}
	if count("people_in_bight") != 1 {
		t.Error("nobody is seen in the bight")
	}
}

func TestPeopleWhoCannotBe(t *testing.T) {
	for say, people := range map[string][]Person{
		`the name helper_at stands for something else already`: {{ID: "helper"}, {ID: "helper"}},
		`stands "on the roof", expected one of`:                {{ID: "helper", Stands: "on the roof"}},
	} {
		if _, err := New(streetWith(people...)); err == nil || !strings.Contains(err.Error(), say) {
			t.Errorf("%v, want %s", err, say)
		}
	}
}
