package plant

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/layout"
	"steadyneedle/sim/unit"
)

// makeOut makes the slices of Out once.
func (p *Plant) makeOut() {
	p.out.Lay = make([]layout.PartOut, len(p.setup.Lay))
	p.out.LineNeedle = make([]float64, len(p.slots))
	p.out.Lines = make([]LineOut, len(p.slots))
	for i := range p.out.Lines {
		k := len(p.slots[i].nozzles)
		p.out.Lines[i] = LineOut{NozzlePSI: make([]float64, k), NozzleGPM: make([]float64, k), ReactionLbf: make([]float64, k)}
	}
}

// publish tells what is so.
func (p *Plant) publish(in *In) {
	p.publishMachine(in)
	p.publishPump()
	p.publishWays()
	p.publishProtection()
	p.publishSupply(in)
	for i := range p.slots {
		p.publishLine(i)
	}
	p.laid.Tell(p.out.Lay)
	p.publishSenses(in)
}

func (p *Plant) publishMachine(in *In) {
	o := &p.out
	inDrive := in.Transmission >= 0.5
	o.EngineRPM = p.engine.RPM()
	o.PumpShaftRPM = p.drive.Shaft() / unit.RadSPerRPM
	o.EngineLoad = p.engine.Load()
	o.CoolantF, o.OilPSI, o.Volts = p.cooling.F(), p.engine.OilPSI(), p.engine.Volts()
	o.PumpEngaged = p.drive.Engaged()
	o.ThrottleReady = p.drive.Ready(inDrive, in.ParkingBrake)
	o.OKToPump = o.ThrottleReady
	o.Clashes, o.ShaftStopS = p.drive.Clashes(), p.drive.NeutralS()
}

func (p *Plant) publishPump() {
	o := &p.out
	eye, manifold, pump := p.at.eye, p.at.manifold, p.way.pump
	o.IntakePSI, o.DischargePSI = p.psi(eye.P), p.psi(manifold.P)
	o.NetPSI = o.DischargePSI - o.IntakePSI
	o.PumpGPM = gpm(pump.WaterFlow())
	o.PumpF = p.casing.F()
	o.CasingWater = p.wetness
	o.HeadFactor, o.AirFactor = p.pump.HeadFactor(pump.Q(), eye.P), p.pump.AirFactor()
	have, need := p.pump.NPSH(pump.Q(), eye.P)
	o.NPSHa, o.NPSHr = have/unit.MPerFt, need/unit.MPerFt
	o.Damage = p.pump.Damage()
	o.PrimerS = p.primer.RunS()
	o.ShaftHP = p.pump.Power(pump.Q(), eye.P, p.wetness) / unit.WPerHP
}

func gpm(m3s float64) float64 { return m3s / unit.M3SPerGPM }

func (p *Plant) publishWays() {
	o := &p.out
	o.IntakeGPM = gpm(p.way.intake.WaterFlow())
	o.TankToPumpGPM = gpm(p.way.tankToPump.WaterFlow())
	o.TankFillGPM = gpm(p.way.tankFill.WaterFlow())
	o.RecircGPM = gpm(p.way.recirc.WaterFlow())
	o.BleederGPM = bound.AtLeast(gpm(p.way.bleeder.WaterFlow()), 0)
	o.TankGal, o.TankF = p.tank.Gallons(), float64(unit.FahrenheitOf(p.tank.Kelvin()))
	o.Overflowing = p.tank.Overflowing()
	o.DumpGPM = 0
	for i := range p.slots {
		o.DumpGPM += p.slots[i].vented(1)
	}
}

func (p *Plant) publishSupply(in *In) {
	o := &p.out
	end := p.supply.End
	o.SupplyFill, o.SupplyAir, o.SupplyPSI = 0, 0, 0
	if c := p.supply.Content(); c > 0 {
		o.SupplyFill = bound.Within(end.Water/c, 0, 1)
		o.SupplyAir = bound.AtMost(p.net.AirVolume(p.supply.End)/c, 1)
		o.SupplyPSI = p.psi(end.P)
	}
	o.SupplySurgePSI = p.surge
	if p.hydrant == nil {
		o.HydrantGPM, o.HydrantPSI = 0, 0
		return
	}
	o.HydrantPSI = p.psi(p.hydrant.Outlet.P)
	o.HydrantGPM = gpm(p.hydrant.Supply.WaterFlow())
	o.DumpGPM += bound.AtLeast(gpm(p.hydrant.Flush.WaterFlow()), 0)
	if !(p.was.atEngine && p.was.atPlug) {
		o.DumpGPM += bound.AtLeast(gpm(p.way.vent.WaterFlow()), 0)
	}
	o.SupplyFlat = p.supply.Content() > 0 && !p.supply.Filling() && o.SupplyFill < flatAt
	o.BleederAir = in.Bleeder > 0 && p.way.bleeder.AirFlow() > spitting
}

const (
	flatAt   = 0.7  // of its content: a hose looks flat (assumption)
	spitting = 2e-5 // m³/s of air at which the bleeder is seen to spit (assumption)
)

func (p *Plant) publishLine(i int) {
	s, o := &p.slots[i], &p.out.Lines[i]
	o.ValvePSI = p.psi(s.head.P)
	o.GPM = gpm(s.way.WaterFlow())
	o.Fill = s.fill()
	o.LeakGPM = s.leaks()
	for k, z := range s.nozzles {
		o.NozzleGPM[k] = bound.AtLeast(gpm(z.Out.WaterFlow()), 0)
		o.NozzlePSI[k] = z.PSI()
		o.ReactionLbf[k] = s.defs[k].ReactionLbf(o.NozzlePSI[k], o.NozzleGPM[k])
	}
}

// publishSenses tells what eyes and ears get.
func (p *Plant) publishSenses(in *In) {
	o, n := &p.out, &p.needles
	rough := p.roughness()
	// Pulsation grows with speed; cavitation makes the needles shiver.
	shiver := float64(p.pulse.Value(rough) * float64(p.pump.Omega()*(float64(p.pump.Omega()*p.wetness)+float64(4*rough))))
	o.IntakeNeedle = compound(n.intake.Read(shiver))
	o.DischargeNeedle = n.discharge.Read(shiver)
	for i := range n.line {
		share := shiver
		if p.slots[i].way.Shut() {
			share = 0
		}
		o.LineNeedle[i] = n.line[i].Read(share)
	}
	o.TachNeedle, o.OilNeedle = n.tach.Read(0), n.oil.Read(0)
	o.CoolantNeedle, o.VoltsNeedle, o.PumpTempNeedle = n.coolant.Read(0), n.volts.Read(0), n.pumpTemp.Read(0)
	o.TankLamp = p.tank.Lamps()
	o.IntakeOpenLamp = in.Intake >= p.setup.Rig.Intake.OpenAt
	o.PumpHotLamp, o.EngineHotLamp, o.LowOilLamp = p.casing.Hot(), p.cooling.Hot(), p.engine.LowOil()
	o.BypassSound = bound.AtMost(bound.AtLeast(o.ReliefGPM, 0)/200, 1)
	o.GravelSound = rough
	o.AirSound = p.hiss(in)
}

// roughness is how much cavitation shakes the pump, 0 to 1. It can be heard from an NPSH ratio of 3
// down, and dies away when air cushions it or nothing is left to collapse.
func (p *Plant) roughness() float64 {
	o := &p.out
	if o.NPSHr <= 0 || p.pump.Omega() < 0.2 {
		return 0
	}
	r := o.NPSHa / o.NPSHr
	t := bound.Within((3-r)/2.2, 0, 1)
	flow := bound.Within(o.PumpGPM/60, 0, 1)
	return float64(float64(t*t) * float64(o.AirFactor*bound.AtLeast(flow, 1-o.HeadFactor)))
}

// hiss is the sound of air at bleeder, couplings and primer.
func (p *Plant) hiss(in *In) float64 {
	air := bound.AtLeast(p.way.bleeder.AirFlow(), 0) + p.supply.End.AirIn
	s := bound.AtMost(air/3e-3, 1)
	if p.primes(in) {
		s = bound.AtLeast(s, 0.6)
	}
	return s
}
