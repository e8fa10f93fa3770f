package scenarios

import (
	"math"

	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/fireground"
	"steadyneedle/sim/rig"
	"steadyneedle/sim/world"
)

// What a hydrant drawn for a drill must leave, so that a careful reader of gauges comes to one answer.
const (
	leastDropPSI = 5.0  // a smaller drop drowns in the gauge's divisions
	clearPoints  = 1.0  // percent that the drop must stay away from each border
	recircGPM    = 25.0 // recirculation may take anything up to this
	supplyFt     = 25.0 // of supply hose between hydrant and intake
	mainExponent = 1.852
)

// borders of the percent-drop method: up to the first three more like lines, and so on (common
// practice, no published source).
var borders = [...]float64{10, 15, 25}

// plausible checks a variant's numbers against each of its hydrants.
func (b *builder) plausible(d *drill.Drill, hydrants []hydrantFile) {
	calculated, ok := calculatedPSI(d)
	for i := range hydrants {
		h := &hydrants[i].V
		b.soundHydrant(hydrants[i].Node, h)
		if h.ResidualPSI >= h.StaticPSI {
			continue
		}
		if ok {
			b.reachable(hydrants[i].Node, d, h, calculated)
		}
		if b.file.LikeLines {
			b.clearDrop(hydrants[i].Node, d, h)
		}
	}
}

// calculatedPSI works out the drill's value named calculated for the lay as it is meant: every control
// where it begins, the hose laid from the fire to the hydrant. false where the drill has none.
func calculatedPSI(d *drill.Drill) (float64, bool) {
	s := newScope(&d.Setup)
	v := make([]float64, len(s.signals)+1+len(d.Values))
	for _, c := range s.controls {
		at := c.Start
		if x, ok := d.Setup.Start[c.Name]; ok {
			at = x
		}
		v[s.signal[c.Name]] = at
	}
	section := d.Setup.Ground.Line.SectionFt
	if section == 0 {
		section = 50
	}
	sections := math.Ceil(d.Setup.Ground.FireToPlugFt / section)
	trunk := &d.Setup.Ground.Line.Trunk
	for name, x := range map[string]float64{"sections_laid": sections, "laid_ft": sections * section, "say_sections_value": sections,
		"line_size": trunk.SizeIn, "line_c": trunk.LossC} {
		if i, ok := s.signal[name]; ok {
			v[i] = x
		}
	}
	for i, value := range d.Values {
		x := value.Is.Value(v, make([]float64, value.Is.Slots))
		if v[len(s.signals)+1+i] = x; value.Name == "calculated" {
			return x, x == x && x > 0
		}
	}
	return 0, false
}

// reachable refuses a pressure that the throttle cannot come down to: at idle with no flow the pump
// already adds its pressure to the hydrant's static.
func (b *builder) reachable(at *reader.Node, d *drill.Drill, h *fireground.HydrantDef, calculated float64) {
	idle := idlePSI(&d.Setup.Rig)
	if b.file.Gating || idle+h.StaticPSI <= calculated {
		return
	}
	b.fail(at, "hydrant of %g psi: with the pump at idle the gauge already shows %.0f psi, more than the calculated %.1f%s, expected less (or gating: true, if that is the lesson)",
		h.StaticPSI, idle+h.StaticPSI, calculated, variantOf(d))
}

// idlePSI is the pump's net pressure at idle with no flow.
func idlePSI(def *rig.Def) float64 {
	w := def.Engine.IdleRPM / def.Pump.RatedRPM
	return def.Pump.ShutoffPSI * w * w
}

// clearDrop refuses a hydrant on which the number of further like lines is a matter of luck.
func (b *builder) clearDrop(at *reader.Node, d *drill.Drill, h *fireground.HydrantDef) {
	q := lineGPM(&d.Setup.Ground.Line)
	if q == 0 {
		return
	}
	low, high := dropPSI(h, &d.Setup.Ground, q), dropPSI(h, &d.Setup.Ground, q+recircGPM)
	if low < leastDropPSI {
		b.fail(at, "hydrant of %g psi: the line takes %.0f gpm and drops it by %.1f psi%s, expected at least %g", h.StaticPSI, q, low, variantOf(d), leastDropPSI)
		return
	}
	from, to := 100*low/h.StaticPSI, 100*high/h.StaticPSI
	if to >= 100 {
		b.fail(at, "hydrant of %g psi: it cannot give the %.0f gpm that the line takes%s, expected more", h.StaticPSI, q, variantOf(d))
		return
	}
	for _, border := range borders {
		if from < border+clearPoints && to > border-clearPoints {
			b.fail(at, "hydrant of %g psi: the line's %.0f gpm drop it by %.2f %%, with %g gpm of recirculation by %.2f %%%s, expected both on one side of %g %% and a point or more away from it",
				h.StaticPSI, q, from, recircGPM, to, variantOf(d), border)
			return
		}
	}
}

func variantOf(d *drill.Drill) string {
	if d.Variant == "" {
		return ""
	}
	return " in variant " + d.Variant
}

// dropPSI is how far the intake needle falls from static when q gpm run: the main's loss, scaled from
// its test by the Hazen–Williams exponent, and that of the supply hose, C (q/100)² L/100.
func dropPSI(h *fireground.HydrantDef, g *world.Ground, q float64) float64 {
	exponent := h.Exponent
	if exponent == 0 {
		exponent = mainExponent
	}
	main := (h.StaticPSI - h.ResidualPSI) * math.Pow(q/h.FlowGPM, exponent)
	return main + g.Supply.LossC*(q/100)*(q/100)*supplyFt/100
}

// lineGPM is what the line's nozzles take at the pressure that they are made for.
func lineGPM(line *fireground.LineDef) float64 {
	if line.Nozzle != nil {
		return nozzleGPM(line.Nozzle)
	}
	q := 0.0
	for i := range line.Branches {
		q += nozzleGPM(&line.Branches[i].Nozzle)
	}
	return q
}

// nozzleGPM is 29.7 d² √NP for a tip (every handbook of the trade), and the rating of a fog nozzle.
func nozzleGPM(n *fireground.NozzleDef) float64 {
	if n.TipIn > 0 {
		return 29.7 * n.TipIn * n.TipIn * math.Sqrt(n.RatedPSI)
	}
	return n.RatedGPM
}
