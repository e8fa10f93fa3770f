package play

import (
	"fmt"

	"steadyneedle/sim/fireground"
	"steadyneedle/sim/layout"
	"steadyneedle/sim/unit"
)

// load says what the line is made of, as its crew knows it: what the calculation needs.
func load(l *fireground.LineDef, lay layout.Plan, sys unit.System) string {
	if l.None() {
		return laid(lay, sys)
	}
	section := l.SectionFt
	if section == 0 {
		section = 50
	}
	text, for100 := hose(&l.Trunk, sys)+fmt.Sprintf(" in %g ft sections", section), coefficients(sys)
	if l.Nozzle != nil {
		return sys.Prose(text + ", " + nozzle(l.Nozzle) + "." + for100)
	}
	if n := len(l.Branches); n > 0 {
		b := &l.Branches[0]
		text += fmt.Sprintf(" to a wye; %d lines of %g ft of %s, each with a %s", n, b.Hose.LengthFt, hose(&b.Hose, sys), nozzle(&b.Nozzle))
	}
	return sys.Prose(text + "." + for100)
}

// coefficients says what coefficients of friction are for, where not everybody knows.
func coefficients(sys unit.System) string {
	if sys == unit.SI {
		return " Coefficients are for kPa, 100 m and 100 L/min."
	}
	return ""
}

// siCoefficient turns a friction coefficient for psi per 100 ft at 100 gpm into one for kPa per 100 m at
// 100 L/min: the loss goes with the square of the flow. [C] from the factors of package unit.
const siCoefficient = unit.PaPerPSI / 1000 / unit.MPerFt / (unit.M3PerGal * 1000) / (unit.M3PerGal * 1000)

func hose(h *fireground.HoseDef, sys unit.System) string {
	c := fmt.Sprintf("%g", h.LossC)
	if sys == unit.SI {
		c = fmt.Sprintf("%.3g", h.LossC*siCoefficient)
	}
	return fmt.Sprintf("%s in hose (friction coefficient %s)", unit.Eighths(h.SizeIn), c)
}

func nozzle(n *fireground.NozzleDef) string {
	if n.TipIn > 0 {
		return fmt.Sprintf("%s in tip at %g psi", unit.Eighths(n.TipIn), n.RatedPSI)
	}
	return fmt.Sprintf("fog nozzle of %g gpm at %g psi", n.RatedGPM, n.RatedPSI)
}
