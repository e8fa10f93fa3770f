package sums

import (
	"fmt"
	"math"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/plant"
	"steadyneedle/sim/world"
)

// Proof is what the simulated lay gives at a pressure on the line's own gauge.
type Proof struct {
	PSI       float64 // on the gauge
	NozzlePSI float64 // lowest of the nozzles
	GPM       float64 // of the line
}

// Limits of a proof, in simulated seconds, and how near the pressure is brought.
const (
	fillS    = 45
	bringS   = 90
	settleS  = 8
	nearPSI  = 0.5
	mostTurn = 0.0008 // of the throttle's travel in a tick
)

// Laid is the hose that was laid.
type Laid struct {
	Ft, SizeIn float64
	LossC      float64 // friction coefficient, psi = C (Q/100)² L/100
}

// Prove pumps the drill's line, of the hose that was laid, on an engine and a hydrant of their own, at
// a pressure, and reads the nozzle. The hydrant has much water at a low pressure, so that the supply
// does not decide. It takes about a tenth of a second.
func Prove(s world.Setup, laid Laid, psi float64) (Proof, error) {
	s.Ground.Hydrant = fireground.HydrantDef{StaticPSI: 25, ResidualPSI: 20, FlowGPM: 1500}
	p, err := plant.New(plant.Setup{Rig: s.Rig, Hydrant: s.Ground.Hydrant, Supply: s.Ground.Supply, Line: s.Ground.Line,
		AirF: s.Ground.AirF, WaterF: s.Ground.WaterF, Seed: 1})
	if err != nil {
		return Proof{}, err
	}
	in := p.NewIn()
	line := s.Ground.Discharge - 1
	if line < 0 || line >= len(in.Lines) {
		return Proof{}, fmt.Errorf("discharge %d is not on this apparatus", s.Ground.Discharge)
	}
	b := bench{p: p, in: &in, out: p.Out(), line: line}
	b.connect(laid)
	b.engage()
	if !b.bring(psi) {
		return Proof{}, fmt.Errorf("this pump does not reach %.0f psi with that lay", psi)
	}
	o := &b.out.Lines[line]
	proof := Proof{PSI: o.ValvePSI, GPM: o.GPM, NozzlePSI: math.Inf(1)}
	for _, v := range o.NozzlePSI {
		proof.NozzlePSI = min(proof.NozzlePSI, v)
	}
	return proof, nil
}

// bench is hands and eyes at the plant of a proof.
type bench struct {
	p    *plant.Plant
	in   *plant.In
	out  *plant.Out
	line int
}

func (b *bench) run(seconds float64) {
	for range int(seconds * world.TicksPerSecond) {
		b.p.Step(b.in)
	}
}

// connect lays the supply and the line, and opens all valves on the water's way.
func (b *bench) connect(laid Laid) {
	b.in.Supply.LengthFt, b.in.Supply.AtEngine, b.in.Supply.AtHydrant = 25, 1, 1
	b.in.Hydrant = plant.Hydrant{Open: 1, CapOff: true}
	b.in.Intake, b.in.Bleeder = 1, 0
	l := &b.in.Lines[b.line]
	l.Attached, l.LengthFt, l.SizeIn, l.LossC, l.Tight = true, laid.Ft, laid.SizeIn, laid.LossC, 1
	for i := range l.Nozzle {
		l.Nozzle[i] = 1
	}
	b.in.ReliefTurns = 10 // wound in: it stays out of the way
}

// engage puts the pump in gear, and fills the line at idle.
func (b *bench) engage() {
	b.in.Transmission, b.in.PumpShift = 0, 1
	b.run(8)
	b.in.Transmission = 1
	b.in.Discharge[b.line] = 1
	b.run(fillS)
}

// bring works the throttle until the pressure stands.
func (b *bench) bring(psi float64) bool {
	still := 0
	for range bringS * world.TicksPerSecond {
		off := psi - b.out.Lines[b.line].ValvePSI
		turn := max(-mostTurn, min(mostTurn, float64(0.00002*off)))
		b.in.Throttle = max(0, min(1, b.in.Throttle+turn))
		b.p.Step(b.in)
		if math.Abs(off) > nearPSI {
			still = 0
		} else if still++; still >= settleS*world.TicksPerSecond {
			return true
		}
	}
	return false
}
