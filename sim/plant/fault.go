package plant

import "steadyneedle/sim/rig"

// Faults is what is broken on the machine. The zero value is a sound machine; everything can be made
// whole again.
type Faults struct {
	Relief         rig.Stuck // the relief valve's main valve
	PilotClogged   float64   // 0…1: its pilot feels the pressure late
	ClapperOpen    bool      // a two-stage pump's clapper valve does not shut
	RadiatorGone   float64   // 0…1 of the radiator's air: the engine overheats
	TankLampsOff   float64   // share of the tank by which the level sender reads too high (negative: too low)
	PrimerDead     bool
	SuctionLeakGPM float64 // air let into the supply or suction hose at 22 inHg, gpm of free air
	IntakeGauge    Gauge
	DischargeGauge Gauge
	Tach           Gauge
	LineGauge      []Gauge // one for each discharge
}

// Gauge is what is wrong with one gauge.
type Gauge struct {
	Stuck bool    // the needle stays where it is
	Off   float64 // what it reads too high, in its dial's unit; of the intake gauge always psi
}

// fail tells the parts what is broken.
func (p *Plant) fail(f *Faults) {
	if r := p.control.relief; r != nil {
		r.Fail(f.Relief, f.PilotClogged)
	}
	p.cooling.Block(f.RadiatorGone)
	p.tank.Mislead(f.TankLampsOff)
	n := &p.needles
	n.intake.Fail(f.IntakeGauge.Stuck, f.IntakeGauge.Off)
	n.discharge.Fail(f.DischargeGauge.Stuck, f.DischargeGauge.Off)
	n.tach.Fail(f.Tach.Stuck, f.Tach.Off)
	for i := range n.line {
		n.line[i].Fail(f.LineGauge[i].Stuck, f.LineGauge[i].Off)
	}
}

// primes reports whether the primer runs.
func (p *Plant) primes(in *In) bool { return in.Primer && !in.Faults.PrimerDead }
