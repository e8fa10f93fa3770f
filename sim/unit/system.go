package unit

import "strconv"

// System is the one setting that says how quantities are written out, everywhere at once.
type System uint8

const (
	US System = iota // psi, gpm, ft, °F: what the model's edges, files and rules speak
	SI               // kPa, L/min, m, °C
)

// String returns the system's name as settings write it.
func (s System) String() string {
	if s == SI {
		return "si"
	}
	return "us"
}

// SystemNamed finds a system by its name.
func SystemNamed(name string) (System, bool) {
	switch name {
	case US.String():
		return US, true
	case SI.String():
		return SI, true
	}
	return US, false
}

// pair is one unit of the trade and its SI twin: twin = (trade − zero) × factor. Decimals are
// as many as an instrument or a report of the trade shows.
type pair struct {
	trade, si     string
	factor, zero  float64
	tradeDP, siDP int
}

var pairs = [...]pair{
	{"psi", "kPa", PaPerPSI / 1000, 0, 1, 0},
	{"inHg", "kPa", PaPerInHg / 1000, 0, 1, 1},
	{"gpm", "L/min", M3PerGal * 1000, 0, 0, 0},
	{"gal", "L", M3PerGal * 1000, 0, 0, 0},
	{"ft", "m", MPerFt, 0, 1, 1},
	{"in", "mm", MPerIn * 1000, 0, 2, 0},
	{"ft/s", "m/s", MPerFt, 0, 1, 2},
	{"°F", "°C", KPerF, 32, 0, 0},
	{"lbf", "N", NPerLbf, 0, 0, 0},
	{"hp", "kW", WPerHP / 1000, 0, 0, 0},
	{"lb-ft", "N·m", NmPerLbFt, 0, 0, 0},
	{"rpm", "rpm", 1, 0, 0, 0},
	{"s", "s", 1, 0, 1, 1},
	{"V", "V", 1, 0, 1, 1},
	{"deg", "deg", 1, 0, 0, 0},
}

// find returns the pair of a unit of the trade; an unknown unit is its own twin.
func find(trade string) pair {
	for _, p := range pairs {
		if p.trade == trade {
			return p
		}
	}
	return pair{trade: trade, si: trade, factor: 1, tradeDP: 2, siDP: 2}
}

// Unit is how the system names the trade's unit: "kPa" for "psi". A unit it does not know stays.
func (s System) Unit(trade string) string {
	if s == SI {
		return find(trade).si
	}
	return trade
}

// From turns a value in the trade's unit into the system's.
func (s System) From(v float64, trade string) float64 {
	if s == US {
		return v
	}
	p := find(trade)
	return float64((v - p.zero) * p.factor)
}

// To turns a value in the system's unit, as a person types it, back into the trade's.
func (s System) To(v float64, trade string) float64 {
	if s == US {
		return v
	}
	p := find(trade)
	return v/p.factor + p.zero
}

// Typed is To for a number that a person read off a gauge: on a compound gauge a number below zero is
// vacuum, in inHg as signals carry it.
func (s System) Typed(v float64, trade string) float64 {
	if trade == "psi" && v < 0 {
		trade = "inHg"
	}
	return s.To(v, trade)
}

// Span turns a difference, such as a tolerance or a rise, into the system's unit.
func (s System) Span(v float64, trade string) float64 {
	if s == US {
		return v
	}
	return float64(v * find(trade).factor)
}

// Compound splits the needle of a compound gauge, psi above zero and inHg below (negative, as signals
// carry it), into the system's number and unit.
func (s System) Compound(needle float64) (float64, string) {
	trade := "psi"
	if needle < 0 {
		trade = "inHg"
	}
	return s.From(needle, trade), s.Unit(trade)
}

// Text writes a value given in the trade's unit, with its unit: "134.8 psi", "929 kPa".
func (s System) Text(v float64, trade string) string {
	return s.text(s.From(v, trade), trade)
}

// SpanText writes a difference given in the trade's unit, with its unit.
func (s System) SpanText(v float64, trade string) string {
	return s.text(s.Span(v, trade), trade)
}

func (s System) text(v float64, trade string) string {
	p := find(trade)
	dp := p.tradeDP
	if s == SI {
		dp = p.siDP
	}
	n := strconv.FormatFloat(v, 'f', dp, 64)
	if u := s.Unit(trade); u != "" {
		return n + " " + u
	}
	return n
}
