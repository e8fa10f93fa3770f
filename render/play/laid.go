package play

import (
	"fmt"
	"strings"

	"steadyneedle/sim/layout"
	"steadyneedle/sim/unit"
)

// laid says what hangs on the apparatus from the first moment, in the order in which water runs.
func laid(lay layout.Plan, sys unit.System) string {
	var parts []string
	for i := range lay {
		switch p := &lay[i]; {
		case p.Hose != nil:
			parts = append(parts, fmt.Sprintf("%g ft of %s", p.Hose.LengthFt, hose(p.Hose, sys)))
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
	return sys.Prose("Laid out: " + strings.Join(parts, ", ") + "." + coefficients(sys))
}
