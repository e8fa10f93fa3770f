package scenarios

import (
	"slices"
	"strings"

	"steadyneedle/scenarios/expression"
	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/world"
)

// verbs are the keys that name a move, with the other keys that go with each: those needed first, then
// after the bar those allowed. Every move may have if.
var verbs = map[string]struct {
	verb operator.Verb
	keys string
}{
	"go":      {operator.Go, "|"},
	"set":     {operator.Set, "to|over_s"},
	"turn":    {operator.Turn, "to over_s|until"},
	"bring":   {operator.Bring, "watch to within|over_s"},
	"wait":    {operator.Wait, "|give_up_s"},
	"pause_s": {operator.Wait, "|"},
	"say":     {operator.Tell, "|value"},
	"press":   {operator.Press, "|over_s until give_up_s"},
}

const verbNames = "go, set, turn, bring, wait, pause_s, say or press"

func (w *writer) moves(list []moveFile) []operator.Move {
	var out []operator.Move
	for i := range list {
		if !w.has(&w.drill.Setup.Rig, list[i].V.OnlyWith) {
			continue
		}
		if m, ok := w.move(&list[i]); ok {
			out = append(out, m)
		}
	}
	return out
}

// verbOf finds which verb a move has, and checks the keys beside it.
func (w *writer) verbOf(n *reader.Node) (string, bool) {
	verb := ""
	for _, k := range n.Keys {
		if _, ok := verbs[k.Text]; !ok {
			continue
		}
		if verb != "" {
			w.fail(k, "move: has both %s and %s, expected one of %s", verb, k.Text, verbNames)
			return "", false
		}
		verb = k.Text
	}
	if verb == "" {
		w.fail(n, "move: names no verb, expected one of %s", verbNames)
		return "", false
	}
	need, may, _ := strings.Cut(verbs[verb].keys, "|")
	good := true
	for _, key := range strings.Fields(need) {
		if n.Get(key) == nil {
			w.fail(n, "%s: lacks %s, expected %s", verb, key, strings.Join(strings.Fields(need), ", "))
			good = false
		}
	}
	allowed := strings.Fields(verb + " if " + need + " " + may)
	for _, k := range n.Keys {
		if !slices.Contains(allowed, k.Text) && slices.Contains(moveKeys, k.Text) {
			w.fail(k, "%s: does not use %s, expected %s", verb, k.Text, strings.Join(allowed[1:], ", "))
			good = false
		}
	}
	return verb, good
}

var moveKeys = []string{"to", "until", "watch", "value", "within", "over_s", "give_up_s"}

func (w *writer) move(f *moveFile) (operator.Move, bool) {
	m := &f.V
	name, ok := w.verbOf(f.Node)
	if !ok {
		return operator.Move{}, false
	}
	sees := w.sees()
	out := operator.Move{
		Verb: verbs[name].verb, Line: f.Node.Line, OverS: m.OverS, Within: m.Within, GiveUpS: m.GiveUpS, WaitS: m.PauseS,
		Until: w.compile(m.Until, expression.Condition, sees),
		Watch: w.compile(m.Watch, expression.Number, sees),
		If:    w.compile(m.If, expression.Condition, sees),
	}
	switch name {
	case "go":
		out.Place = w.place(m.Go)
	case "wait":
		out.Until = w.compile(m.Wait, expression.Condition, sees)
	case "say":
		return out, w.say(m, &out)
	case "set":
		return out, w.handle(m.Set, m.To, &out)
	case "turn":
		return out, w.handle(m.Turn, m.To, &out)
	case "bring":
		ok := w.handle(m.Bring, reader.Text{}, &out)
		out.To = w.compile(m.To, expression.Number, sees) // of the needle, not of the control
		return out, ok
	case "press":
		if m.OverS == 0 && !m.Until.Given() {
			w.fail(f.Node, "press: has no end, expected over_s or until")
		}
		return out, w.press(m.Press, &out)
	}
	return out, true
}

// handle looks up a control that a hand can bring somewhere.
func (w *writer) handle(t, to reader.Text, out *operator.Move) bool {
	id, c, ok := w.fitted(w.scope, t)
	if !ok {
		return false
	}
	out.Control = id
	switch {
	case c.Kind == world.Speech, c.Kind == world.Gesture:
		w.at(t, 0, "%s is said or shown, expected a control (or use say)", c.Name)
		return false
	case c.Kind == world.Walk:
		w.at(t, 0, "%s is not turned, expected a control (or use go)", c.Name)
		return false
	case c.By == world.Nowhere && !w.allSeeing:
		w.at(t, 0, "%s is not in anybody's reach, expected a control that the operator works", c.Name)
		return false
	}
	out.To = w.setting(to, c, w.sees())
	return true
}

func (w *writer) press(t reader.Text, out *operator.Move) bool {
	id, c, ok := w.fitted(w.scope, t)
	if ok && c.Kind != world.Push {
		w.at(t, 0, "press: %s is not pressed, expected a push button (or use set)", c.Name)
		return false
	}
	out.Control = id
	return ok
}

func (w *writer) say(m *move, out *operator.Move) bool {
	id, c, ok := w.fitted(w.scope, m.Say)
	if !ok {
		return false
	}
	out.Control = id
	switch {
	case c.Kind != world.Speech && c.Kind != world.Gesture:
		w.at(m.Say, 0, "say: %s is not said or shown, expected a phrase or gesture (or use set)", c.Name)
		return false
	case c.Speaker != world.Candidate && !w.allSeeing:
		w.at(m.Say, 0, "say: %s is for the %s, expected something for the candidate", c.Name, c.Speaker)
		return false
	case c.CarriesNumber() != m.Value.Given():
		w.at(m.Say, 0, "say: %s", numberNeed(c))
		return false
	}
	out.To = w.setting(m.Value, c, w.sees())
	return true
}
