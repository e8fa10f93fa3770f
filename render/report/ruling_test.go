package report

import (
	"strings"
	"testing"
)

// What was decided at an unsafe act stands beside its finding without the finding's title, and whole in
// the list; sheets of earlier builds kept both in one text.
func TestDecided(t *testing.T) {
	f := Finding{Rule: "chocks", Title: "No chocks", At: 60}
	s, err := Parse([]byte(`{"sheet": 1, "decisions": [
		{"tick": 30, "rule": "chocks", "title": "No chocks", "text": "too soon for this finding"},
		{"tick": 61, "rule": "chocks", "title": "No chocks", "text": "the attempt went on"},
		{"tick": 70, "rule": "other", "text": "Other: it ended"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	if was := s.Decided(&f); was != "the attempt went on" {
		t.Errorf("beside the finding: %q", was)
	}
	if a, b := s.Decisions[1].Text(), s.Decisions[2].Text(); a != "No chocks: the attempt went on" || b != "Other: it ended" {
		t.Errorf("in the list: %q, %q", a, b)
	}
}

func TestRulingWords(t *testing.T) {
	r := Ruling{Passed: true, Score: 91, SignedBy: "Lt. Brook", Waived: []Waived{{}}}
	if v := r.Verdict(); v != "passed with 91 points, 1 finding waived, signed by Lt. Brook" {
		t.Errorf("verdict: %q", v)
	}
	if w := r.Words(); !strings.HasPrefix(w, "Evaluator: passed with 91 points") {
		t.Errorf("words: %q", w)
	}
}
