package plant

import "testing"

// What is left open lets air in where the primer pulls: a dry pump takes its prime in half a minute with
// everything shut; a discharge or tank fill left open keeps it dry, a drain or bleeder at least longer (common
// practice [P]: everything is shut before the primer is worked).
func TestOpenPipesKeepFromPriming(t *testing.T) {
	for _, c := range []struct {
		name        string
		open        func(h *hands)
		least, most float64 // share of the casing that holds water after 32 s
	}{
		{"all shut", func(*hands) {}, 0.98, 1},
		{"discharge a quarter open", func(h *hands) { h.in.Lines[0].CapOff = true; h.in.Discharge[0] = 0.25 }, 0, 0.05},
		{"line with its nozzle open", func(h *hands) {
			h.in.Lines[0].Attached = true
			h.in.Lines[0].Nozzle[0] = 1
			h.in.Discharge[0] = 1
		}, 0, 0.05},
		{"tank fill open", func(h *hands) { h.in.TankFill = 1 }, 0, 0.05},
		{"pump drain open", func(h *hands) { h.in.PumpDrain = 1 }, 0, 0.5},
		{"intake bleeder open", func(h *hands) { h.in.Bleeder = 1 }, 0, 0.9},
	} {
		h := drafting(t, 0, defaultSubsteps)
		c.open(h)
		h.in.Primer = true
		h.run(32)
		h.between(c.name+": share of the casing that holds water", h.o.CasingWater, c.least, c.most)
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
