package judge

import (
	"fmt"
	"strconv"
	"strings"

	"steadyneedle/sim/board"
)

// text is a sentence with numbers to be filled in: parts[0] cells[0] parts[1] cells[1] … parts[n].
type text struct {
	parts []string
	cells []int
	units []string
}

// parseText splits a sentence at its {name}s.
func parseText(s string, b *board.Board) (text, error) {
	var t text
	for {
		open := strings.IndexByte(s, '{')
		if open < 0 {
			t.parts = append(t.parts, s)
			return t, nil
		}
		end := strings.IndexByte(s[open:], '}')
		if end < 0 {
			return t, fmt.Errorf("expected: a { has no }")
		}
		name := s[open+1 : open+end]
		cell, err := b.NeedCell(name)
		if err != nil {
			return t, fmt.Errorf("expected: %w", err)
		}
		if len(t.cells) == maxNames {
			return t, fmt.Errorf("expected: more than %d names", maxNames)
		}
		t.parts = append(t.parts, s[:open])
		t.cells, t.units = append(t.cells, cell), append(t.units, b.Unit(cell))
		s = s[open+end+1:]
	}
}

// fill puts the numbers in.
func (t *text) fill(numbers []float64) string {
	var s strings.Builder
	for i := range t.cells {
		s.WriteString(t.parts[i])
		s.WriteString(Number(numbers[i], t.units[i]))
	}
	s.WriteString(t.parts[len(t.parts)-1])
	return s.String()
}

// decimals that a unit is worth on a sheet; two for a share.
func decimals(unit string) int {
	switch unit {
	case "psi", "s", "inHg", "V", "in", "%", "turns":
		return 1
	case "":
		return 2
	}
	return 0
}

// Number writes a number as a sheet does: sensibly rounded, with its unit.
func Number(v float64, unit string) string {
	s := strconv.FormatFloat(v, 'f', decimals(unit), 64)
	if strings.IndexByte(s, '.') >= 0 {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		s = "0"
	}
	if unit == "" {
		return s
	}
	return s + " " + unit
}
