package water

import "math"

// Coefficients of IAPWS-IF97, region 4 (saturation line).
const (
	n1, n2, n3, n4, n5 = 0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5, -0.32325550322333e7
	n6, n7, n8         = 0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6
	n9, n10            = -0.23855557567849, 0.65017534844798e3
)

// VaporPressure is the pressure at which water boils, Pa absolute, at kelvin between 273.15 and 647
// (clamped). Source: IAPWS-IF97, region 4, basic equation.
func VaporPressure(kelvin float64) float64 {
	t := min(max(kelvin, 273.15), 647)
	th := t + n9/(t-n10)
	th2 := float64(th * th)
	a := th2 + float64(n1*th) + n2
	b := float64(n3*th2) + float64(n4*th) + n5
	c := float64(n6*th2) + float64(n7*th) + n8
	x := float64(2*c) / (math.Sqrt(float64(b*b)-float64(4*float64(a*c))) - b)
	x2 := float64(x * x)
	return float64(1e6 * float64(x2*x2))
}

// BoilingPoint is the temperature, K, at which water boils under pa (absolute, 611 Pa to 22 MPa,
// clamped). Source: IAPWS-IF97, region 4, backward equation.
func BoilingPoint(pa float64) float64 {
	p := min(max(pa, 611.3), 22e6) / 1e6
	b2 := math.Sqrt(p)
	b := math.Sqrt(b2)
	e := b2 + float64(n3*b) + n6
	f := float64(n1*b2) + float64(n4*b) + n7
	g := float64(n2*b2) + float64(n5*b) + n8
	d := float64(2*g) / (-f - math.Sqrt(float64(f*f)-float64(4*float64(e*g))))
	s := n10 + d
	return (s - math.Sqrt(float64(s*s)-float64(4*(n9+float64(n10*d))))) / 2
}

// Density is kg/m³ at atmospheric pressure, kelvin between 273.15 and 423 (clamped).
// Source: Kell 1975, from memory; it agrees with IF97 within 0.02 % up to 100 °C.
func Density(kelvin float64) float64 {
	t := min(max(kelvin-273.15, 0), 150)
	s := float64(t * -280.54253e-12)
	s = float64(t * (105.56302e-9 + s))
	s = float64(t * (-46.170461e-6 + s))
	s = float64(t * (-7.9870401e-3 + s))
	s = float64(t * (16.945176 + s))
	return (999.83952 + s) / (1 + float64(16.879850e-3*t))
}
