package world

import (
	"fmt"
	"strings"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/layout"
)

// laidHands are the controls of one part of the plan; none where it has no such control.
type laidHands struct{ open, gate, kink, burst, leak, hold ControlID }

const none = ControlID(^ControlID(0))

// laidControls are the controls of a part: what its people work, and what may befall it. NAME is its id.
func laidControls(plan layout.Plan, i int) []Control {
	p := &plan[i]
	label := strings.ReplaceAll(p.ID, "_", " ")
	var list []Control
	add := func(suffix string, c Control) {
		c.Name, c.Label = p.ID+"_"+suffix, label+": "+c.Label
		list = append(list, c)
	}
	switch {
	case p.Nozzle != nil:
		add("open", Control{Kind: Lever, Label: "shutoff", Max: 1, TravelS: 0.5})
	case p.Intake != nil:
		add("open", Control{Kind: Wheel, Label: "intake valve", By: At(Panel), Max: 1, TravelS: 3})
	case p.Hydrant != nil:
		add("open", Control{Kind: Wheel, Label: "hydrant valve", Max: 1, TravelS: 8})
	case p.Valve != nil, p.Outlet != nil:
		add("open", Control{Kind: Wheel, Label: "valve", Max: 1, TravelS: 3})
	case p.Hose != nil:
		add("kink", Control{Kind: Measure, Label: "kink", Max: 1})
		add("burst", Control{Kind: Measure, Label: "hole across", Max: 6, Unit: "in"})
		add("leak", Control{Kind: Measure, Label: "leaking coupling", Max: 200, Unit: "gpm"})
	case p.Pumper != nil && p.Pumper.RPM > 0:
		add("hold", Control{Kind: Knob, Label: "speed held", Min: 500, Max: 2500, Start: p.Pumper.RPM, Unit: "rpm", TravelS: 4})
	case p.Pumper != nil:
		add("hold", Control{Kind: Knob, Label: "pressure held", Min: 30, Max: 400, Start: p.Pumper.PSI, Unit: "psi", TravelS: 4})
	}
	if plan.Gated(i) {
		add("gate", Control{Kind: Lever, Label: "gate at the wye", Max: 1, TravelS: 0.5})
	}
	return list
}

// laidSignals tell what is so in a part.
func laidSignals(plan layout.Plan, i int) []source {
	p := &plan[i]
	label := strings.ReplaceAll(p.ID, "_", " ")
	list := []source{
		{Signal{p.ID + "_psi", "psi", Nowhere, label + ": pressure where it ends; at a nozzle the nozzle pressure"}, kept(func(w *World) *float64 { return &w.out.Lay[i].PSI })},
		{Signal{p.ID + "_gpm", "gpm", Nowhere, label + ": flow"}, kept(func(w *World) *float64 { return &w.out.Lay[i].GPM })},
		{Signal{p.ID + "_inlet_psi", "psi", Nowhere, label + ": pressure where it begins"}, kept(func(w *World) *float64 { return &w.out.Lay[i].InletPSI })},
	}
	switch {
	case p.Nozzle != nil:
		list = append(list, source{Signal{p.ID + "_reaction", "lbf", Nowhere, label + ": push on those who hold it"}, kept(func(w *World) *float64 { return &w.out.Lay[i].Reaction })})
	case p.Hose != nil:
		list = append(list,
			source{Signal{p.ID + "_fill", "", At(Panel, Round, RearStep), label + ": how full it looks"}, kept(func(w *World) *float64 { return &w.out.Lay[i].Fill })},
			source{Signal{p.ID + "_lost", "gpm", Nowhere, label + ": lost through hole and leak, and to a line opened unasked"}, kept(func(w *World) *float64 { return &w.out.Lay[i].LossGPM })})
	case p.Pumper != nil:
		list = append(list, source{Signal{p.ID + "_rpm", "rpm", Nowhere, label + ": engine speed"}, kept(func(w *World) *float64 { return &w.out.Lay[i].RPM })})
	}
	return list
}

// PartClash finds a part of the plan whose controls or signals would have the name of others; -1 if there
// is none.
func (s *Setup) PartClash() (part int, name string) {
	bare := *s
	bare.Ground.Lay = nil
	taken := map[string]bool{}
	for _, x := range SignalsOf(&bare) { // each control is a signal too
		taken[x.Name] = true
	}
	for i := range s.Ground.Lay {
		var names []string
		for _, c := range laidControls(s.Ground.Lay, i) {
			names = append(names, c.Name)
		}
		for _, x := range laidSignals(s.Ground.Lay, i) {
			names = append(names, x.Name)
		}
		for _, n := range names {
			if taken[n] {
				return i, n
			}
			taken[n] = true
		}
	}
	return -1, ""
}

// checkLaid refuses a plan that does not go with the rest of the ground.
func (s *Setup) checkLaid() error {
	if i, name := s.PartClash(); i >= 0 {
		return fmt.Errorf("lay: %s: the name %s stands for something else already", s.Ground.Lay[i].ID, name)
	}
	if !s.Ground.Line.None() && s.Ground.Lay.Holds(s.Ground.Discharge) {
		return fmt.Errorf("discharge %d: the lay hangs on it, and the line is to come there", s.Ground.Discharge)
	}
	return nil
}

// findLaid finds the controls of the plan's parts.
func (w *World) findLaid() {
	find := func(id, suffix string) ControlID {
		if c, ok := w.Control(id + "_" + suffix); ok {
			return c
		}
		return none
	}
	for i := range w.setup.Ground.Lay {
		id := w.setup.Ground.Lay[i].ID
		w.laid = append(w.laid, laidHands{find(id, "open"), find(id, "gate"), find(id, "kink"), find(id, "burst"), find(id, "leak"), find(id, "hold")})
	}
}

// feedLaid tells the plant how the plan's parts stand.
func (w *World) feedLaid() {
	at := func(c ControlID) float64 {
		if c == none {
			return 0
		}
		return w.at[c]
	}
	second := -1 // the part that a second line hangs on
	if w.setup.Ground.Line.None() {
		second = w.setup.Ground.Lay.FirstLine()
	}
	for i := range w.laid {
		h, in := &w.laid[i], &w.in.Lay[i]
		in.Open, in.Gate, in.Kink, in.Burst, in.Leak = at(h.open), at(h.gate), at(h.kink), at(h.burst), at(h.leak)
		if i == second {
			in.Leak += float64(fireground.SecondLineGPM * w.at[secondLine])
		}
		if d := w.setup.Ground.Lay[i].Pumper; d != nil && d.RPM > 0 {
			in.RPM = at(h.hold)
		} else if d != nil {
			in.PSI = at(h.hold)
		}
	}
}
