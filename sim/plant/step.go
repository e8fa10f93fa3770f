package plant

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/unit"
	"steadyneedle/sim/water"
)

// Step advances the plant by one tick of 1/60 s with the hands where in says. It allocates nothing.
func (p *Plant) Step(in *In) {
	p.Set(in)
	p.Advance(in)
}

// Set brings whatever stays where it is put to what in says.
func (p *Plant) Set(in *In) {
	p.fail(&in.Faults)
	p.engine.LockStarter(in.Transmission >= 0.5)
	p.setValves(in)
	p.setSupply(in)
	for i := range p.slots {
		p.setLine(in, i)
	}
	p.laid.Set(in.Lay)
	p.findHoses()
	p.tankRuns = !p.way.tankToPump.Shut() || !p.way.recirc.Shut() || !p.way.tankFill.Shut()
}

// Advance does what Step does with the same in as the last Set, which is left out. After a state has been
// loaded, Set comes first.
func (p *Plant) Advance(in *In) {
	p.letAir()
	p.drainPump(in.PumpDrain)
	p.setTank()
	p.tankIn, p.tankOut = 0, 0
	for range p.setup.Substeps {
		p.substep(in)
	}
	p.fillTank()
	p.warmth(in)
	p.serve(in)
	p.watchIntake(in)
	p.moveNeedles()
	p.publish(in)
}

// substep is one step of the network, with the machine that drives it.
func (p *Plant) substep(in *In) {
	p.turnShaft(in)

	p.protect(in)
	p.pump.Prepare(p.drive.Shaft(), p.net.VoidFraction(p.at.eye), p.patm, p.vapor, p.density)

	if p.primes(in) {
		p.usePrimer(in)
	} else {
		p.primer.Rest()
	}
	for _, h := range p.hoses {
		h.Update(p.net)
	}
	if p.hydrant != nil {
		p.supply.InLeak(1)
	}
	p.suctionLeak(in.Faults.SuctionLeakGPM)
	p.laid.Update(p.net, p.dt)
	p.net.Step(p.dt)
	if !p.tankRuns {
		return
	}
	p.tankOut += float64(bound.AtLeast(p.way.tankToPump.WaterFlow(), 0) * p.dt)
	p.tankIn += float64((bound.AtLeast(p.way.recirc.WaterFlow(), 0) + bound.AtLeast(p.way.tankFill.WaterFlow(), 0)) * p.dt)
}

// turnShaft advances engine and drive. What is asked of the engine is asked by the hand, or by the governor
// where there is one.
func (p *Plant) turnShaft(in *In) {
	inDrive := in.Transmission >= 0.5
	ready := p.drive.Ready(inDrive, in.ParkingBrake)
	power := p.pump.Power(p.way.pump.Q(), p.at.eye.P, p.wetness)
	load := p.drive.Load(p.engine.Speed(), power, inDrive, in.Rolling)
	p.asked = in.Throttle
	if g := p.control.governor; g != nil {
		p.asked = g.Step(p.dt, ready, in.Governor, p.psi(p.at.manifold.P), p.psi(p.at.eye.P))
	}
	p.engine.Step(p.dt, in.EngineRun, p.drive.Throttle(p.asked, ready), load)
	p.drive.Step(p.dt, p.engine.Speed(), in.PumpShift >= 0.5, inDrive)
}

// setLink opens a link as far as its valve says.
func setLink(l *flownet.Link, r float64, open bool) {
	l.SetShut(!open)
	if open {
		l.K = r
	}
}

// setValves brings the apparatus's own valves to their handles.
func (p *Plant) setValves(in *In) {
	set := func(l *flownet.Link, v *rig.Valve, travel float64) {
		r, open := v.Resistance(travel)
		setLink(l, r, open)
	}
	set(p.way.recirc, &p.recirc, in.Recirculation)
	set(p.way.tankFill, &p.tankFill, in.TankFill)
	p.setTankAir(in)
	set(p.way.tankToPump, &p.tankToPump, in.TankToPump)
	d := &p.setup.Rig
	r, open := rig.FlowResistance(d.Cooling.CoolerCv, in.Cooler)
	setLink(p.way.cooler, r, open)
	r, open = rig.FlowResistance(d.Pump.DrainCv, in.PumpDrain)
	setLink(p.way.drain, r, open)
}

// setTankAir opens the way that air takes into the casing by the pipes that end over the tank's water, when
// there is vacuum: whoever leaves them open does not get a prime.
func (p *Plant) setTankAir(in *In) {
	cv := 0.0
	for _, v := range [...]struct {
		def    *rig.ValveDef
		valve  *rig.Valve
		travel float64
	}{{&p.setup.Rig.TankFill, &p.tankFill, in.TankFill}, {&p.setup.Rig.Recirculation, &p.recirc, in.Recirculation}} {
		cv += float64(v.def.Cv * v.valve.Opening(v.travel))
	}
	r, open := rig.FlowResistance(cv, 1)
	setLink(p.way.tankAir, r, open)
}

const (
	drainRate = 4e-4   // m³/s that an open drain lets run out by weight alone (assumption)
	drainHead = 4000.0 // Pa: above it the pressure does the work
)

// drainPump lets the casing run empty by its own weight; air takes the water's place.
func (p *Plant) drainPump(open float64) {
	for _, n := range [...]*flownet.Node{p.at.eye, p.at.manifold} {
		n.WaterIn, n.AirIn = 0, 0
		if open > 0 && n.P < drainHead {
			rate := float64(float64(drainRate*open) * bound.AtMost(float64(20*bound.AtLeast(n.Filled(), 0)), 1))
			n.WaterIn, n.AirIn = -rate, rate
		}
	}
	if v := -p.at.eye.P / (22 * unit.PaPerInHg); v > 0 {
		p.at.eye.AirIn += float64(float64(p.setup.Rig.Pump.LeakInGPM*unit.M3SPerGPM) * bound.AtMost(v, 1))
	}
}

// usePrimer takes air, or water, out of the impeller's eye and the manifold.
func (p *Plant) usePrimer(in *In) {
	power := 1.0
	if in.EngineRun && !p.engine.Running() {
		power = 0.6
	}
	dt := p.dt
	from := p.at.eye
	void := p.net.VoidFraction(p.at.eye)
	if v := p.net.VoidFraction(p.at.manifold); v > void {
		from, void = p.at.manifold, v
	}
	air, wet := p.primer.Step(dt, from.P, p.patm, void, power)
	if air > 0 {
		p.net.MoveAir(from, p.at.air, air)
	}
	if wet > 0 && from.Water > wet {
		p.net.SetWater(from, from.Water-wet)
	}
}

// setTank tells the network how the tank stands.
func (p *Plant) setTank() {
	t := p.at.tank
	t.P = p.tank.Head(p.density)
	t.Void = p.tank.Void(p.way.tankToPump.Q())
	p.at.tankTop.P = p.tank.Top(p.density)
}

// fillTank books what ran between tank and pump during the tick.
func (p *Plant) fillTank() {
	warmer := p.at.manifold.P / float64(p.density*waterHeat) // what pressure becomes on the way
	if p.setup.Without.Has(Heat) {
		warmer = 0
	}
	p.tank.Step(tick, rig.Flow{Out: p.tankOut / tick, In: p.tankIn / tick, InKelvin: p.casing.Kelvin() + bound.AtLeast(warmer, 0)})
}

// serve advances what follows engine and tank slowly, by one tick.
func (p *Plant) serve(in *In) {
	battery := 0.0
	if p.primes(in) {
		battery = 0.6
	}
	p.engine.Accessories(tick, battery)
	p.tank.Look(tick)
}

// packingHolds is the pressure, Pa, above which packing and drains let steam go: a dead-headed pump gets
// no hotter than boiling at it, and runs empty instead (assumption).
const packingHolds = 30 * unit.PaPerPSI

// warmth advances temperatures and wear by one tick.
func (p *Plant) warmth(in *In) {
	eye, manifold := p.at.eye, p.at.manifold
	held := bound.AtLeast(eye.Water, 0) + bound.AtLeast(manifold.Water, 0)
	p.wetness = bound.AtMost(held/(eye.Volume+manifold.Volume), 1)

	q := p.way.pump.Q()
	round := p.reliefFlow() + p.way.cooler.Q()
	power := p.pump.Power(q, eye.P, p.wetness)
	useful := float64(bound.AtLeast(manifold.P-eye.P, 0) * bound.AtLeast(q-round, 0))
	heat := bound.AtLeast(power-useful, 0) + p.heat - p.steamHeat()

	fromTank := bound.AtLeast(p.way.tankToPump.WaterFlow(), 0)
	fromHose := bound.AtLeast(p.way.intake.WaterFlow(), 0)
	through, inlet := fromTank+fromHose, p.water
	if through > 0 {
		inlet = (float64(fromTank*p.tank.Kelvin()) + float64(fromHose*p.water)) / through
	}
	boiling := water.BoilingPoint(p.patm + bound.AtLeast(1000-p.patm, bound.AtMost(eye.P, packingHolds)))
	steam := 0.0
	if !p.setup.Without.Has(Heat) {
		steam = p.casing.Step(tick, through, inlet, heat, p.airK, p.wetness, boiling, p.density)
	}
	if gone := steam / p.density; gone > 0 && manifold.Water > gone {
		p.net.SetWater(p.at.manifold, manifold.Water-gone)
	}
	p.warm()

	speed := p.engine.RPM() / p.setup.Rig.Engine.GovernedRPM
	p.heat = p.cooling.Step(tick, p.engine.Power(), speed, p.airK, p.casing.Kelvin(), p.coolerShare(in))
	p.pump.Wear(tick, p.pump.HeadFactor(q, eye.P), p.wetness)
}

const (
	gasOfSteam  = 461.5  // J/(kg K)
	boilingHeat = 2.26e6 // J/kg
	waterHeat   = 4186.0 // J/(kg K), near 20 °C
)

// steamHeat is the heat that steam takes along through open outlets of the casing, W.
func (p *Plant) steamHeat() float64 {
	manifold := p.at.manifold
	gas := bound.AtLeast(p.way.recirc.AirFlow(), 0) + bound.AtLeast(p.way.tankFill.AirFlow(), 0) + bound.AtLeast(p.way.drain.AirFlow(), 0)
	for i := range p.slots {
		gas += bound.AtLeast(p.slots[i].way.AirFlow(), 0)
	}
	steam := bound.AtMost(p.vapor/bound.AtLeast(manifold.P+p.patm, 1000), 1) // share of the gas
	density := p.vapor / float64(gasOfSteam*p.casing.Kelvin())
	return float64(float64(gas*steam) * float64(density*boilingHeat))
}

// coolerShare is how much of its full cooling the engine's cooler gives: it needs flow.
func (p *Plant) coolerShare(in *In) float64 {
	const full = 10 * unit.M3SPerGPM
	return bound.AtMost(bound.AtLeast(p.way.cooler.Q(), 0)/full, 1)
}
