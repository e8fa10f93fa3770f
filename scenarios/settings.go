package scenarios

import (
	"strconv"

	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/world"
)

// settings reads a mapping of controls to plain values: a number, an option's name, true or false.
func (l *loading) settings(n *reader.Node, s *scope, into map[string]float64) {
	if n == nil {
		return
	}
	if n.Kind != reader.Mapping {
		l.fail(n, "expected controls with their values, like throttle: 0.5")
		return
	}
	for i, k := range n.Keys {
		var name, to reader.Text
		name.FromNode(k, l.fail)
		to.FromNode(n.Items[i], l.fail)
		if !to.Given() {
			continue
		}
		_, c, ok := l.fitted(s, name)
		if !ok {
			continue
		}
		if v, ok := l.plainSetting(to, c); ok {
			into[c.Name] = v
		}
	}
}

func (l *loading) plainSetting(t reader.Text, c *world.Control) (float64, bool) {
	if c.Kind == world.Speech || c.Kind == world.Gesture {
		l.at(t, 0, "%s is said or shown, expected a control that stands somewhere", c.Name)
		return 0, false
	}
	if v, ok := option(c, t.Value); ok {
		return v, true
	}
	switch t.Value {
	case "true":
		return c.Max, c.Max == 1
	case "false":
		return c.Min, c.Min == 0
	}
	v, err := strconv.ParseFloat(t.Value, 64)
	if err != nil {
		want := "a number"
		if len(c.Options) > 0 {
			want = optionList(c)
		}
		l.at(t, 0, "%s: found %q, expected %s", c.Name, t.Value, want)
		return 0, false
	}
	return v, l.inRange(t, c, v)
}
