package hydraulics

import "math"

// ValveLaw is how a valve's free area follows its travel. Travel is what the hand does; how fast water
// stops follows from the area, and a ball valve passes most of its flow almost until it is shut.
type ValveLaw uint8

const (
	Ball      ValveLaw = iota // quarter turn: two round bores that slide across one another
	Gate                      // rising wedge: near the wedge's height
	Butterfly                 // disc: 1 − cos of the angle
)

// ValveLawNamed finds a law by the name that files use: ball, gate or butterfly.
func ValveLawNamed(name string) (law ValveLaw, ok bool) {
	switch name {
	case "ball":
		return Ball, true
	case "gate":
		return Gate, true
	case "butterfly":
		return Butterfly, true
	}
	return 0, false
}

// Area is the free share of the bore at a travel of 0 shut … 1 open; exactly 0 at 0 and 1 at 1. Ball and
// butterfly are polynomials within 0.01 of the geometry named at their constants.
func (l ValveLaw) Area(x float64) float64 {
	x = min(max(x, 0), 1)
	x2 := float64(x * x)
	switch l {
	case Gate:
		return float64(x * (1.6 - float64(0.6*x)))
	case Butterfly:
		return float64(x2 * (1.2337 - float64(0.2337*x2)))
	}
	return float64(float64(x*math.Sqrt(x)) * (1.2 - float64(0.2*x)))
}
