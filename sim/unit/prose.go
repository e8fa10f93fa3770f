package unit

import (
	"strconv"
	"strings"
)

// Prose rewrites every quantity of the trade that stands in a sentence into the system: in SI
// "6 to 8 ft off the curb" becomes "1.8 to 2.4 m off the curb", "150 ± 10 psi" becomes "1034 ± 69 kPa".
// Numbers without a unit, and the bare sizes by which hose is called, stay. In US text is returned as
// it is.
func (s System) Prose(text string) string {
	if s == US || text == "" {
		return text
	}
	words := strings.Split(text, " ")
	for i := 1; i < len(words); i++ {
		name, rest := cutUnit(words, i)
		if name == "" {
			continue
		}
		span := i >= 2 && words[i-2] == "±"
		if !s.rewrite(&words[i-1], name, span) {
			continue
		}
		words[i] = s.Unit(name) + rest
		if i >= 3 && joins(words[i-2]) {
			s.rewrite(&words[i-3], name, false)
		}
	}
	return strings.Join(words, " ")
}

// joins reports whether a word stands between two numbers that share a unit.
func joins(word string) bool {
	switch word {
	case "to", "and", "or", "±", "–":
		return true
	}
	return false
}

// cutUnit is the trade's unit that word i is, and what follows it: a full stop, a bracket. "in" is the
// unit only where hose, a tip or the end of a phrase follows, for it is a word besides.
func cutUnit(words []string, i int) (name, rest string) {
	bare := strings.TrimRight(words[i], ".,;:)!?")
	rest = words[i][len(bare):]
	if p := find(bare); p.trade != bare || p.si == p.trade {
		return "", ""
	}
	if bare != "in" || rest != "" || i == len(words)-1 {
		return bare, rest
	}
	switch strings.TrimRight(words[i+1], ".,;:)!?") {
	case "hose", "tip", "line", "lines", "supply", "nozzle", "outlet", "outlets", "intake", "hard", "suction":
		return bare, rest
	}
	return "", ""
}

// rewrite puts the system's number in place of a word that is one, or two with a dash between.
func (s System) rewrite(word *string, name string, span bool) bool {
	bare := strings.TrimLeft(*word, "(")
	head := (*word)[:len(*word)-len(bare)]
	parts := strings.Split(bare, "–")
	for i, part := range parts {
		v, ok := number(part)
		if !ok {
			return false
		}
		if span {
			v = s.Span(v, name)
		} else {
			v = s.From(v, name)
		}
		parts[i] = strings.Replace(strconv.FormatFloat(v, 'f', find(name).siDP, 64), "-", "−", 1)
	}
	*word = head + strings.Join(parts, "–")
	return true
}

var eighths = map[string]float64{"⅛": 0.125, "¼": 0.25, "⅜": 0.375, "½": 0.5, "⅝": 0.625, "¾": 0.75, "⅞": 0.875}

// number reads a number as the trade writes it: 2½, −9, 63.5.
func number(word string) (float64, bool) {
	sign := 1.0
	for _, minus := range []string{"−", "-"} {
		if cut, ok := strings.CutPrefix(word, minus); ok {
			word, sign = cut, -1
		}
	}
	part := 0.0
	for i, r := range word {
		if f, ok := eighths[string(r)]; ok && i+len(string(r)) == len(word) {
			part, word = f, word[:i]
			break
		}
	}
	if word == "" {
		return float64(sign * part), part > 0
	}
	for _, r := range word {
		if (r < '0' || r > '9') && r != '.' {
			return 0, false
		}
	}
	v, err := strconv.ParseFloat(word, 64)
	return float64(sign * (v + part)), err == nil
}
