package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"steadyneedle/cmd/internal/recorded"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// told runs the program with an evaluator who types answers.
func told(t *testing.T, answers string, args ...string) (out, errs string, code int) {
	t.Helper()
	t.Setenv("STEADYNEEDLE_SHELF", t.TempDir())
	var o, e bytes.Buffer
	root := newRoot()
	root.SetArgs(args)
	root.SetIn(strings.NewReader(answers))
	root.SetOut(&o)
	root.SetErr(&e)
	err := root.Execute()
	if err != nil {
		e.WriteString(err.Error())
	}
	return o.String(), e.String(), codeOf(err)
}

// What an unsafe act does is the drill's word, over which the settings go, over which the flag goes; the
// recording tells it, and rating gives the same sheet.
func TestOnUnsafe(t *testing.T) {
	file := filepath.Join(t.TempDir(), "attempt.tape")
	run := func(more ...string) []string {
		return append([]string{"run", "reverse-lay", "--operator", "charges-unasked", "--json", "--record", file}, more...)
	}
	for _, c := range []struct {
		name, answers string
		args          []string
		ended, was    string
	}{
		{"go on", "", run("--on-unsafe", "go-on"), "", ""},
		{"stop", "", run("--on-unsafe", "stop"), "ended at an unsafe act", "it ended the attempt, as had been set"},
		{"ask, end", "perhaps\nend\n", run("--on-unsafe", "ask"), "ended at an unsafe act", "the evaluator ended the attempt"},
		{"ask, go on", "go-on\n", run("--on-unsafe", "ask"), "", "the evaluator let the attempt go on"},
	} {
		out, errs, code := told(t, c.answers, c.args...)
		if code != failedAttempt || strings.Contains(out, `"ended": "`) != (c.ended != "") || !strings.Contains(out, c.ended) || !strings.Contains(out, c.was) {
			t.Errorf("%s: exit %d\n%s%s", c.name, code, out, errs)
		}
		if again, _, _ := needle(t, "rate", file, "--json"); again != out {
			t.Errorf("%s: run printed\n%s\nrate printed\n%s", c.name, out, again)
		}
	}
	os.Remove(file)
	if _, errs, code := told(t, "", run("--on-unsafe", "ask")...); code != wrongUse || !strings.Contains(errs, "the input has ended") {
		t.Errorf("nobody answers: exit %d, %q", code, errs)
	}
	if _, err := os.Stat(file); err == nil {
		t.Error("nobody answered, and a recording was left")
	}
	if _, errs, code := needle(t, run("--on-unsafe", "later")...); code != wrongUse || !strings.Contains(errs, `--on-unsafe: found "later", expected go-on, stop, ask or drill`) {
		t.Errorf("an unknown word: exit %d, %q", code, errs)
	}
	dir := t.TempDir()
	text := string(shipped(t, "drills/reverse-lay.yaml"))
	put(t, dir+"/drills/reverse-lay.yaml", strings.Replace(text, "\nends:", "\non_unsafe: stop\nends:", 1))
	stops := func(more ...string) bool {
		out, _, _ := needle(t, run(append(more, "--shelf", dir)...)...)
		return strings.Contains(out, "ended at an unsafe act")
	}
	if !stops() {
		t.Error("the drill's own word does not count")
	}
	t.Setenv("STEADYNEEDLE_ON_UNSAFE", "go-on")
	if stops() {
		t.Error("the settings do not go over the drill")
	}
	if !stops("--on-unsafe", "stop") {
		t.Error("the flag does not go over the settings")
	}
	put(t, dir+"/drills/reverse-lay.yaml", strings.Replace(text, "\nends:", "\non_unsafe: maybe\nends:", 1))
	if _, errs, code := needle(t, "check", dir+"/drills/reverse-lay.yaml"); code != broken || !strings.Contains(errs, `on_unsafe: found "maybe", expected go-on, stop, ask`) {
		t.Errorf("check: exit %d, %q", code, errs)
	}
}

// An attempt that was given up before its drill was over is not passed, whatever the judge had found by then.
func TestGivenUpIsNotPassed(t *testing.T) {
	dir := t.TempDir()
	whole, short := filepath.Join(dir, "whole.tape"), filepath.Join(dir, "short.tape")
	runJSON(t, 0, "run", "reverse-lay", "--operator", "clean", "--record", whole, "--json")
	a := replayedTo(t, whole, 60*60)
	var b bytes.Buffer
	if err := a.WriteTape(&b); err != nil {
		t.Fatal(err)
	}
	put(t, short, b.String())
	if r, _ := runJSON(t, failedAttempt, "rate", short, "--json"); r.Passed || r.Ended != "ended early" || len(r.Findings) > 0 {
		t.Errorf("%+v", r)
	}
}

// replayedTo works a recording up to a tick, and gives it up there.
func replayedTo(t *testing.T, file string, tick world.Tick) *attempt.Attempt {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	reader, err := tape.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	d, err := recorded.Drill(&reader.Header)
	if err != nil {
		t.Fatal(err)
	}
	r, err := attempt.NewReplay(reader, d, attempt.Options{})
	if err != nil {
		t.Fatal(err)
	}
	r.Work(int(tick))
	r.Close()
	return r.Attempt()
}
