package view

import (
	"fmt"
	"strings"

	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// Setting says where a control that nobody at the panel works stands, in words.
func Setting(c *world.Control, v float64, units unit.System) string {
	switch {
	case len(c.Options) > 0:
		return c.Options[int(v-c.Min)]
	case c.Kind == world.Switch:
		if v == c.Start {
			return "no"
		}
		return "yes"
	case c.Unit != "":
		return units.Text(v, c.Unit)
	}
	return strings.Replace(fmt.Sprintf("%.0f %%", 100*(v-c.Start)/(c.Max-c.Start)), "-", "−", 1)
}

// Simulated lists the faults that are set in a world: what, and how. Where somebody stands in the street is no
// fault. planted are values, by control, that are not told of while they stand; it may be nil.
func Simulated(w *world.World, units unit.System, planted map[string]float64) []string {
	var list []string
	controls := w.Controls()
	for i := range controls {
		c := &controls[i]
		v := w.Hand(world.ControlID(i))
		if !c.Fails() || v == c.Start {
			continue
		}
		if p, ok := planted[c.Name]; ok && p == v {
			continue
		}
		text := c.Label
		if c.Kind != world.Switch {
			text += ": " + Setting(c, v, units)
		}
		list = append(list, text)
	}
	return list
}
