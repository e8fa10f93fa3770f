package main

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"
	"time"

	"steadyneedle/scenarios"
)

// TestJudgeIsProved holds the judge of every shipped drill against its matrix: each rule has an operator
// who breaks it, each mistake is found at its time, and nothing else is; pairs of mistakes give what each
// gives; twenty legal variations give nothing. Some of their seeds are the day's own. Five hundred are
// tried by `needle prove --runs 500`.
func TestJudgeIsProved(t *testing.T) {
	s := scenarios.Open(nil)
	list, err := s.List()
	if err != nil {
		t.Fatal(err)
	}
	day := uint64(time.Now().Unix() / 86400)
	legal := []uint64{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14}
	for i := range uint64(6) {
		legal = append(legal, day+i)
	}
	t.Logf("legal variations by seeds %v", legal)
	for _, d := range list.Drills {
		m, err := proveDrill(s, &list, d.Name, amount{legal: legal, pairs: 10})
		if err != nil {
			t.Fatal(err)
		}
		p := provedOf(d.Name, m)
		t.Logf("%+v", p)
		for _, rule := range p.Unproved {
			t.Errorf("%s: no operator breaks rule %s: add scenarios/operators/%s/NAME.yaml with breaks: %s", d.Name, rule, d.Name, rule)
		}
		for _, f := range p.Failures {
			t.Errorf("%s: %s", d.Name, f)
		}
		if m.Recall() != 1 || m.Precision() != 1 || m.Legal != len(legal) || m.Faults < m.Rules || m.Pairs != 10 {
			t.Errorf("%s: %+v", d.Name, p)
		}
	}
}

// A drill whose judge misses something, or finds something without a cause, is not proved, and says what
// is wrong.
func TestProveCanFail(t *testing.T) {
	dir := t.TempDir()
	text := string(shipped(t, "drills/reverse-lay.yaml"))
	for _, c := range []struct{ from, to string }{
		{"  - {use: horn}\n", "  - {use: horn, severity: minor, need: \"count(horn_blasts, 8) == 2\"}\n"}, // the clean run blows once
		{"  - {use: lay-offset}\n", "  - {use: lay-offset, done: offset_error_share <= 2}\n"},             // never found
	} {
		if !strings.Contains(text, c.from) {
			t.Fatalf("the drill has no line %q", c.from)
		}
		text = strings.Replace(text, c.from, c.to, 1)
	}
	put(t, dir+"/drills/reverse-lay.yaml", text)
	s := scenarios.Open(nil).Over(folder(dir), func(p string) string { return p })
	all, err := s.List()
	if err != nil {
		t.Fatal(err)
	}
	few := all
	few.Operators = slices.DeleteFunc(slices.Clone(all.Operators), func(o scenarios.OperatorItem) bool {
		return o.Name != "clean" && o.Name != "in-the-gutter"
	})
	m, err := proveDrill(s, &few, "reverse-lay", amount{legal: []uint64{1}})
	if err != nil {
		t.Fatal(err)
	}
	p := provedOf("reverse-lay", m)
	if m.Holds() || p.Caught != 0 || p.Recall != 0 || p.FalseFindings != 1 || !slices.Contains(p.Unproved, "chocks") {
		t.Errorf("%+v", p)
	}
	if said := strings.Join(p.Failures, "\n"); !strings.Contains(said, "in-the-gutter: missed lay-offset") || !strings.Contains(said, "legal variation 1: found horn") {
		t.Errorf("said:\n%s", said)
	}
}

// Of two mistakes one must not hide the other. Each of these pairs once did: of two chocks one was missing
// and the other stood badly; gating down earlier, or a discharge never fully open, excused shutting the
// line anyhow; an intake left part open excused the tank's valve; a number worked out anew within the
// second excused a wrong answer.
func TestNoMistakeHidesAnother(t *testing.T) {
	s := scenarios.Open(nil)
	list, err := s.List()
	if err != nil {
		t.Fatal(err)
	}
	by := map[string]scenarios.OperatorItem{}
	for _, o := range list.Operators {
		by[o.Name] = o
	}
	for _, two := range [][2]string{
		{"chock-too-far", "no-front-chock"}, {"line-before-throttle", "throws-gate-open"},
		{"crew-not-told", "throws-gate-open"}, {"discharge-part", "line-before-throttle"},
		{"crew-not-told", "discharge-part"}, {"intake-part", "tank-left-open"},
		{"starves-changeover", "tank-half-open"}, {"line-before-supply", "wrong-count"},
		{"leaves-in-neutral", "no-helmet"},
	} {
		c, err := pairOf(s, by[two[0]], by[two[1]], "wye")()
		if err != nil {
			t.Fatal(err)
		}
		if v := c.Try(); !v.Right() {
			t.Error(failure(&v))
		}
	}
}

// Parts of a proof have every case once.
func TestParts(t *testing.T) {
	for i := range 20 {
		n := 0
		for k := range 3 {
			if (part{k + 1, 3}).holds(i) {
				n++
			}
		}
		if n != 1 || !(part{}).holds(i) {
			t.Errorf("case %d is in %d of three parts", i, n)
		}
	}
}

// All pairs are tried in each variant that their operators leave open, drawn ones in one.
func TestAllPairs(t *testing.T) {
	s := scenarios.Open(nil)
	all, err := s.List()
	if err != nil {
		t.Fatal(err)
	}
	few := all
	few.Operators = slices.DeleteFunc(slices.Clone(all.Operators), func(o scenarios.OperatorItem) bool {
		return !slices.Contains([]string{"clean", "no-horn", "no-helmet", "jerks-throttle"}, o.Name) // the last asks for a variant
	})
	for pairs, want := range map[int]int{-1: 3 + 2 + 1 + 1, 2: 3 + 2, 10: 3 + 3} {
		c, err := casesOf(s, &few, "reverse-lay", amount{pairs: pairs})
		if err != nil || len(c.makers) != want {
			t.Errorf("%d pairs: %d cases, want %d (%v)", pairs, len(c.makers), want, err)
		}
	}
}

func TestProvePrints(t *testing.T) {
	out, errs, code := needle(t, "prove", "reverse-lay", "--runs", "-1")
	if code != wrongUse || !strings.Contains(errs, "--runs -1") || out != "" {
		t.Errorf("exit %d, %q", code, errs)
	}
	if _, errs, code = needle(t, "prove", "nothing"); code != wrongUse || !strings.Contains(errs, "nothing") {
		t.Errorf("an unknown drill: exit %d, %q", code, errs)
	}
	text, err := json.Marshal(proved{Name: "x", Unproved: []string{}, Failures: []string{}})
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{"name", "rules", "faults", "caught", "wrong", "clean_runs", "false_findings"} {
		if !strings.Contains(string(text), `"`+key+`":`) {
			t.Errorf("%s lacks %s", text, key)
		}
	}
}

// What was forgotten and is put right at the walk-round counts as minor, and the sheet says when.
func TestPutRightAtTheWalkRound(t *testing.T) {
	for name, severity := range map[string]string{"bed-coupling": "error", "bed-coupling-late": "minor"} {
		r, _ := runJSON(t, 0, "run", "reverse-lay", "--operator", name, "--json")
		if len(r.Findings) != 1 || r.Findings[0].Rule != "line-break" || r.Findings[0].Severity != severity ||
			!strings.HasPrefix(r.Findings[0].Measured, "bed-side coupling left lying") || strings.Contains(r.Findings[0].Measured, "; put right at ") != (severity == "minor") {
			t.Errorf("%s: %+v", name, r.Findings)
		}
	}
}
