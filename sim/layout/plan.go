package layout

import (
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/state"
)

// The `file` tag names a field in YAML files; `range` is what is accepted, ends included;
// `need:"yes"` means the file must give it. Package scenarios reads them.

// Plan is what is laid out, in the order in which water runs.
type Plan []Part

// Part is one thing of a plan: an ID, where its water comes from, and exactly one of the kinds.
type Part struct {
	ID      string   `file:"id" need:"yes"`
	From    []string `file:"from" size:"1..3"`            // discharge1 … , hydrant, or parts above; none for a source
	RiseFt  float64  `file:"rise_ft" range:"-500..2000"`  // far end above near end (hose, monitor): 0.434 psi a foot
	RisePSI float64  `file:"rise_psi" range:"-200..1000"` // the same, given as the pressure it costs

	Hydrant   *fireground.HydrantDef `file:"hydrant"` // a source: a hydrant of its own
	Pond      *PondDef               `file:"pond"`    // a source: open water
	Hose      *fireground.HoseDef    `file:"hose"`
	Riser     *RiserDef              `file:"riser"`
	Valve     *ValveDef              `file:"valve"`
	Wye       *WyeDef                `file:"wye"`
	Siamese   *SiameseDef            `file:"siamese"`
	Appliance *LossDef               `file:"appliance"`
	Monitor   *LossDef               `file:"monitor"` // portable monitor, deck gun, ladder pipe: up to three inlets
	Pumper    *PumperDef             `file:"pumper"`
	Nozzle    *fireground.NozzleDef  `file:"nozzle"` // ends here: the air
	Outlet    *OutletDef             `file:"outlet"` // ends here: an open outlet to the air
	Intake    *IntakeDef             `file:"intake"` // ends here: the apparatus's own pump
}

// LossDef is what an appliance takes: PSI at GPM, and by the square of the flow elsewhere. None unless
// given. In the field 0 is reckoned below 350 gpm and 10 psi from there, 25 psi for master streams
// (common practice, no published source).
type LossDef struct {
	PSI float64 `file:"loss_psi" range:"0..100"`
	GPM float64 `file:"at_gpm" range:"5..5000"`
}

// WyeDef divides one line into two to four; gated, each outlet has a quarter-turn valve.
type WyeDef struct {
	Loss  LossDef `file:",inline"`
	Gated bool    `file:"gated"`
}

// SiameseDef joins two or three lines into one; clappers shut an inlet that nothing comes from.
type SiameseDef struct {
	Loss LossDef `file:",inline"`
	Open bool    `file:"without_clappers"`
}

// ValveDef is a valve anywhere in a line. The law is ball, gate or butterfly; ball unless given.
type ValveDef struct {
	Law string  `file:"law"`
	Cv  float64 `file:"cv" range:"5..10000" need:"yes"` // gpm at 1 psi, full open
}

// RiserDef is the rigid pipe of a standpipe, up a number of floors. A floor counts by its true height
// or by what it costs in the field, 5 psi (common practice, no published source).
type RiserDef struct {
	SizeIn   float64 `file:"size_in" range:"2..12" need:"yes"`
	LossC    float64 `file:"loss_c" range:"0.0001..10" need:"yes"` // as of hose
	Floors   float64 `file:"floors" range:"1..120" need:"yes"`     // to climb: 9 to the tenth floor
	FloorFt  float64 `file:"floor_ft" range:"6..40"`
	FloorPSI float64 `file:"floor_psi" range:"2..20"`
	Wet      bool    `file:"wet"` // stands full of water
}

// PondDef is open water below the suction hose's far end.
type PondDef struct {
	LiftFt float64 `file:"lift_ft" range:"0..30"` // from the water to the pump that drafts it
}

// OutletDef is an outlet that stands open: 29.84 c d² √p gpm (NFPA 291, from memory).
type OutletDef struct {
	SizeIn      float64 `file:"size_in" range:"0.5..8" need:"yes"`
	Coefficient float64 `file:"coefficient" range:"0.5..1"` // 0.9 rounded, 0.8 square, 0.7 projecting; 0.9 unless given
}

// PumperDef is another pumper, kept by its own people. It holds a speed, or a discharge pressure by its
// governor.
type PumperDef struct {
	RatedGPM float64 `file:"rated_gpm" range:"250..3000"` // 1500 unless given
	RPM      float64 `file:"rpm" range:"500..2500"`
	PSI      float64 `file:"discharge_psi" range:"30..400"`
}

// IntakeDef is a further intake of the apparatus's own pump, with its valve.
type IntakeDef struct {
	Cv float64 `file:"cv" range:"20..10000" need:"yes"` // gpm at 1 psi, full open
}

// PartIn is what people, and mishap, do to a part. What a part does not have is not looked at.
type PartIn struct {
	Open  float64 // nozzle, valve, outlet, intake, hydrant: 0 shut … 1 open
	Gate  float64 // the gate of a gated wye that the part hangs on, 0 shut … 1 open
	Kink  float64 // of a hose, 0 none … 1 shut off
	Burst float64 // of a hose: diameter of the hole, in
	Leak  float64 // at a hose's coupling, or to a line that hangs on its end unasked, gpm at 100 psi
	RPM   float64 // that a pumper holds; 0: it holds PSI
	PSI   float64 // that a pumper's governor holds
}

// PartOut is what is so in a part.
type PartOut struct {
	InletPSI float64 // where its water comes in (the lowest of several)
	PSI      float64 // where it leaves: nozzle pressure of a nozzle, pitot of an outlet, discharge of a pumper
	GPM      float64 // of water through it
	LossGPM  float64 // of water lost through burst and leak, and to a line opened unasked
	Fill     float64 // water over content of a hose, 0…1
	Reaction float64 // lbf on those who hold a nozzle
	RPM      float64 // of a pumper
}

// Walk visits all of it.
func (o *PartOut) Walk(w *state.Walker) {
	for _, x := range [...]*float64{&o.InletPSI, &o.PSI, &o.GPM, &o.LossGPM, &o.Fill, &o.Reaction, &o.RPM} {
		w.Float(x)
	}
}

// psiPerFt is what a foot of water weighs.
const psiPerFt = 998.16 * 9.80665 * 0.3048 / 6894.757293168

// rise is the height of the far end over the near one, ft.
func (p *Part) rise() float64 {
	if p.RisePSI != 0 {
		return p.RisePSI / psiPerFt
	}
	return p.RiseFt
}

// In gives the positions in which everything is shut, tight and sound.
func (p Plan) In() []PartIn {
	in := make([]PartIn, len(p))
	for i := range p {
		if d := p[i].Pumper; d != nil {
			in[i].RPM, in[i].PSI = d.RPM, d.PSI
		}
	}
	return in
}

// Index finds a part by its id; -1 if there is none.
func (p Plan) Index(id string) int {
	for i := range p {
		if p[i].ID == id {
			return i
		}
	}
	return -1
}
