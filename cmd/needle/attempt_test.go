package main

import (
	"encoding/json"
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
	physics: 3,
	states: map[string]string{
		"one-line": "cd7becbc31b34afb",
		"wye":      "73dfcf131499bfca",
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
