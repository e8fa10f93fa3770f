package hydraulics

import "math"

// ValveLaw is how a valve's free area and its loss follow its travel. Travel is what the hand does; how
// fast water stops follows from the loss, which against a long line hardly matters until the last third.
type ValveLaw uint8

const (
	Ball      ValveLaw = iota // quarter turn: two round bores that slide across one another
	Gate                      // rising disc: what it leaves of a round bore
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

// Area is the free share of the bore at a travel of 0 shut … 1 open; exactly 0 at 0 and 1 at 1. All three
// are polynomials within 0.01 of the geometry named at their constants.
func (l ValveLaw) Area(x float64) float64 {
	x = min(max(x, 0), 1)
	x2 := float64(x * x)
	switch l {
	case Gate:
		return float64(x * (1.2732 - float64(x2*(0.2+float64(0.0732*x2)))))
	case Butterfly:
		return float64(x2 * (1.2337 - float64(0.2337*x2)))
	}
	return float64(float64(x*math.Sqrt(x)) * (1.2 - float64(0.2*x)))
}

// openHeads is the loss of the open valve in velocity heads of its bore, from memory of handbooks' tables:
// a full gate 0.17, a butterfly's disc 0.35, and 0.3 of a ball with the body and ends that its flow
// coefficient is measured with.
func (l ValveLaw) openHeads() float64 {
	switch l {
	case Gate:
		return 0.17
	case Butterfly:
		return 0.35
	}
	return 0.3
}

// wake is the loss behind the leaf of a gate or the disc of a butterfly that stands in the stream, in
// velocity heads over x(1 − x) of the travel x: fitted to Weisbach's tables of part-open valves, from memory.
// A ball leaves its bore clear.
func (l ValveLaw) wake() float64 {
	switch l {
	case Gate:
		return 0.65
	case Butterfly:
		return 2.7
	}
	return 0
}

// Heads is what a valve at a travel of more than 0 loses beyond what it loses open, in velocity heads of
// its bore: the jet contracts to 0.62 + 0.38 a³ of the free area a (Weisbach) and spreads again to the
// bore, (1/(c a) − 1)² (Borda and Carnot), and what stands in the stream leaves a wake.
func (l ValveLaw) Heads(x float64) float64 {
	a := l.Area(x)
	c := 0.62 + float64(0.38*float64(a*float64(a*a)))
	k := 1/float64(c*a) - 1
	return float64(k*k) + float64(l.wake()*float64(x*(1-min(x, 1))))
}

// Rise is the valve's loss at a travel of more than 0 over its loss open; exactly 1 at 1.
func (l ValveLaw) Rise(x float64) float64 { return 1 + l.Heads(x)/l.openHeads() }

// Flow is the valve's flow coefficient at a travel over that of the open valve, 0 at 0 and 1 at 1.
func (l ValveLaw) Flow(x float64) float64 {
	if !(x > 0) {
		return 0
	}
	return 1 / math.Sqrt(l.Rise(x))
}
