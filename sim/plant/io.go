package plant

import (
	"steadyneedle/sim/layout"
	"steadyneedle/sim/rig"
)

// In is everything people do to the machine and the ground, as the plant takes it for one tick.
// Positions are fractions of full travel (0 shut, 1 open) unless said otherwise; they are where the
// handle *is* now, already limited to human and mechanical speed by package world.
type In struct {
	EngineRun    bool    // ignition on
	Throttle     float64 // 0 idle … 1 governed speed
	Transmission float64 // 0 neutral, 1 drive
	PumpShift    float64 // 0 road, 1 pump: what the operator has selected; the shift itself takes time
	ParkingBrake bool
	Rolling      bool // the apparatus moves on the road (the plant then loads the engine a little)

	TankToPump    float64
	TankFill      float64
	Intake        float64
	Bleeder       float64
	Recirculation float64
	Primer        bool
	Cooler        float64
	PumpDrain     float64
	ReliefTurns   float64           // turns of the relief handwheel, clockwise positive from its lowest setting
	Governor      rig.GovernorHands // on an apparatus with a governor, which then works the throttle
	Series        bool              // transfer valve of a two-stage pump: series (pressure) selected, or else parallel (volume)
	Discharge     []float64         // valve of each discharge
	Drain         []float64         // drain (bleeder) of each discharge, down-stream of its valve

	Hydrant Hydrant
	Supply  Supply
	Lines   []Line          // one slot per discharge; Attached false where nothing is connected
	Lay     []layout.PartIn // one for each part of the setup's plan
	Shock   Shock
	Faults  Faults
}

// Hydrant is the state of the hydrant's valve and outlet.
type Hydrant struct {
	Open   float64 // main valve 0…1
	CapOff bool    // outlet uncapped: open to the air unless a hose is on it
}

// Supply is the hose between hydrant and pump intake.
type Supply struct {
	LengthFt  float64 // 0: none laid out
	SizeIn    float64
	LossC     float64 // friction coefficient, FL = C (Q/100)² L/100
	AtEngine  float64 // 0 off, 0.5 hand-tight (leaks under pressure), 1 tight
	AtHydrant float64 // the same
	Kink      float64 // 0 none … 1 shut off
	Burst     float64 // diameter of a hole, in
}

// Line is what is connected to one discharge. Its shape (one nozzle, or a wye with branches) comes
// from the setup; here are the things that change.
type Line struct {
	Attached bool
	LengthFt float64   // of the trunk
	SizeIn   float64   // of the trunk; 0: as the setup has it
	LossC    float64   // of the trunk; 0: as the setup has it
	Tight    float64   // 0.5 hand-tight (leaks), 1 tight
	Kink     float64   // 0 none … 1 shut off
	Leak     float64   // opening of a leaking coupling at the discharge, gpm at 100 psi
	Burst    float64   // diameter of a hole at the trunk's far end, in
	Second   float64   // 0…1: a second hand line at the trunk's far end, opened unasked
	Nozzle   []float64 // opening of each nozzle
	CapOff   bool      // nothing is connected and the outlet has no cap: it is open to the air
}

// Shock holds what the ground or an instructor may do to the water supply.
type Shock struct {
	StaticDropPSI float64 // taken from the hydrant's static pressure; a main has no less than none
}

// Out is what is so after a tick, in the trade's units. Fields ending in Needle and Lamp are what an
// eye sees; the rest is truth.
type Out struct {
	// engine and drive
	EngineRPM     float64
	PumpShaftRPM  float64 // speed of the pump shaft as engine speed; 0 when it stands
	EngineLoad    float64 // 0…1 of the torque available
	CoolantF      float64
	OilPSI        float64
	Volts         float64
	PumpEngaged   bool // shift completed
	OKToPump      bool // engaged, transmission in drive, parking brake set
	ThrottleReady bool
	Clashes       float64 // gear clashes so far
	ShaftStopS    float64 // seconds since the transmission went to neutral

	// pump
	IntakePSI    float64 // at the impeller's inlet side, gauge
	DischargePSI float64
	NetPSI       float64
	PumpGPM      float64
	PumpF        float64 // water in the casing, °F
	CasingWater  float64 // 0…1
	HeadFactor   float64 // what cavitation leaves of the head, 0…1
	AirFactor    float64 // what air leaves of the head, 0…1
	NPSHa, NPSHr float64 // ft
	Damage       float64 // accumulated, 1 = ruined (assumption)
	PrimerS      float64 // seconds of the present primer run
	ShaftHP      float64

	// ways of the water, gpm
	IntakeGPM     float64 // through the intake valve, into the pump
	HydrantGPM    float64
	TankToPumpGPM float64
	TankFillGPM   float64
	RecircGPM     float64
	ReliefGPM     float64
	BleederGPM    float64
	DumpGPM       float64 // out of open, unconnected outlets

	ReliefLift   float64 // 0…1
	ReliefSetPSI float64 // line pressure at which the main valve starts to lift; 0 without a relief valve

	GovernorSetPSI  float64 // 0 without a governor, at idle and in speed mode
	GovernorSetRPM  float64 // 0 without a governor, at idle and in pressure mode
	ThrottleAsked   float64 // what hand or governor asks of the engine, 0 idle … 1 governed speed
	TransferAt      float64 // 0 parallel … 1 series
	TransferJolts   float64 // so far
	IntakeReliefGPM float64 // out of the intake relief valve to the ground
	ThermalGPM      float64 // out of the thermal relief valve to the ground

	TankGal     float64
	TankF       float64
	Overflowing bool

	HydrantPSI     float64 // at the outlet
	SupplyFill     float64 // water in the supply hose / its volume, 0…1
	SupplyAir      float64 // air in it / its volume, at the pressure it has
	SupplyPSI      float64 // at the intake, outside the intake valve
	SupplyFlat     bool
	SupplySurgePSI float64 // largest pressure on either side of the intake valve above hydrant static since the valve began to move
	BleederAir     bool    // the bleeder passes air

	Lines []LineOut        // one per discharge
	Lay   []layout.PartOut // one for each part of the setup's plan

	// what the eye sees
	IntakeNeedle    float64 // psi above zero, inHg below (negative)
	DischargeNeedle float64
	LineNeedle      []float64
	TachNeedle      float64 // rpm
	OilNeedle       float64
	CoolantNeedle   float64
	VoltsNeedle     float64
	PumpTempNeedle  float64
	TankLamp        [5]bool // E, ¼, ½, ¾, F: lit while the level is at or above it, as the sender sees it
	IntakeOpenLamp  bool    // intake valve full open
	AmberLamp       bool    // relief valve by-passing
	PumpHotLamp     bool
	EngineHotLamp   bool
	LowOilLamp      bool
	LowWaterLamp    bool // governor: cut back, or gone to idle, for lack of water

	// what the ear hears, 0…1
	BypassSound, GravelSound, AirSound float64
}

// LineOut is what is so in and beyond one discharge.
type LineOut struct {
	ValvePSI    float64   // down-stream of the discharge valve: what its gauge is tapped to
	GPM         float64   // through the discharge valve
	Fill        float64   // water in the hose / its volume
	LeakGPM     float64   // at the coupling, through a burst, to a line opened unasked
	NozzlePSI   []float64 // per branch
	NozzleGPM   []float64
	ReactionLbf []float64
}
