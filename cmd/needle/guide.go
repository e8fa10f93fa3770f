package main

import (
	"fmt"
	"io"
	"math"
	"unicode/utf8"

	"steadyneedle/sim/fidelity"
)

// guideSheet is what fidelity prints as JSON.
type guideSheet struct {
	Tests  []guideTest `json:"tests"`
	Passed int         `json:"passed"`
	Failed int         `json:"failed"`
}

type guideTest struct {
	ID        string   `json:"id"`
	Area      string   `json:"area"`
	Title     string   `json:"title"`
	Source    string   `json:"source"`
	Expected  float64  `json:"expected"`
	Measured  *float64 `json:"measured"` // null where nothing could be measured
	Unit      string   `json:"unit"`
	Tolerance float64  `json:"tolerance"` // in the test's unit, to either side
	Pass      bool     `json:"pass"`
}

func guideJSON(results []fidelity.Result) guideSheet {
	g := guideSheet{Tests: make([]guideTest, len(results))}
	for i := range results {
		r := &results[i]
		g.Tests[i] = guideTest{r.ID, r.Area.String(), r.Title, r.Source.String(), r.Expected, nil, r.Unit, r.Width(), r.Pass}
		if !math.IsNaN(r.Measured) && !math.IsInf(r.Measured, 0) {
			g.Tests[i].Measured = &r.Measured
		}
		if r.Pass {
			g.Passed++
		} else {
			g.Failed++
		}
	}
	return g
}

// printGuide writes the failed tests first, in full, and then the table of all, area by area.
func printGuide(w io.Writer, results []fidelity.Result) {
	g := guideJSON(results)
	fmt.Fprintf(w, "Objective tests of the model: %d passed, %d failed.\n", g.Passed, g.Failed)
	fmt.Fprintln(w, "The figures are of an invented apparatus. Training aid only; it certifies nothing.")
	for i := range results {
		if r := &results[i]; !r.Pass {
			printFailed(w, r)
		}
	}
	wide := columns(results)
	for _, a := range fidelity.Areas() {
		headed := false
		for i := range results {
			r := &results[i]
			if r.Area != a {
				continue
			}
			if !headed {
				fmt.Fprintf(w, "\n%s\n", a)
				headed = true
			}
			verdict := "ok"
			if !r.Pass {
				verdict = "FAILED"
			}
			fmt.Fprintf(w, "  %-6s  %s  %s  %s  %s  %s\n", verdict, pad(r.ID, wide[0]), lead(r.MeasuredText(), wide[1]),
				pad(r.ExpectedText(), wide[2]), pad(r.Unit, wide[3]), r.Title)
		}
	}
}

func printFailed(w io.Writer, r *fidelity.Result) {
	fmt.Fprintf(w, "\nFAILED  %s: %s\n", r.ID, r.Title)
	fmt.Fprintf(w, "        measured %s %s, expected %s %s (%s)\n", r.MeasuredText(), r.Unit, r.ExpectedText(), r.Unit, r.Tolerance.Tier)
	fmt.Fprintf(w, "        source: %s\n", r.Source)
	if r.Problem != "" {
		fmt.Fprintf(w, "        problem: %s\n", r.Problem)
	}
}

// columns are the widths of id, measured, expected and unit.
func columns(results []fidelity.Result) (wide [4]int) {
	for i := range results {
		r := &results[i]
		for k, text := range [...]string{r.ID, r.MeasuredText(), r.ExpectedText(), r.Unit} {
			wide[k] = max(wide[k], utf8.RuneCountInString(text))
		}
	}
	return wide
}

func pad(text string, width int) string {
	return text + spaces(width-utf8.RuneCountInString(text))
}

func lead(text string, width int) string {
	return spaces(width-utf8.RuneCountInString(text)) + text
}

func spaces(n int) string { return fmt.Sprintf("%*s", max(n, 0), "") }
