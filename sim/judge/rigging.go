package judge

import (
	"fmt"

	"steadyneedle/sim/world"
)

// rigging is a test's hands and eyes on its copy of the world.
type rigging struct {
	bench  Bench
	test   *ForkTest
	limits []limit
	due    []world.Action
	ticks  int // made so far

	nozzles                       []world.ControlID
	nozzleAt                      []world.SignalID // where they are
	gauge, flow                   world.SignalID   // of the line in use
	amber, bypass, lift, rpm, psi world.SignalID
	throttle                      world.ControlID
	position                      world.SignalID // of the throttle
}

// newRigging finds what the tests need. The line in use is the one with most flow, or, where nothing
// flows, with most pressure.
func newRigging(b Bench) (*rigging, error) {
	g := &rigging{bench: b}
	for _, s := range []struct {
		name string
		id   *world.SignalID
	}{{"amber", &g.amber}, {"relief_gpm", &g.bypass}, {"relief_lift", &g.lift}, {"engine_rpm", &g.rpm},
		{"discharge_psi", &g.psi}, {"throttle", &g.position}} {
		id, ok := b.Signal(s.name)
		if !ok {
			return nil, fmt.Errorf("this world has no %s to test", s.name)
		}
		*s.id = id
	}
	id, ok := b.Control("throttle")
	if !ok {
		return nil, fmt.Errorf("this world has no throttle")
	}
	g.throttle = id
	g.nozzles = g.numbered("nozzle")
	for n := range g.nozzles {
		id, ok := b.Signal(fmt.Sprintf("nozzle%d", n+1))
		if !ok {
			return nil, fmt.Errorf("this world does not tell where nozzle %d is", n+1)
		}
		g.nozzleAt = append(g.nozzleAt, id)
	}
	v, best := b.Truth().V, -1.0
	for n := 1; ; n++ {
		flow, ok := b.Signal(fmt.Sprintf("line%d_gpm", n))
		if !ok {
			break
		}
		psi, _ := b.Signal(fmt.Sprintf("line%d_psi", n))
		needle, _ := b.Signal(fmt.Sprintf("line%d_gauge", n))
		if use := float64(1000*v[flow]) + v[psi]; n == 1 || use > best {
			best, g.gauge, g.flow = use, needle, flow
		}
	}
	if best < 0 && len(g.nozzles) == 0 {
		return nil, fmt.Errorf("this world has no line to test")
	}
	return g, nil
}

// numbered lists the controls NAME1, NAME2 …
func (g *rigging) numbered(name string) []world.ControlID {
	var list []world.ControlID
	for n := 1; ; n++ {
		id, ok := g.bench.Control(fmt.Sprintf("%s%d", name, n))
		if !ok {
			return list
		}
		list = append(list, id)
	}
}

// limit is one of the test's numbers.
func (g *rigging) limit(name string) float64 {
	if v, ok := g.test.Limit[name]; ok {
		return v
	}
	for _, l := range g.limits {
		if l.name == name {
			return l.value
		}
	}
	return 0
}

func (g *rigging) see(id world.SignalID) float64 { return g.bench.Truth().V[id] }

// set works a control of the copy in the coming tick; what the world refuses is left out.
func (g *rigging) set(id world.ControlID, v float64) {
	a := world.Action{At: g.bench.Now(), By: world.Evaluator, Control: id, Value: v}
	if g.bench.Check(a) == nil {
		g.due = append(g.due, a)
	}
}

// put is set by name; a control that this apparatus lacks is left out.
func (g *rigging) put(name string, v float64) {
	if id, ok := g.bench.Control(name); ok {
		g.set(id, v)
	}
}

// tick makes one tick of the copy.
func (g *rigging) tick() {
	g.bench.Step(g.due)
	g.due = g.due[:0]
	g.ticks++
}

// flowing opens the nozzles if all of them are shut, and reports whether it had to.
func (g *rigging) flowing() bool {
	for _, s := range g.nozzleAt {
		if g.see(s) > 0.05 {
			return false
		}
	}
	for _, id := range g.nozzles {
		g.set(id, 1)
	}
	return true
}
