package main

import (
	"fmt"
	"io"
	"strings"

	"steadyneedle/sim/attempt"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/unit"
)

const failedAttempt = 1

// result is what run and rate print as JSON.
type result struct {
	Drill     string     `json:"drill"`
	Apparatus string     `json:"apparatus"`
	Variant   string     `json:"variant"`
	Operator  string     `json:"operator"`
	Seed      uint64     `json:"seed"`
	Passed    bool       `json:"passed"`
	Score     float64    `json:"score"`
	DurationS float64    `json:"duration_s"` // from the first tick to the last
	Ticks     int64      `json:"ticks"`
	StateHash string     `json:"state_hash"`
	Ended     string     `json:"ended,omitempty"` // before the drill did: "stopped for safety", "void", "ended at an unsafe act" or "ended early"
	Findings  []finding  `json:"findings"`
	Decisions []decision `json:"decisions,omitempty"` // what became of the attempt at its unsafe acts
	Ruling    *ruling    `json:"ruling,omitempty"`    // the evaluator's, if one was made
}

// decision is what became of the attempt at an unsafe act, where that was more than a finding.
type decision struct {
	Rule string  `json:"rule"`
	AtS  float64 `json:"at_s"`
	Was  string  `json:"was"`
}

// ruling is what the evaluator made of what the judge found.
type ruling struct {
	Passed   bool     `json:"passed"`
	Score    float64  `json:"score"`
	SignedBy string   `json:"signed_by"`
	Waived   []waiver `json:"waived"`
}

type waiver struct {
	Rule   string  `json:"rule"`
	AtS    float64 `json:"at_s"`
	Reason string  `json:"reason"`
}

type finding struct {
	Rule     string  `json:"rule"`
	Severity string  `json:"severity"`
	AtS      float64 `json:"at_s"` // onset
	Place    string  `json:"place"`
	Message  string  `json:"message"`
	Expected string  `json:"expected"`
	Measured string  `json:"measured"`
	Why      string  `json:"why"`
}

func resultOf(a *attempt.Attempt) result {
	h, sheet := a.Header(), a.Sheet()
	r := result{
		Drill: h.Drill, Apparatus: h.Apparatus, Variant: h.Variant, Operator: h.Operator, Seed: h.Seed,
		Passed: sheet.Passed && !a.Early(), Score: sheet.Score, Ended: endedBy(a),
		DurationS: a.Now().Seconds(), Ticks: int64(a.Now()), StateHash: tape.HashText(a.Hash()),
		Findings: []finding{},
	}
	for i := range sheet.Findings {
		f := &sheet.Findings[i]
		r.Findings = append(r.Findings, finding{f.Rule, f.Severity.String(), f.From.Seconds(), f.Place.String(),
			f.Title, f.Expected, f.Measured, f.Why})
	}
	for _, d := range a.Decisions() {
		r.Decisions = append(r.Decisions, decision{d.Rule, d.At.Seconds(), d.Words()})
	}
	if made := a.Ruling(); made.Made() {
		r.Ruling = &ruling{made.Passed, made.Score, made.SignedBy, []waiver{}}
		for _, w := range made.Waivers {
			r.Ruling.Waived = append(r.Ruling.Waived, waiver{w.Rule, w.From.Seconds(), w.Reason})
		}
	}
	return r
}

// endedBy says how an attempt ended before its drill did; empty where it did not.
func endedBy(a *attempt.Attempt) string {
	if h := a.Halted(); h != attempt.NotHalted {
		return h.String()
	}
	if a.Early() {
		return "ended early"
	}
	return ""
}

// stands reports whether the attempt is passed: by the evaluator's ruling where there is one.
func (r *result) stands() bool {
	if r.Ruling != nil {
		return r.Ruling.Passed
	}
	return r.Passed
}

// printResult writes the sheet, and makes a failed attempt the exit code.
func printResult(w io.Writer, a *attempt.Attempt, asJSON bool) error {
	r := resultOf(a)
	if asJSON {
		if err := printJSON(w, r); err != nil {
			return err
		}
	} else {
		printSheet(w, a, &r)
	}
	if !r.stands() {
		return coded{failedAttempt, errSilent}
	}
	return nil
}

func printSheet(w io.Writer, a *attempt.Attempt, r *result) {
	verdict := "not passed"
	switch {
	case r.Ended != "":
		verdict = r.Ended
	case r.Passed:
		verdict = "passed"
	}
	fmt.Fprintf(w, "%s (%s), %s, seed %d\n", a.Drill.Title, r.Variant, r.Apparatus, r.Seed)
	fmt.Fprintf(w, "%s with %.0f of %.0f after %s; state %s\n", verdict, r.Score, a.Sheet().Full, unit.Clock(a.Now().Seconds()), r.StateHash)
	if len(r.Findings) == 0 {
		fmt.Fprintln(w, "no findings")
	}
	for _, f := range r.Findings {
		fmt.Fprintf(w, "\n%s  %-6s %s (%s)\n", unit.Clock(f.AtS), strings.ToUpper(f.Severity), f.Message, f.Rule)
		fmt.Fprintf(w, "       expected: %s\n", f.Expected)
		if f.Measured != "" {
			fmt.Fprintf(w, "       found: %s\n", f.Measured)
		}
		fmt.Fprintf(w, "       why: %s\n", f.Why)
	}
	for _, d := range a.Decisions() {
		fmt.Fprintf(w, "\n%s  %s: %s\n", unit.Clock(d.At.Seconds()), d.Title, d.Words())
	}
	for _, m := range a.Marks() {
		fmt.Fprintf(w, "\n%s  mark: %s\n", unit.Clock(m.At.Seconds()), m.Text)
	}
	if r.Ruling != nil {
		printRuling(w, a, r)
	}
	fmt.Fprintln(w, "\nTraining aid only: department procedure, the maker's manual, local codes and a qualified")
	fmt.Fprintln(w, "instructor come first. A score certifies nothing; the numbers are of an invented apparatus.")
}

// printRuling tells what the evaluator made of the findings above.
func printRuling(w io.Writer, a *attempt.Attempt, r *result) {
	fmt.Fprintln(w, "\nThe evaluator's ruling; what the judge found stands above:")
	for _, x := range r.Ruling.Waived {
		fmt.Fprintf(w, "%s  waived: %s: %s\n", unit.Clock(x.AtS), x.Rule, x.Reason)
	}
	verdict := "not passed"
	if r.Ruling.Passed {
		verdict = "passed"
	}
	by := "not signed"
	if r.Ruling.SignedBy != "" {
		by = "signed by " + r.Ruling.SignedBy
	}
	fmt.Fprintf(w, "%s with %.0f of %.0f, %s\n", verdict, r.Ruling.Score, a.Sheet().Full, by)
}
