package proof

import (
	"errors"
	"math"
	"testing"

	"steadyneedle/sim/drill"
	"steadyneedle/sim/judge"
)

func sheet(rules ...string) *judge.Sheet {
	s := &judge.Sheet{}
	for _, r := range rules {
		s.Findings = append(s.Findings, judge.Finding{Rule: r})
	}
	return s
}

func TestVerdict(t *testing.T) {
	followed := sheet("a")
	followed.Consequences = []judge.Consequence{{Finding: judge.Finding{Rule: "b"}, Of: "a"}}
	foreign := sheet("c")
	foreign.Consequences = []judge.Consequence{{Finding: judge.Finding{Rule: "a"}, Of: "c"}}
	for _, c := range []struct {
		what          string
		breaks        []string
		sheet         *judge.Sheet
		missed, wrong int
	}{
		{"found", []string{"a"}, sheet("a"), 0, 0},
		{"missed", []string{"a"}, sheet(), 1, 0},
		{"another found", []string{"a"}, sheet("b"), 1, 1},
		{"found with another", []string{"a"}, sheet("a", "b"), 0, 1},
		{"nothing to find", nil, sheet(), 0, 0},
		{"found in a clean run", nil, sheet("a"), 0, 1},
		{"two for two", []string{"a", "b"}, sheet("a", "b"), 0, 0},
		{"one of two", []string{"a", "b"}, sheet("a"), 1, 0},
		{"one follows from the other", []string{"a", "b"}, followed, 0, 0},
		{"explained away by what nobody did", []string{"a"}, foreign, 1, 1},
	} {
		v := Verdict{Breaks: c.breaks, OffS: math.NaN()}
		v.judge(c.sheet)
		if len(v.Missed) != c.missed || len(v.Wrong) != c.wrong || v.Right() != (c.missed+c.wrong == 0) {
			t.Errorf("%s: missed %v, wrong %v", c.what, v.Missed, v.Wrong)
		}
	}
}

// A rule that lists what may have been amiss has to name it; a number, or when it was put right, is not it.
func TestUnsaid(t *testing.T) {
	c := &Case{Drill: &drill.Drill{Rules: []judge.Rule{{ID: "a", Found: []judge.Found{{Say: "cap off"}}}, {ID: "b"}}}}
	for _, f := range []struct {
		judge.Finding
		unsaid bool
	}{
		{judge.Finding{Rule: "a", Measured: "cap off; put right at 01:01", Amiss: true}, false},
		{judge.Finding{Rule: "a", Measured: "put right at 01:01"}, true},
		{judge.Finding{Rule: "a", Measured: "12 psi"}, true},
		{judge.Finding{Rule: "a"}, true},
		{judge.Finding{Rule: "b", Measured: "12 psi"}, false},
	} {
		if err := c.unsaid(&judge.Sheet{Findings: []judge.Finding{f.Finding}}); (err != nil) != f.unsaid {
			t.Errorf("%+v: %v", f.Finding, err)
		}
	}
}

func TestMatrix(t *testing.T) {
	m := NewMatrix([]string{"a", "b", "c"}, []string{"a", "b"})
	if len(m.Unproved) != 1 || m.Unproved[0] != "c" || m.Recall() != 1 || m.Precision() != 1 {
		t.Errorf("empty: %+v", m)
	}
	nan := math.NaN()
	m.Add(Verdict{Kind: Fault, Breaks: []string{"a"}, OffS: 0.4})
	m.Add(Verdict{Kind: Fault, Breaks: []string{"b"}, OffS: nan, Missed: []string{"b"}})
	m.Add(Verdict{Kind: Fault, Breaks: []string{"b"}, OffS: -0.6})
	m.Add(Verdict{Kind: Pair, Breaks: []string{"a", "b"}, OffS: nan, Wrong: []judge.Finding{{}}})
	m.Add(Verdict{Kind: Legal, OffS: nan})
	m.Add(Verdict{Kind: Legal, OffS: nan, Err: errors.New("stuck")})
	if m.Faults != 3 || m.Caught != 2 || m.Pairs != 1 || m.PairsRight != 0 || m.Legal != 2 || m.LegalRight != 1 ||
		m.Wrong != 1 || len(m.Failures) != 4 || m.Holds() {
		t.Errorf("%+v", m)
	}
	if m.Recall() != 0.8 || m.Precision() != 0.8 { // 4 of 5 mistakes; 4 of 5 findings
		t.Errorf("recall %g, precision %g, want 0.8 each", m.Recall(), m.Precision())
	}
}
