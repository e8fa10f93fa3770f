package scenarios

import (
	"sort"
	"strings"

	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/judge"
)

// ruleKind says which keys a kind of rule uses beside those that all have.
type ruleKind struct {
	kind judge.Kind
	keys string   // all that it may have
	need []string // each of these; "a|b" is a choice, "a,b|c" a choice of groups
}

var ruleKinds = map[string]ruleKind{
	"order":   {judge.Order, "when first unless", []string{"when", "first"}},
	"guard":   {judge.Guard, "on when need for_s unless", []string{"on|when"}},
	"never":   {judge.Never, "when for_s unless", []string{"when"}},
	"band":    {judge.Band, "while value target tolerance for_s grace unless", []string{"value", "target", "tolerance"}},
	"rate":    {judge.Rate, "on min_travel_s span when unless", []string{"on,min_travel_s,span|when"}},
	"due":     {judge.Due, "from within_s by done unless", []string{"done", "within_s|by"}},
	"answer":  {judge.Answer, "on target tolerance by unless", []string{"on", "target", "tolerance"}},
	"outcome": {judge.Outcome, "at test unless", []string{"at", "test"}},
	"said":    {judge.Said, "by need on when unless", []string{"by,need|on"}},
}

// of every rule, whatever its kind.
const ruleKeys = " use id kind severity title why expected found show show_unit merge_s absorbs absorb_for_s once mended only_with "

var severities = map[string]judge.Severity{"minor": judge.Minor, "error": judge.Error, "unsafe": judge.Unsafe}

// kindOf reads the kind of a rule and checks that its keys fit.
func (l *loading) kindOf(n *reader.Node, t reader.Text) (judge.Kind, bool) {
	k, ok := ruleKinds[t.Value]
	if !ok {
		if t.Given() {
			l.at(t, 0, "kind: found %q, %s", t.Value, reader.DidYouMean(t.Value, kindNames()))
		}
		return 0, false
	}
	allowed := ruleKeys + k.keys + " "
	for _, key := range n.Keys {
		if !strings.Contains(allowed, " "+key.Text+" ") && isRuleKey(key.Text) {
			l.fail(key, "%s: a rule of kind %s does not use it, expected %s", key.Text, t.Value, strings.Join(strings.Fields(k.keys), ", "))
		}
	}
	for _, need := range k.need {
		if !hasOne(n, need) {
			l.fail(n, "a rule of kind %s lacks %s", t.Value, inWords(need))
		}
	}
	return k.kind, true
}

func hasOne(n *reader.Node, need string) bool {
	for _, group := range strings.Split(need, "|") {
		all := true
		for _, key := range strings.Split(group, ",") {
			all = all && n.Get(key) != nil
		}
		if all {
			return true
		}
	}
	return false
}

func inWords(need string) string {
	groups := strings.Split(need, "|")
	for i, g := range groups {
		groups[i] = strings.ReplaceAll(g, ",", " with ")
	}
	return "a key, expected " + strings.Join(groups, ", or ")
}

// isRuleKey is false for a key that no rule has: that is a fault already.
func isRuleKey(key string) bool {
	for _, k := range ruleKinds {
		if strings.Contains(" "+k.keys+" ", " "+key+" ") {
			return true
		}
	}
	return false
}

func kindNames() []string {
	var list []string
	for name := range ruleKinds {
		list = append(list, name)
	}
	sort.Strings(list)
	return list
}
