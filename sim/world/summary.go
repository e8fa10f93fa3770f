package world

import "steadyneedle/sim/bound"

// summary holds the numbers of signals that are worked out anew each tick, from where they are copied.
type summary struct {
	time, clock, windDown               float64 // s
	place                               float64
	supplyTrapped, lineTrapped, trapped float64 // psi
	tankLamps                           float64
	volumeLamp, pressureLamp            float64
	intakeReliefOpen, thermalOpen       float64
	nozzles                             []nozzleState
}

func (w *World) sumUp() {
	s, o := &w.sum, w.out
	s.time, s.clock, s.windDown = w.now.Seconds(), w.body.clockS(w.now), w.body.windDownS(w.now)
	s.place = float64(w.body.place)
	s.supplyTrapped, s.lineTrapped = w.supplyTrapped(), w.lineTrapped()
	s.trapped = w.trapped(bound.AtLeast(s.supplyTrapped, s.lineTrapped))
	s.tankLamps = w.tankLamps()
	s.volumeLamp, s.pressureLamp = flag(w.setup.Rig.Pump.Transfer != nil && o.TransferAt == 0), flag(o.TransferAt == 1)
	s.intakeReliefOpen, s.thermalOpen = flag(o.IntakeReliefGPM > seenGPM), flag(o.ThermalGPM > seenGPM)
	for i := range s.nozzles {
		s.nozzles[i] = w.nozzle(i)
	}
}
