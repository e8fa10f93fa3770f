package plant

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

// protection is what holds pressures and heat in bounds, and how the stages stand. What the apparatus
// does not have is nil.
type protection struct {
	relief   *rig.Relief
	governor *rig.Governor
	intake   *rig.Spring
	thermal  *rig.Thermal
	transfer *rig.Transfer
}

func newProtection(d *rig.Def) protection {
	var c protection
	if d.Relief != nil {
		r := rig.NewRelief(*d.Relief)
		c.relief = &r
	}
	if d.Governor != nil {
		g := rig.NewGovernor(*d.Governor, d.Engine)
		c.governor = &g
	}
	if d.IntakeRelief != nil {
		s := rig.NewSpring(*d.IntakeRelief)
		c.intake = &s
	}
	if d.ThermalRelief != nil {
		t := rig.NewThermal(*d.ThermalRelief)
		c.thermal = &t
	}
	if d.Pump.Transfer != nil {
		t := rig.NewTransfer(*d.Pump.Transfer)
		c.transfer = &t
	}
	return c
}

// protect moves valves that move by themselves, and arranges the stages.
func (p *Plant) protect(in *In) {
	c := &p.control
	eye, manifold := p.at.eye.P, p.at.manifold.P
	if c.relief != nil {
		c.relief.Step(p.dt, in.ReliefTurns, manifold)
		r, open := c.relief.Resistance()
		setLink(p.way.relief, r, open)
	}
	if c.intake != nil {
		c.intake.Step(p.dt, p.supply.End.P)
		r, open := c.intake.Resistance()
		setLink(p.way.intakeRelief, r, open)
	}
	if c.thermal != nil {
		c.thermal.Step(p.dt, p.casing.Kelvin())
		r, open := c.thermal.Resistance()
		setLink(p.way.thermal, r, open)
	}
	if c.transfer != nil {
		c.transfer.Step(p.dt, in.Series, p.psi(manifold-eye))
		p.pump.Bruise(c.transfer.Wear())
		p.pump.Arrange(c.transfer.Series(in.Faults.ClapperOpen))
	}
}

// reliefFlow is what the discharge relief valve sends round, m³/s.
func (p *Plant) reliefFlow() float64 {
	if p.control.relief == nil {
		return 0
	}
	return p.way.relief.Q()
}

func (p *Plant) publishProtection() {
	o, c := &p.out, &p.control
	o.ThrottleAsked = p.asked
	if c.relief != nil {
		o.ReliefGPM = gpm(p.way.relief.WaterFlow())
		o.ReliefLift, o.ReliefSetPSI, o.AmberLamp = c.relief.Lift(), c.relief.SetPSI(), c.relief.Amber()
	}
	if c.governor != nil {
		o.GovernorSetPSI, o.GovernorSetRPM, o.LowWaterLamp = c.governor.SetPSI(), c.governor.SetRPM(), c.governor.LowWater()
	}
	if c.intake != nil {
		o.IntakeReliefGPM = bound.AtLeast(gpm(p.way.intakeRelief.WaterFlow()), 0)
	}
	if c.thermal != nil {
		o.ThermalGPM = bound.AtLeast(gpm(p.way.thermal.WaterFlow()), 0)
	}
	if c.transfer != nil {
		o.TransferAt, o.TransferJolts = c.transfer.At(), c.transfer.Jolts()
	}
}

func (c *protection) walk(w *state.Walker) {
	if c.relief != nil {
		c.relief.Walk(w)
	}
	if c.governor != nil {
		c.governor.Walk(w)
	}
	if c.intake != nil {
		c.intake.Walk(w)
	}
	if c.thermal != nil {
		c.thermal.Walk(w)
	}
	if c.transfer != nil {
		c.transfer.Walk(w)
	}
}

// suctionLeak lets air in at the end of the supply or suction hose, where there is vacuum: gpm of free
// air at 22 inHg.
func (p *Plant) suctionLeak(leak float64) {
	end := p.supply.End
	if v := -end.P / (22 * unit.PaPerInHg); leak > 0 && v > 0 {
		end.AirIn += float64(float64(leak*unit.M3SPerGPM) * bound.AtMost(v, 1))
	}
}
