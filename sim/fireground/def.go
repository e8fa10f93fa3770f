package fireground

// The `file` tag names a field in YAML files; `range` is what is accepted, ends included;
// `need:"yes"` means the file must give it. Package scenarios reads them.

// HydrantDef is a hydrant on its main.
type HydrantDef struct {
	StaticPSI   float64 `file:"static_psi" range:"5..200" need:"yes"`
	ResidualPSI float64 `file:"residual_psi" range:"0..200" need:"yes"` // while FlowGPM runs
	FlowGPM     float64 `file:"flow_gpm" range:"50..10000" need:"yes"`
	Exponent    float64 `file:"exponent" range:"1.5..2"` // 1.852 (Hazen–Williams) unless given
	ElevationFt float64 `file:"elevation_ft" range:"-200..200"`
}

// HoseDef is one size and make of hose. Loss is C (Q/100)² L/100, psi with gpm and ft.
type HoseDef struct {
	SizeIn   float64 `file:"size_in" range:"0.75..6" need:"yes"`
	LossC    float64 `file:"loss_c" range:"0.01..2000" need:"yes"`
	LengthFt float64 `file:"length_ft" range:"1..5000"`
	WaveFtS  float64 `file:"wave_ft_s" range:"100..4000"` // 600 unless given (assumption, see DEVELOPERS.md)
	LimitPSI float64 `file:"limit_psi" range:"50..1000"`  // highest working pressure
	Hard     bool    `file:"hard_suction"`                // does not collapse
}

// NozzleDef is a smooth-bore tip (TipIn set) or a fog nozzle of fixed orifice (RatedGPM at RatedPSI).
type NozzleDef struct {
	TipIn    float64 `file:"tip_in" range:"0.1..4"`
	RatedGPM float64 `file:"rated_gpm" range:"5..3000"`
	RatedPSI float64 `file:"rated_psi" range:"20..200" need:"yes"` // the pressure it is meant to be used at
	People   float64 `file:"people" range:"1..6"`                  // who hold it; 2 unless given
	RiseFt   float64 `file:"rise_ft" range:"-100..500"`            // above the pump
}

// BranchDef is an attack hose with its nozzle beyond a wye.
type BranchDef struct {
	Hose   HoseDef   `file:"hose" need:"yes"`
	Nozzle NozzleDef `file:"nozzle" need:"yes"`
}

// LineDef is what hangs on a discharge: a trunk that ends in one nozzle, or in a wye with branches.
type LineDef struct {
	Trunk     HoseDef     `file:"trunk" need:"yes"`
	SectionFt float64     `file:"section_ft" range:"10..200"` // 50 unless given
	Nozzle    *NozzleDef  `file:"nozzle"`
	Branches  []BranchDef `file:"branches"` // of a wye; none where Nozzle is set
}

// None reports whether there is no line.
func (l *LineDef) None() bool {
	return l.Trunk == HoseDef{} && l.SectionFt == 0 && l.Nozzle == nil && len(l.Branches) == 0
}
