package scene

import (
	"testing"

	"steadyneedle/sim/cond"
	"steadyneedle/sim/crew"
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/world"
)

func build(t *testing.T) *Scene {
	t.Helper()
	s := world.Setup{
		Rig: rig.Default(), Seed: 4,
		Ground: world.Ground{
			Hydrant:      fireground.HydrantDef{StaticPSI: 65, ResidualPSI: 45, FlowGPM: 1000},
			Supply:       fireground.HoseDef{SizeIn: 4, LossC: 0.2},
			FireToPlugFt: 575, PlugSetback: 16, Discharge: 1, AirF: 68, WaterF: 60,
			Line: fireground.LineDef{
				Trunk:  fireground.HoseDef{SizeIn: 2.5, LossC: 2},
				Nozzle: &fireground.NozzleDef{TipIn: 1.125, RatedPSI: 50, People: 2},
			},
		},
	}
	controls := map[string]world.ControlID{}
	for i, c := range world.ControlsOf(&s) {
		controls[c.Name] = world.ControlID(i)
	}
	always := &cond.Program{Result: func(_, _ []float64) float64 { return 1 }}
	c, err := New(s, nil, []crew.Cue{
		{ID: "ask", By: world.Crew, When: always, Delay: crew.Radio, Again: 120, Do: []crew.Deed{{Control: controls["crew_wants_water"]}}},
		{ID: "cannot", By: world.Crew, When: always, Do: []crew.Deed{{Control: controls["objective"]}}}, // the evaluator's words
	})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestPeopleActAndOnlyAsTheyCan(t *testing.T) {
	s := build(t)
	asked := 0
	for range 600 {
		for _, a := range s.Step(nil) {
			if name := s.World.Controls()[a.Control].Name; name != "crew_wants_water" || a.By != world.Crew {
				t.Fatalf("%s by %s", name, a.By)
			}
			asked++
		}
	}
	cell, _ := s.Board.Cell("crew_wants_water")
	if asked < 3 || s.Board.V[cell] != float64(asked) {
		t.Errorf("asked %d times; the board tells %g", asked, s.Board.V[cell])
	}
}

func TestForkGoesItsOwnWay(t *testing.T) {
	a, b := build(t), build(t)
	for range 137 {
		a.Step(nil)
	}
	if !a.Fork(b) {
		t.Fatal("the copy does not fit")
	}
	for range 300 {
		a.Step(nil)
		b.Step(nil)
	}
	x, okA := a.Hash()
	y, okB := b.Hash()
	if x != y || !okA || !okB {
		t.Fatal("the copy went another way by itself")
	}
	clothing, _ := b.World.Control("clothing")
	b.Step([]world.Action{{At: b.World.Now(), From: b.World.Place(), Control: clothing, Value: 1}})
	a.Step(nil)
	if y, _ = b.Hash(); y == func() uint64 { h, _ := a.Hash(); return h }() {
		t.Error("what was done to the copy does not show in its hash")
	}
	if a.World.Hand(clothing) != 0 {
		t.Error("what was done to the copy was done to the scene")
	}
}

func TestBenchIsTheWorldWithoutPeople(t *testing.T) {
	s := build(t)
	for range 100 {
		s.Step(nil)
	}
	w, err := s.Bench()
	if err != nil {
		t.Fatal(err)
	}
	if w.Hash() != s.World.Hash() {
		t.Error("the copy is not as the world is")
	}
	was := s.World.Hash()
	for range 10 {
		w.Step(nil)
	}
	if s.World.Hash() != was {
		t.Error("the copy is not a copy")
	}
}
