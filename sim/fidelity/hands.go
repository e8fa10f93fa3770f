package fidelity

import "math"

// inGear brings the pump into gear at idle.
func (b *bench) inGear() {
	b.in.PumpShift = 1
	b.until("pump shift", 10, func() bool { return b.o.PumpEngaged })
	b.in.Transmission = 1
	b.until("throttle ready", 10, func() bool { return b.o.ThrottleReady })
	b.run(3)
}

// reliefOut winds the relief valve to its highest setting, so that it stays shut; an apparatus without one
// is left as it is.
func (b *bench) reliefOut() {
	if d := b.setup.Rig.Relief; d != nil {
		b.in.ReliefTurns = d.Turns
	}
}

// onHydrant lays ft of supply hose, opens the hydrant, bleeds and lets the water into the pump.
func (b *bench) onHydrant(ft float64) {
	b.coupled(ft)
	b.in.Bleeder = 1
	b.until("bleeding the supply hose", 120+ft, func() bool { return b.o.SupplyAir < 0.003 })
	b.in.Bleeder = 0
	b.turn(&b.in.Intake, 1, 5)
	b.run(5)
}

// coupled lays ft of supply hose and opens the hydrant; its air stays in it.
func (b *bench) coupled(ft float64) {
	b.in.Supply.LengthFt, b.in.Supply.AtEngine, b.in.Supply.AtHydrant = ft, 1, 1
	b.turn(&b.in.Hydrant.Open, 1, 8)
}

// onTank opens tank to pump.
func (b *bench) onTank() {
	b.turn(&b.in.TankToPump, 1, 2)
	b.run(3)
}

// prime works the primer until the casing is full.
func (b *bench) prime() float64 {
	b.in.Primer = true
	s := b.until("priming", 150, func() bool { return b.o.CasingWater > 0.99 })
	b.in.Primer = false
	b.run(2)
	return s
}

// nozzles opens every nozzle of line i.
func (b *bench) nozzles(i int, open float64) {
	for k := range b.in.Lines[i].Nozzle {
		b.in.Lines[i].Nozzle[k] = open
	}
}

// line attaches and fills the line of discharge i with its nozzles open, and waits until it flows.
func (b *bench) line(i int) {
	b.in.Lines[i].Attached = true
	b.nozzles(i, 1)
	b.turn(&b.in.Discharge[i], 1, 4)
	b.until("filling the line", 240, func() bool { return b.o.Lines[i].Fill > 0.995 && b.o.Lines[i].NozzlePSI[0] > 0.3 })
	b.run(5)
}

// shutAll shuts all open discharges evenly in seconds, waits, and returns the highest discharge pressure.
func (b *bench) shutAll(seconds float64) float64 {
	from := append([]float64(nil), b.in.Discharge...)
	top := b.o.DischargePSI
	n := ticks(seconds)
	for k := range n {
		for i := range b.in.Discharge {
			b.in.Discharge[i] = float64(from[i] * (1 - float64(k+1)/float64(n)))
		}
		b.run(tick)
		top = max(top, b.o.DischargePSI)
	}
	return max(top, b.highest(8, b.discharge))
}

func (b *bench) discharge() float64 { return b.o.DischargePSI }
func (b *bench) intake() float64    { return b.o.IntakePSI }
func (b *bench) net() float64       { return b.o.NetPSI }
func (b *bench) rpm() float64       { return b.o.EngineRPM }
func (b *bench) flow() float64      { return b.o.PumpGPM }

// gauge is the needle of line i.
func (b *bench) gauge(i int) func() float64 { return func() float64 { return b.o.LineNeedle[i] } }

// nozzle is the pressure at the first nozzle of line i.
func (b *bench) nozzle(i int) func() float64 {
	return func() float64 { return b.o.Lines[i].NozzlePSI[0] }
}

// gpm is the flow of the first nozzle of line i.
func (b *bench) gpm(i int) func() float64 {
	return func() float64 { return b.o.Lines[i].NozzleGPM[0] }
}

const (
	handBeat  = 0.5   // s between two looks at a needle
	handReach = 0.06  // of its travel that a throttle is moved between two looks, at most
	handGain  = 0.12  // travel of the throttle for a needle that is off by all of what it should show
	handClose = 0.001 // share of the goal within which the needle is on it
)

// throttleFor works the throttle until a reading stands at goal, and notes a problem if it never does.
// Where even idle is too much, discharge i is gated, as a person does.
func (b *bench) throttleFor(goal float64, i int, reading func() float64) {
	if !b.throttleTo(goal, i, reading) {
		b.fails("the throttle does not bring %s", Number(goal, 0))
	}
}

// throttleTo works the throttle toward a reading, looking every half second; it reports whether the
// reading came to stand at goal.
func (b *bench) throttleTo(goal float64, i int, reading func() float64) bool {
	on := 0
	for end := b.s + 240; b.s < end; {
		off := (goal - b.look(reading)) / goal
		if math.Abs(off) < handClose {
			if on++; on >= 8 {
				return true
			}
			continue
		}
		on = 0
		if b.in.Throttle == 0 && (off < 0 || i >= 0 && b.in.Discharge[i] < 1) && i >= 0 {
			k := max(-0.1, min(0.1, float64(0.5*off)))
			b.in.Discharge[i] = max(0.05, min(1, float64(b.in.Discharge[i]*(1+k))))
			continue
		}
		b.in.Throttle = max(0, min(1, b.in.Throttle+max(-handReach, min(handReach, float64(handGain*off)))))
	}
	return false
}

// nozzlesFor works the nozzles of all attached lines together until a reading that falls with the flow
// stands at goal.
func (b *bench) nozzlesFor(goal float64, reading func() float64) {
	on, open := 0, b.in.Lines[0].Nozzle[0]
	for end := b.s + 300; b.s < end; {
		off := b.look(reading) - goal
		if math.Abs(off) < max(0.05, float64(handClose*goal)) {
			if on++; on >= 8 {
				return
			}
			continue
		}
		on = 0
		open = max(0.02, min(1, float64(open*(1+max(-0.05, min(0.05, float64(0.004*off)))))))
		for i := range b.in.Lines {
			if b.in.Lines[i].Attached {
				b.nozzles(i, open)
			}
		}
	}
	b.fails("the nozzles do not bring %s", Number(goal, 0))
}

// look runs for half a second and returns the middle of a reading: needles tremble.
func (b *bench) look(reading func() float64) float64 {
	sum, n := 0.0, int(handBeat/tick)
	for range n {
		b.run(tick)
		sum += reading()
	}
	return sum / float64(n)
}

// rpmFor works the throttle until the engine turns at goal.
func (b *bench) rpmFor(goal float64) { b.throttleFor(goal, -1, b.rpm) }

// pumpAt works throttle and all nozzles in turn until the pump gives gpm at net psi, as a service test
// is set.
func (b *bench) pumpAt(gpm, net float64) {
	on := 0
	for end := b.s + 400; b.s < end && on < 8; {
		b.run(handBeat)
		high, far := (net-b.o.NetPSI)/net, (gpm-b.o.PumpGPM)/gpm
		on++
		if math.Abs(high) > handClose || math.Abs(far) > 2*handClose {
			on = 0
		}
		b.in.Throttle = max(0, min(1, b.in.Throttle+max(-handReach, min(handReach, float64(handGain*high)))))
		k := max(0.97, min(1.03, 1+float64(0.15*far)))
		for i := range b.in.Lines {
			if b.in.Lines[i].Attached {
				b.nozzles(i, max(0.02, min(1, float64(b.in.Lines[i].Nozzle[0]*k))))
			}
		}
	}
	if on < 8 {
		b.fails("the pump does not give %s gpm at %s psi", Number(gpm, 0), Number(net, 0))
	}
	b.settle()
}

// setRelief sets the relief valve at the pressure that the pump has now, as it is done by hand: out
// until amber lights, then in until it goes out.
func (b *bench) setRelief() {
	d := b.setup.Rig.Relief
	b.in.ReliefTurns = max(0, min(d.Turns, (b.o.DischargePSI+10-d.LowestPSI)/d.PSIPerTurn))
	b.run(2)
	for !b.o.AmberLamp && b.in.ReliefTurns > 0 {
		b.in.ReliefTurns = max(0, b.in.ReliefTurns-0.02)
		b.run(0.1)
	}
	b.run(2)
	for b.o.AmberLamp && b.in.ReliefTurns < d.Turns {
		b.in.ReliefTurns += 0.02
		b.run(0.25)
	}
	b.run(3)
}
