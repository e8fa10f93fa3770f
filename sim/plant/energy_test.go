package plant

import (
	"math"
	"testing"

	"steadyneedle/sim/flownet"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

// working is a plant that pumps through up to three lines of any kind, with everything open.
func working(t *testing.T, d *state.Dice) *hands {
	s := anySetup(d)
	s.Lay = nil
	s.Rig.Governor, s.Rig.Relief = nil, rig.Default().Relief
	if s.Draft != nil {
		s.Draft.LiftFt = d.Between(0, 12)
	}
	h := at(t, s)
	h.in.ReliefTurns = s.Rig.Relief.Turns
	h.inGear()
	if s.Draft != nil {
		h.in.Primer = true
		h.until(90, func() bool { return h.o.CasingWater > 0.99 })
		h.in.Primer = false
	} else {
		h.onHydrant()
	}
	for i := range 1 + d.Pick(3) {
		h.line(i)
	}
	h.turn(&h.in.Throttle, d.Between(0.05, 0.5), 3)
	return h
}

// steady reports whether the discharge has stood still for s seconds.
func (h *hands) steady(s float64) bool {
	lo, hi := h.o.DischargePSI, h.o.DischargePSI
	for range int(60 * s) {
		h.run(tick)
		lo, hi = min(lo, h.o.DischargePSI), max(hi, h.o.DischargePSI)
	}
	return hi-lo < 0.01
}

// Opened further, a valve passes no less: whatever lies before and behind it.
func TestOpeningAValveNeverLowersItsFlow(t *testing.T) {
	settled := 0
	for seed := range uint64(12) {
		var d state.Dice
		d.Seed(seed, "monotone valves")
		h := working(t, &d)
		was := 0.0
		for travel := 0.1; travel <= 1; travel += 0.15 {
			h.turn(&h.in.Discharge[0], travel, 1)
			h.run(30)
			if !h.steady(4) {
				break
			}
			gpm := h.o.Lines[0].GPM
			if gpm < was-0.1-0.001*was {
				t.Errorf("seed %d: %.2f gpm at %.2f of the travel, %.2f before", seed, gpm, travel, was)
			}
			was = gpm
			settled++
		}
	}
	if settled < 40 {
		t.Errorf("only %d settled positions", settled)
	}
}

// In a steady state the power that sources and pump give to the water is what hose, valves, nozzles and
// height take from it (0.5 %: a little air may still be on its way), and the pump gives less than its shaft takes in.
func TestPowerAddsUp(t *testing.T) {
	settled := 0
	for seed := range uint64(16) {
		var d state.Dice
		d.Seed(seed, "power")
		h := working(t, &d)
		h.run(60)
		if !h.steady(4) {
			continue
		}
		settled++
		in, out, pump := h.p.power()
		if math.Abs(in-out) > 0.005*in {
			t.Errorf("seed %d: %.0f W given, %.0f W taken", seed, in, out)
		}
		if shaft := h.o.ShaftHP * unit.WPerHP; pump <= 0 || pump >= shaft {
			t.Errorf("seed %d: the pump gives %.0f W of %.0f", seed, pump, shaft)
		}
	}
	if settled < 8 {
		t.Errorf("only %d settled", settled)
	}
}

// power is what the water is given and what is taken from it, W, and the pump's part.
func (p *Plant) power() (in, out, pump float64) {
	for i := range p.net.Links() {
		l := p.net.Link(i)
		q := l.Q()
		if l.Shut() || q == 0 {
			continue
		}
		in += q * (l.From.P - l.To.P) // nodes between cancel out
		if l.Gain != nil {
			rise, _, _, _ := l.Gain.Head(q, l.From.P, l.To.P)
			pump += q * rise
		}
		loss := l.K * q * math.Abs(q)
		if l.Exponent == flownet.HazenWilliams {
			loss += l.R * q * l.QRef * math.Pow(math.Abs(q)/l.QRef, 0.852)
		} else {
			loss += l.R * q * math.Abs(q)
		}
		out += q * (loss + l.Rise)
	}
	return in + pump, out, pump
}

// Dead-headed and without loss to the air, all that the shaft brings in is found as warmth of water and
// iron: 4186 J/(kg K) and 460 J/(kg K) [M].
func TestHeatAddsUp(t *testing.T) {
	s := ground()
	s.Rig.Pump.LossBtuHrF = 0
	h := at(t, s)
	h.in.ReliefTurns = s.Rig.Relief.Turns
	h.inGear()
	h.turn(&h.in.Throttle, 0.4, 2)
	h.run(10)
	d := &h.p.setup.Rig.Pump
	capacity := d.CasingGal*unit.M3PerGal*h.p.density*4186 + d.CasingLb*unit.KgPerLb*460
	from, work := h.p.casing.Kelvin(), 0.0
	for range 60 * 120 {
		h.run(tick)
		work += h.o.ShaftHP * unit.WPerHP * tick
	}
	stored := capacity * (h.p.casing.Kelvin() - from)
	if math.Abs(stored-work) > 0.01*work || work < 1e5 {
		t.Errorf("%.0f J brought in, %.0f J stored", work, stored)
	}
}
