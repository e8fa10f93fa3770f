package layout

import (
	"steadyneedle/sim/bound"
	"steadyneedle/sim/flownet"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/state"
	"steadyneedle/sim/unit"
)

// pumper is another pumper: intake, pump, and an engine that its own operator or governor holds.
type pumper struct {
	pump          rig.Pump
	inlet, eye    *flownet.Node
	manifold      *flownet.Node
	bleeder       *flownet.Link
	taps          *Taps
	rpm           float64
	setRPM, setPS float64
	least         float64 // psi at the intake below which its speed rises no more
}

// What another pumper does (assumptions, except what it shares with the apparatus's own pump).
const (
	idleRPM     = 700
	topRPM      = 2150
	spoolRPMS   = 400.0   // rpm a second
	governor    = 6.0     // rpm a second for each psi that the pressure is off
	leastIntake = 5.0     // psi at which its operator, or governor, raises the speed no more; 5 below it is brought down
	leastDraft  = -12.0   // the same with a suction hose from open water
	inletHolds  = 0.01    // m³
	inletCv     = 3000.0  // gpm at 1 psi
	bleederCv   = 4.0     // gpm at 1 psi
	bledAt      = 0.003   // share of air in the inlet down to which it is bled
	inletInert  = 1e5     // Pa s²/m³
	pumpInert   = 1.2e5   // Pa s²/m³, as in the apparatus's own pump
	eyeSlip     = 0.35    // as there
	reach       = 2.068e4 // Pa: how far one Newton step may move the suction, 3 psi
)

func (q *laidPart) addPumper(b *flownet.Builder, p *Part, from []mouth, t *Taps) {
	d := rig.Default().Pump
	if gpm := p.Pumper.RatedGPM; gpm > 0 {
		size := d.RatedGPM / gpm
		d.RatedGPM, d.LossPSI = gpm, float64(d.LossPSI*float64(size*size))
	}
	m := &pumper{pump: rig.NewPump(d), taps: t, rpm: idleRPM, least: leastIntake}
	eye := float64(d.EyeGal * unit.M3PerGal)
	air := inletHolds
	if from[0].wet {
		air, m.least = 0, leastDraft
	}
	m.inlet = b.Node(flownet.Node{Name: p.ID + " intake", Volume: inletHolds, Stretch: metalGives, Air: air})
	m.eye = b.Node(flownet.Node{Name: p.ID + " impeller eye", Volume: eye, Stretch: metalGives, Vapor: t.Vapor})
	m.manifold = b.Node(flownet.Node{Name: p.ID + " manifold", Volume: float64(d.CasingGal*unit.M3PerGal) - eye, Stretch: 4 * metalGives, Vapor: t.Vapor})
	for _, n := range from {
		q.ways = append(q.ways, b.Link(flownet.Link{Name: p.ID + " inlet", From: n.node, To: m.inlet, I: fittingLag, Check: len(from) > 1}))
	}
	r, _ := rig.FlowResistance(inletCv, 1)
	b.Link(flownet.Link{Name: p.ID + " suction", From: m.inlet, To: m.eye, R: r, I: inletInert})
	r, _ = rig.FlowResistance(bleederCv, 1)
	m.bleeder = b.Link(flownet.Link{Name: p.ID + " bleeder", From: m.inlet, To: t.Air, R: r, StartsShut: true, Carry: airFirst, GasR: 0.02})
	b.Link(flownet.Link{Name: p.ID, From: m.eye, To: m.manifold, R: 1, I: pumpInert, Gain: &m.pump, Carry: eyeSlip, UpLimit: reach})
	q.thing, q.last = m, mouth{node: m.manifold}
}

func (m *pumper) lay(*flownet.Net) {}

func (m *pumper) set(in *PartIn) { m.setRPM, m.setPS = in.RPM, in.PSI }

func (m *pumper) update(net *flownet.Net, dt float64) {
	m.hold(dt)
	void := net.VoidFraction(m.eye)
	m.pump.Prepare(float64(m.rpm*unit.RadSPerRPM), void, m.taps.Patm, m.taps.Vapor, m.taps.Density)
	m.bleeder.SetShut(net.VoidFraction(m.inlet) < bledAt || m.inlet.P <= 0)
}

// hold brings the engine to its speed, or to the speed that gives its discharge pressure.
func (m *pumper) hold(dt float64) {
	rate := float64((m.setRPM - m.rpm) / dt)
	if m.setRPM <= 0 {
		rate = float64(governor * (m.setPS - psi(m.manifold)))
		if over := psi(m.inlet) - m.least; over < 0 {
			rate = bound.AtMost(rate, float64(governor*bound.AtMost(over+5, 0)))
		}
	}
	rate = bound.Within(rate, -spoolRPMS, spoolRPMS)
	m.rpm = bound.Within(m.rpm+float64(rate*dt), idleRPM, topRPM)
}

func (m *pumper) tell(out *PartOut) {
	out.InletPSI, out.RPM = psi(m.inlet), m.rpm
}

func (m *pumper) walk(w *state.Walker) {
	m.pump.Walk(w)
	w.Float(&m.rpm)
}
