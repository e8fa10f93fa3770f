package water

import (
	"math"

	"steadyneedle/sim/bound"
)

// BoilingPoint is the temperature in kelvin at which water boils under pa (absolute). A pressure outside
// 612 Pa to 22 MPa is taken as the nearer end, so that the answer may lie above MaxK.
// Source: IAPWS-IF97, region 4, backward equation (equation 31).
func BoilingPoint(pa float64) float64 {
	b2 := math.Sqrt(bound.Within(pa, 612, 22e6) / 1e6)
	b := math.Sqrt(b2)
	e := b2 + float64(n3*b) + n6
	f := float64(n1*b2) + float64(n4*b) + n7
	g := float64(n2*b2) + float64(n5*b) + n8
	d := 2 * g / (-f - math.Sqrt(float64(f*f)-float64(4*e*g)))
	s := n10 + d
	return float64((s - math.Sqrt(float64(s*s)-float64(4*(n9+float64(n10*d))))) / 2)
}
