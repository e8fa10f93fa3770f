package input

import (
	"math"
	"reflect"
	"strings"
	"testing"
)

func TestParseMap(t *testing.T) {
	got, err := ParseMap("axis 2 throttle dead=0.05; axis 5 discharge1 from=1 to=-1 ; ; button 0 idle_button; button 1 key=Tab; axis 0 intake invert;")
	want := Map{
		Axes:    []AxisMap{{2, "throttle", -1, 1, 0.05}, {5, "discharge1", 1, -1, 0}, {0, "intake", 1, -1, 0}},
		Buttons: []ButtonMap{{Number: 0, Control: "idle_button"}, {Number: 1, Key: "Tab"}},
	}
	if err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("%+v, %v", got, err)
	}
	if m, err := ParseMap(""); err != nil || m.Axes != nil || m.Buttons != nil {
		t.Errorf("nothing: %+v, %v", m, err)
	}
	for text, say := range map[string]string{
		"axis 2":                           "expected axis NUMBER CONTROL",
		"lever 2 throttle":                 "expected axis NUMBER CONTROL",
		"axis two throttle":                `found "two"`,
		"axis -1 throttle":                 "from 0 to 63",
		"axis 1 throttle; axis 2 x dead=1": `entry 2, "axis 2 x dead=1"`,
		"axis 1 throttle from=2":           "between -1 and 1",
		"axis 1 throttle from=NaN":         "expected from=",
		"axis 1 throttle from=0.5 to=0.5":  "expected a range",
		"axis 1 throttle up":               "or invert",
		"axis 1 from=1 throttle":           "name of a control",
		"button 1 idle_button now":         "nothing more",
		"button 1 key=":                    "name of a key",
	} {
		if _, err := ParseMap(text); err == nil || !strings.Contains(err.Error(), say) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%q: %v, want one line with %s", text, err, say)
		}
	}
}

func TestShare(t *testing.T) {
	for _, c := range []struct {
		m             AxisMap
		reading, want float64
	}{
		{AxisMap{From: -1, To: 1}, -1, 0}, {AxisMap{From: -1, To: 1}, 0, 0.5}, {AxisMap{From: -1, To: 1}, 1, 1},
		{AxisMap{From: 1, To: -1}, 1, 0}, {AxisMap{From: 1, To: -1}, -0.5, 0.75},
		{AxisMap{From: 0, To: 1}, -0.3, 0}, {AxisMap{From: 0, To: 0.8}, 1, 1},
		{AxisMap{From: -1, To: 1, Dead: 0.1}, -0.8, 0}, {AxisMap{From: -1, To: 1, Dead: 0.1}, 0.8, 1}, {AxisMap{From: -1, To: 1, Dead: 0.1}, 0, 0.5},
	} {
		if got := c.m.Share(c.reading); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%+v at %g: %g, want %g", c.m, c.reading, got, c.want)
		}
	}
}
