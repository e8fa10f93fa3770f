package scenarios

import (
	"fmt"
	"math"
	"strconv"

	"steadyneedle/scenarios/expression"
	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/cond"
	"steadyneedle/sim/drill"
	"steadyneedle/sim/world"
)

// valueName is the pseudo-signal that stands after the world's: the value of the action under judgment.
const valueName = "value"

// scope is what names mean in one drill's expressions. The table is: the world's signals, value, then
// the drill's values.
type scope struct {
	signals  []world.Signal
	controls []world.Control
	values   []drill.Value
	signal   map[string]int
	control  map[string]world.ControlID
	names    []string // of everything an expression may use, for suggestions
}

func newScope(setup *world.Setup) *scope {
	s := &scope{signals: world.SignalsOf(setup), controls: world.ControlsOf(setup), signal: map[string]int{}, control: map[string]world.ControlID{}}
	for i, x := range s.signals {
		s.signal[x.Name] = i
		s.names = append(s.names, x.Name)
	}
	for i, c := range s.controls {
		s.control[c.Name] = world.ControlID(i)
	}
	return s
}

// add appends a value; later expressions may use it.
func (s *scope) add(v drill.Value) {
	s.signal[v.Name] = len(s.signals) + 1 + len(s.values)
	s.values = append(s.values, v)
	s.names = append(s.names, v.Name)
}

// truth resolves names for rules, steps, crew and values.
func (s *scope) truth(name string) (int, bool, string) {
	if c, ok := s.control[name]; ok && s.controls[c].Missing != "" {
		return 0, false, fmt.Sprintf("%s: %s, expected something that is there", name, s.controls[c].Missing)
	}
	if i, ok := s.signal[name]; ok {
		return i, true, ""
	}
	if name == valueName {
		return 0, false, "value is the value of the action under judgment, expected only in when, need and unless of guard and said rules with on"
	}
	return 0, false, fmt.Sprintf("unknown name %q, %s", name, reader.DidYouMean(name, s.names))
}

// judged resolves names where an action is being judged.
func (s *scope) judged(name string) (int, bool, string) {
	if name == valueName {
		return len(s.signals), true, ""
	}
	return s.truth(name)
}

// perceived resolves names for operators: what a person can see and hear, and values of the drill that
// follow from such alone.
func (s *scope) perceived(name string) (int, bool, string) {
	i, ok, why := s.truth(name)
	if !ok {
		return 0, false, why
	}
	if i < len(s.signals) {
		if s.signals[i].Seen == world.Nowhere {
			return 0, false, fmt.Sprintf("%s is truth that no person sees or hears, expected what can be perceived", name)
		}
		return i, true, ""
	}
	v := s.values[i-len(s.signals)-1]
	if _, faults := expression.Compile(v.Is.Text, expression.Number, s.perceived); len(faults) > 0 {
		return 0, false, fmt.Sprintf("%s cannot be known by a person: %s", name, faults[0].Msg)
	}
	return i, true, ""
}

// compile makes the program of an expression; nil where none was given or it has faults.
func (l *loading) compile(t reader.Text, want expression.Want, resolve expression.Resolve) *cond.Program {
	if !t.Given() {
		return nil
	}
	p, faults := expression.Compile(t.Value, want, resolve)
	for _, f := range faults {
		l.at(t, f.Offset, "%s", f.Msg)
	}
	return p
}

// controlNamed looks a control up; a name that is not there gives a fault.
func (l *loading) controlNamed(s *scope, t reader.Text) (world.ControlID, *world.Control, bool) {
	if !t.Given() {
		return 0, nil, false // faulted already
	}
	id, ok := s.control[t.Value]
	if !ok {
		names := make([]string, len(s.controls))
		for i := range s.controls {
			names[i] = s.controls[i].Name
		}
		l.at(t, 0, "unknown control %q, %s", t.Value, reader.DidYouMean(t.Value, names))
		return 0, nil, false
	}
	return id, &s.controls[id], true
}

// fitted looks a control up that is to be worked, set or judged; one that the apparatus does not have
// gives a fault too.
func (l *loading) fitted(s *scope, t reader.Text) (world.ControlID, *world.Control, bool) {
	id, c, ok := l.controlNamed(s, t)
	if ok && c.Missing != "" {
		l.at(t, 0, "%s: %s, expected something that is there", c.Name, c.Missing)
		return 0, nil, false
	}
	return id, c, ok
}

// option finds the number of a choice's option.
func option(c *world.Control, text string) (float64, bool) {
	for i, o := range c.Options {
		if o == text {
			return c.Min + float64(i), true
		}
	}
	return 0, false
}

// setting compiles what a control is to be brought to: an option's name or an expression. A plain
// number must be within the control's range.
func (l *loading) setting(t reader.Text, c *world.Control, resolve expression.Resolve) *cond.Program {
	if !t.Given() {
		return nil
	}
	if v, ok := option(c, t.Value); ok {
		return expression.Constant(t.Value, v)
	}
	if v, err := strconv.ParseFloat(t.Value, 64); err == nil {
		if l.inRange(t, c, v) {
			return expression.Constant(t.Value, v)
		}
		return nil
	}
	p, faults := expression.Compile(t.Value, expression.Number, resolve)
	for _, f := range faults {
		msg := f.Msg
		if len(c.Options) > 0 {
			msg += "; " + c.Name + " takes " + optionList(c)
		}
		l.at(t, f.Offset, "%s", msg)
	}
	return p
}

func (l *loading) inRange(t reader.Text, c *world.Control, v float64) bool {
	if v >= c.Min && v <= c.Max && (v == math.Floor(v) || !c.Whole()) {
		return true
	}
	want := fmt.Sprintf("%v to %v", c.Min, c.Max)
	if len(c.Options) > 0 {
		want = optionList(c)
	} else if c.Kind == world.Switch {
		want = fmt.Sprintf("%v or %v", c.Min, c.Max)
	} else if c.Unit != "" {
		want += " " + c.Unit
	}
	l.at(t, 0, "%s: found %v, expected %s", c.Name, v, want)
	return false
}

func optionList(c *world.Control) string {
	out := ""
	for i, o := range c.Options {
		if i > 0 {
			out += ", "
		}
		out += fmt.Sprintf("%q", o)
	}
	return out
}
