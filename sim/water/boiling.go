package water

import "math"

// BoilingPoint is the temperature in K at which water boils under pa (absolute, Pa; held between
// 611.3 Pa and 22 MPa). Source: IAPWS-IF97, region 4, backward equation.
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
