package flownet

// Exponents of the loss law that a link may have.
const (
	Quadratic     = 2.0   // hose, fittings, orifices
	HazenWilliams = 1.852 // a main, so that flow follows head to the power 0.54
)

// Link joins two nodes. Its equation, with q positive from From to To, is
//
//	P(From) − P(To) + gain − Rise = loss(q) + K q|q| + (I/dt)(q − q_old),
//
// loss(q) = R q|q| for the quadratic exponent and R q QRef (|q|/QRef)^0.852 for the other, so that
// R is in Pa/(m³/s)² for both. |q| is smoothed by 0.05 gpm near zero. R, K, I, Rise, QRef,
// Carry, GasR may be changed between steps, and SetShut may be called; the others are fixed at build.
type Link struct {
	Name       string
	From, To   *Node
	R          float64 // Pa/(m³/s)², ≥ 0
	K          float64 // Pa/(m³/s)², ≥ 0, always quadratic: fittings and valves in the same link
	I          float64 // Pa s²/m³, inertance ρL/A, ≥ 0
	Rise       float64 // Pa, ρ g (height of To above From)
	Exponent   float64 // Quadratic (also when 0) or HazenWilliams
	QRef       float64 // m³/s at which HazenWilliams and Quadratic agree
	StartsShut bool    // shut when built, see SetShut
	Check      bool    // no flow from To to From
	Gain       Gain    // a pump; nil for none
	UpLimit    float64 // Pa by which one Newton step may change P(From) where Gain is set, or half its absolute pressure if that is more; 0: no limit
	Carry      float64 // slip of air against water: 1 (also when 0) well mixed, less: air stays behind, more: air goes first; negative: no air passes
	GasR       float64 // share of R and K that pure air meets; 1 when 0

	shut bool
	work linkWork
}

// SetShut shuts the link, so that its flow is exactly zero, or opens it.
func (l *Link) SetShut(shut bool) {
	if l.shut == shut {
		return
	}
	l.shut = shut
	if l.work.net != nil {
		l.work.net.stale = true
	}
}

// Shut reports whether it is shut.
func (l *Link) Shut() bool { return l.shut }

// Gain is the pressure rise of a pump in a link, evaluated inside the Newton iteration.
// The derivatives belong to the same point; they decide how fast, and whether, the step converges.
type Gain interface {
	// Head gives the rise in Pa at flow q (m³/s) with the pressures (Pa, gauge) up- and down-stream,
	// and its derivatives with respect to the three.
	Head(q, up, down float64) (rise, dq, dup, ddown float64)
}

// Q is the flow in m³/s, positive from From to To.
func (l *Link) Q() float64 { return l.work.q }

// WaterFlow is the part of Q that was water in the last step, m³/s.
func (l *Link) WaterFlow() float64 { return float64(l.work.q * l.work.water) }

// AirFlow is the part of Q that was air or vapor in the last step, m³/s at the giving node's pressure.
func (l *Link) AirFlow() float64 { return float64(l.work.q * (1 - l.work.water)) }
