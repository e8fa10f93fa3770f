package input

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Map says what the axes and buttons of a game-pad work.
type Map struct {
	Axes    []AxisMap
	Buttons []ButtonMap
}

// AxisMap lets one axis work a control over its whole travel.
type AxisMap struct {
	Number   int
	Control  string
	From, To float64 // readings at the control's least and greatest position, −1 to 1; From > To inverts
	Dead     float64 // share of the travel at either end that counts as the end itself, below 0.5
}

// ButtonMap lets one button work a control, or a key of the keyboard.
type ButtonMap struct {
	Number       int
	Control, Key string // one of them
}

// ParseMap reads a map as it stands in the settings: entries parted by semicolons, such as
//
//	axis 2 throttle dead=0.05; axis 5 discharge1 from=1 to=-1; button 0 idle_button; button 1 key=Tab
//
// An axis is read from −1 to 1 unless from and to say otherwise; invert turns it round.
func ParseMap(text string) (Map, error) {
	var m Map
	for i, entry := range strings.Split(text, ";") {
		words := strings.Fields(entry)
		if len(words) == 0 {
			continue
		}
		if err := m.entry(words); err != nil {
			return Map{}, fmt.Errorf("entry %d, %q: %w", i+1, strings.TrimSpace(entry), err)
		}
	}
	return m, nil
}

func (m *Map) entry(words []string) error {
	if len(words) < 3 || words[0] != "axis" && words[0] != "button" {
		return fmt.Errorf("expected axis NUMBER CONTROL or button NUMBER CONTROL")
	}
	n, err := strconv.Atoi(words[1])
	if err != nil || n < 0 || n > 63 {
		return fmt.Errorf("found %q, expected a number from 0 to 63", words[1])
	}
	if words[0] == "button" {
		return m.button(n, words[2:])
	}
	return m.axis(n, words[2], words[3:])
}

func (m *Map) button(n int, words []string) error {
	if len(words) > 1 {
		return fmt.Errorf("found %q, expected nothing more", words[1])
	}
	b := ButtonMap{Number: n, Control: words[0]}
	if key, ok := strings.CutPrefix(words[0], "key="); ok {
		b.Control, b.Key = "", key
		if key == "" {
			return fmt.Errorf("expected the name of a key after key=")
		}
	}
	m.Buttons = append(m.Buttons, b)
	return nil
}

func (m *Map) axis(n int, control string, words []string) error {
	a := AxisMap{Number: n, Control: control, From: -1, To: 1}
	if strings.Contains(control, "=") {
		return fmt.Errorf("found %q, expected the name of a control", control)
	}
	for _, w := range words {
		if w == "invert" {
			a.From, a.To = a.To, a.From
			continue
		}
		name, value, _ := strings.Cut(w, "=")
		v, err := strconv.ParseFloat(value, 64)
		if err != nil || v != v {
			return fmt.Errorf("found %q, expected from=, to= or dead= with a number, or invert", w)
		}
		switch {
		case name == "from" && v >= -1 && v <= 1:
			a.From = v
		case name == "to" && v >= -1 && v <= 1:
			a.To = v
		case name == "dead" && v >= 0 && v < 0.5:
			a.Dead = v
		default:
			return fmt.Errorf("found %q, expected from= and to= between -1 and 1, dead= from 0 to below 0.5", w)
		}
	}
	if math.Abs(a.From-a.To) < 0.05 {
		return fmt.Errorf("from and to are the same, expected a range")
	}
	m.Axes = append(m.Axes, a)
	return nil
}

// Share is the control's share of travel, 0 to 1, for a reading of the axis.
func (a *AxisMap) Share(reading float64) float64 {
	s := (reading - a.From) / (a.To - a.From)
	s = (s - a.Dead) / (1 - 2*a.Dead)
	return max(0, min(1, s))
}
