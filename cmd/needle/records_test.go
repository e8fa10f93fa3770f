package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"steadyneedle/cmd/internal/recorded"
	"steadyneedle/cmd/internal/store"
	"steadyneedle/render/report"
	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/tape"
)

// keep works a drill by a scripted operator and keeps the attempt, as a person's.
func keep(t *testing.T, s *store.Store, name string, begun time.Time) *attempt.Attempt {
	t.Helper()
	shelf := scenarios.Open(nil)
	d, script, err := shelf.DrillFor("reverse-lay", name, scenarios.Options{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	texts, err := shelf.TextsOf(d, name)
	if err != nil {
		t.Fatal(err)
	}
	j, err := s.Begin(d.Name, begun)
	if err != nil {
		t.Fatal(err)
	}
	a, err := attempt.New(d, attempt.Options{Record: j, Keys: true,
		Header: tape.Header{Build: recorded.Build(), Operator: name, Mode: "rehearsal", Begun: begun.Format(time.RFC3339), Files: recorded.Files(texts)}})
	if err != nil {
		t.Fatal(err)
	}
	op, err := a.Operator(script, operator.Hands{Speed: 1, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	if err := a.Run(name, op); err != nil {
		t.Fatal(err)
	}
	if err := s.Finish(j, report.Of(a, "Engine 41 · rehearsal"), a.WriteFrames); err != nil {
		t.Fatal(err)
	}
	return a
}

func TestRecords(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("STEADYNEEDLE_ATTEMPTS", dir)
	if out, errs, code := needle(t, "records", "list"); code != 0 || out != "no attempts are kept\n" {
		t.Errorf("%q, %q, %d", out, errs, code)
	}
	s, err := store.Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	day := time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC)
	keep(t, s, "unbled", day)
	a := keep(t, s, "unbled", day.Add(24*time.Hour))

	out, errs, code := needle(t, "records", "list")
	for _, want := range []string{"20260301-120000-reverse-lay", "Passed", "94", "comes back in reverse-lay: Bleed until solid water", "Missed in 2 of 2 attempts."} {
		if code != 0 || !strings.Contains(out, want) {
			t.Errorf("list lacks %q: %d\n%s%s", want, code, out, errs)
		}
	}
	var list []map[string]any
	out, _, _ = needle(t, "records", "list", "--json", "--drill", "reverse-lay")
	if err := json.Unmarshal([]byte(out), &list); err != nil || len(list) != 2 || list[1]["score"] != 94.0 {
		t.Errorf("%v, %v", list, err)
	}
	if out, _, _ = needle(t, "records", "list", "--json", "--drill", "relay"); out != "[]\n" {
		t.Errorf("%q", out)
	}

	out, errs, code = needle(t, "records", "show", "last")
	for _, want := range []string{"Supply: error", "Intake opened", "why:", "passed over in its turn", "Training aid only"} {
		if code != 0 || !strings.Contains(out, want) {
			t.Errorf("show lacks %q: %d\n%s%s", want, code, out, errs)
		}
	}
	for as, want := range map[string]string{
		"html": "<svg", "pdf": "%PDF-", "csv": "Time (s),Discharge 1 (psi),Intake (psi),Engine speed (rpm)", "json": `"rule": "unbled"`, "xapi": "http://adlnet.gov/expapi/verbs/passed",
	} {
		file := filepath.Join(t.TempDir(), "x")
		if _, errs, code := needle(t, "records", "export", "last", "--as", as, "--to", file); code != 0 {
			t.Errorf("%s: %d, %s", as, code, errs)
		}
		text, _ := os.ReadFile(file)
		if !strings.Contains(string(text), want) {
			t.Errorf("%s lacks %q", as, want)
		}
		if as != "pdf" && !strings.Contains(string(text), "raining aid only") {
			t.Errorf("%s has no caution", as)
		}
		if n := strings.Count(string(text), "\n"); as == "csv" && n != 1+len(a.Series.At) {
			t.Errorf("csv has %d rows, want %d", n, 1+len(a.Series.At))
		}
	}
	for _, args := range [][]string{{"show", "2031"}, {"export", "last", "--as", "doc"}, {"show", "2026"}, {"export", "last", "--as", "xapi", "--account", "a@b.example"}} {
		if _, errs, code := needle(t, append([]string{"records"}, args...)...); code != 2 || strings.Count(errs, "\n") != 1 {
			t.Errorf("%v: %d, %q", args, code, errs)
		}
	}
}

// An attempt opens from its key frames as from a replay.
func TestOpensTheSameWay(t *testing.T) {
	s, err := store.Open(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	a := keep(t, s, "unbled", time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC))
	ids, _ := s.List()
	quick, err := recorded.Open(s, ids[0].ID)
	if err != nil || !quick.Work(0) {
		t.Fatalf("key frames were not used: %v", err)
	}
	b, err := quick.Attempt()
	if err != nil || b.Hash() != a.Hash() || b.Now() != a.Now() {
		t.Errorf("%v", err)
	}
	text, err := s.Tape(ids[0].ID)
	if err != nil {
		t.Fatal(err)
	}
	slow, err := recorded.OpenText(text)
	if err != nil {
		t.Fatal(err)
	}
	for !slow.Work(600) {
	}
	c, err := slow.Attempt()
	if err != nil || c.Hash() != a.Hash() || len(c.Sheet().Findings) != len(b.Sheet().Findings) {
		t.Errorf("%v", err)
	}
}

func BenchmarkOpenFrames(b *testing.B) { benchmarkOpen(b, true) }
func BenchmarkOpenReplay(b *testing.B) { benchmarkOpen(b, false) }

func benchmarkOpen(b *testing.B, frames bool) {
	dir := b.TempDir()
	s, err := store.Open(dir)
	if err != nil {
		b.Fatal(err)
	}
	var t testing.T
	keep(&t, s, "unbled", time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC))
	ids, _ := s.List()
	if !frames {
		os.Remove(filepath.Join(dir, ids[0].ID, "frames.gz"))
	}
	var at *attempt.Attempt
	for b.Loop() {
		o, err := recorded.Open(s, ids[0].ID)
		if err != nil {
			b.Fatal(err)
		}
		for !o.Work(1 << 30) {
		}
		if at, err = o.Attempt(); err != nil {
			b.Fatal(err)
		}
	}
	b.StopTimer()
	view, err := at.NewView()
	if err != nil {
		b.Fatal(err)
	}
	began := time.Now()
	if err := at.Look(at.Now()/2-1, view); err != nil {
		b.Fatal(err)
	}
	b.ReportMetric(float64(time.Since(began).Microseconds())/1000, "ms/jump")
}

// An evaluator's ruling is kept with the attempt: its recording up to the end stays as it was, its key
// frames still fit, and every export says who waived what, beside what the judge had found.
func TestKeptRuling(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("STEADYNEEDLE_ATTEMPTS", dir)
	s, err := store.Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	a := keep(t, s, "charges-unasked", time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC))
	id, err := s.Find("last")
	if err != nil {
		t.Fatal(err)
	}
	before, _ := s.Tape(id)
	_, plain := statement(t)
	rule := func() {
		t.Helper()
		if err := s.Rule(id, report.RulingOf(a), a.WriteRuling); err != nil {
			t.Fatal(err)
		}
	}
	f := a.Sheet().Findings[0]
	if err := a.Waive(f.Rule, f.From, "By mistake."); err != nil {
		t.Fatal(err)
	}
	rule()
	if err := a.TakeBack(f.Rule, f.From); err != nil || a.TakeBack(f.Rule, f.From) == nil {
		t.Errorf("taking back: %v, or twice", err)
	}
	rule()
	if now, _ := s.Tape(id); !bytes.Equal(now, before) {
		t.Error("a waiver taken back is still on the recording")
	}
	if err := errors.Join(a.Waive(f.Rule, f.From, "The crew asked by hand."), a.Sign("Lt. Brook")); err != nil {
		t.Fatal(err)
	}
	rule()
	if a.TakeBack(f.Rule, f.From) == nil {
		t.Error("a signed waiver was taken back")
	}
	now, _ := s.Tape(id)
	if !bytes.HasPrefix(now, before) || strings.Count(string(now[len(before):]), "\n") != 2 {
		t.Errorf("the recording now ends with %q", now[len(before):])
	}
	o, err := recorded.Open(s, id)
	if err != nil || !o.Work(0) {
		t.Fatalf("its key frames do not fit any more: %v", err)
	}
	if b, err := o.Attempt(); err != nil || b.Ruling().SignedBy != "Lt. Brook" || !b.Ruling().Passed {
		t.Errorf("opened: %v", err)
	}
	for as, want := range map[string]string{"html": "passed with 100 points, 1 finding waived, signed by Lt. Brook", "json": `"reason": "The crew asked by hand."`, "xapi": "verbs/passed", "pdf": "%PDF-"} {
		out, errs, code := needle(t, "records", "export", "last", "--as", as)
		if code != 0 || !strings.Contains(out, want) {
			t.Errorf("%s lacks %q: %d %s", as, want, code, errs)
		}
	}
	if verb, again := statement(t); verb != "passed" || again == plain {
		t.Errorf("the statement after the ruling is %q, with the identifier %s of the one before", verb, again)
	}
	for _, args := range [][]string{{"records", "show", "last"}, {"records", "list"}} {
		if out, _, _ := needle(t, args...); !strings.Contains(out, "signed by Lt. Brook") || !strings.Contains(out, "Not passed") {
			t.Errorf("%v: %s", args, out)
		}
	}
}

// statement is the verb and the identifier of the newest attempt's own statement.
func statement(t *testing.T) (verb, id string) {
	t.Helper()
	out, _, _ := needle(t, "records", "export", "last", "--as", "xapi")
	var list []report.Statement
	if err := json.Unmarshal([]byte(out), &list); err != nil || len(list) == 0 {
		t.Fatal(err)
	}
	return list[0].Verb.Display["en-US"], list[0].ID
}
