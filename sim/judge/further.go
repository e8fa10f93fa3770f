package judge

import (
	"fmt"

	"steadyneedle/sim/world"
)

var furtherLimits = []limit{
	{"intake_psi", 0},  // what must be left at the intake (assumption)
	{"settle_s", 45},   // given to the lines to come up (assumption)
	{"flow_share", .9}, // of a like line's flow that each further one must get (assumption)
}

// further opens as many further like lines as the candidate has said the supply can carry, holds the
// first line's pressure, and looks at what is left at the intake. The further lines are outlets without
// hose on the other discharges, gated to the first line's flow: to the supply they are the same.
type further struct {
	*rigging
	outlets  []world.ControlID
	flows    []world.SignalID
	at       []float64 // how far each outlet is open
	count    float64   // lines said
	line     float64   // flow of one
	read     float64   // the first line's reading
	position float64   // of the throttle
	length   int
	intake   world.SignalID
	sum, n   float64 // of the intake over the last two seconds
	had      float64 // the most that the outlets gave at the end, gpm
}

func newFurther(g *rigging) (experiment, error) {
	t := &further{rigging: g, length: int(float64(g.limit("settle_s") * 60))}
	said, ok := g.bench.Signal("say_like_lines_value")
	if !ok {
		return nil, fmt.Errorf("this world has nobody who says how many further lines there could be")
	}
	if t.intake, ok = g.bench.Signal("intake_psi"); !ok {
		return nil, fmt.Errorf("this world has no intake_psi to test")
	}
	t.count, t.line, t.read, t.position = g.see(said), g.see(g.flow), g.see(g.gauge), g.see(g.position)
	for n, id := range g.numbered("discharge") {
		flow, known := g.bench.Signal(fmt.Sprintf("line%d_gpm", n+1))
		if !known || g.see(flow) > 1 {
			continue // in use
		}
		t.outlets, t.flows, t.at = append(t.outlets, id), append(t.flows, flow), append(t.at, 0)
		g.put(fmt.Sprintf("cap%d", n+1), 0)
	}
	if t.count > 0 && len(t.outlets) == 0 {
		return nil, fmt.Errorf("this world has no discharge free for a further line")
	}
	return t, nil
}

func (t *further) step() bool {
	if t.count <= 0 || t.line <= 1 {
		return true // nothing is claimed, or nothing flows that could be likened
	}
	share := float64(t.count*t.line) / float64(len(t.outlets))
	for i, id := range t.outlets {
		missing := (share - t.see(t.flows[i])) / share
		t.at[i] = max(0, min(1, t.at[i]+float64(missing*0.002)))
		t.set(id, t.at[i])
	}
	// The operator would hold the first line's pressure by the throttle.
	off := (t.read - t.see(t.gauge)) / max(1, t.read)
	t.position = max(0, min(1, t.position+float64(max(-0.3, min(0.3, off))*0.01)))
	t.set(t.throttle, t.position)
	t.tick()
	if t.ticks > t.length-2*60 {
		flow := 0.0
		for _, id := range t.flows {
			flow += t.see(id)
		}
		t.had = max(t.had, flow)
		t.sum += t.see(t.intake)
		t.n++
	}
	return t.ticks >= t.length
}

func (t *further) verdict() (bool, how, float64) {
	if t.n == 0 {
		return true, nothing, 0
	}
	left := t.sum / t.n
	if left < t.limit("intake_psi") {
		return false, tooLittle, left
	}
	if got := t.had / t.line; got < float64(t.count*t.limit("flow_share")) {
		return false, fewerLines, got
	}
	return true, nothing, left
}
