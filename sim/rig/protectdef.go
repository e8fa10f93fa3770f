package rig

// GovernorDef is an electronic pressure governor: it works the engine so that the pump holds a pressure,
// or the engine a speed. It takes the place of relief valve and hand throttle.
type GovernorDef struct {
	PresetPSI    float64 `file:"preset_psi" range:"30..400"`       // what the preset button asks for in pressure mode
	PresetRPM    float64 `file:"preset_rpm" range:"600..3500"`     // and in speed mode
	LowestPSI    float64 `file:"lowest_psi" range:"20..150"`       // that can be set
	HighestPSI   float64 `file:"highest_psi" range:"100..600"`     // that can be set
	StepPSI      float64 `file:"step_psi" range:"0.5..20"`         // one press of raise or lower
	StepRPM      float64 `file:"step_rpm" range:"1..200"`          //
	HoldPSIS     float64 `file:"hold_psi_s" range:"1..60"`         // while raise or lower is held
	HoldRPMS     float64 `file:"hold_rpm_s" range:"10..600"`       //
	RampPSIS     float64 `file:"ramp_psi_s" range:"2..100"`        // how fast it goes to a preset (assumption)
	RampRPMS     float64 `file:"ramp_rpm_s" range:"20..1000"`      // (assumption)
	RiseRPMS     float64 `file:"rise_rpm_s" range:"50..1500"`      // it speeds the engine up no faster: what it over-runs by when lost water returns (assumption)
	GainRPMPSI   float64 `file:"gain_rpm_per_psi" range:"0.1..10"` // (assumption)
	ResetS       float64 `file:"reset_s" range:"0.1..10"`          // time in which it takes back what its gain leaves (assumption)
	SenseS       float64 `file:"sense_s" range:"0.01..1"`          // lag of its pressure senders (assumption)
	LowIntakePSI float64 `file:"low_intake_psi" range:"-10..40"`   // intake below it, with the pressure not held: water is short
	ShortPSI     float64 `file:"short_psi" range:"2..60"`          // below the setting that counts as not held (assumption)
	LowAfterS    float64 `file:"low_after_s" range:"0.2..10"`      // it cuts back when water has been short so long (assumption)
	CutRPM       float64 `file:"cut_rpm" range:"500..2500"`        // down to this speed (assumption)
	CutRPMS      float64 `file:"cut_rpm_s" range:"50..2000"`       // this fast (assumption)
	BackS        float64 `file:"back_s" range:"0.2..20"`           // the intake must stand again so long before it resumes (assumption)
	LostPSI      float64 `file:"lost_psi" range:"5..100"`          // discharge below it: no water at all (assumption)
	LostS        float64 `file:"lost_s" range:"0.5..20"`           // it goes to idle after so long, until a hand acts (assumption)
}

// DefaultGovernor is the one that a file with a governor begins from.
func DefaultGovernor() GovernorDef {
	return GovernorDef{
		PresetPSI: 125, PresetRPM: 1100, LowestPSI: 30, HighestPSI: 300, StepPSI: 2, StepRPM: 10, HoldPSIS: 8, HoldRPMS: 100,
		RampPSIS: 20, RampRPMS: 250, RiseRPMS: 300, GainRPMPSI: 2.5, ResetS: 0.5, SenseS: 0.08,
		LowIntakePSI: 5, ShortPSI: 10, LowAfterS: 1.5, CutRPM: 1000, CutRPMS: 400, BackS: 2, LostPSI: 25, LostS: 3,
	}
}

// SpringDef is a spring-loaded relief valve on the supply side of the intake, which opens to the
// ground. It takes the surge of a supply column that is stopped.
type SpringDef struct {
	SetPSI      float64 `file:"set_psi" range:"20..250"`
	SpanPSI     float64 `file:"span_psi" range:"5..120"`      // rise above the setting for full lift (assumption)
	BlowdownPSI float64 `file:"blowdown_psi" range:"0.5..40"` // it reseats so far below the setting (assumption)
	Cv          float64 `file:"cv" range:"5..1000"`           // gpm per √psi, full open (assumption)
	LagS        float64 `file:"lag_s" range:"0.02..1"`        // (assumption)
}

// DefaultIntakeRelief is the one that a file with an intake relief valve begins from. 125 psi is common
// practice.
func DefaultIntakeRelief() SpringDef {
	return SpringDef{SetPSI: 125, SpanPSI: 40, BlowdownPSI: 10, Cv: 200, LagS: 0.12}
}

// ThermalDef is a valve that lets hot water out of the casing to the ground.
type ThermalDef struct {
	OpenF float64 `file:"open_f" range:"90..200"` // begins to open
	SpanF float64 `file:"span_f" range:"2..40"`   // until full open (assumption)
	Cv    float64 `file:"cv" range:"0.05..20"`    // gpm per √psi, full open (assumption)
	LagS  float64 `file:"lag_s" range:"0.1..60"`  // of its element (assumption)
}

// DefaultThermalRelief is the one that a file with a thermal relief valve begins from.
func DefaultThermalRelief() ThermalDef { return ThermalDef{OpenF: 120, SpanF: 10, Cv: 1, LagS: 5} }

// TransferDef makes a pump two-stage: its transfer valve sets two impellers side by side (parallel, for
// volume) or one after the other (series, for pressure). The pump's constants are those in parallel.
type TransferDef struct {
	TravelS     float64 `file:"travel_s" range:"0.5..20"`  // from one to the other (assumption)
	SafePSI     float64 `file:"safe_psi" range:"10..250"`  // net pressure above which changing over jolts pump and lines (common practice: 50)
	JoltWear    float64 `file:"jolt_wear" range:"0..1"`    // damage by one jolt at twice SafePSI (assumption)
	ClapperBack float64 `file:"clapper_back" range:"0..1"` // share of the second stage's rise lost through a clapper valve that stays open (assumption)
}

// DefaultTransfer is the one that a file with a transfer valve begins from.
func DefaultTransfer() TransferDef {
	return TransferDef{TravelS: 4, SafePSI: 50, JoltWear: 0.02, ClapperBack: 0.9}
}
