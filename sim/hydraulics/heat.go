package hydraulics

import "steadyneedle/sim/unit"

const (
	btuPerMinPerHP = 42.41 // Btu a minute in one horsepower [C]
	lbPerGal       = 8.34  // water
	ftLbfPerBtu    = 778.0
)

// DeadHeadRise is how fast water shut up in a pump warms, °F a minute, if all of the shaft's power goes
// into it and none into metal or air.
func DeadHeadRise(shaft unit.Horsepower, held unit.Gallons) unit.Fahrenheit {
	return unit.Fahrenheit(float64(shaft) * btuPerMinPerHP / float64(held*lbPerGal))
}

// FlowingRise is how much warmer water leaves a pump than it comes: H/(778 c) (1/η − 1), °F, with
// c = 1 Btu/(lb °F). Source: pump handbooks.
func FlowingRise(head unit.Feet, efficiency float64) unit.Fahrenheit {
	return unit.Fahrenheit(float64(head) / ftLbfPerBtu * (1/efficiency - 1))
}

// CoolingFlow is the flow that carries the shaft's power away with a given rise, gpm. At 15 °F it is
// the handbooks' BHP/2.95.
func CoolingFlow(shaft unit.Horsepower, rise unit.Fahrenheit) unit.GPM {
	return unit.GPM(float64(shaft) * btuPerMinPerHP / float64(rise*lbPerGal))
}
