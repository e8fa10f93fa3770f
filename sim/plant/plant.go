package plant

import (
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/layout"
	"steadyneedle/sim/rig"
)

// Setup is what a plant is built from.
type Setup struct {
	Rig      rig.Def
	Hydrant  fireground.HydrantDef
	Supply   fireground.HoseDef   // make of the supply hose
	Line     fireground.LineDef   // what may be connected to any discharge that Lay leaves free; none if zero
	Lay      layout.Plan          // what hangs on discharges, hydrant and intake from the first moment, dry
	Draft    *fireground.DraftDef // open water as the source, in place of hydrant, supply hose and intake valve
	AirF     float64              // 70 unless AirF or WaterF is set
	WaterF   float64              // 60 unless set
	Substeps int                  // of a tick; 4 unless set
	Seed     uint64
	Without  Effects // left out, for proving tests only
}

const (
	tick            = 1.0 / 60
	defaultSubsteps = 4
	mostSubsteps    = 256
)

// Plant is the machine and the water. It is not safe for concurrent use.
type Plant struct {
	setup Setup
	dt    float64 // s, one step of the network
	patm  float64 // Pa
	airK  float64 // K
	water float64 // K, of the source

	net     *flownet.Net
	at      nodes
	way     ways
	hydrant *fireground.Hydrant // nil at draft
	supply  *fireground.Hose
	slots   []slot
	hoses   []*fireground.Hose // that lie, see findHoses
	laid    *layout.Laid

	engine  rig.Engine
	drive   rig.Drive
	pump    *rig.Pump // the network holds it too
	tank    rig.Tank
	primer  rig.Primer
	control protection
	cooling rig.Cooling
	casing  rig.Casing

	intake, tankToPump, tankFill, recirc rig.Valve

	needles needles
	pulse   rig.Pulse

	tankRuns        bool    // something can run between tank and pump
	tankIn, tankOut float64 // m³ that the tank took and gave in this tick

	// state of its own
	was                           laid
	wetness                       float64 // share of the casing that holds water
	density                       float64 // kg/m³ in the casing
	vapor                         float64 // Pa absolute, in the casing
	heat                          float64 // W, from the engine's cooler into the pump's water
	valveStill, lastIntake, surge float64 // s, travel, psi: see watchIntake
	asked                         float64 // of the engine, by hand or governor; 0…1

	out Out
}

// laid remembers what is laid out, to notice when it changes.
type laid struct {
	supply           Supply
	atEngine, atPlug bool
}

// Out is what is so after the last tick. It belongs to the plant and is overwritten by the next Step.
func (p *Plant) Out() *Out { return &p.out }

// Net gives the network, for tests and reports.
func (p *Plant) Net() *flownet.Net { return p.net }

// Nozzles is the number of nozzles that a line (Setup.Line) has.
func (p *Plant) Nozzles() int { return nozzleCount(&p.setup.Line) }

func nozzleCount(l *fireground.LineDef) int {
	if l.Nozzle != nil {
		return 1
	}
	return len(l.Branches)
}

// NewIn returns the positions of an apparatus that stands parked with its engine idling, everything
// shut and nothing connected.
func (p *Plant) NewIn() In {
	n := len(p.slots)
	in := In{EngineRun: true, ParkingBrake: true,
		Discharge: make([]float64, n), Drain: make([]float64, n), Lines: make([]Line, n)}
	in.Faults.LineGauge = make([]Gauge, n)
	if r := p.setup.Rig.Relief; r != nil {
		in.ReliefTurns = r.StandbyTurns()
	}
	in.Lay = p.setup.Lay.In()
	in.Supply.SizeIn, in.Supply.LossC = p.setup.Supply.SizeIn, p.setup.Supply.LossC
	for i := range in.Lines {
		in.Lines[i] = Line{LengthFt: p.setup.Line.Trunk.LengthFt, Tight: 1, Nozzle: make([]float64, p.Nozzles())}
	}
	return in
}
