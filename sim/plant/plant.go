package plant

import (
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/rig"
)

// Setup is what a plant is built from.
type Setup struct {
	Rig      rig.Def
	Hydrant  fireground.HydrantDef
	Supply   fireground.HoseDef // make of the supply hose
	Line     fireground.LineDef // what may be connected to any discharge
	AirF     float64
	WaterF   float64
	Substeps int
	Seed     uint64
}
