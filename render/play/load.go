package play

import (
	"fmt"

	"steadyneedle/sim/fireground"
)

// load says what the line is made of, as its crew knows it: what the calculation needs.
func load(l *fireground.LineDef) string {
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
