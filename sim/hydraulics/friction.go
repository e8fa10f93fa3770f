package hydraulics

import "steadyneedle/sim/unit"

// Hose is a size of hose and what the handbooks give as its friction coefficient. Makes differ by
// −26 to +33 % (Fire Engineering, "Larger attack lines"): an apparatus or drill file may give its own.
type Hose struct {
	Size, Coupling unit.Inches
	C              float64 // FL = C (Q/100)² L/100
}

// Source: municipal and state pump-operation handouts (City of Renton, City of Rohnert Park);
// ¾, 1¼ and 6 in from memory.
var hoses = [...]Hose{
	{0.75, 0.75, 1100},
	{1, 1, 150},
	{1.25, 1.25, 80},
	{1.5, 1.5, 24},
	{1.75, 1.5, 15.5},
	{2, 1.5, 8},
	{2.5, 2.5, 2},
	{3, 2.5, 0.8},
	{3, 3, 0.677},
	{3.5, 3.5, 0.34},
	{4, 4, 0.2},
	{4.5, 4.5, 0.1},
	{5, 5, 0.08},
	{6, 6, 0.05},
}

// Hoses lists the sizes that have a published coefficient.
func Hoses() []Hose { return append([]Hose(nil), hoses[:]...) }

// Coefficient is the friction coefficient of a size of hose. A coupling of 0 takes the first of that
// size; only 3 in hose comes with two. The second result is false where nothing is published.
func Coefficient(size, coupling unit.Inches) (float64, bool) {
	for _, h := range hoses {
		if h.Size == size && (coupling == 0 || h.Coupling == coupling) {
			return h.C, true
		}
	}
	return 0, false
}

// Siamesed is the coefficient of equal lines laid side by side: C/n², as each carries Q/n.
// Source: common practice; Renton prints 0.5 and 0.22 for two and three of 2½ in.
func Siamesed(c float64, lines int) float64 {
	n := float64(lines)
	return c / n / n
}

// FrictionLoss is the pressure lost in a hose: C (Q/100)² L/100. Source: common practice.
func FrictionLoss(c float64, q unit.GPM, length unit.Feet) unit.PSI {
	h := float64(q) / 100
	return unit.PSI(c * h * h * float64(length) / 100)
}

// Content is the water a hose holds, gallons: a cylinder of 12 L inches at 231 in³ a gallon, which
// is 4.08 d² a hundred feet.
func Content(size unit.Inches, length unit.Feet) unit.Gallons {
	const perFoot = 0.7853981633974483 * 12 / 231 // π/4
	return unit.Gallons(perFoot * float64(size) * float64(size) * float64(length))
}

// Velocity is the speed of the water in a hose: 0.4085 Q/d², ft/s.
func Velocity(q unit.GPM, size unit.Inches) unit.FtPerS {
	return unit.FtPerS(0.4085 * float64(q) / float64(size) / float64(size))
}
