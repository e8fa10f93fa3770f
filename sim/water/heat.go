package water

// HeatCapacity is the heat in J that warms a kilogram of water at k kelvin by one kelvin.
// Source: a polynomial fitted for this project to the saturated liquid of IAPWS-IF97 region 1
// from 0 to 150 °C; it stays within 0.02 % of it.
func HeatCapacity(k float64) float64 {
	x := celsius(k) / 100
	p := float64(x*143.6634) - 740.8822
	p = float64(p*x) + 1520.553
	p = float64(p*x) - 1571.313
	p = float64(p*x) + 958.0023
	p = float64(p*x) - 312.8497
	return float64(p*x) + 4219.341
}
