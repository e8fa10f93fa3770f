package scenarios

import (
	"strings"

	"steadyneedle/scenarios/expression"
	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/cond"
	"steadyneedle/sim/judge"
	"steadyneedle/sim/world"
)

// oneRule is a rule of the drill with the shared rule, if any, laid under it.
type oneRule struct {
	f      ruleFile
	node   *reader.Node
	shared bool
}

// rules compiles the drill's rules. A lenient reader leaves out those that have faults, and says why.
func (b *builder) rules(lenient bool) (list []judge.Rule, unjudged []string) {
	before := len(b.faults)
	leave := func() {
		for _, f := range b.faults[before:] {
			unjudged = append(unjudged, f.String())
		}
		b.faults = b.faults[:before]
	}
	all := b.mergedRules()
	if lenient {
		leave()
	}
	known := map[string]bool{}
	b.dropped = map[string]bool{}
	for _, r := range all {
		if b.applies(r.f.OnlyWith) {
			known[r.f.ID.Value] = true
		} else {
			b.dropped[r.f.ID.Value] = true
		}
	}
	for i := range all {
		if b.dropped[all[i].f.ID.Value] {
			continue
		}
		before = len(b.faults)
		r, ok := b.rule(&all[i], known)
		if lenient && len(b.faults) > before {
			leave()
		} else if ok {
			list = append(list, r)
		}
	}
	return list, unjudged
}

// mergedRules lays each rule of the drill over the shared rule that it uses.
func (b *builder) mergedRules() []oneRule {
	var list []oneRule
	lines := map[string]int{}
	for _, n := range b.file.Rules.V {
		r := oneRule{node: n}
		if use := n.Get("use"); use != nil {
			shared := b.sharedOf()
			base, ok := shared.rule[use.Text]
			if !ok && shared.lost {
				continue
			}
			if !ok {
				b.fail(use, "unknown shared rule %q, %s", use.Text, reader.DidYouMean(use.Text, shared.ids))
				continue
			}
			r.node, r.shared = n.Over(base), true
			b.fromShared(use.Text)
		}
		before := len(b.faults)
		b.take(r.node.Decode(&r.f))
		id := r.f.ID
		if line, twice := lines[id.Value]; twice && id.Given() {
			b.fail(n, "rule %q stands twice, expected different ids (the first is on line %d)", id.Value, line)
			continue
		}
		lines[id.Value] = n.Line
		if len(b.faults) == before {
			list = append(list, r)
		}
	}
	return list
}

// fromShared notes that a file of shared rules is used by this drill.
func (b *builder) fromShared(id string) {
	if b.sharedUsed == nil {
		b.sharedUsed = map[string]bool{}
	}
	b.sharedUsed[b.sharedOf().file[id]] = true
}

func (b *builder) rule(r *oneRule, known map[string]bool) (judge.Rule, bool) {
	f := &r.f
	kind, ok := b.kindOf(r.node, f.Kind)
	severity, fits := severities[f.Severity.Value]
	if !fits {
		b.at(f.Severity, 0, "severity: found %q, expected minor, error or unsafe", f.Severity.Value)
	}
	if !ok {
		return judge.Rule{}, false
	}
	truth, acting := expression.Resolve(b.scope.truth), expression.Resolve(b.scope.truth)
	if (kind == judge.Guard || kind == judge.Said) && len(f.On) > 0 {
		acting = b.scope.judged
	}
	yes := func(t reader.Text, in expression.Resolve) *cond.Program {
		return b.compile(t, expression.Condition, in)
	}
	number := func(t reader.Text) *cond.Program { return b.compile(t, expression.Number, truth) }
	out := judge.Rule{
		ID: f.ID.Value, Kind: kind, Severity: severity, Title: f.Title, Why: f.Why, Expected: f.Expected.Value, ShowUnit: f.ShowUnit,
		Show: number(f.Show),
		On:   b.controlsOn(kind, f.On),
		When: yes(f.When, acting), Need: yes(f.Need, acting), Unless: yes(f.Unless, acting), Mended: yes(f.Mended, truth),
		First: yes(f.First, truth), While: yes(f.While, truth), From: yes(f.From, truth), By: yes(f.By, truth), Done: yes(f.Done, truth), At: yes(f.At, truth),
		Value: number(f.Value), Target: number(f.Target), Tolerance: number(f.Tolerance),
		For: world.TicksIn(f.ForS), Within: world.TicksIn(f.WithinS), Merge: world.TicksIn(f.MergeS),
		MinTravelS: f.MinTravelS, Span: f.Span, AbsorbFor: world.TicksIn(f.AbsorbForS), Once: f.Once,
	}
	for _, a := range f.Found {
		out.Found = append(out.Found, judge.Found{When: yes(a.When, truth), Say: a.Say})
	}
	for _, g := range f.Grace {
		out.Grace = append(out.Grace, judge.Grace{When: yes(g.When, truth)})
	}
	if f.Mended.Given() && severity != judge.Error {
		b.at(f.Mended, 0, "mended: only an error can be put right and count as minor, expected severity error")
	}
	b.expected(f.Expected)
	out.Absorbs = b.absorbed(r, known)
	out.Test = b.test(f.Test)
	if kind == judge.Guard && len(f.On) > 0 && f.ForS > 0 {
		b.fail(r.node.Get("for_s"), "for_s: a guard with on judges the action itself, expected no for_s")
	}
	return out, true
}

// absorbed checks the findings that a rule takes for its own consequences. A shared rule may name
// shared rules that this drill does not use.
func (b *builder) absorbed(r *oneRule, known map[string]bool) []string {
	var list []string
	for _, a := range r.f.Absorbs {
		if known[a.Value] {
			list = append(list, a.Value)
			continue
		}
		if _, elsewhere := b.sharedOf().rule[a.Value]; elsewhere || b.sharedOf().lost || r.shared || b.dropped[a.Value] {
			continue
		}
		var names []string
		for i := range b.file.Rules.V {
			n := b.file.Rules.V[i]
			for _, key := range []string{"id", "use"} {
				if id := n.Get(key); id != nil {
					names = append(names, id.Text)
					break
				}
			}
		}
		b.at(a, 0, "absorbs: unknown rule %q, %s", a.Value, reader.DidYouMean(a.Value, names))
	}
	return list
}

// maxNames is how many {name}s the sheet fills into one text.
const maxNames = 6

// expected checks the {name}s of what should have been.
func (b *builder) expected(t reader.Text) {
	rest, at, names := t.Value, 0, 0
	for {
		open := strings.IndexByte(rest, '{')
		if open < 0 {
			return
		}
		at += len([]rune(rest[:open]))
		end := strings.IndexByte(rest[open:], '}')
		if end < 0 {
			b.at(t, at, "expected: this { has no }, expected {name}")
			return
		}
		name := rest[open+1 : open+end]
		if _, ok, why := b.scope.truth(name); !ok {
			b.at(t, at+1, "expected: %s", why)
		}
		if names++; names > maxNames {
			b.at(t, at, "expected: too many names, expected at most %d", maxNames)
			return
		}
		at += len([]rune(rest[open : open+end+1]))
		rest = rest[open+end+1:]
	}
}

// controlsOn looks up the controls whose use a rule judges. Only the candidate is judged.
func (b *builder) controlsOn(kind judge.Kind, on reader.Words) []world.ControlID {
	var list []world.ControlID
	if len(on) > 1 && (kind == judge.Rate || kind == judge.Answer) {
		b.at(on[1], 0, "on: a rule of this kind judges one control, expected no second")
	}
	for _, t := range on {
		id, c, ok := b.controlNamed(b.scope, t)
		if !ok || c.Missing != "" {
			continue
		}
		spoken := c.Kind == world.Speech || c.Kind == world.Gesture
		switch {
		case spoken && c.Speaker != world.Candidate, !spoken && c.By == world.Nowhere:
			b.at(t, 0, "on: %s is not the candidate's, expected something that the candidate works or says", c.Name)
		case kind == judge.Answer && !c.CarriesNumber():
			b.at(t, 0, "on: no number goes with %s, expected a phrase with a number", c.Name)
		case kind == judge.Said && !spoken:
			b.at(t, 0, "on: %s is not said or shown, expected a phrase or gesture", c.Name)
		case kind == judge.Rate && (spoken || c.Kind == world.Walk):
			b.at(t, 0, "on: %s does not travel, expected a control that does", c.Name)
		}
		list = append(list, id)
	}
	if len(on) > 0 && len(list) == 0 {
		b.fitted(b.scope, on[0]) // says what is missing
	}
	return list
}
