package report

import (
	"encoding/json"
	"strings"
	"testing"
)

var learner = Account{HomePage: "https://records.example/", Name: "e41-7"}

func trained(passed, early bool) *Sheet {
	return &Sheet{Title: "Reverse lay", Drill: "reverse-lay", Begun: "2026-03-01T12:00:00+01:00", Length: 60 * 3725, Score: 74, Full: 100, Pass: 80,
		Passed: passed, Early: early, Caution: Caution, Mode: "rated",
		Steps:    []Step{{ID: "a", Phase: "Supply"}, {ID: "b", Phase: "Line"}},
		Findings: []Finding{{Rule: "unbled", Severity: "error", Phase: "Supply"}}}
}

// One passed or failed statement for an attempt, which alone has a score; a completed one for each phase.
func TestStatements(t *testing.T) {
	for verb, s := range map[string]*Sheet{"passed": trained(true, false), "failed": trained(false, false)} {
		list, err := s.Statements("20260301-120000-reverse-lay", learner)
		if err != nil || len(list) != 3 {
			t.Fatalf("%d statements, %v", len(list), err)
		}
		ids := map[string]bool{}
		for i, st := range list {
			ids[st.ID] = true
			if len(st.ID) != 36 || st.ID[14] != '8' || st.Context.Registration != list[0].Context.Registration || st.Version != "2.0.0" ||
				st.Timestamp != "2026-03-01T12:02:05.000Z" || !strings.Contains(st.Context.Extensions[base+"extensions/caution"].(string), "aid only") {
				t.Errorf("%+v", st)
			}
			if scored := st.Result.Score != nil; scored != (i == 0) {
				t.Errorf("statement %d scored: %v", i, scored)
			}
		}
		whole := list[0]
		if !strings.HasSuffix(whole.Verb.ID, "/"+verb) || *whole.Result.Success != (verb == "passed") || whole.Result.Score.Scaled != 0.74 ||
			whole.Result.Duration != "PT1H2M5.00S" || len(ids) != 3 {
			t.Errorf("%+v", whole)
		}
		if *list[1].Result.Success || !*list[2].Result.Success || list[1].Context.Activities.Parent[0].ID != whole.Object.ID {
			t.Errorf("%+v", list[1:])
		}
	}
	list, err := trained(false, true).Statements("x", learner)
	if err != nil || len(list) != 1 || list[0].Result.Score != nil || list[0].Result.Success != nil || !strings.HasSuffix(list[0].Verb.ID, "/terminated") {
		t.Errorf("ended early: %+v, %v", list, err)
	}
	text, err := json.Marshal(list[0])
	if err != nil || strings.Contains(string(text), "mbox") || !strings.Contains(string(text), `"account":{"homePage":"https://records.example/","name":"e41-7"}`) {
		t.Errorf("%s, %v", text, err)
	}
}

func TestAccounts(t *testing.T) {
	for _, a := range []Account{{"https://x.example/", "a@b.example"}, {"https://x.example/", ""}, {"https://x.example/", "two words"}, {"records", "a"}, {"", "a"}} {
		if _, err := trained(true, false).Statements("x", a); err == nil {
			t.Errorf("%+v was taken", a)
		}
	}
}
