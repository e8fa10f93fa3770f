package water

// Density is the mass of a cubic meter of water of k kelvin at one atmosphere, kg/m³.
// Source: G. S. Kell, J. Chem. Eng. Data 20 (1975) 97, a rational formula for 0 to 150 °C; its
// coefficients are written from memory and held against IAPWS-IF97 by the test. Water's own
// compressibility (0.3 % at 1000 psi) is left out.
func Density(k float64) float64 {
	t := celsius(k)
	p := float64(t*-280.54253e-12) + 105.56302e-9
	p = float64(p*t) - 46.170461e-6
	p = float64(p*t) - 7.9870401e-3
	p = float64(p*t) + 16.945176
	p = float64(p*t) + 999.83952
	return p / (1 + float64(t*16.879850e-3))
}
