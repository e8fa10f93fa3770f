package plant

import (
	"fmt"

	"steadyneedle/sim/rig"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

// needles are the panel's gauges.
type needles struct {
	intake, discharge, tach, oil, coolant, volts, pumpTemp rig.Needle
	line                                                   []rig.Needle
}

func newNeedles(d *rig.Def, seed uint64) needles {
	in := d.Instruments
	in.Intake.Low = float64(in.Intake.Low * (unit.PaPerInHg / unit.PaPerPSI)) // its dial counts inHg below zero
	n := needles{
		intake: rig.NewNeedle(in.Intake, seed, "intake"), discharge: rig.NewNeedle(in.Discharge, seed, "discharge"),
		tach: rig.NewNeedle(in.Tach, seed, "tach"), oil: rig.NewNeedle(in.Oil, seed, "oil"),
		coolant: rig.NewNeedle(in.Coolant, seed, "coolant"), volts: rig.NewNeedle(in.Volts, seed, "volts"),
		pumpTemp: rig.NewNeedle(in.PumpTemp, seed, "pump temperature"),
	}
	for i := range d.Discharges {
		n.line = append(n.line, rig.NewNeedle(in.Line, seed, fmt.Sprintf("line %d", i+1)))
	}
	n.tach.Rest(d.Engine.IdleRPM)
	n.oil.Rest(d.Engine.OilIdlePSI)
	n.coolant.Rest(d.Cooling.StartF)
	n.volts.Rest(d.Engine.Volts)
	return n
}

// moveNeedles moves every needle by one tick.
func (p *Plant) moveNeedles() {
	n := &p.needles
	p.pulse.Step(tick, p.pump.Omega())
	n.intake.Step(tick, p.psi(p.at.eye.P))
	n.discharge.Step(tick, p.psi(p.at.manifold.P))
	for i := range n.line {
		n.line[i].Step(tick, p.psi(p.slots[i].head.P))
	}
	n.tach.Step(tick, p.engine.RPM())
	n.oil.Step(tick, p.engine.OilPSI())
	n.coolant.Step(tick, p.cooling.F())
	n.volts.Step(tick, p.engine.Volts())
	n.pumpTemp.Step(tick, p.casing.F())
}

func (p *Plant) psi(pa float64) float64 { return pa / unit.PaPerPSI }

// compound is how an intake gauge is read: psi above zero, inches of mercury below.
func compound(psi float64) float64 {
	if psi >= 0 {
		return psi
	}
	return float64(psi * (unit.PaPerPSI / unit.PaPerInHg))
}

func (n *needles) walk(w *state.Walker) {
	for _, x := range [...]*rig.Needle{&n.intake, &n.discharge, &n.tach, &n.oil, &n.coolant, &n.volts, &n.pumpTemp} {
		x.Walk(w)
	}
	for i := range n.line {
		n.line[i].Walk(w)
	}
}
