package judge

import (
	"fmt"

	"steadyneedle/sim/world"
)

var lostLimits = []limit{
	{"lost_s", 10},      // how long the hydrant gives nothing (assumption)
	{"answer_s", 2},     // until tank-to-pump is pulled (assumption)
	{"flow_share", 0.4}, // of the line's flow that the tank must keep up (assumption)
}

// lost takes the hydrant away for a while and pulls tank-to-pump, as the operator would: is there a
// reserve in the tank that still keeps water at the nozzle when that while is over?
type lost struct {
	*rigging
	hydrant world.ControlID
	flowed  float64 // before
	sum, n  float64 // in the last quarter of the while
	length  int
}

func newLost(g *rigging) (experiment, error) {
	id, ok := g.bench.Control("hydrant_loss")
	if !ok {
		return nil, fmt.Errorf("this world has no hydrant that could be lost")
	}
	return &lost{rigging: g, hydrant: id, flowed: g.see(g.flow), length: int(float64(g.limit("lost_s") * 60))}, nil
}

func (t *lost) step() bool {
	if t.flowed <= 1 {
		return true // no water that could be lost
	}
	if t.ticks == 0 {
		const all = 200 // psi: more than any main has
		t.set(t.hydrant, all)
	}
	pulled := int(float64(t.limit("answer_s") * 60))
	if t.ticks == pulled {
		t.put("tank_to_pump", 1)
	}
	t.tick()
	if 4*t.ticks > 3*t.length && t.ticks > pulled+2*60 { // two seconds for the water to come
		t.sum += t.see(t.flow)
		t.n++
	}
	return t.ticks >= t.length
}

func (t *lost) verdict() (bool, how, float64) {
	if t.n == 0 {
		return true, nothing, 0
	}
	kept := t.sum / t.n
	return kept >= float64(t.flowed*t.limit("flow_share")), lostFlow, kept
}
