package demo

import (
	"testing"

	"steadyneedle/sim/drill"
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/world"
)

// free is a demonstration without a script, with the apparatus as it stands in the street.
func free(t *testing.T) *Player {
	t.Helper()
	p, err := New(OfDrill(&drill.Drill{
		Name: "free", Apparatus: "default",
		Setup: world.Setup{
			Rig: rig.Default(), Seed: 1,
			Ground: world.Ground{
				Hydrant:      fireground.HydrantDef{StaticPSI: 65, ResidualPSI: 45, FlowGPM: 1000},
				Supply:       fireground.HoseDef{SizeIn: 4, LossC: 0.2},
				FireToPlugFt: 575, PlugSetback: 16, Discharge: 1, AirF: 68, WaterF: 60,
				Line: fireground.LineDef{
					Trunk:  fireground.HoseDef{SizeIn: 2.5, LossC: 2},
					Nozzle: &fireground.NozzleDef{TipIn: 1.125, RatedPSI: 50, People: 2},
				},
			},
		},
	}))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// What a fault was armed for a first time, and what it was armed for again after it had come, both come again
// after a going back, each when it came.
func TestArmedAgainAndGoneBack(t *testing.T) {
	p := free(t)
	var id world.ControlID
	for i, c := range p.Attempt.Scene.World.Controls() {
		if c.Name == "hydrant_loss" {
			id = world.ControlID(i)
		}
	}
	begin := p.Attempt.Now().Seconds()
	until := func(s float64) {
		for p.Attempt.Now().Seconds() < begin+s {
			p.Tick()
		}
	}
	arm := func(v float64, on Trigger) {
		t.Helper()
		if err := p.Arm(id, v, on); err != nil {
			t.Fatal(err)
		}
	}
	at := func(s float64) world.Tick { return world.TicksIn(begin + s) }
	stands := func(s, want float64) {
		t.Helper()
		until(s)
		if got := p.Attempt.Scene.World.Hand(id); got != want {
			t.Errorf("at %.1f s the hydrant is weaker by %g psi, want %g", s, got, want)
		}
	}
	until(2)
	arm(40, Trigger{At: at(5)})
	stands(4, 0)
	stands(7, 40)
	arm(10, Trigger{Signal: "hydrant_loss", Level: 20}) // which stands there already: it comes at once
	stands(8, 10)
	if _, ok := p.Armed(id); ok {
		t.Error("it is armed still, after both have come")
	}

	left, err := p.Rewind(at(3))
	if err != nil {
		t.Fatal(err)
	}
	if on, ok := p.Armed(id); !ok || on.At != at(5) {
		t.Errorf("gone back before both: armed %v for %+v, want the first", ok, on)
	}
	stands(4, 0)
	stands(6, 40)
	stands(8, 10)

	if _, err := p.Rewind(at(6)); err != nil { // between the two
		t.Fatal(err)
	}
	stands(6.5, 40)
	stands(8, 10)

	for _, back := range []float64{6, 2} { // before the second has come again, and before both
		if _, err := p.Rewind(at(back)); err != nil {
			t.Fatal(err)
		}
	}
	stands(4, 0)
	stands(6, 40)

	if _, err := p.Rewind(at(3)); err != nil {
		t.Fatal(err)
	}
	p.Disarm(id) // and now neither comes
	stands(9, 0)
	if _, err := p.Return(&left); err != nil {
		t.Fatal(err)
	}
	stands(9, 10)
	if _, ok := p.Armed(id); ok {
		t.Error("on the other way, where both have come, it is armed")
	}
}

// What is still to come when one goes back waits from there on: it may come earlier than it was armed.
func TestArmedAndGoneBackBefore(t *testing.T) {
	p := free(t)
	for p.Attempt.Now() < world.TicksIn(5) {
		p.Tick()
	}
	var id world.ControlID
	for i, c := range p.Attempt.Scene.World.Controls() {
		if c.Name == "radio_dead" {
			id = world.ControlID(i)
		}
	}
	if err := p.Arm(id, 1, Trigger{Signal: "tank_gal", Level: 1}); err != nil {
		t.Fatal(err)
	}
	if _, err := p.Rewind(world.TicksIn(2)); err != nil {
		t.Fatal(err)
	}
	for p.Attempt.Now() < world.TicksIn(3) {
		p.Tick()
	}
	if p.Attempt.Scene.World.Hand(id) != 1 {
		t.Error("it waits for the moment at which it was armed")
	}
}
