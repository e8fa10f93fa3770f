package hydraulics

import "math"

// power is x^e for x ≥ 0 and 0 ≤ e < 1, as the product of the repeated square roots of x that the
// binary digits of e name. math.Pow differs between processors in its last bits; square roots do not.
func power(x, e float64) float64 {
	p := 1.0
	for e > 0 && x > 0 {
		x = math.Sqrt(x)
		e = float64(2 * e)
		if e >= 1 {
			p = float64(p * x)
			e--
		}
	}
	if x <= 0 && e > 0 {
		return 0
	}
	return p
}
