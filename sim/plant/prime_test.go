package plant

import "testing"

// What is left open lets air in where the primer pulls: a dry pump takes its prime with everything shut, and
// with a discharge, or the pipes to the tank's top, open as far as a hand leaves them it does not (common
// practice [P]: everything is shut before the primer is worked).
func TestOpenPipesKeepFromPriming(t *testing.T) {
	for _, c := range []struct {
		name string
		open func(h *hands)
		dry  bool
	}{
		{"all shut", func(*hands) {}, false},
		{"discharge a quarter open", func(h *hands) { h.in.Lines[0].CapOff = true; h.in.Discharge[0] = 0.25 }, true},
		{"line with its nozzle open", func(h *hands) {
			h.in.Lines[0].Attached = true
			h.in.Lines[0].Nozzle[0] = 1
			h.in.Discharge[0] = 1
		}, true},
		{"tank fill open", func(h *hands) { h.in.TankFill = 1 }, true},
	} {
		h := drafting(t, 0, defaultSubsteps)
		c.open(h)
		h.in.Primer = true
		h.run(60)
		if dry := h.o.CasingWater < 0.1; dry != c.dry {
			t.Errorf("%s: %.2f of the casing holds water after a minute, vacuum %.1f inHg", c.name, h.o.CasingWater, -h.o.IntakeNeedle)
		}
		h.sound()
	}
}

// Through a pump that stands, water does not run from the tank's bottom over its rim: the pipes end above it.
func TestTankDoesNotFillItself(t *testing.T) {
	for _, level := range []float64{0.2, 0.75, 1} {
		s := ground()
		s.Rig.Tank.StartFraction = level
		h := at(t, s)
		h.in.TankToPump, h.in.TankFill, h.in.Recirculation = 1, 1, 1
		h.run(60)
		h.near("gpm over the rim", h.o.TankFillGPM+h.o.RecircGPM, 0, 0.1)
	}
}
