package fidelity

import (
	"math"

	"steadyneedle/sim/flownet"
	"steadyneedle/sim/unit"
)

// rUnit is one psi/gpm² in Pa/(m³/s)².
const rUnit = unit.PaPerPSI / unit.M3SPerGPM / unit.M3SPerGPM

// referenceCase is one case of the reference network: a hydrant of 65 psi that loses 2e-5 Q², a supply
// hose 8e-6 Q², a pump of 195 ω² − 2e-5 Q², two lines of 200 ft of 1¾ in with 15/16 tips and one of
// 300 ft of 2½ in with a 1⅛ tip.
type referenceCase struct {
	name, text        string
	omega             float64
	gates             [3]float64 // psi/gpm²
	shut              [3]bool
	relief            float64 // psi that an ideal relief valve holds; 0: none
	intake, discharge float64 // psi
	pump              float64 // gpm
	q                 [3]float64
}

var referenceCases = [...]referenceCase{
	{name: "A", text: "all lines open, ω = 0.767", omega: 0.767, intake: 50.750996, discharge: 155.289492, pump: 713.367356, q: [3]float64{184.385990, 184.385990, 344.595376}},
	{name: "B", text: "line 3 gated", omega: 0.767, gates: [3]float64{2e-5, 2e-5, 4e-4}, intake: 52.242278, discharge: 157.845974, pump: 675.005886, q: [3]float64{185.491877, 185.491877, 304.022133}},
	{name: "C", text: "line 2 shut", omega: 0.767, shut: [3]bool{false, true, false}, intake: 56.654402, discharge: 165.409616, pump: 545.946034, q: [3]float64{190.299331, 0, 355.646703}},
	{name: "D", text: "lines 2 and 3 shut", omega: 0.767, shut: [3]bool{false, true, true}, intake: 63.909767, discharge: 177.847384, pump: 197.324325, q: [3]float64{197.324325, 0, 0}},
	{name: "E", text: "as D, relief valve holding 150 psi", omega: 0.767, shut: [3]bool{false, true, true}, relief: 150, intake: 64.080476, discharge: 150, pump: 1199.933978, q: [3]float64{181.218493, 0, 0}},
	{name: "F", text: "all lines open, ω = 1", omega: 1, intake: 44.385622, discharge: 224.661066, pump: 858.037176, q: [3]float64{221.779190, 221.779190, 414.478797}},
}

// otherSolver is 40 % of the numerical tolerance: the same equations in another program.
func otherSolver() Tolerance { return Tolerance{Numerical, 4e-5, 4e-5} }

// networkTrials solve the reference network with the model's solver.
func networkTrials() []Trial {
	var list []Trial
	for _, c := range referenceCases {
		t := Trial{
			initial: "Reference network, case " + c.name + ": " + c.text,
			begin:   func(m Model) *bench { return &bench{model: m, ref: solve(&c)} },
		}
		add := func(id, what, unitName string, expected float64, value func(*referenceNet) float64) {
			t.checks = append(t.checks, check{
				Test: Test{
					ID: "network-" + c.name + "-" + id, Area: Steady, Title: "Network " + c.name + ", " + what,
					Objective: "The solver finds the steady state that an independent hydraulics program and the closed form find.",
					Steps:     "Solve for the steady state.", Compared: what, Unit: unitName, Expected: expected, Tolerance: otherSolver(), Source: reference,
				},
				measure: func(b *bench) float64 { return value(b.ref) },
			})
		}
		add("intake", "intake pressure", "psi", c.intake, func(n *referenceNet) float64 { return n.psi(n.intake) })
		add("discharge", "discharge pressure", "psi", c.discharge, func(n *referenceNet) float64 { return n.psi(n.discharge) })
		add("pump", "pump flow", "gpm", c.pump, func(n *referenceNet) float64 { return n.gpm(n.pump) })
		add("line-1", "flow of line 1", "gpm", c.q[0], func(n *referenceNet) float64 { return n.gpm(n.nozzles[0]) })
		add("line-3", "flow of line 3", "gpm", c.q[2], func(n *referenceNet) float64 { return n.gpm(n.nozzles[2]) })
		list = append(list, t)
	}
	return append(list, vaporLimit())
}

// referencePump is the network's pump.
type referencePump struct{ omega float64 }

// Head makes it a gain.
func (p *referencePump) Head(q, _, _ float64) (rise, dq, dup, ddown float64) {
	const a, b = 195 * unit.PaPerPSI, 2e-5 * rUnit
	return float64(a*float64(p.omega*p.omega)) - float64(b*float64(q*math.Abs(q))), -float64(2 * float64(b*math.Abs(q))), 0, 0
}

type referenceNet struct {
	*flownet.Net
	main, intake, discharge *flownet.Node
	mainLink, pump, relief  *flownet.Link
	nozzles                 [3]*flownet.Link
}

func (n *referenceNet) psi(id *flownet.Node) float64 {
	if n.Net == nil {
		return math.NaN()
	}
	return float64(unit.PSIOf(id.P))
}

func (n *referenceNet) gpm(id *flownet.Link) float64 {
	if n.Net == nil {
		return math.NaN()
	}
	return float64(unit.GPMOf(id.Q()))
}

// buildReference lays out the network; a nil Net tells that it could not be built.
func buildReference(c *referenceCase) *referenceNet {
	n := &referenceNet{}
	var b flownet.Builder
	air := b.Boundary("air", 0, 1)
	n.main = b.Boundary("main", 65*unit.PaPerPSI, 0)
	node := func(name string) *flownet.Node { return b.Node(flownet.Node{Name: name}) }
	hydrant := node("hydrant")
	n.intake, n.discharge = node("intake"), node("discharge")
	n.mainLink = b.Link(flownet.Link{Name: "main", From: n.main, To: hydrant, R: 2e-5 * rUnit})
	b.Link(flownet.Link{Name: "supply", From: hydrant, To: n.intake, R: 8e-6 * rUnit})
	n.pump = b.Link(flownet.Link{Name: "pump", From: n.intake, To: n.discharge, Gain: &referencePump{c.omega}, UpLimit: 2e5})
	n.relief = b.Link(flownet.Link{Name: "return", From: n.discharge, To: n.intake, R: 2e-5 * rUnit, StartsShut: c.relief == 0})
	loss := [3]float64{0.0031, 0.0031, 0.0006}
	factor := [3]float64{26.103515625, 26.103515625, 37.5890625} // 29.7 d²
	for i := range loss {
		valve, end := node("valve"), node("tip")
		b.Link(flownet.Link{Name: "gate", From: n.discharge, To: valve, R: float64(max(c.gates[i], 1e-9) * rUnit), StartsShut: c.shut[i]})
		b.Link(flownet.Link{Name: "hose", From: valve, To: end, R: float64(loss[i] * rUnit)})
		n.nozzles[i] = b.Link(flownet.Link{Name: "nozzle", From: end, To: air, R: rUnit / float64(factor[i]*factor[i])})
	}
	n.Net, _ = b.Build()
	return n
}

// solve finds the steady state of a case; with a relief valve, the opening that holds its pressure.
func solve(c *referenceCase) *referenceNet {
	n := buildReference(c)
	if n.Net == nil || !n.Settle() {
		return &referenceNet{}
	}
	if c.relief > 0 {
		lo, hi := 1e-9, 1.0 // psi/gpm²
		for range 200 {
			mid := math.Sqrt(float64(lo * hi))
			n.relief.R = float64(mid * rUnit)
			if !n.Settle() {
				return &referenceNet{}
			}
			if n.psi(n.discharge) > c.relief {
				hi = mid
			} else {
				lo = mid
			}
		}
	}
	return n
}

// vaporLimit is case G: a weak main, on which a plain steady solver reports −26 psi at the intake.
func vaporLimit() Trial {
	return Trial{initial: "Reference network on a weak main: 40 psi that lose 12e-5 Q², ω = 1", checks: []check{{
		Test: Test{
			ID: "network-G-intake", Area: Abnormal, Title: "Network G: no pressure below the vapor pressure",
			Objective: "Where a plain steady solver finds −26 psi at the intake, the model stops at the vapor pressure.",
			Steps:     "Solve for the steady state.", Compared: "intake pressure", Unit: "psi", Expected: float64(unit.PSIOf(2339 - unit.PaAtm)),
			Tolerance: Tolerance{Tier: Formula, Width: 0.02}, Source: iapws,
		},
		measure: func(*bench) float64 {
			n := buildReference(&referenceCase{omega: 1})
			if n.Net == nil {
				return math.NaN()
			}
			n.main.P = 40 * unit.PaPerPSI
			n.mainLink.R = 12e-5 * rUnit
			if !n.Settle() {
				return math.NaN()
			}
			return n.psi(n.intake)
		},
	}}}
}
