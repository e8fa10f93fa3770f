package play

import (
	"fmt"
	"math"
	"strings"

	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// In writes everything that is told from now on in a system of units: names of controls, what is said,
// the line's load, the sheet. The attempt itself, and so its recording, is the same in both.
func (p *Play) In(sys unit.System) *Play {
	p.info.Units = sys
	if sys == unit.US {
		return p
	}
	p.controls = append([]world.Control(nil), p.controls...)
	for i := range p.controls {
		c := &p.controls[i]
		c.Label = sys.Prose(c.Label)
		c.Options = append([]string(nil), c.Options...)
		for k := range c.Options {
			c.Options[k] = sys.Prose(c.Options[k])
		}
	}
	p.signals = append([]world.Signal(nil), p.signals...)
	for i := range p.signals {
		p.signals[i].Doc = sys.Prose(p.signals[i].Doc)
	}
	p.info.Title, p.info.Objective = sys.Prose(p.info.Title), sys.Prose(p.info.Objective)
	p.info.Load = load(&p.a.Scene.World.Setup().Ground.Line, sys)
	return p
}

// said writes the number that goes with a phrase.
func said(sys unit.System, v float64, trade string) string {
	if trade == "" || sys == unit.US {
		return strings.TrimSpace(fmt.Sprintf("%g %s", v, trade))
	}
	if trade == "psi" {
		var name string
		if v, name = sys.Compound(v); name != "" {
			return fmt.Sprintf("%.0f %s", v, name)
		}
	}
	return fmt.Sprintf("%g %s", math.Round(sys.From(v, trade)*10)/10, sys.Unit(trade))
}
