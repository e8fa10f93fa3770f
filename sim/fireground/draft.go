package fireground

// DraftDef is open water below the pump, and the hard suction hose to it.
type DraftDef struct {
	LiftFt      float64 `file:"lift_ft" range:"0..30" need:"yes"` // from the water to the pump's center
	SuctionFt   float64 `file:"suction_ft" range:"5..100" need:"yes"`
	SuctionIn   float64 `file:"suction_in" range:"2..8" need:"yes"`
	LossC       float64 `file:"loss_c" range:"0.01..100"`          // 0.05 unless given (6 in; from memory)
	ElevationFt float64 `file:"elevation_ft" range:"-1000..12000"` // above sea level
}
