package world

import (
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/layout"
	"steadyneedle/sim/plant"
	"steadyneedle/sim/rig"
)

// Setup is all that a world is built from.
type Setup struct {
	Rig      rig.Def
	Ground   Ground
	Seed     uint64
	Substeps int                // steps of the plant in a tick; 4 unless set
	Start    map[string]float64 // controls that begin elsewhere than in their Control.Start
	Without  plant.Effects      // physical effects left out; for proving tests only, never for a drill
}

// Ground is the street: where things lie, and what hangs on them.
type Ground struct {
	Hydrant      fireground.HydrantDef `file:"hydrant"`
	Draft        *fireground.DraftDef  `file:"draft"`                                          // open water, in place of hydrant and supply hose: its suction hose is coupled and in the water
	Arrived      bool                  `file:"arrived"`                                        // begins with the apparatus at its stop, the line laid, and the candidate at the panel
	Supply       fireground.HoseDef    `file:"supply" need:"yes"`                              // supply hose that the drill plans with, and its make; which piece is taken is chosen on the ground
	Line         fireground.LineDef    `file:"line"`                                           // none where only Lay is used; Trunk.LengthFt is ignored: it is what the street makes it
	Lay          layout.Plan           `file:"lay" size:"1..60"`                               // what hangs on discharges, hydrant and intake from the first moment
	FireToPlugFt float64               `file:"fire_to_hydrant_ft" range:"50..3000" need:"yes"` // along the curb, from the directed stop at the fire
	PlugSetback  float64               `file:"hydrant_setback_ft" range:"2..40" need:"yes"`    // from the panel's side of the apparatus to the hydrant outlet
	Discharge    int                   `file:"discharge" range:"1..24" need:"yes"`             // the right discharge for the line
	FireAcross   bool                  `file:"fire_across_street"`                             // fire and hydrant on opposite sides: the line must cross
	AirF         float64               `file:"air_f" range:"-20..130"`
	WaterF       float64               `file:"water_f" range:"33..120"`
	People       []Person              `file:"people" size:"0..4"` // in the street, beside the candidate and the crew at the nozzle
	Night        bool                  `file:"night"`
}
