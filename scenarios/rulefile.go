package scenarios

import (
	"path"
	"sort"

	"steadyneedle/scenarios/reader"
)

// ruleFile is one rule as it is written: in a drill, or in a file of shared rules. Which of its keys
// belong to which kind stands in rulekinds.go.
type ruleFile struct {
	Use      reader.Text `file:"use"` // a shared rule; the other keys then replace its own
	ID       reader.Text `file:"id" need:"yes"`
	Kind     reader.Text `file:"kind" need:"yes"`
	Severity reader.Text `file:"severity" need:"yes"`
	Title    string      `file:"title" need:"yes"`
	Why      string      `file:"why" need:"yes"`
	Expected reader.Text `file:"expected" need:"yes"`
	Show     reader.Text `file:"show"`
	ShowUnit string      `file:"show_unit"`
	Found    []foundFile `file:"found" size:"1..32"` // which of several things was amiss

	On         reader.Words `file:"on"`
	When       reader.Text  `file:"when"`
	Need       reader.Text  `file:"need"`
	First      reader.Text  `file:"first"`
	While      reader.Text  `file:"while"`
	Unless     reader.Text  `file:"unless"`
	Mended     reader.Text  `file:"mended"` // of an error: later it was put right
	From       reader.Text  `file:"from"`
	By         reader.Text  `file:"by"`
	Done       reader.Text  `file:"done"`
	At         reader.Text  `file:"at"`
	Value      reader.Text  `file:"value"`
	Target     reader.Text  `file:"target"`
	Tolerance  reader.Text  `file:"tolerance"`
	ForS       float64      `file:"for_s" range:"0..3600"`
	WithinS    float64      `file:"within_s" range:"0..7200"`
	MergeS     float64      `file:"merge_s" range:"0..3600"`
	MinTravelS float64      `file:"min_travel_s" range:"0.1..120"`
	Span       float64      `file:"span" range:"0.01..1"`
	Grace      []graceFile  `file:"grace" size:"1..20"`
	Test       *testFile    `file:"test"`
	Absorbs    reader.Words `file:"absorbs"`
	AbsorbForS float64      `file:"absorb_for_s" range:"0..7200"`
	Once       bool         `file:"once"`
	OnlyWith   reader.Text  `file:"only_with"` // a part that not every apparatus has: without it the rule falls away
}

// foundFile is one thing that may have been amiss: {when: headlights == 0, say: headlights off}.
type foundFile struct {
	When reader.Text `file:"when" need:"yes"`
	Say  string      `file:"say" need:"yes"`
}

type graceFile struct {
	When reader.Text `file:"when" need:"yes"`
}

// testFile is a test of an outcome rule with its numbers: {name: relief-holds, rise_psi: 30}.
type testFile struct {
	name  reader.Text
	limit map[string]float64
	node  *reader.Node
}

// Expected says what a file may write.
func (t *testFile) Expected() string { return "a test, like {name: relief-holds, rise_psi: 30}" }

// FromNode reads the name, and every other key as a number.
func (t *testFile) FromNode(n *reader.Node, fail reader.Fail) {
	t.node, t.limit = n, map[string]float64{}
	if n.Kind != reader.Mapping || n.Get("name") == nil {
		fail(n, "expected %s", t.Expected())
		return
	}
	for i, k := range n.Keys {
		if k.Text == "name" {
			t.name.FromNode(n.Items[i], fail)
			continue
		}
		x, ok := n.Items[i].Number()
		if !ok {
			fail(n.Items[i], "%s: expected a number", k.Text)
		}
		t.limit[k.Text] = x
	}
}

// sharedRules are the rules of all files in the folder rules.
type sharedRules struct {
	ids  []string
	rule map[string]*reader.Node
	file map[string]string // path of the file that a rule stands in
	lost bool              // a file could not be read: a rule that is missing may be one of its
}

// sharedOf reads them once.
func (l *loading) sharedOf() *sharedRules {
	if l.shared != nil {
		return l.shared
	}
	s := &sharedRules{rule: map[string]*reader.Node{}, file: map[string]string{}}
	l.shared = s
	for _, name := range l.shelf.names("rules") {
		at := path.Join("rules", name+".yaml")
		n, err := l.file(at)
		if err != nil || n == nil {
			s.lost = true // its faults are noted
			continue
		}
		l.addShared(s, n, at)
	}
	sort.Strings(s.ids)
	return s
}

func (l *loading) addShared(s *sharedRules, n *reader.Node, at string) {
	var f struct {
		Rules []*reader.Node `file:"rules" need:"yes" size:"1..300"`
	}
	if !l.take(n.Decode(&f)) {
		s.lost = true
	}
	for _, rule := range f.Rules {
		id := rule.Get("id")
		if id == nil || id.Kind != reader.Scalar {
			l.fail(rule, "a shared rule has no id, expected one")
			continue
		}
		if other, twice := s.rule[id.Text]; twice {
			l.fail(id, "shared rule %q stands twice, expected different ids (the first is in %s, line %d)", id.Text, other.File(), other.Line)
			continue
		}
		s.ids = append(s.ids, id.Text)
		s.rule[id.Text], s.file[id.Text] = rule, at
	}
}
