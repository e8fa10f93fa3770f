package main

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"

	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/tape"
)

// TestHaltedAttempts: a recording of an attempt that the evaluator stopped, or voided, says so when it is
// rated, and has not passed.
func TestHaltedAttempts(t *testing.T) {
	for halt, want := range map[attempt.Halt]string{attempt.Safety: "stopped for safety", attempt.CalledOff: "void"} {
		shelf := scenarios.Open(nil)
		d, err := shelf.Drill("reverse-lay", scenarios.Options{Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		texts, err := shelf.TextsOf(d, "")
		if err != nil {
			t.Fatal(err)
		}
		var h tape.Header
		for _, x := range texts {
			h.Files = append(h.Files, tape.File{Name: x.Path, Text: x.Body})
		}
		var b bytes.Buffer
		a, err := attempt.New(d, attempt.Options{Record: &b, Header: h})
		if err != nil {
			t.Fatal(err)
		}
		for range 120 {
			a.Tick()
		}
		if err := a.Halt(halt); err != nil {
			t.Fatal(err)
		}
		file := put(t, filepath.Join(t.TempDir(), "halted.tape"), b.String())
		out, errs, code := needle(t, "rate", file)
		if code != failedAttempt || !strings.Contains(out, want+" with ") {
			t.Errorf("%s: exit %d, %s%s", want, code, out, errs)
		}
		out, _, _ = needle(t, "rate", file, "--json")
		if !strings.Contains(out, `"ended": "`+want+`"`) || !strings.Contains(out, `"passed": false`) {
			t.Errorf("%s as JSON: %s", want, out)
		}
	}
}
