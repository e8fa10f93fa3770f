package cutaway

// State is what stands and moves inside the pump at one moment. A number that a class must not see yet is NaN:
// its place is gray, its figure a question mark.
type State struct {
	At float64 // s of world time; what turns and runs is drawn from it

	IntakePSI, DischargePSI float64 // at the impeller's inlet side and in the manifold, gauge
	ShaftRPM                float64 // as engine speed
	HeadFactor, AirFactor   float64 // what cavitation and air leave of the head, 0 to 1
	CasingWater             float64 // share of the casing that holds water
	NPSHa, NPSHr            float64 // ft
	PumpF                   float64 // °F, water in the casing

	// Of a two-stage pump: how far its transfer valve has gone from volume (0) to pressure (1), how far the second
	// impeller then stands behind the first (less, if a clapper valve stays open), and whether one does.
	TransferAt, Series float64
	ClapperOpen        bool

	IntakeGPM, TankToPumpGPM, DischargeGPM float64
	ReliefGPM, RecircGPM, TankFillGPM      float64

	ReliefLift   float64 // 0 to 1
	ReliefSetPSI float64
	ReliefHidden bool // a class must not see yet whether it opens
	Governor     bool // the apparatus has no relief valve

	TankGal, TankShare float64 // contents, and as a share of the tank
	SupplyFill         float64 // share of the supply hose that holds water; a soft one falls flat
	Draft              bool    // hard suction from open water
}

// stage is the pressure at the eye and at the rim of an impeller of a pump with one or two. Two share the rise
// equally: each of both the whole of it side by side, half of it one behind the other.
func (s *State) stage(i int, two bool) (eye, rim float64) {
	if !two {
		return s.IntakePSI, s.DischargePSI
	}
	each := (s.DischargePSI - s.IntakePSI) / (1 + s.Series)
	if i == 0 {
		return s.IntakePSI, s.IntakePSI + each
	}
	return s.DischargePSI - each, s.DischargePSI
}

// pumpGPM is all that the pump gives.
func (s *State) pumpGPM() float64 {
	return s.DischargeGPM + s.ReliefGPM + s.RecircGPM + s.TankFillGPM
}

// vapor is how much of the eye is filled with vapor, 0 to 1.
func (s *State) vapor() float64 { return clamp(1 - s.HeadFactor) }

// air is how much of it is air.
func (s *State) air() float64 {
	return clamp(max(1-s.AirFactor, 1-s.CasingWater))
}

func clamp(x float64) float64 { return max(0, min(1, x)) }
