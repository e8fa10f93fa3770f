package plant

import (
	"testing"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/layout"
)

// Each effect that can be left out is shown to make a difference: the same hands, once with and once
// without it. The limits are those of the effect's own tests, and [C] where stated.

// without runs a test's hands over a setup that leaves an effect out.
func without(s Setup, e Effects) Setup {
	s.Without = e
	return s
}

// both gives what is measured with everything, and without the effect.
func both(e Effects, measure func(Effects) float64) (with, left float64) {
	return measure(0), measure(e)
}

func TestWithoutCavitation(t *testing.T) {
	factor := [2]float64{}
	for k, e := range []Effects{0, Cavitation} {
		h := at(t, without(bigTips(), e))
		h.in.ReliefTurns = h.p.setup.Rig.Relief.Turns
		h.inGear()
		h.in.Primer = true
		h.until(60, func() bool { return h.o.CasingWater > 0.99 })
		h.in.Primer = false
		dry := h.o.Damage // from turning without water
		for i := range 3 {
			h.in.Lines[i].Attached, h.in.Lines[i].Nozzle[0] = true, 1
			h.turn(&h.in.Discharge[i], 1, 4)
		}
		h.turn(&h.in.Throttle, 1, 5)
		h.run(20)
		factor[k] = h.o.HeadFactor
		if e != 0 {
			h.between("gravel", h.o.GravelSound, 0, 0)
			h.between("damage", h.o.Damage-dry, 0, 0)
		}
	}
	if factor[0] > 0.5 || factor[1] < 1-1e-12 {
		t.Errorf("head factor %.3f with cavitation, %.15f without", factor[0], factor[1])
	}
}

// bigTips is a draft of three lines that carry any flow.
func bigTips() Setup {
	s := ground()
	s.Draft = &fireground.DraftDef{LiftFt: 10, SuctionFt: 20, SuctionIn: 6}
	s.Line.Trunk = fireground.HoseDef{SizeIn: 4, LossC: 0.2, LengthFt: 25}
	s.Line.Nozzle = &fireground.NozzleDef{TipIn: 1.75, RatedPSI: 80}
	return s
}

// A supply hose that was not bled binds the pump for seconds, unless air costs no head.
func TestWithoutAirBinding(t *testing.T) {
	with, left := both(AirBinding, func(e Effects) float64 {
		h := at(t, without(ground(), e))
		h.inGear()
		h.in.Supply.LengthFt, h.in.Supply.AtEngine, h.in.Supply.AtHydrant = 25, 1, 1
		h.turn(&h.in.Hydrant.Open, 1, 8)
		h.run(10)
		h.onTank()
		h.line(0)
		h.turn(&h.in.Intake, 1, 5)
		least := 1.0
		for range 60 * 20 {
			h.run(tick)
			least = min(least, h.o.AirFactor)
		}
		return least
	})
	if with > 0.2 || left != 1 {
		t.Errorf("least air factor %.3f with air, %.3f without", with, left)
	}
}

func TestWithoutInertance(t *testing.T) {
	with, left := both(Inertance, func(e Effects) float64 { return slamWithout(t, 0.5, e) })
	if with < 230 || left > 195 {
		t.Errorf("a nozzle shut in half a second: %.0f psi with inertance, %.0f without", with, left)
	}
}

func TestWithoutElasticity(t *testing.T) {
	with, left := both(Elasticity, func(e Effects) float64 { return slamWithout(t, 0.25, e) })
	if left < 1.1*with {
		t.Errorf("a nozzle shut in a quarter of a second: %.0f psi in fabric hose, %.0f in rigid", with, left)
	}
}

func TestWithoutCollapse(t *testing.T) {
	flat := [2]bool{}
	with, left := both(Collapse, func(e Effects) float64 {
		s := ground()
		s.Hydrant = fireground.HydrantDef{StaticPSI: 40, ResidualPSI: 15, FlowGPM: 300}
		s.Line.Nozzle.TipIn, s.Line.Trunk.LengthFt = 1.25, 200
		h := at(t, without(s, e))
		h.in.ReliefTurns = 10
		h.inGear()
		h.onHydrant()
		h.line(0)
		h.turn(&h.in.Throttle, 1, 5)
		h.run(90)
		flat[min(1, e)] = h.o.SupplyFlat
		return h.o.IntakePSI
	})
	if !flat[0] || flat[1] {
		t.Errorf("flat with collapse %v, without %v", flat[0], flat[1])
	}
	if with < -6 || left > -8 {
		t.Errorf("intake %.1f psi with collapse, %.1f without: nothing but the hose keeps it from falling", with, left)
	}
}

func TestWithoutHeat(t *testing.T) {
	with, left := both(Heat, func(e Effects) float64 {
		h := at(t, without(ground(), e))
		h.inGear()
		h.in.ReliefTurns = 10
		from := h.o.PumpF
		h.turn(&h.in.Throttle, 0.4, 2)
		h.run(120)
		return h.o.PumpF - from
	})
	if with < 8 || left != 0 {
		t.Errorf("dead-headed for two minutes: warmer by %.2f °F with heat, %.2f without", with, left)
	}
}

// The relief valve by-passes what a shut line no longer takes.
func TestWithoutRelief(t *testing.T) {
	lamp := [2]bool{}
	with, left := both(Relief, func(e Effects) float64 {
		h := relieving(t, e)
		lamp[min(1, e)] = h.o.AmberLamp
		return h.o.DischargePSI
	})
	if left-with < 10 || !lamp[0] || lamp[1] {
		t.Errorf("line shut: %.1f psi and amber %v with relief, %.1f and %v without", with, lamp[0], left, lamp[1])
	}
}

// relieving is a pump on its hydrant at 1800 rpm with the relief valve at its lowest and the line shut.
func relieving(t *testing.T, e Effects) *hands {
	h := at(t, without(ground(), e))
	h.inGear()
	h.onHydrant()
	h.line(0)
	h.in.ReliefTurns = 3
	h.turn(&h.in.Throttle, 0.5, 3)
	h.turn(&h.in.Discharge[0], 0, 3)
	h.run(10)
	return h
}

// When a line is shut at once, the relief valve's lags keep it from being as far open as it then stays;
// without them it follows at once.
func TestWithoutReliefLag(t *testing.T) {
	with, left := both(ReliefLag, func(e Effects) float64 {
		h := at(t, without(ground(), e))
		h.inGear()
		h.onHydrant()
		h.line(0)
		h.in.ReliefTurns = 3
		h.turn(&h.in.Throttle, 0.5, 3)
		h.run(10)
		was := h.o.ReliefLift
		h.in.Discharge[0] = 0
		h.run(2 * tick)
		soon := h.o.ReliefLift
		h.run(20)
		if h.o.ReliefLift < was+0.02 {
			t.Errorf("the valve stands at %.3f before and %.3f after", was, h.o.ReliefLift)
		}
		return (soon - was) / (h.o.ReliefLift - was)
	})
	if with > 0.6 || left < 1 {
		t.Errorf("share of the lift a thirtieth of a second after: %.2f with lags, %.2f without", with, left)
	}
}

// A loaded engine sags below the speed set, unless it has no droop.
func TestWithoutDroop(t *testing.T) {
	with, left := both(Droop, func(e Effects) float64 {
		h := at(t, without(ground(), e))
		h.inGear()
		h.onHydrant()
		h.line(0)
		h.turn(&h.in.Throttle, 0.6, 3)
		h.run(20)
		d := &h.p.setup.Rig.Engine
		return d.IdleRPM + 0.6*(d.GovernedRPM-d.IdleRPM) - h.o.EngineRPM
	})
	if with < 20 || left > 0.2*with || left < -5 {
		t.Errorf("the engine sags by %.1f rpm with droop, %.1f without", with, left)
	}
}

// Nothing that leaves effects out may reach into what the caller gave.
func TestLeavingOutKeepsTheSetup(t *testing.T) {
	s := ground()
	hose := fireground.HoseDef{SizeIn: 2.5, LossC: 2, LengthFt: 50}
	s.Lay = layout.Plan{{ID: "a", From: []string{"discharge2"}, Hose: &hose},
		{ID: "n", From: []string{"a"}, Nozzle: &fireground.NozzleDef{TipIn: 1, RatedPSI: 50}}}
	s.Without = EveryEffect
	if _, err := New(s); err != nil {
		t.Fatal(err)
	}
	if hose.WaveFtS != 0 || s.Line.Trunk.WaveFtS != 0 || s.Rig.Relief.SpanPSI == noSpan {
		t.Errorf("the caller's setup has changed: %+v %+v", hose, s.Rig.Relief)
	}
}

func TestEffectNames(t *testing.T) {
	if len(EveryEffect.Each()) != len(effectNames) {
		t.Fatalf("%d effects, %d names", len(EveryEffect.Each()), len(effectNames))
	}
	seen := map[string]bool{}
	for _, e := range EveryEffect.Each() {
		if name := e.String(); name == "" || seen[name] {
			t.Errorf("effect %d is called %q", e, name)
		} else {
			seen[name] = true
		}
	}
	if s := (Heat | Cavitation).String(); s != "cavitation, heat" {
		t.Errorf("set of two: %q", s)
	}
}
