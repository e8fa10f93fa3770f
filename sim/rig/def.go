package rig

// Def describes an apparatus in the trade's units. The `file` tag names a field in YAML files; `range`
// is what is accepted, ends included; `need:"yes"` means that the file must give it. Package scenarios
// reads them into a copy of Default, so that a file says only what differs.
//
// Numbers marked (assumption) in the comments were tuned for behavior and are not measured data.
type Def struct {
	Name  string `file:"name" need:"yes"`  // short, as in "engine-41"
	Title string `file:"title" need:"yes"` // as people say it

	Engine        EngineDef       `file:"engine"`
	Cooling       CoolingDef      `file:"cooling"`
	Drive         DriveDef        `file:"drive"`
	Pump          PumpDef         `file:"pump"`
	Primer        PrimerDef       `file:"primer"`
	Relief        *ReliefDef      `file:"relief"`   // nil: no discharge relief valve
	Governor      *GovernorDef    `file:"governor"` // nil: a hand's throttle; an apparatus has this or a relief valve; both only where a demonstration compares them
	Tank          TankDef         `file:"tank"`
	Intake        IntakeDef       `file:"intake"`
	IntakeRelief  *SpringDef      `file:"intake_relief"`  // nil: none
	ThermalRelief *ThermalDef     `file:"thermal_relief"` // nil: none
	TankFill      ValveDef        `file:"tank_fill"`
	Recirculation ValveDef        `file:"recirculation"`
	Discharges    []DischargeDef  `file:"discharges"`
	SupplyHose    []SupplyHoseDef `file:"supply_hose" size:"1..6"` // what there is to connect a hydrant with
	LineHose      []LineHoseDef   `file:"line_hose" size:"1..4"`   // loads of the hose bed, from which a line can be laid
	Instruments   InstrumentsDef  `file:"instruments"`
}

// EngineDef is the engine with its governor.
type EngineDef struct {
	IdleRPM      float64      `file:"idle_rpm" range:"400..1200"`
	GovernedRPM  float64      `file:"governed_rpm" range:"1500..4500"` // at full throttle without load
	Droop        float64      `file:"droop" range:"0..0.15"`           // speed lost from no load to full torque, share of the speed set: 0.06–0.08 mechanical, 0–0.01 electronic
	ResetS       float64      `file:"reset_s" range:"0..10"`           // an electronic governor takes its droop back in about this time; 0: a mechanical one does not
	FuelLagS     float64      `file:"fuel_lag_s" range:"0.01..0.08"`   // between governor and torque
	Torque       [][2]float64 `file:"torque_rpm_lbft"`                 // full-load curve: pairs of rpm and lb-ft, rising rpm
	InertiaLbFt2 float64      `file:"inertia_lb_ft2" range:"5..400"`   // engine, converter and pump shaft together (assumption)
	FrictionLbFt float64      `file:"friction_lbft" range:"5..400"`    // drag of the engine itself with no fuel, and of fan and alternator (assumption)
	FollowRPMS   float64      `file:"follow_rpm_s" range:"50..5000"`   // the governor follows a hand on the throttle no faster (assumption)
	StallRPM     float64      `file:"stall_rpm" range:"100..700"`      // below it the engine dies
	CrankS       float64      `file:"crank_s" range:"0.3..5"`          // from the switch to firing
	OilIdlePSI   float64      `file:"oil_idle_psi" range:"5..100"`     // hot, at idle
	OilPSI       float64      `file:"oil_psi" range:"20..120"`         // hot, at governed speed
	LowOilPSI    float64      `file:"low_oil_psi" range:"1..50"`       // lamp
	Volts        float64      `file:"volts" range:"10..30"`            // while charging
	BatteryVolts float64      `file:"battery_volts" range:"10..30"`    // engine off
}

// CoolingDef is the engine's coolant and the cooler that the pump feeds.
type CoolingDef struct {
	StartF      float64 `file:"start_f" range:"-20..250"`             // coolant when the drill begins: the engine has been driven
	ThermostatF float64 `file:"thermostat_f" range:"120..230"`        // begins to open
	ThermalBtuF float64 `file:"heat_btu_per_f" range:"20..2000"`      // engine and coolant, Btu per °F (assumption)
	HeatShare   float64 `file:"heat_share" range:"0..2"`              // heat into the coolant per power made (assumption)
	IdleHeatHP  float64 `file:"idle_heat_hp" range:"0..100"`          // heat into the coolant beside that (assumption)
	RadiatorHP  float64 `file:"radiator_hp_per_100f" range:"1..1000"` // given off per 100 °F over the air, thermostat open, at governed speed; less at idle (assumption)
	CoolerHP    float64 `file:"cooler_hp_per_100f" range:"0..1000"`   // the auxiliary cooler's part, per 100 °F over the pump's water (assumption)
	CoolerCv    float64 `file:"cooler_cv" range:"0..20"`              // flow, gpm per √psi, back to the pump's intake
	HotF        float64 `file:"hot_f" range:"180..260"`               // engine lamp
}

// DriveDef is transmission, pump shift and what they do to the shaft.
type DriveDef struct {
	ShiftS       float64 `file:"shift_s" range:"2..5"`      // road to pump, or back
	WindDownS    float64 `file:"wind_down_s" range:"1..15"` // from idle speed in neutral until the shaft stands
	ClashRPM     float64 `file:"clash_rpm" range:"10..300"` // shifting above it grinds
	Loss         float64 `file:"loss_share" range:"0..0.2"` // share of the pump's power lost in the drive
	EngageS      float64 `file:"engage_s" range:"0.1..3"`   // until the transmission has taken hold
	SlipLbFt     float64 `file:"slip_lbft" range:"0..300"`  // load of the converter at idle with its output held (assumption)
	FreeThrottle bool    `file:"free_throttle"`             // no interlock: the throttle works whether or not the pump is ready
}

// PumpDef is the centrifugal pump. Speeds are engine speeds.
type PumpDef struct {
	RatedGPM    float64 `file:"rated_gpm" range:"50..4000"`
	RatedRPM    float64 `file:"rated_rpm" range:"500..5000"`               // ω = 1
	ShutoffPSI  float64 `file:"shutoff_psi" range:"50..600"`               // A: net pressure at ω = 1, no flow (assumption)
	LossPSI     float64 `file:"loss_psi_per_gpm2" range:"0.0000001..0.01"` // B (assumption)
	ShaftHP     float64 `file:"shaft_hp" range:"1..500"`                   // at ω = 1, no flow; with ω³ (assumption)
	FlowHP      float64 `file:"flow_hp_per_gpm" range:"0.001..1"`          // at ω = 1; with ω² (assumption)
	CasingGal   float64 `file:"casing_gal" range:"1..100"`                 // water in casing and manifold
	CasingLb    float64 `file:"casing_lb" range:"10..2000"`                // iron that warms with it
	LossBtuHrF  float64 `file:"loss_btu_per_hr_f" range:"0..2000"`         // heat to the air (assumption)
	EyeGal      float64 `file:"eye_gal" range:"0.5..50"`                   // impeller eye that air gathers in (assumption)
	AirLow      float64 `file:"air_low" range:"0..0.5"`                    // share of air at which head begins to fall (assumption)
	AirHigh     float64 `file:"air_high" range:"0.01..1"`                  // share at which it is gone (assumption)
	NPSHBaseFt  float64 `file:"npsh_base_ft" range:"0..30"`                // NPSHr = base + speed·ω² + flow·(Q/rated)² (assumption)
	NPSHSpeedFt float64 `file:"npsh_speed_ft" range:"0..60"`
	NPSHFlowFt  float64 `file:"npsh_flow_ft" range:"0..60"`
	GoneRatio   float64 `file:"gone_ratio" range:"0.1..0.9"`   // NPSHa/NPSHr at which all head is gone (assumption)
	DrainCv     float64 `file:"drain_cv" range:"0.1..50"`      // gpm per √psi
	HotF        float64 `file:"hot_f" range:"90..200"`         // lamp
	DamageS     float64 `file:"damage_s" range:"10..100000"`   // seconds of full cavitation, or of running dry at ω = 1, that ruin it (assumption)
	LeakInGPM   float64 `file:"leak_in_gpm_air" range:"0..50"` // air drawn in through packing and valves at 22 inHg, gpm of free air (assumption)

	Transfer *TransferDef `file:"transfer"` // nil: a single-stage pump
}

// PrimerDef is the electric priming pump.
type PrimerDef struct {
	AirLS    float64 `file:"air_l_s" range:"1..60"`      // air moved with no vacuum, L/s
	MaxInHg  float64 `file:"max_inhg" range:"10..29"`    // vacuum it can reach
	WaterGPM float64 `file:"water_gpm" range:"0.5..100"` // water it passes when there is no air left
}

// ReliefDef is the discharge relief valve, which opens to the pump's intake.
type ReliefDef struct {
	LowestPSI  float64 `file:"lowest_psi" range:"20..150"`         // with the wheel wound fully out
	PSIPerTurn float64 `file:"psi_per_turn" range:"5..100"`        // clockwise
	Turns      float64 `file:"turns" range:"2..40"`                // full travel of the wheel
	StandbyPSI float64 `file:"standby_psi" range:"50..300"`        // where it is left when not in use
	Cv         float64 `file:"cv" range:"5..1000"`                 // gpm per √psi, full open (assumption)
	PilotLagS  float64 `file:"pilot_lag_s" range:"0.005..1"`       // (assumption)
	LiftLagS   float64 `file:"lift_lag_s" range:"0.01..3"`         // (assumption); see Relief for what a slow valve does on a hydrant
	SpanPSI    float64 `file:"span_psi" range:"5..80"`             // rise above the setting for full lift (assumption)
	Overlap    float64 `file:"overlap_lift" range:"0..0.1"`        // first part of the lift, which passes no water yet (assumption)
	AmberOn    float64 `file:"amber_on_lift" range:"0.001..0.3"`   // lamp lights (assumption)
	AmberOff   float64 `file:"amber_off_lift" range:"0.0005..0.3"` // and goes out (assumption)
}

// TankDef is the booster tank.
type TankDef struct {
	Gallons       float64  `file:"gallons" range:"50..5000"`
	StartFraction float64  `file:"start_fraction" range:"0..1"`
	BottomFt      float64  `file:"bottom_ft" range:"-3..10"` // of the tank above the pump's center
	DepthFt       float64  `file:"depth_ft" range:"0.5..10"`
	ToPump        ValveDef `file:"to_pump"`                        // with its check valve
	VortexShare   float64  `file:"vortex_share" range:"0..0.3"`    // level below which the outlet draws air, at rated flow (assumption)
	LampFill      float64  `file:"lamp_fill_share" range:"0..0.3"` // while filling, the ¾ lamp stands alone for this share of the tank too long: F comes late (assumption)
	OverflowGPM   float64  `file:"overflow_gpm" range:"10..5000"`  // what the overflow pipe can carry
}

// ValveDef is a valve with its passage. How its area follows its travel is told by a law of geometry, or
// by a curve where there is none.
type ValveDef struct {
	SizeIn  float64 `file:"size_in" range:"0.25..8"`
	Cv      float64 `file:"cv" range:"0.1..5000"`      // gpm per √psi, full open
	Law     string  `file:"law"`                       // ball, gate or butterfly; empty: the curve
	Curve   float64 `file:"curve" range:"1..30"`       // opening = x/(curve − (curve−1)x) of the travel x: 1 even, higher: most of the change near the open end
	Lock    float64 `file:"shut_below" range:"0..0.2"` // travel that still seals
	TravelS float64 `file:"travel_s" range:"0.1..60"`  // full travel by the fastest hand; unless given 3 from 3 in on
}

// IntakeDef is the pumped intake at the panel.
type IntakeDef struct {
	Label      string   `file:"label"`
	Color      string   `file:"color"`
	Valve      ValveDef `file:"valve"`
	CouplingIn float64  `file:"coupling_in" range:"1.5..6"`  // hose coupling that fits it without an adapter; the hydrants of the town carry the same
	BleederCv  float64  `file:"bleeder_cv" range:"0.05..20"` // gpm of water per √psi
	OpenAt     float64  `file:"open_lamp_at" range:"0.5..1"` // travel at which the full-open lamp lights
}

// DischargeDef is one discharge of the panel with its valve and gauge.
type DischargeDef struct {
	Label   string   `file:"label" need:"yes"`
	Color   string   `file:"color" need:"yes"` // by the open standard's table: yellow, white, blue …
	Valve   ValveDef `file:"valve"`
	DrainCv float64  `file:"drain_cv" range:"0.05..20"` // gpm per √psi
}

// InstrumentsDef are the panel's gauges.
type InstrumentsDef struct {
	Intake    GaugeDef `file:"intake"` // compound: psi above zero, inHg below
	Discharge GaugeDef `file:"discharge"`
	Line      GaugeDef `file:"line"`      // one for each discharge
	Tach      GaugeDef `file:"tach"`      // rpm
	Oil       GaugeDef `file:"oil"`       // psi
	Coolant   GaugeDef `file:"coolant"`   // °F
	Volts     GaugeDef `file:"volts"`     // V
	PumpTemp  GaugeDef `file:"pump_temp"` // °F
}

// True is the same gauges, none of which reads anything off.
func (i InstrumentsDef) True() InstrumentsDef {
	for _, g := range [...]*GaugeDef{&i.Intake, &i.Discharge, &i.Line, &i.Tach, &i.Oil, &i.Coolant, &i.Volts, &i.PumpTemp} {
		g.Bias = 0
	}
	return i
}

// GaugeDef is one needle and its dial, in the dial's unit.
type GaugeDef struct {
	Low      float64 `file:"low" range:"-30..200"`
	High     float64 `file:"high" range:"1..5000"`
	Division float64 `file:"division" range:"0.1..500"`    // smallest mark
	Grade    string  `file:"grade"`                        // as in ASME B40.100: 1A, B …
	Bias     float64 `file:"bias" range:"0..100"`          // the most that it reads off; drawn from the seed
	RadS     float64 `file:"needle_rad_s" range:"0.5..30"` // speed of the needle (assumption)
	Damping  float64 `file:"damping" range:"0.2..2"`       // 1 critical (assumption)
	Pulse    float64 `file:"pulse" range:"0..50"`          // swing from the pump's pulsation at rated speed (assumption)
}
