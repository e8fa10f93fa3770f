package play

import (
	"fmt"
	"strings"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/layout"
)

// load says what the line is made of, as its crew knows it: what the calculation needs.
func load(l *fireground.LineDef, lay layout.Plan) string {
	if l.None() {
		return laid(lay)
	}
	text := hose(&l.Trunk) + " in 50 ft sections"
	if l.SectionFt > 0 {
		text = hose(&l.Trunk) + fmt.Sprintf(" in %g ft sections", l.SectionFt)
	}
	if l.Nozzle != nil {
		return text + ", " + nozzle(l.Nozzle) + "."
	}
	if n := len(l.Branches); n > 0 {
		b := &l.Branches[0]
		text += fmt.Sprintf(" to a wye; %d lines of %g ft of %s, each with a %s", n, b.Hose.LengthFt, hose(&b.Hose), nozzle(&b.Nozzle))
	}
	return text + "."
}

// laid says what hangs on the apparatus from the first moment, in the order in which water runs.
func laid(lay layout.Plan) string {
	var parts []string
	for i := range lay {
		switch p := &lay[i]; {
		case p.Hose != nil:
			parts = append(parts, fmt.Sprintf("%g ft of %s", p.Hose.LengthFt, hose(p.Hose)))
		case p.Riser != nil:
			parts = append(parts, fmt.Sprintf("a standpipe, %g floors up", p.Riser.Floors))
		case p.Wye != nil:
			parts = append(parts, "a wye")
		case p.Siamese != nil:
			parts = append(parts, "a siamese")
		case p.Monitor != nil:
			parts = append(parts, "a monitor")
		case p.Pumper != nil:
			parts = append(parts, "a second pumper")
		case p.Nozzle != nil:
			parts = append(parts, "a "+nozzle(p.Nozzle))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "Laid out: " + strings.Join(parts, ", ") + "."
}

func hose(h *fireground.HoseDef) string {
	return fmt.Sprintf("%s in hose (friction coefficient %g)", inches(h.SizeIn), h.LossC)
}

func nozzle(n *fireground.NozzleDef) string {
	if n.TipIn > 0 {
		return fmt.Sprintf("%s in tip at %g psi", inches(n.TipIn), n.RatedPSI)
	}
	return fmt.Sprintf("fog nozzle of %g gpm at %g psi", n.RatedGPM, n.RatedPSI)
}

// inches writes a size as the trade does, with its eighths.
func inches(v float64) string {
	whole := int(v)
	eighths := int((v-float64(whole))*8 + 0.5)
	part := [...]string{"", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞", ""}[eighths]
	if eighths == 8 {
		whole++
	}
	if whole == 0 && part != "" {
		return part
	}
	return fmt.Sprintf("%d%s", whole, part)
}
