package main

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"steadyneedle/sim/scene"
)

// golden are final states of scripted attempts, by the physics number that made them. When a change to
// the model or the people alters one, raise scene.Physics: recordings of before can then no longer
// prove themselves, and say so, instead of failing at their first second.
var golden = struct {
	physics int
	states  map[string]string // variant → hash, operator clean, seed 1
}{
	physics: 18,
	states: map[string]string{
		"one-line": "e23da030be650bec",
		"wye":      "25d9fa7a58d21bed",
	},
}

func runJSON(t *testing.T, want int, args ...string) (result, string) {
	t.Helper()
	out, errs, code := needle(t, args...)
	if code != want {
		t.Fatalf("needle %s: exit code %d, want %d\n%s", strings.Join(args, " "), code, want, errs)
	}
	var r result
	if err := json.Unmarshal([]byte(out), &r); err != nil {
		t.Fatalf("needle %s: %v\n%s", strings.Join(args, " "), err, out)
	}
	return r, out
}

func TestGoldenStates(t *testing.T) {
	for variant, state := range golden.states {
		r, _ := runJSON(t, 0, "run", "reverse-lay", "--operator", "clean", "--variant", variant, "--seed", "1", "--json")
		if !r.Passed || len(r.Findings) > 0 {
			t.Errorf("%s: the clean operator got %d findings", variant, len(r.Findings))
		}
		if r.StateHash != state || golden.physics != scene.Physics {
			t.Errorf("%s: state %s with physics %d, the table has %s with %d: if the model was meant to change, raise scene.Physics and write the new state here",
				variant, r.StateHash, scene.Physics, state, golden.physics)
		}
	}
}

// The clean operator does the drill on every shipped apparatus: by throttle or governor, with relief valve
// or without.
func TestCleanOnEveryApparatus(t *testing.T) {
	for apparatus, variant := range map[string]string{"engine41-governor": "one-line", "engine43": "wye", "brush41": "wye"} {
		file := filepath.Join(t.TempDir(), "attempt.tape")
		r, ran := runJSON(t, 0, "run", "reverse-lay", "--operator", "clean", "--apparatus", apparatus, "--variant", variant, "--seed", "3", "--record", file, "--json")
		if !r.Passed || len(r.Findings) > 0 || r.Apparatus != apparatus {
			t.Errorf("%s, %s: passed %v with %+v", apparatus, variant, r.Passed, r.Findings)
		}
		if _, rated := runJSON(t, 0, "rate", file, "--json"); rated != ran {
			t.Errorf("%s, %s: replayed, the sheet differs", apparatus, variant)
		}
	}
}

func TestRateGivesTheSameSheet(t *testing.T) {
	for _, c := range []struct {
		operator string
		exit     int
	}{{"clean", 0}, {"creeps-up", 0}, {"charges-unasked", 1}} {
		file := filepath.Join(t.TempDir(), "attempt.tape")
		_, ran := runJSON(t, c.exit, "run", "reverse-lay", "--operator", c.operator, "--record", file, "--json")
		if _, rated := runJSON(t, c.exit, "rate", file, "--json"); rated != ran {
			t.Errorf("%s: run printed\n%s\nrate printed\n%s", c.operator, ran, rated)
		}
	}
}

// A recording with a rule of another version of the program is replayed; the rule is named.
func TestRecordingWithAnUnknownRule(t *testing.T) {
	dir := t.TempDir()
	put(t, filepath.Join(dir, "drills", "reverse-lay.yaml"), string(shipped(t, "drills/reverse-lay.yaml")))
	file := filepath.Join(dir, "attempt.tape")
	if _, errs, code := needle(t, "run", "reverse-lay", "--shelf", dir, "--operator", "no-horn", "--record", file); code != 0 {
		t.Fatalf("exit code %d\n%s", code, errs)
	}
	text, _ := os.ReadFile(file)
	head, rest, _ := strings.Cut(string(text), "\n")
	var h map[string]any
	if err := json.Unmarshal([]byte(head), &h); err != nil {
		t.Fatal(err)
	}
	for _, f := range h["files"].([]any) {
		f := f.(map[string]any)
		if f["name"] == "drills/reverse-lay.yaml" {
			body := strings.Replace(f["text"].(string), "  - {use: chock-seat}\n", "  - {use: chock-seat, kind: foresight}\n", 1)
			sum := sha256.Sum256([]byte(body))
			f["text"], f["sha256"] = body, hex.EncodeToString(sum[:])
		}
	}
	again, _ := json.Marshal(h)
	put(t, file, string(again)+"\n"+rest)
	_, errs, code := needle(t, "rate", file)
	for _, want := range []string{`kind: found "foresight"`, "they were not judged", "What could be replayed", "(horn)"} {
		if code != broken || !strings.Contains(errs, want) {
			t.Errorf("exit code %d, lacks %q:\n%s", code, want, errs)
		}
	}
}

// The evaluator's ruling is kept in the recording; what the judge found stays on the sheet.
func TestEvaluatorRules(t *testing.T) {
	dir := t.TempDir()
	file, ruled := filepath.Join(dir, "attempt.tape"), filepath.Join(dir, "ruled.tape")
	first, _ := runJSON(t, 1, "run", "reverse-lay", "--operator", "charges-unasked", "--record", file, "--json")
	waive := "charged-unasked=The crew asked by hand signal."
	if _, errs, code := needle(t, "rate", file, "--waive", waive); code != wrongUse || !strings.Contains(errs, "--to FILE") {
		t.Errorf("without --to: exit code %d, %q", code, errs)
	}
	if _, errs, code := needle(t, "rate", file, "--waive", "horn=No reason.", "--to", ruled); code != wrongUse || !strings.Contains(errs, "no finding of rule horn") {
		t.Errorf("a rule that was not found broken: exit code %d, %q", code, errs)
	}
	_, now := runJSON(t, 0, "rate", file, "--waive", waive, "--sign", "Lt. Brook", "--to", ruled, "--json")
	r, later := runJSON(t, 0, "rate", ruled, "--json")
	if later != now || r.Passed || len(r.Findings) != 1 || r.Ruling == nil || !r.Ruling.Passed || r.Ruling.Score != 100 ||
		r.Ruling.SignedBy != "Lt. Brook" || len(r.Ruling.Waived) != 1 || r.Ruling.Waived[0].Reason != "The crew asked by hand signal." ||
		r.StateHash != first.StateHash {
		t.Errorf("printed %s\nthen %s", now, later)
	}
	if _, errs, code := needle(t, "rate", ruled, "--sign", "Another", "--to", ruled); code != wrongUse || !strings.Contains(errs, "signed by Lt. Brook") {
		t.Errorf("signed twice: exit code %d, %q", code, errs)
	}
	text, _ := os.ReadFile(ruled)
	for _, c := range []struct{ line, says string }{
		{"n 1 waive horn 5 Because.\n", "out of order"},
		{fmt.Sprintf("n %d waive horn 5 Because.\n", r.Ticks), "signed by Lt. Brook already"},
		{fmt.Sprintf("a %d candidate cab seat_belt 1\n", r.Ticks), "something follows the end line"},
	} {
		put(t, filepath.Join(dir, "more.tape"), string(text)+c.line)
		if _, errs, code := needle(t, "rate", filepath.Join(dir, "more.tape")); code != broken || !strings.Contains(errs, c.says) {
			t.Errorf("%q: exit code %d, %q", c.line, code, errs)
		}
	}
}

func TestSpoiledRecordings(t *testing.T) {
	dir := t.TempDir()
	whole := filepath.Join(dir, "whole.tape")
	runJSON(t, 0, "run", "reverse-lay", "--operator", "clean", "--record", whole, "--json")
	text, err := os.ReadFile(whole)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name  string
		spoil func(string) string
		says  string
	}{
		{"cut short", func(s string) string { return s[:len(s)/2] }, "line"},
		{"edited", func(s string) string { return strings.Replace(s, " cab seat_belt 1\n", " cab seat_belt 0\n", 1) }, "first differs"},
		{"no recording", func(string) string { return "hello\n" }, "line 1"},
		{"another physics", func(s string) string { return strings.Replace(s, `"physics":`, `"physics":9`, 1) }, "cannot prove it"},
		{"another physics, shown all the same", func(s string) string {
			return strings.Replace(strings.Replace(s, `"physics":`, `"physics":9`, 1), " cab seat_belt 1\n", " cab seat_belt 0\n", 1)
		}, "Worked again with another physics, no proof of what was recorded, up to"},
		{"its first second that differs", func(s string) string {
			return strings.Replace(strings.Replace(s, `"physics":`, `"physics":9`, 1), " cab seat_belt 1\n", " cab seat_belt 0\n", 1)
		}, "the replay first differs within the second before"},
		{"another drill", func(s string) string { return strings.Replace(s, `"drill":"reverse-lay"`, `"drill":"forward-lay"`, 1) }, "forward-lay"},
	} {
		file := put(t, filepath.Join(dir, "spoiled.tape"), c.spoil(string(text)))
		if _, errs, code := needle(t, "rate", file, "--json"); code != broken || !strings.Contains(errs, c.says) {
			t.Errorf("%s: exit code %d, said %q; want 3 and %q", c.name, code, errs, c.says)
		}
	}
}

func TestNothingHalfWritten(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "attempt.tape")
	if _, _, code := needle(t, "run", "reverse-lay", "--operator", "nobody", "--record", file); code != wrongUse {
		t.Errorf("unknown operator: exit code %d, want 2", code)
	}
	if left, _ := os.ReadDir(dir); len(left) > 0 {
		t.Errorf("a run that never began left %s behind", left[0].Name())
	}
}
