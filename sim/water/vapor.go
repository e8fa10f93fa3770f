package water

import (
	"math"

	"steadyneedle/sim/bound"
)

// Coefficients of the saturation equation, IAPWS-IF97 region 4 (equations 29 to 31, table 34).
const (
	n1  = 0.11670521452767e4
	n2  = -0.72421316703206e6
	n3  = -0.17073846940092e2
	n4  = 0.12020824702470e5
	n5  = -0.32325550322333e7
	n6  = 0.14915108613530e2
	n7  = -0.48232657361591e4
	n8  = 0.40511340542057e6
	n9  = -0.23855557567849
	n10 = 0.65017534844798e3
)

// VaporPressure is the pressure in Pa (absolute) at which water of k kelvin boils.
// Source: IAPWS-IF97, region 4, whose equation needs nothing beyond a square root.
func VaporPressure(k float64) float64 {
	k = bound.Within(k, MinK, MaxK)
	t := k + n9/(k-n10)
	a := float64((t+n1)*t) + n2
	b := float64((float64(n3*t)+n4)*t) + n5
	c := float64((float64(n6*t)+n7)*t) + n8
	r := 2 * c / (math.Sqrt(float64(b*b)-float64(4*a*c)) - b)
	s := float64(r * r)
	return float64(s * s * 1e6) // the equation gives MPa
}
