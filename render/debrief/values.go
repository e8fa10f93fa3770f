package debrief

import (
	"fmt"
	"math"
	"strings"

	"steadyneedle/sim/world"
)

// Values says what the view showed at a moment.
func (p Plot) Values(at world.Tick) string {
	var list, lit []string
	n := int(at / world.TicksPerSecond)
	for _, s := range p.shown() {
		if n >= len(s.V) || math.IsNaN(s.V[n]) {
			continue
		}
		switch {
		case s.Unit == "lamp" && s.V[n] >= 0.5:
			lit = append(lit, strings.TrimSuffix(s.Name, " lamp"))
		case s.Unit == "open" && s.V[n] > 0.02:
			list = append(list, fmt.Sprintf("%s %.0f %%", s.Name, 100*s.V[n]))
		case s.Unit != "lamp" && s.Unit != "open":
			list = append(list, fmt.Sprintf("%s %.0f %s", s.Name, s.V[n], s.Unit))
		}
	}
	if len(lit) > 0 {
		list = append([]string{"Lit: " + strings.Join(lit, ", ")}, list...)
	}
	return strings.Join(list, " · ")
}
