package report

import (
	"crypto/sha256"
	"fmt"
	"math"
	"strings"
	"time"
)

// Training records as xAPI 2.0 statements (IEEE 9274.1.1-2023), by the rules of cmi5 where they apply:
// one passed or failed for an attempt, which alone carries a score, consistent with the pass mark; a
// completed for each of its phases. An attempt without a verdict is terminated, and has no score. Where
// the evaluator has ruled, the ruling is the record.

// Account names a learner in a system of accounts: never an e-mail address.
type Account struct {
	HomePage string `json:"homePage"` // IRI of the system
	Name     string `json:"name"`
}

// Statement is one xAPI statement.
type Statement struct {
	ID        string   `json:"id"`
	Actor     Actor    `json:"actor"`
	Verb      Verb     `json:"verb"`
	Object    Activity `json:"object"`
	Result    *Result  `json:"result,omitempty"`
	Context   Context  `json:"context"`
	Timestamp string   `json:"timestamp,omitempty"`
	Version   string   `json:"version"`
}

// Parts of a statement.
type (
	// Actor is who did it.
	Actor struct {
		ObjectType string  `json:"objectType"`
		Account    Account `json:"account"`
	}
	// Verb is what was done.
	Verb struct {
		ID      string            `json:"id"`
		Display map[string]string `json:"display"`
	}
	// Activity is what it was done to.
	Activity struct {
		ObjectType string     `json:"objectType,omitempty"`
		ID         string     `json:"id"`
		Definition Definition `json:"definition"`
	}
	// Definition describes an activity.
	Definition struct {
		Type string            `json:"type"`
		Name map[string]string `json:"name"`
	}
	// Result is how it went.
	Result struct {
		Score      *Score `json:"score,omitempty"`
		Success    *bool  `json:"success,omitempty"`
		Completion *bool  `json:"completion,omitempty"`
		Duration   string `json:"duration,omitempty"`
		Response   string `json:"response,omitempty"`
	}
	// Score is the drill's.
	Score struct {
		Scaled float64 `json:"scaled"`
		Raw    float64 `json:"raw"`
		Min    float64 `json:"min"`
		Max    float64 `json:"max"`
	}
	// Context is where it belongs.
	Context struct {
		Registration string             `json:"registration"`
		Platform     string             `json:"platform"`
		Language     string             `json:"language"`
		Activities   *ContextActivities `json:"contextActivities,omitempty"`
		Extensions   map[string]any     `json:"extensions"`
	}
	// ContextActivities are those that an activity is part of.
	ContextActivities struct {
		Parent []Activity `json:"parent"`
	}
)

// base of our IRIs. The name is reserved for examples and belongs to nobody; the town is invented.
const base = "https://alder-ferry.example/xapi/"

var verbs = map[string]string{
	"passed": "http://adlnet.gov/expapi/verbs/passed", "failed": "http://adlnet.gov/expapi/verbs/failed",
	"completed": "http://adlnet.gov/expapi/verbs/completed", "terminated": "http://adlnet.gov/expapi/verbs/terminated",
}

// Statements are the records of an attempt, the attempt's own first. id names it where it is kept.
func (s *Sheet) Statements(id string, who Account) ([]Statement, error) {
	if err := who.check(); err != nil {
		return nil, err
	}
	verb := "failed"
	passed, score := s.Stands()
	switch {
	case s.Early:
		verb = "terminated"
	case passed:
		verb = "passed"
	}
	drill := Activity{"Activity", base + "drills/" + s.Drill, Definition{base + "types/drill", english(s.Title)}}
	whole := s.statement(id, "", who, verb, drill)
	whole.Result = &Result{Completion: truth(!s.Early), Duration: duration(s.Length.Seconds())}
	if !s.Early {
		whole.Result.Success = truth(passed)
		whole.Result.Score = &Score{Scaled: math.Round(score/s.Full*1e4) / 1e4, Raw: score, Max: s.Full}
	}
	if s.Ruling != nil { // what the judge had found is told beside it
		whole.Context.Extensions[base+"extensions/judge-score"] = s.Score / s.Full
		whole.Context.Extensions[base+"extensions/evaluator"] = s.Ruling.Words()
	}
	whole.Context.Extensions[base+"extensions/pass-mark"] = s.Pass / s.Full
	list := []Statement{whole}
	if s.Early {
		return list, nil
	}
	for i, phase := range s.Phases() {
		part := Activity{"Activity", fmt.Sprintf("%sdrills/%s/phases/%d", base, s.Drill, i+1), Definition{base + "types/phase", english(phase)}}
		p := s.statement(id, phase, who, "completed", part)
		p.Result = &Result{Success: truth(s.Grade(phase) == Grades[0]), Completion: truth(true), Response: s.Grade(phase)}
		p.Context.Activities = &ContextActivities{Parent: []Activity{drill}}
		list = append(list, p)
	}
	return list, nil
}

func (s *Sheet) statement(id, part string, who Account, verb string, of Activity) Statement {
	t := Statement{
		ID: uuid(id, "statement"+s.ruled(), part, who.Name), Actor: Actor{"Agent", who}, Verb: Verb{verbs[verb], english(verb)}, Object: of,
		Context: Context{Registration: uuid(id, "registration", who.Name), Platform: "Steady Needle", Language: "en-US",
			Extensions: map[string]any{
				base + "extensions/caution": s.Caution, base + "extensions/mode": s.Mode, base + "extensions/seed": fmt.Sprint(s.Seed),
				base + "extensions/apparatus": s.Apparatus, base + "extensions/variant": s.Variant, base + "extensions/state-hash": s.Hash,
			}},
		Version: "2.0.0",
	}
	if begun, err := time.Parse(time.RFC3339, s.Begun); err == nil {
		t.Timestamp = begun.Add(time.Duration(s.Length.Seconds() * float64(time.Second))).UTC().Format("2006-01-02T15:04:05.000Z")
	}
	return t
}

// ruled tells a statement after a ruling from the one before it: a statement never changes.
func (s *Sheet) ruled() string {
	if s.Ruling == nil {
		return ""
	}
	return " " + s.Ruling.Words()
}

// check refuses what is not an account.
func (a *Account) check() error {
	switch {
	case a.Name == "" || strings.ContainsAny(a.Name, "@ \t\n"):
		return fmt.Errorf("account name %q: expected a name without spaces, never an e-mail address", a.Name)
	case !strings.Contains(a.HomePage, "://") || strings.ContainsAny(a.HomePage, " \t\n"):
		return fmt.Errorf("home page %q: expected the address of the system that the account is of, such as https://records.example/", a.HomePage)
	}
	return nil
}

func english(text string) map[string]string { return map[string]string{"en-US": text} }

func truth(b bool) *bool { return &b }

// duration writes seconds as ISO 8601 does, to a hundredth.
func duration(s float64) string {
	n := int64(math.Round(s * 100))
	text := "PT"
	if h := n / 360000; h > 0 {
		text += fmt.Sprintf("%dH", h)
	}
	if m := n / 6000 % 60; m > 0 {
		text += fmt.Sprintf("%dM", m)
	}
	return text + fmt.Sprintf("%d.%02dS", n/100%60, n%100)
}

// uuid makes an identifier that is the same each time the same thing is exported (RFC 9562, version 8).
func uuid(parts ...string) string {
	sum := sha256.Sum256([]byte(base + "\x00" + strings.Join(parts, "\x00")))
	b := sum[:16]
	b[6] = b[6]&0x0f | 0x80
	b[8] = b[8]&0x3f | 0x80
	return fmt.Sprintf("%x-%x-%x-%x-%x", b[:4], b[4:6], b[6:8], b[8:10], b[10:])
}
