package rig

import (
	"math"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

const (
	atDefinition = 0.97 // head factor at NPSHa = NPSHr, by definition of NPSHr
	fallAtOne    = 0.09 // slope of 1 − 0.03/r³ at r = 1
)

// Pump is the centrifugal pump: head, power, cavitation, air in the impeller's eye, and wear.
//
//	dP = f·a·(A ω² − B q|q|), shaft power = P0 ω³ + P1 ω² q
//
// with ω = speed over rated speed, f the head factor of cavitation and a that of air.
//
// These are the constants of a single-stage pump, and of a two-stage one whose impellers stand in
// parallel, each with half the flow. In series both take the whole flow and their rises add: A and P1
// count twice, B eight times (twice the rise of four times the loss), and the first impeller's eye
// takes twice its flow, so that the flow's part of NPSHr counts four times (computed).
type Pump struct {
	def        PumpDef
	rated      float64 // rad/s
	a, b       float64 // Pa, Pa/(m³/s)²
	p0, p1     float64 // W, W/(m³/s)
	ratedQ     float64 // m³/s
	base, n, m float64 // NPSHr in m: base, with ω², with (q/rated)²
	cubic      [2]float64

	// what holds during one step of the network
	w        float64 // ω
	shutoff  float64 // A ω², Pa
	air      float64 // head factor of air
	headPerM float64 // 1/(ρ g), m per Pa
	vapor    float64 // gauge pressure of boiling, Pa
	need     float64 // NPSHr at no flow, m

	series float64 // how far the second impeller stands behind the first, 0 to 1

	damage float64
}

// NewPump builds a pump.
func NewPump(d PumpDef) Pump {
	q := unit.M3SPerGPM
	p := Pump{
		def:    d,
		rated:  float64(d.RatedRPM * unit.RadSPerRPM),
		a:      float64(d.ShutoffPSI * unit.PaPerPSI),
		b:      float64(d.LossPSI*unit.PaPerPSI) / float64(q*q),
		p0:     float64(d.ShaftHP * unit.WPerHP),
		p1:     float64(d.FlowHP*unit.WPerHP) / q,
		ratedQ: float64(d.RatedGPM * q),
		base:   float64(d.NPSHBaseFt * unit.MPerFt),
		n:      float64(d.NPSHSpeedFt * unit.MPerFt),
		m:      float64(d.NPSHFlowFt * unit.MPerFt),
		air:    1,
	}
	// cubic through (gone, 0) level and (1, 0.97) with the slope of the upper branch
	s := float64((1 - d.GoneRatio) * fallAtOne)
	p.cubic = [2]float64{3*atDefinition - s, s - 2*atDefinition}
	p.Prepare(0, 0, unit.PaAtm, 1766, 999) // standing, in water of 60 °F: sound numbers before the first step
	return p
}

// Prepare fixes what holds for the next step: shaft speed (rad/s), share of the eye taken by air,
// atmospheric and vapor pressure (Pa, absolute) and density (kg/m³) of the water at the eye.
func (p *Pump) Prepare(shaft, airShare, patm, vapor, density float64) {
	p.w = shaft / p.rated
	w2 := float64(p.w * p.w)
	p.shutoff = float64(p.a * float64(w2*(1+p.series)))
	p.need = p.base + float64(p.n*w2)
	p.headPerM = 1 / float64(density*unit.Gravity)
	p.vapor = vapor - patm
	p.air = p.airFactor(airShare)
}

// Arrange sets how far a two-stage pump's second impeller stands behind the first, 0 (parallel) to 1
// (series). Call it before Prepare.
func (p *Pump) Arrange(series float64) { p.series = series }

// Curve is the pump's rise at rated speed, without cavitation and air, with its impellers so far in series
// (0 to 1): psi at no flow, and what is lost of it, psi/gpm².
func (d *PumpDef) Curve(series float64) (shutoffPSI, lossPSI float64) {
	return float64(d.ShutoffPSI * (1 + series)), float64(d.LossPSI * (1 + float64(7*series)))
}

// loss is B of the present arrangement.
func (p *Pump) loss() float64 { return float64(p.b * (1 + float64(7*p.series))) }

// needFlow is the flow's coefficient in NPSHr, m.
func (p *Pump) needFlow() float64 { return float64(p.m * (1 + float64(3*p.series))) }

// airFactor is what a share of air in the eye leaves of the head: a smooth step from 1 to 0.
func (p *Pump) airFactor(share float64) float64 {
	t := bound.Within((p.def.AirHigh-share)/(p.def.AirHigh-p.def.AirLow), 0, 1)
	return float64(float64(t*t) * (3 - float64(2*t)))
}

// NPSH is the net positive suction head at hand and needed, m, at flow q and suction pressure ps
// (Pa, gauge).
func (p *Pump) NPSH(q, ps float64) (available, required float64) {
	x := q / p.ratedQ
	return float64((ps - p.vapor) * p.headPerM), p.need + float64(p.needFlow()*float64(x*x))
}

// earlyLoss is what cavitation takes of the head while the suction is enough, r ≥ 1.
func earlyLoss(r float64) float64 { return 0.03 / float64(float64(r*r)*r) }

// headFactor is f(r) and its slope: 1 − 0.03/r³ above r = 1, smooth to 0 at the gone ratio.
func (p *Pump) headFactor(r float64) (f, slope float64) {
	if r >= 1 {
		c := earlyLoss(r)
		return 1 - c, float64(3*c) / r
	}
	g := p.def.GoneRatio
	t := (r - g) / (1 - g)
	if t <= 0 {
		return 0, 0
	}
	c2, c3 := p.cubic[0], p.cubic[1]
	f = float64(float64(t*t) * (c2 + float64(c3*t)))
	return f, float64(t*(float64(2*c2)+float64(3*float64(c3*t)))) / (1 - g)
}

// Gain is the pressure rise, Pa, at flow q (m³/s) and suction pressure ps (Pa, gauge), with its
// derivatives to both.
func (p *Pump) Gain(q, ps float64) (gain, dq, dps float64) {
	abs := math.Abs(q)
	b := p.loss()
	h := p.shutoff - float64(b*float64(q*abs))
	dh := -float64(2 * float64(b*abs))
	if h <= 0 {
		return h, dh, 0
	}
	have, need := p.NPSH(q, ps)
	f, slope := p.headFactor(have / need)
	drq := -float64(have*float64(2*float64(p.needFlow()*q))) / float64(float64(need*need)*float64(p.ratedQ*p.ratedQ))
	drp := p.headPerM / need
	ah := float64(p.air * h)
	return float64(f * ah), float64(p.air*float64(f*dh)) + float64(ah*float64(slope*drq)), float64(ah * float64(slope*drp))
}

// Head makes the pump a gain in a network's link: the rise at flow q with the pressures up- and
// down-stream, and its derivatives to the three.
func (p *Pump) Head(q, up, _ float64) (rise, dq, dup, ddown float64) {
	rise, dq, dup = p.Gain(q, up)
	return rise, dq, dup, 0
}

// HeadFactor is what cavitation leaves of the head, 0 to 1.
func (p *Pump) HeadFactor(q, ps float64) float64 {
	have, need := p.NPSH(q, ps)
	r := have / need
	if r >= 1 {
		return 1 - earlyLoss(r)
	}
	f, _ := p.headFactor(r)
	return f
}

// AirFactor is what air leaves of the head, 0 to 1.
func (p *Pump) AirFactor() float64 { return p.air }

// Omega is the shaft's speed over the rated speed.
func (p *Pump) Omega() float64 { return p.w }

// Power is the power into the shaft, W. wet is the share of the casing that holds water: air turns
// easily.
func (p *Pump) Power(q, ps, wet float64) float64 {
	w2 := float64(p.w * p.w)
	full := float64(p.p0*float64(w2*p.w)) + float64(float64(p.p1*(1+p.series))*float64(w2*bound.AtLeast(q, 0)))
	f := p.HeadFactor(q, ps)
	grip := float64((0.25 + float64(0.75*f)) * (0.15 + float64(0.85*p.air)))
	return float64(full * float64(grip*bound.AtLeast(wet, 0.05)))
}

// Wear adds to the damage: full cavitation, or running without water, at rated speed ruins the pump in
// DamageS seconds (an assumption; it counts, it does not change the pump).
func (p *Pump) Wear(dt, headFactor, wet float64) {
	bad := bound.AtLeast(bound.Within((atDefinition-headFactor)/atDefinition, 0, 1), bound.Within(float64(2*(0.5-wet)), 0, 1))
	p.damage = bound.AtMost(p.damage+float64(float64(bad*float64(p.w*p.w))*(dt/p.def.DamageS)), 1)
}

// Bruise adds the damage of one event.
func (p *Pump) Bruise(damage float64) { p.damage = bound.AtMost(p.damage+damage, 1) }

// Damage is 0 for new and 1 for ruined.
func (p *Pump) Damage() float64 { return p.damage }

// Walk visits the pump's state: also what the last Prepare fixed, because Power is asked before the
// next.
func (p *Pump) Walk(w *state.Walker) {
	for _, x := range [...]*float64{&p.w, &p.shutoff, &p.air, &p.headPerM, &p.vapor, &p.need, &p.series, &p.damage} {
		w.Float(x)
	}
}
