package rig

import (
	"math"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/state"
)

// Needle is a gauge: what it is tapped to moves a damped needle (second order), which reads off by a
// bias fixed when the gauge was made, and shivers with the pump.
type Needle struct {
	def    GaugeDef
	bias   float64
	span   float64 // above its pin, over which the bias comes in, in the dial's unit
	at, by float64 // position and speed, in the dial's unit

	stuck bool    // faults, which are no state: the owner says them again after loading one
	off   float64 // in the dial's unit
}

// Fail makes the needle stick where it stands, or read off by so much beside its bias.
func (n *Needle) Fail(stuck bool, off float64) { n.stuck, n.off = stuck, off }

// NewNeedle builds a gauge; its bias is drawn from the seed and the gauge's name.
func NewNeedle(d GaugeDef, seed uint64, name string) Needle {
	var dice state.Dice
	dice.Seed(seed, "gauge "+name)
	return Needle{
		def: d, bias: dice.Between(-d.Bias, d.Bias), at: bound.Within(0, d.Low, d.High),
		span: bound.AtLeast(float64(0.15*(d.High-bound.AtLeast(d.Low, 0))), 1),
	}
}

// Rest puts the needle where it would stand at value.
func (n *Needle) Rest(value float64) { n.at, n.by = bound.Within(value, n.def.Low, n.def.High), 0 }

// Step moves the needle for dt seconds toward value. Stops at both ends of the dial hold it.
func (n *Needle) Step(dt, value float64) {
	if n.stuck {
		n.by = 0
		return
	}
	k := n.def.RadS
	goal := bound.Within(value, n.def.Low, n.def.High)
	n.by += float64(dt * (float64(float64(k*k)*(goal-n.at)) - float64(2*float64(n.def.Damping*float64(k*n.by)))))
	n.at += float64(dt * n.by)
	if c := bound.Within(n.at, n.def.Low, n.def.High); c != n.at {
		n.at, n.by = c, 0
	}
}

// Read is where the needle points. shiver is −1 to 1 times the strength of the pulsation.
func (n *Needle) Read(shiver float64) float64 {
	if n.stuck {
		shiver = 0
	}
	// A gauge with no pressure rests near its pin whatever its spring does farther up.
	share := bound.AtMost(0.25+math.Abs(n.at)/n.span, 1)
	return bound.Within(n.at+float64(n.bias*share)+n.off+float64(n.def.Pulse*shiver), n.def.Low, n.def.High)
}

// Bias is what the gauge reads off, in its unit.
func (n *Needle) Bias() float64 { return n.bias }

// Walk visits the needle's state.
func (n *Needle) Walk(w *state.Walker) {
	w.Float(&n.at)
	w.Float(&n.by)
}

// Pulse is the pump's pulsation as the needles show it: two slow waves of different rate, drawn as
// parabolas. They are beats of the vane frequency, far too fast for an eye.
type Pulse struct{ a, b float64 } // phases, 0…1

// Step advances by dt seconds; the pulsation quickens with the pump (omega 1 at rated speed).
func (p *Pulse) Step(dt, omega float64) {
	p.a = turn(p.a, float64(dt*float64(4.7*omega)))
	p.b = turn(p.b, float64(dt*float64(7.9*omega)))
}

// Value is the shiver, −1 to 1; rough (0 to 1) brings in the second, faster wave.
func (p *Pulse) Value(rough float64) float64 {
	return float64(wave(p.a)*(1-float64(0.5*rough))) + float64(0.5*float64(rough*wave(p.b)))
}

// Walk visits the pulsation's state.
func (p *Pulse) Walk(w *state.Walker) {
	w.Float(&p.a)
	w.Float(&p.b)
}

func turn(phase, by float64) float64 {
	phase += by
	if phase >= 1 {
		phase -= 1
	}
	return phase
}

// wave is a sine drawn with two parabolas, period 1.
func wave(phase float64) float64 {
	if phase < 0.5 {
		x := float64(4*phase) - 1
		return 1 - float64(x*x)
	}
	x := float64(4*phase) - 3
	return float64(x*x) - 1
}
