package hydraulics

import "steadyneedle/sim/unit"

// FlowAtResidual is what a hydrant gives at another residual pressure than the one measured:
// Q_F (h_R/h_F)^0.54, with h the drop below static. It is 0 at or above static, and where the test
// itself shows no drop. Source: NFPA 291.
func FlowAtResidual(flowed unit.GPM, static, residual, at unit.PSI) unit.GPM {
	if at >= static || residual >= static {
		return 0
	}
	return unit.GPM(float64(flowed) * power(float64((static-at)/(static-residual)), 0.54))
}

// ResidualAtFlow is the same law read the other way: the residual pressure while q flows. It may be
// far below zero, where no hydrant follows it. Source: NFPA 291.
func ResidualAtFlow(flowed unit.GPM, static, residual unit.PSI, q unit.GPM) unit.PSI {
	x := max(float64(q/flowed), 0)
	const rest = 1/0.54 - 1
	return static - unit.PSI(float64(static-residual)*x*power(x, rest))
}

// HydrantColor is the color of a hydrant's class by its flow at 20 psi. Source: NFPA 291, from memory.
func HydrantColor(at20 unit.GPM) string {
	switch {
	case at20 >= 1500:
		return "light blue"
	case at20 >= 1000:
		return "green"
	case at20 >= 500:
		return "orange"
	}
	return "red"
}

// PercentDrop is the fall from static to residual in percent of static. Source: common practice.
func PercentDrop(static, residual unit.PSI) float64 {
	return float64(100*(static-residual)) / float64(static)
}

// LikeLines is how many more lines like the one that flows a hydrant can carry, by percent drop, not
// rounded: up to 10 three, up to 15 two, up to 25 one, above none. Source: common practice.
func LikeLines(percent float64) int {
	switch {
	case percent <= 10:
		return 3
	case percent <= 15:
		return 2
	case percent <= 25:
		return 1
	}
	return 0
}

// LikeLinesByDigit is the same by the first digit of the static pressure (its tens): a drop of up to
// that many psi leaves three lines, twice that two, three times one. Source: common practice. The two
// methods differ by a line here and there, and both from the law of FlowAtResidual.
func LikeLinesByDigit(static, residual unit.PSI) int {
	tens := float64(int(static / 10))
	for lines := 3; lines > 0; lines-- {
		if float64(static-residual) <= float64(tens*float64(4-lines)) {
			return lines
		}
	}
	return 0
}
