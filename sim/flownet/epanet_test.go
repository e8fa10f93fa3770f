package flownet_test

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"steadyneedle/sim/flownet"
	"steadyneedle/sim/unit"
)

// epanetPSIPerFt is EPANET's weight of water, psi/ft.
const epanetPSIPerFt = 0.4333

// sketch is one network of testdata/layouts.json, as .ci/epanet/solve.mjs describes it.
type sketch struct {
	Name  string
	Nodes map[string]struct {
		PSI *float64 // of a source
		Ft  float64  // height
	}
	Links []struct {
		ID, From, To string
		R            float64 // psi/gpm²
		Check        bool
		Sustain      float64 // psi: an ideal relief valve
		Pump         *struct{ A, B, Speed float64 }
	}
	Nozzles []struct {
		At string
		K  float64 // gpm at 1 psi
	}
}

// leaks is what EPANET lets through what it holds shut, gpm.
const leaks = 1e-3

// curve is a pump A ω² − B Q|Q| in psi and gpm.
type curve struct{ a, b float64 }

func (c *curve) Head(q, _, _ float64) (rise, dq, dup, ddown float64) {
	return c.a*unit.PaPerPSI - c.b*rUnit*q*math.Abs(q), -2 * c.b * rUnit * math.Abs(q), 0, 0
}

// built is a sketch as a network of ours.
type built struct {
	*flownet.Net
	node map[string]*flownet.Node
	link map[string]*flownet.Link
}

func build(t *testing.T, s *sketch) *built {
	t.Helper()
	out := &built{node: map[string]*flownet.Node{}, link: map[string]*flownet.Link{}}
	var b flownet.Builder
	air := b.Boundary("air", 0, 1)
	for id, n := range s.Nodes {
		if n.PSI != nil {
			out.node[id] = b.Boundary(id, *n.PSI*unit.PaPerPSI, 0)
		} else {
			out.node[id] = b.Node(flownet.Node{Name: id})
		}
	}
	rise := func(from, to string) float64 {
		return (s.Nodes[to].Ft - s.Nodes[from].Ft) * epanetPSIPerFt * unit.PaPerPSI
	}
	for _, l := range s.Links {
		link := flownet.Link{Name: l.ID, From: out.node[l.From], To: out.node[l.To], R: l.R * rUnit, Rise: rise(l.From, l.To), Check: l.Check}
		if l.Sustain > 0 {
			link.R = rUnit // until settle finds it
		}
		if p := l.Pump; p != nil {
			link.Gain, link.UpLimit = &curve{p.A * p.Speed * p.Speed, p.B}, 2e5
		}
		out.link[l.ID] = b.Link(link)
	}
	for _, n := range s.Nozzles {
		b.Link(flownet.Link{Name: "nozzle at " + n.At, From: out.node[n.At], To: air, R: rUnit / n.K / n.K})
	}
	net, err := b.Build()
	if err != nil {
		t.Fatal(err)
	}
	out.Net = net
	return out
}

// settle finds the steady state. An ideal relief valve is one whose opening holds the pressure before it.
func (b *built) settle(t *testing.T, s *sketch) {
	t.Helper()
	for _, l := range s.Links {
		if l.Sustain == 0 {
			continue
		}
		lo, hi := 1e-9, 1.0 // psi/gpm², bisected on a log scale
		for range 100 {
			mid := math.Sqrt(lo * hi)
			b.link[l.ID].R = mid * rUnit
			if !b.Settle() {
				t.Fatalf("no steady state: %+v", b.Counters())
			}
			if b.node[l.From].P > l.Sustain*unit.PaPerPSI {
				hi = mid
			} else {
				lo = mid
			}
		}
		return
	}
	if !b.Settle() {
		t.Fatalf("no steady state: %+v", b.Counters())
	}
}

// TestEPANET compares the steady solution of every layout with EPANET's [S: EPANET 2.3, its WebAssembly
// build epanet-js 0.9.0; .ci/epanet solves them anew]. The laws are equal, so the tier is the numerical
// one of 1e-4; EPANET itself stops at 1e-7 of the flow.
func TestEPANET(t *testing.T) {
	var layouts []sketch
	read(t, "testdata/layouts.json", &layouts)
	var epanet struct {
		Solved []struct {
			Name     string
			PSI, GPM map[string]float64
		}
	}
	read(t, "testdata/epanet.json", &epanet)
	if len(layouts) != len(epanet.Solved) || len(layouts) < 28 {
		t.Fatalf("%d layouts and %d solutions: solve them anew", len(layouts), len(epanet.Solved))
	}
	for i := range layouts {
		s, want := &layouts[i], &epanet.Solved[i]
		t.Run(s.Name, func(t *testing.T) {
			if s.Name != want.Name {
				t.Fatalf("EPANET's is %s: solve them anew", want.Name)
			}
			b := build(t, s)
			b.settle(t, s)
			if s.Name == "reference G" {
				belowVapor(t, b, want.PSI["IN"])
				return
			}
			for id, psi := range want.PSI {
				near(t, id+" psi", float64(unit.PSIOf(b.node[id].P)), psi)
			}
			for id, gpm := range want.GPM {
				if math.Abs(gpm) < leaks {
					gpm = 0
				}
				near(t, id+" gpm", float64(unit.GPMOf(b.link[id].Q())), gpm)
			}
		})
	}
}

// belowVapor is the trap: EPANET's intake is below the vapor pressure of water; ours must stop there.
func belowVapor(t *testing.T, b *built, epanet float64) {
	t.Helper()
	limit := float64(unit.PSIOf(2339 - unit.PaAtm)) // vapor of water at 20 °C [S: IAPWS-IF97]
	if epanet > limit-5 {
		t.Fatalf("EPANET's intake is at %.1f psi: this layout no longer sets the trap", epanet)
	}
	if got := float64(unit.PSIOf(b.node["IN"].P)); math.Abs(got-limit) > 0.05 {
		t.Errorf("intake at %.2f psi, want the vapor limit %.2f", got, limit)
	}
}

func read(t *testing.T, name string, into any) {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, into); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
}
