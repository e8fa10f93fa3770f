package report

import (
	"fmt"
	"math"

	"steadyneedle/sim/attempt"
	"steadyneedle/sim/world"
)

// shown are the channels of an attempt that a timeline may show, under the names that people use. A %d
// stands for the line's number. Lamps and valves are shares, 0 to 1.
var shown = []struct{ channel, name, unit string }{
	{"line%d_gauge", "Discharge %d", "psi"},
	{"intake_gauge", "Intake", "psi"},
	{"tach", "Engine speed", "rpm"},
	{"line%d_gpm", "Flow", "gpm"},
	{"pump_f", "Pump water", "°F"},
	{"amber", "Relief lamp", "lamp"},
	{"ok_to_pump", "OK-to-pump lamp", "lamp"},
	{"throttle_ready", "Throttle-ready lamp", "lamp"},
	{"intake_open_lamp", "Intake-open lamp", "lamp"},
	{"throttle", "Throttle", "open"},
	{"discharge%d", "Discharge %d valve", "open"},
	{"intake", "Intake valve", "open"},
	{"tank_to_pump", "Tank to pump", "open"},
	{"tank_fill", "Tank fill", "open"},
	{"recirculation", "Recirculation", "open"},
	{"relief_wheel", "Relief wheel", "open"},
	{"hydrant_valve", "Hydrant valve", "open"},
}

// allSeries samples the channels that this attempt has.
func allSeries(a *attempt.Attempt) []Series {
	line := a.Drill.Setup.Ground.Discharge
	var list []Series
	for _, c := range shown {
		v := channel(&a.Series, numbered(c.channel, line))
		if v == nil {
			continue
		}
		s := Series{Name: numbered(c.name, line), Unit: c.unit, V: sampled(&a.Series, v)}
		if c.channel == "relief_wheel" {
			asShare(s.V, 10) // turns of its wheel
		}
		list = append(list, s)
	}
	return list
}

func numbered(pattern string, n int) string {
	for i := range pattern {
		if pattern[i] == '%' {
			return fmt.Sprintf(pattern, n)
		}
	}
	return pattern
}

func asShare(v []float64, most float64) {
	for i := range v {
		v[i] /= most
	}
}

// sampled takes a channel once a second. What is not seen leaves gaps.
func sampled(s *attempt.Series, v []float64) []float64 {
	var out []float64
	for i, at := range s.At {
		n := int(at / world.TicksPerSecond)
		if n < len(out) {
			continue
		}
		for len(out) < n {
			out = append(out, math.NaN())
		}
		out = append(out, v[i])
	}
	return out
}
