package hydraulics

import "steadyneedle/sim/unit"

// WaterPower is what the water carries away: gpm·psi/1714, hp. Source: common practice.
func WaterPower(q unit.GPM, net unit.PSI) unit.Horsepower {
	return unit.Horsepower(float64(q) * float64(net) / 1714)
}

// BrakePower is what the shaft must give for it at an efficiency of 0 to 1.
func BrakePower(water unit.Horsepower, efficiency float64) unit.Horsepower {
	return unit.Horsepower(float64(water) / efficiency)
}

// NPSHAvailable is the net positive suction head at the pump's eye, ft: atmosphere plus static head
// (negative for a lift), less vapor pressure and losses. Source: Civil Engineering Handbook.
func NPSHAvailable(atmosphere, static, vapor, losses unit.Feet) unit.Feet {
	return atmosphere + static - vapor - losses
}

// Atmosphere is the pressure of the standard atmosphere at an altitude up to 36 000 ft, psi absolute:
// 14.696 (1 − 6.8756·10⁻⁶ h)^5.2559. Source: ISO 2533, from memory.
func Atmosphere(altitude unit.Feet) unit.PSI {
	x := 1 - float64(6.8756e-6*float64(altitude))
	return unit.PSI(14.696 * x * x * x * x * x * power(x, 0.2559))
}

// Lift is the highest column of cold water that a pressure holds up, ft. Source: 0.434 psi a foot.
func Lift(p unit.PSI) unit.Feet { return unit.Feet(float64(p) / 0.434) }
