package layout

import (
	"math"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

// Taps are the places where a plan meets the rest of a network that is being built.
type Taps struct {
	Air        *flownet.Node   // boundary at no pressure that gives air
	Discharges []*flownet.Node // behind the discharge valves, Body m³ each
	Body       float64         // m³ that such a body holds
	Hydrant    *flownet.Node   // the outlet of the ground's hydrant, if it has one
	Eye        *flownet.Node   // the suction of the apparatus's pump
	Patm       float64         // Pa absolute
	Vapor      float64         // Pa absolute, of the source's water
	Density    float64         // kg/m³
}

// Laid is a plan built into a network.
type Laid struct {
	plan  Plan
	taps  Taps
	parts []laidPart
	// those that have something to do before every step of the network
	hoses   []*hose
	pumpers []*pumper
}

// laidPart is one part with what the network has of it.
type laidPart struct {
	thing
	from []*flownet.Node // where its water comes from
	ways []*flownet.Link // through which it comes
	gate *gate           // of the gated wye before it; nil without
	last mouth
}

// mouth is where what follows a part begins.
type mouth struct {
	node     *flownet.Node
	body     float64 // m³ of a fitting's own body, whose next hose may go flat there; 0 where several share it or a hose ends
	airFirst bool    // air stands above the water here and goes first
	gated    bool    // each that follows gets a gate of its own
	wet      bool    // has been primed
	main     bool    // is a hydrant's outlet
}

// thing is one kind of part in a network. lay lays it out, dry, once the network stands; set brings it to
// what people do; update is called before every step of the network.
type thing interface {
	lay(net *flownet.Net)
	set(in *PartIn)
	tell(out *PartOut)
	walk(w *state.Walker)
}

// plain is a thing that has nothing to do.
type plain struct{}

func (plain) lay(*flownet.Net)   {}
func (plain) set(*PartIn)        {}
func (plain) tell(*PartOut)      {}
func (plain) walk(*state.Walker) {}

const (
	body       = 2e-3 // m³ of water in a fitting (assumption)
	metalGives = 1e-10
	fittingLag = 2e4 // Pa s²/m³, inertance of the water in a fitting: some 20 cm of 4 in (assumption)
)

// Add adds the plan's parts to a network that is being built. The plan must have passed Check.
func (y Plan) Add(b *flownet.Builder, t Taps) *Laid {
	l := &Laid{plan: y, taps: t, parts: make([]laidPart, len(y))}
	for i := range y {
		l.add(b, i)
	}
	return l
}

// add builds one part behind those that it comes from.
func (l *Laid) add(b *flownet.Builder, i int) {
	p, q := &l.plan[i], &l.parts[i]
	from := l.inlets(b, p, q)
	for _, m := range from {
		q.from = append(q.from, m.node)
	}
	switch {
	case p.Hydrant != nil:
		q.addHydrant(b, p, l.taps.Air)
	case p.Pond != nil:
		q.addPond(b, p)
	case p.Hose != nil:
		h := q.addHose(b, p, from[0], *p.Hose, l.taps.Air)
		h.full, h.suction = l.plan.primed(p), l.plan.feedsPump(p.ID)
		q.last.wet = h.full
	case p.Riser != nil:
		q.addRiser(b, p, from[0], l.taps.Air)
	case p.Valve != nil:
		q.addValve(b, p, from[0])
	case p.Wye != nil:
		q.addFitting(b, p, from, p.Wye.Loss, false)
		q.last.body, q.last.gated = 0, p.Wye.Gated
	case p.Siamese != nil:
		q.addFitting(b, p, from, p.Siamese.Loss, !p.Siamese.Open)
	case p.Appliance != nil:
		q.addFitting(b, p, from, *p.Appliance, false)
	case p.Monitor != nil:
		q.addFitting(b, p, from, *p.Monitor, len(from) > 1)
	case p.Pumper != nil:
		q.addPumper(b, p, from, &l.taps)
	case p.Nozzle != nil:
		q.addNozzle(b, p, from[0], l.taps.Air)
	case p.Outlet != nil:
		q.addOutlet(b, p, from[0], l.taps.Air)
	default:
		q.addIntake(b, p, from[0], l.taps.Eye)
	}
	switch x := q.thing.(type) {
	case *hose:
		l.hoses = append(l.hoses, x)
	case *pumper:
		l.pumpers = append(l.pumpers, x)
	}
}

// primed reports whether a part comes straight from open water.
func (y Plan) primed(p *Part) bool {
	k := y.Index(p.From[0])
	return k >= 0 && y[k].Pond != nil
}

// feedsPump reports whether a part leads straight into a pump.
func (y Plan) feedsPump(id string) bool {
	for i := range y {
		for _, from := range y[i].From {
			if from == id && (y[i].Pumper != nil || y[i].Intake != nil) {
				return true
			}
		}
	}
	return false
}

// inlets finds where a part's water comes from, and puts a gate there where a gated wye has one.
func (l *Laid) inlets(b *flownet.Builder, p *Part, q *laidPart) []mouth {
	var list []mouth
	for _, name := range p.From {
		m := mouth{node: l.taps.Hydrant, main: true}
		if n := discharge(name); n > 0 {
			m = mouth{node: l.taps.Discharges[n-1], body: l.taps.Body}
		} else if k := l.plan.Index(name); k >= 0 {
			m = l.parts[k].last
		}
		if m.gated {
			q.gate = addGate(b, p.ID, m.node)
			m = mouth{node: q.gate.out, body: body}
		}
		list = append(list, m)
	}
	return list
}

// Lay lays everything out, dry, once the network stands.
func (l *Laid) Lay(net *flownet.Net) {
	for i := range l.parts {
		l.parts[i].lay(net)
	}
}

// Set brings everything to what people do; in has one entry for each part of the plan.
func (l *Laid) Set(in []PartIn) {
	for i := range l.parts {
		q := &l.parts[i]
		if q.gate != nil {
			q.gate.set(in[i].Gate)
		}
		q.set(&in[i])
	}
}

// Update is to be called before every step of the network, of dt seconds.
func (l *Laid) Update(net *flownet.Net, dt float64) {
	for _, h := range l.hoses {
		h.Update(net)
		if h.suction {
			h.InLeak(1)
		}
	}
	for _, m := range l.pumpers {
		m.update(net, dt)
	}
}

// Tell writes what is so; out has one entry for each part of the plan.
func (l *Laid) Tell(out []PartOut) {
	for i := range l.parts {
		q, o := &l.parts[i], &out[i]
		o.PSI, o.InletPSI, o.GPM = psi(q.last.node), 0, 0 // the rest is the thing's own
		for k, n := range q.from {
			if p := psi(n); k == 0 || p < o.InletPSI {
				o.InletPSI = p
			}
		}
		for _, w := range q.ways {
			o.GPM += w.WaterFlow() / unit.M3SPerGPM
		}
		q.tell(o)
	}
}

// Gated reports whether a part hangs on a gated wye, so that a gate of its own stands before it.
func (y Plan) Gated(i int) bool {
	for _, name := range y[i].From {
		if k := y.Index(name); k >= 0 && y[k].Wye != nil && y[k].Wye.Gated {
			return true
		}
	}
	return false
}

// Holds reports whether the plan takes the discharge, counted from 1.
func (y Plan) Holds(n int) bool {
	for i := range y {
		for _, name := range y[i].From {
			if n > 0 && discharge(name) == n {
				return true
			}
		}
	}
	return false
}

// FirstLine is the first hose that hangs on a discharge; -1 if there is none.
func (y Plan) FirstLine() int {
	for i := range y {
		for _, name := range y[i].From {
			if y[i].Hose != nil && discharge(name) > 0 {
				return i
			}
		}
	}
	return -1
}

// Walk visits the state of all parts.
func (l *Laid) Walk(w *state.Walker) {
	for i := range l.parts {
		l.parts[i].walk(w)
	}
}

func psi(n *flownet.Node) float64 { return n.P / unit.PaPerPSI }

// addBody adds the node of a fitting, filled with air.
func addBody(b *flownet.Builder, name string) *flownet.Node {
	return b.Node(flownet.Node{Name: name, Volume: body, Stretch: metalGives, Air: body})
}

// r is the loss coefficient that takes psi at gpm, Pa/(m³/s)².
func (d LossDef) r() float64 {
	if d.PSI <= 0 {
		return 0
	}
	return fireground.ValveR(d.GPM / math.Sqrt(d.PSI))
}
