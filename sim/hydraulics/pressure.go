package hydraulics

import "steadyneedle/sim/unit"

// Allowances for what stands in a line. Source: common practice.
const (
	MasterStreamLoss unit.PSI = 25 // monitor, deck gun, ladder pipe with its siamese
	StandpipeLoss    unit.PSI = 25
	PerFloor         unit.PSI = 5
	IntakeFloor      unit.PSI = 20 // to be kept at the intake on a hydrant; NFPA 291 recommends 20 psi
)

// ApplianceLoss is the allowance for a wye, siamese or the like: nothing below 350 gpm through it,
// 10 psi from there. Source: common practice.
func ApplianceLoss(q unit.GPM) unit.PSI {
	if q < 350 {
		return 0
	}
	return 10
}

// ElevationExact is the weight of a column of water: 0.434 psi a foot.
func ElevationExact(rise unit.Feet) unit.PSI { return unit.PSI(0.434 * float64(rise)) }

// Elevation is what is added for a rise in the field, or taken off for a fall: 0.5 psi a foot.
// Source: common practice, NWCG.
func Elevation(rise unit.Feet) unit.PSI { return unit.PSI(0.5 * float64(rise)) }

// Floors is what is added for floors above the pump: 5 psi each. Source: common practice.
func Floors(n int) unit.PSI { return unit.PSI(float64(n) * float64(PerFloor)) }

// PumpDischarge is the pressure to be pumped: PDP = NP + FL + AL ± EL. Source: common practice.
func PumpDischarge(nozzle, friction, appliances, elevation unit.PSI) unit.PSI {
	return nozzle + friction + appliances + elevation
}

// Net is what the pump itself adds: discharge less intake. Source: common practice.
func Net(discharge, intake unit.PSI) unit.PSI { return discharge - intake }
