package plant

import "testing"

// Recirculation of some 20 gpm holds about 99 °F after an hour on a 60 °F supply of 500 gal, while the
// tank gains 27 °F an hour (computed; the tank's own gain adds to the pump's; 40 %).
func TestRecirculationCools(t *testing.T) {
	h := at(t, ground())
	h.inGear()
	h.onTank()
	h.in.Recirculation = 1
	h.in.ReliefTurns = 10
	h.rpmFor(1270)
	h.between("recirculation gpm", h.o.RecircGPM, 15, 25)
	pump, tank := h.o.PumpF, h.o.TankF
	h.run(3600)
	h.between("pump °F after an hour", h.o.PumpF, 80, 130)
	h.between("tank's gain, °F", h.o.TankF-tank, 16, 50)
	if h.o.PumpF < pump || h.o.PumpHotLamp {
		t.Errorf("pump %.0f °F, lamp %v", h.o.PumpF, h.o.PumpHotLamp)
	}
}

// Dead-headed for an hour the pump boils, no hotter than its packing holds, and loses its
// head; moved water cools it in a minute or two.
func TestDeadHeadedBoils(t *testing.T) {
	h := at(t, ground())
	h.inGear()
	h.onTank()
	h.in.TankToPump = 0
	h.in.ReliefTurns = 10
	h.rpmFor(1333)
	h.until(1200, func() bool { return h.o.PumpHotLamp })
	if !h.o.PumpHotLamp || h.o.PumpF < 130 {
		t.Fatalf("lamp %v at %.0f °F", h.o.PumpHotLamp, h.o.PumpF)
	}
	h.run(2700)
	h.between("hottest, °F", h.o.PumpF, 200, 290)
	h.between("discharge psi", h.o.DischargePSI, -5, 80)

	h.in.TankToPump = 1
	h.in.TankFill = 1
	h.turn(&h.in.Throttle, 0.1, 2)
	h.run(120)
	h.between("cooled, °F", h.o.PumpF, 50, 130)
}

// Running dry wears the pump, and the wear is told; healthy pumping adds none.
func TestRunningDryWears(t *testing.T) {
	h := pumping(t, ground())
	was := h.o.Damage
	h.run(60)
	if h.o.Damage != was {
		t.Errorf("healthy pumping wears: %v to %v", was, h.o.Damage)
	}
	h = drafting(t, 0, defaultSubsteps) // dry, not primed
	h.run(60)
	if h.o.Damage <= 0 || h.o.CasingWater > 0.1 {
		t.Errorf("dry for a minute: damage %v, casing %.2f", h.o.Damage, h.o.CasingWater)
	}
}

// Opened, the pump drain runs the casing empty; water comes back from the tank.
func TestPumpDrain(t *testing.T) {
	h := at(t, ground())
	h.in.PumpDrain = 1
	h.run(400)
	h.between("casing", h.o.CasingWater, 0, 0.25)
	h.in.PumpDrain = 0
	h.onTank()
	h.in.Primer = true
	h.run(40)
	h.between("casing refilled", h.o.CasingWater, 0.9, 1)
}
