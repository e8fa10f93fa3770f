package main

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"steadyneedle/sim/fidelity"
)

// The whole guide is run by the tests of its package; here one area stands for it.
func TestFidelity(t *testing.T) {
	page := filepath.Join(t.TempDir(), "guide.html")
	out, errs, code := needle(t, "fidelity", "--area", "controls", "--json", "--html", page)
	if code != 0 || errs != "" {
		t.Fatalf("exit %d, %q", code, errs)
	}
	var g struct {
		Tests          []map[string]any
		Passed, Failed int
	}
	if err := json.Unmarshal([]byte(out), &g); err != nil {
		t.Fatal(err)
	}
	if len(g.Tests) < 10 || g.Passed != len(g.Tests) || g.Failed != 0 {
		t.Errorf("%d tests, %d passed, %d failed", len(g.Tests), g.Passed, g.Failed)
	}
	for _, test := range g.Tests {
		for _, key := range []string{"id", "area", "title", "source"} {
			if s, ok := test[key].(string); !ok || s == "" {
				t.Errorf("%v: no %s", test["id"], key)
			}
		}
		for _, key := range []string{"expected", "measured", "tolerance"} {
			if _, ok := test[key].(float64); !ok {
				t.Errorf("%v: no %s", test["id"], key)
			}
		}
		if len(test) != 9 || test["area"] != "controls" {
			t.Errorf("%v has %d fields, area %v", test["id"], len(test), test["area"])
		}
	}
	text, err := os.ReadFile(page)
	if err != nil || !strings.Contains(string(text), "Objective test guide") || !strings.HasSuffix(string(text), "</html>\n") {
		t.Errorf("%v, %d bytes", err, len(text))
	}
}

func TestFidelityRefuses(t *testing.T) {
	if _, errs, code := needle(t, "fidelity", "--area", "hoses"); code != 2 || !strings.Contains(errs, "--area hoses: expected steady, controls") {
		t.Errorf("exit %d, %q", code, errs)
	}
	dir := t.TempDir()
	if _, errs, code := needle(t, "fidelity", "--html", filepath.Join(dir, "no", "guide.html")); code != 2 || !strings.Contains(errs, "--html") || strings.Count(errs, "\n") != 1 {
		t.Errorf("exit %d, %q", code, errs)
	}
	if left, _ := os.ReadDir(dir); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

// A failed test comes first, in full, and is the exit code.
func TestFidelityFails(t *testing.T) {
	record := fidelity.Test{ID: "one", Area: fidelity.System, Title: "First", Unit: "psi", Expected: 50,
		Tolerance: fidelity.Tolerance{Tier: fidelity.Formula, Width: 1}, Source: fidelity.Source{Mark: fidelity.Practice, Text: "a habit"}}
	good := fidelity.Result{Test: record, Measured: 50.4, Pass: true}
	bad := fidelity.Result{Test: record, Measured: math.NaN(), Problem: "priming: not within 60 s"}
	bad.ID = "two"
	if codeOf(verdict([]fidelity.Result{good})) != 0 || codeOf(verdict([]fidelity.Result{good, bad})) != 1 {
		t.Error("the verdict does not make the exit code")
	}
	var out bytes.Buffer
	printGuide(&out, []fidelity.Result{good, bad})
	text := out.String()
	for _, want := range []string{"1 passed, 1 failed", "FAILED  two: First", "expected 50.0 ± 1.0 psi (engineering formula)",
		"source: a habit (common practice, no published source)", "problem: priming: not within 60 s", "  ok      one  50.4"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	g := guideJSON([]fidelity.Result{good, bad})
	if _, err := json.Marshal(g); err != nil || g.Tests[1].Measured != nil {
		t.Errorf("%v, %v", err, g.Tests[1].Measured)
	}
}
