package flownet

import (
	"math"

	"steadyneedle/sim/bound"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

// linkWork is what the solver keeps about a link.
type linkWork struct {
	q, old   float64 // m³/s, now and when the step began
	water    float64 // share of q that is water
	giveBack float64 // m³ that From loses per m³ of q …
	takeOn   float64 // … and that To gains: air changes its volume on the way
	thin     float64 // what air in the water leaves of the coefficients
	curve    float64 // Pa/(m³/s)², bound of half the second derivative of the loss

	cond     float64 // 1/D: flow per pressure in the linear equation
	fromPart float64 // 1 + ∂gain/∂P(From)
	toPart   float64 // 1 − ∂gain/∂P(To)
	dq       float64 // −residual/D with the pressures held
	gainQ    float64 // |∂gain/∂q|
	shutting bool    // check valve on its reverse branch

	plain bool // nothing but a quadratic loss
	mixed bool // air goes with the water: not all of water, giveBack, takeOn and thin are 1
	net   *Net
	entry float64 // 1 if what flows enters the network by this link, −1 if it leaves it, 0 if neither

	ft, tf *float64 // places in the matrix: of To in the equation of From, and the other way
}

const (
	smooth  = 0.05 * unit.M3SPerGPM // rounds off |q| near zero
	smooth2 = smooth * smooth
	// reverse is the loss of a shut check valve, Pa/(m³/s): 1 MPa drives a millilitre in a quarter of an hour.
	reverse = 1e15
	// leastResistance keeps the matrix finite where a pump's curve rises, Pa/(m³/s).
	leastResistance = 1e-3
	// hazenPower is the exponent of |q| in the Hazen–Williams loss q·|q|^0.852.
	hazenPower = HazenWilliams - 1
)

// power852 is x^0.852 for x ≥ 0 as a product of repeated square roots (the exponent in binary is
// 0.1101101, which is 0.8516): math.Pow gives different bits on different machines.
func power852(x float64) float64 {
	s1 := math.Sqrt(x)
	s2 := math.Sqrt(s1)
	s4 := math.Sqrt(math.Sqrt(s2))
	s5 := math.Sqrt(s4)
	s7 := math.Sqrt(math.Sqrt(s5))
	return float64(float64(float64(s1*s2)*float64(s4*s5)) * s7)
}

// loss is the pressure that the link takes at its present flow, and the derivative.
func (l *Link) loss() (h, slope float64) {
	w := &l.work
	q2 := float64(w.q * w.q)
	s := math.Sqrt(q2 + smooth2)
	coefficient := w.curve
	if l.Exponent == HazenWilliams {
		a := float64(float64(float64(l.R*w.thin)*l.QRef) * power852(s/l.QRef))
		h = float64(a * w.q)
		slope = a + float64(float64(a*hazenPower)*q2)/(q2+smooth2)
		coefficient = float64(l.K * w.thin)
	}
	a := float64(coefficient * s)
	return h + float64(a*w.q), slope + a + float64(a*(q2/(q2+smooth2)))
}

// linearize evaluates the link's equation at its flow and the pressures at its ends. perDt is 1/dt.
func (l *Link) linearize(perDt float64) {
	w := &l.work
	up, down := l.From.P, l.To.P
	inertia := float64(l.I * perDt)
	h, slope := l.loss()
	r := up - down - l.Rise - h - float64(inertia*(w.q-w.old))
	slope += inertia
	w.fromPart, w.toPart, w.gainQ = 1, 1, 0
	if l.Gain != nil {
		rise, dq, dup, ddown := l.Gain.Head(w.q, up, down)
		r += rise
		slope -= dq
		w.fromPart += dup
		w.toPart -= ddown
		w.gainQ = math.Abs(dq)
	}
	w.shutting = l.Check && (w.q < 0 || w.q == 0 && r < 0)
	if w.shutting {
		r -= float64(reverse * w.q)
		slope += reverse
	}
	w.cond = 1 / bound.AtLeast(slope, leastResistance)
	w.dq = float64(r * w.cond)
}

// advance moves the flow as the linear solution wants. It returns a bound of what the straight line
// misses, Pa.
func (l *Link) advance(share float64) float64 {
	w := &l.work
	dup, ddown := l.From.store.side, l.To.store.side
	change := float64(w.cond * (float64(w.fromPart*dup) - float64(w.toPart*ddown)))
	dq := float64(share*w.dq) + change
	miss := float64(float64(dq*dq) * w.curve)
	if bend := float64(float64(math.Abs(dq)*w.curve) * w.cond); bend > steep {
		dq = alongParabola(dq, bend)
	}
	if reach := math.Abs(w.q) + gainReach; l.Gain != nil && math.Abs(dq) > reach {
		dq, miss = bound.Within(dq, -reach, reach), math.Inf(1)
	}
	q := w.q + dq
	if l.Check {
		if w.q > 0 && q < 0 {
			w.q = 0
			return math.Inf(1)
		}
		if w.shutting && q > 0 {
			miss = math.Inf(1)
		}
	}
	if l.Gain != nil {
		turn := float64(w.gainQ*math.Abs(dq)) + math.Abs(float64((w.fromPart-1)*dup)) + math.Abs(float64((w.toPart-1)*ddown))
		miss += float64(gainShare * turn)
	}
	w.q = q
	return miss
}

// steep is the share by which a loss may outgrow its straight line before the parabola is followed.
const steep = 2

// alongParabola is how far a link goes whose loss grows so much on the way, by bend, that the straight line
// would overshoot by far: as far as the parabola takes to reach the pressure that the linear solution left
// for the link.
func alongParabola(dq, bend float64) float64 {
	return float64(dq*2) / (1 + math.Sqrt(1+float64(4*bend)))
}

// gainReach bounds how far beyond twice its flow a pump goes in one iteration, m³/s: at rest its
// slope is no guide.
const gainReach = 0.01

// gainShare is the part of a linear change of gain that its curvature may have made wrong, as the
// test of convergence takes it.
const gainShare = 1.0 / 64

func (l *Link) walk(w *state.Walker) {
	for _, p := range [...]*float64{&l.R, &l.K, &l.I, &l.Rise, &l.QRef, &l.UpLimit, &l.Carry, &l.GasR, &l.work.q, &l.work.water} {
		w.Float(p)
	}
	w.Bool(&l.shut)
	if w.Loading() {
		l.work.mixed = true // or it may be: the next step begins with water alone
	}
}
