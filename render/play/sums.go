package play

import (
	"fmt"
	"math"
	"strconv"

	"steadyneedle/render/report"
	"steadyneedle/render/view"
	"steadyneedle/sim/sums"
	"steadyneedle/sim/unit"
)

// Sums is the calculation sheet as written down so far; empty for a drill without one.
func (p *Play) Sums() []view.Sum {
	c := p.a.Drill.Calculation
	if c == nil {
		return nil
	}
	given := sums.Entries(p.a)
	sys := p.info.Units
	value := func(id, unit string) float64 {
		v, ok := given[id]
		if !ok {
			return math.NaN()
		}
		return sys.From(v, unit)
	}
	var list []view.Sum
	limit := sys.From(sums.Limit(p.a), "psi")
	for _, t := range c.Terms {
		s := view.Sum{ID: t.ID, Title: sys.Prose(t.Title), Unit: sys.Unit(t.Unit), Value: value(t.ID, t.Unit)}
		if t.Unit == "psi" {
			s.Limit = limit
		}
		list = append(list, s)
	}
	return append(list, view.Sum{ID: sums.Total, Title: "Pump discharge pressure", Unit: sys.Unit("psi"), Value: value(sums.Total, "psi"), Total: true, Limit: limit})
}

// SumsMethod says how the department rounds, and what its method is written in.
func (p *Play) SumsMethod() string {
	c, sys := p.a.Drill.Calculation, p.info.Units
	if c == nil {
		return ""
	}
	text := "The result is not rounded."
	switch {
	case sys == unit.SI && c.RoundKPA > 0:
		text = fmt.Sprintf("The result is rounded to %g kPa.", c.RoundKPA)
	case c.RoundPSI > 0:
		text = fmt.Sprintf("The result is rounded to %s.", strconv.FormatFloat(math.Round(sys.From(c.RoundPSI, "psi")*10)/10, 'f', -1, 64)+" "+sys.Unit("psi"))
	}
	return text + " Say it when you have it: this sheet is yours alone."
}

// WriteSum writes a term down, in the unit that is shown; NaN takes it back.
func (p *Play) WriteSum(id string, v float64) {
	c := p.a.Drill.Calculation
	if c == nil {
		return
	}
	unit := "psi"
	for _, t := range c.Terms {
		if t.ID == id {
			unit = t.Unit
		}
	}
	if !math.IsNaN(v) {
		v = p.info.Units.Typed(v, unit)
	}
	sums.Write(p.a, id, v)
}

// sheet is the calculation with its proof, once.
func (p *Play) sums() *report.Sums {
	if !p.a.Finished() {
		return nil
	}
	if p.summed == nil {
		s := report.SumsOf(p.a)
		p.summed = &s
	}
	return *p.summed
}
