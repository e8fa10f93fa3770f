package rig

import "testing"

// Lamps light and go out at two different values, so that they do not flicker between (the lamps' own
// values are data; the hysteresis is an assumption).
func TestLampsHaveHysteresis(t *testing.T) {
	def := Default()
	casing := NewCasing(def.Pump, 289)
	heat := func(f float64) bool {
		casing.kelvin = 255.372 + f/1.8 // °F above zero
		casing.Step(1e-9, 0, 289, 0, 289, 1, 373, 999)
		return casing.Hot()
	}
	for _, c := range []struct {
		f   float64
		lit bool
	}{{139, false}, {141, true}, {138, true}, {134, false}, {138, false}} {
		if got := heat(c.f); got != c.lit {
			t.Errorf("pump at %v °F: lamp %v", c.f, got)
		}
	}
	cooling := NewCooling(def.Cooling)
	for _, c := range []struct {
		f   float64
		lit bool
	}{{219, false}, {221, true}, {218, true}, {214, false}, {218, false}} {
		cooling.kelvin = 255.372 + c.f/1.8
		cooling.Step(1e-9, 0, 0, 289, 289, 0)
		if got := cooling.Hot(); got != c.lit {
			t.Errorf("coolant at %v °F: lamp %v", c.f, got)
		}
	}
}

// While the tank is being filled the ¾ lamp stands alone for 12 % of the tank too long: F comes late
// (assumption). Drained, the lamps tell the truth.
func TestTankLampMisleadsWhileFilling(t *testing.T) {
	def := Default().Tank
	def.StartFraction = 0.6
	k := NewTank(def, 289)
	for !k.Lamps()[4] {
		k.Step(1.0/60, Flow{In: 0.00757, InKelvin: 289}) // 120 gpm
		k.Look(1.0 / 60)
		if k.Level() == 1 && k.Overflowing() {
			break
		}
	}
	if k.Level() < 0.94 {
		t.Errorf("filling: F lights at %.2f of the tank, want it late", k.Level())
	}
	for range 60 * 30 {
		k.Step(1.0/60, Flow{})
		k.Look(1.0 / 60)
	}
	was := k.Level()
	for k.Lamps()[4] {
		k.Step(1.0/60, Flow{Out: 0.0063})
		k.Look(1.0 / 60)
	}
	if k.Level() < 0.78 || k.Level() > 0.9 || was < 0.9 {
		t.Errorf("drawing: F goes out at %.2f", k.Level())
	}
}
