//go:build !js

package store

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"steadyneedle/render/report"
)

var noon = time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC)

func sheet() *report.Sheet {
	return &report.Sheet{Format: report.SheetFormat, Drill: "reverse-lay", Title: "Reverse lay", Score: 94, Full: 100, Caution: report.Caution}
}

// kept makes a store with one attempt in it.
func kept(t *testing.T) (*Store, string, string) {
	t.Helper()
	dir := t.TempDir()
	s, err := Open(filepath.Join(dir, "attempts"))
	if err != nil {
		t.Fatal(err)
	}
	j, err := s.Begin("reverse-lay", noon)
	if err != nil {
		t.Fatal(err)
	}
	io.WriteString(j, "header\nend 0\n")
	frames := func(w io.Writer, recording []byte) error {
		_, err := w.Write(append([]byte("frames of "), recording...))
		return err
	}
	if err := s.Finish(j, sheet(), frames); err != nil {
		t.Fatal(err)
	}
	return s, j.ID, filepath.Join(dir, "attempts")
}

func TestAnAttemptIsKept(t *testing.T) {
	s, id, _ := kept(t)
	list, err := s.List()
	if err != nil || len(list) != 1 || list[0].ID != id || list[0].Unfinished || list[0].Sheet.Score != 94 {
		t.Fatalf("%+v, %v", list, err)
	}
	if text, err := s.Tape(id); string(text) != "header\nend 0\n" || err != nil {
		t.Errorf("%q, %v", text, err)
	}
	if f := s.Frames(id); string(f) != "frames of header\nend 0\n" {
		t.Errorf("%q", f)
	}
	own := report.Own{Phases: map[string]string{"Supply": "error"}, Pass: true}
	if err := s.SetOwn(id, &own); err != nil {
		t.Fatal(err)
	}
	if got, err := s.Sheet(id); err != nil || got.Own == nil || got.Own.Phases["Supply"] != "error" || !got.Own.Pass {
		t.Errorf("%+v, %v", got, err)
	}
	for word, ok := range map[string]bool{"last": true, "20260301": true, id: true, "2027": false, "": false} {
		if got, err := s.Find(word); (err == nil) != ok || ok && got != id {
			t.Errorf("%q: %q, %v", word, got, err)
		}
	}
	if err := s.Remove(id); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Tape(id); !errors.Is(err, ErrUnknown) {
		t.Errorf("%v", err)
	}
}

// Two attempts of one second get different names, and what is under way is not listed.
func TestUnderWay(t *testing.T) {
	s, first, _ := kept(t)
	j, err := s.Begin("reverse-lay", noon)
	if err != nil || j.ID == first {
		t.Fatalf("%v, %v", j, err)
	}
	defer j.Close()
	if list, err := s.List(); err != nil || len(list) != 1 {
		t.Errorf("%+v, %v", list, err)
	}
}

// leftBehind makes a journal look as if its writer had died long ago.
func leftBehind(t *testing.T, s *Store, dir, text string) string {
	t.Helper()
	j, err := s.Begin("reverse-lay", noon.Add(time.Hour))
	if err != nil {
		t.Fatal(err)
	}
	io.WriteString(j, text)
	if err := j.Close(); err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(dir, j.ID, journalFile)
	if err := os.Chtimes(name, noon, noon); err != nil {
		t.Fatal(err)
	}
	return j.ID
}

// A journal that was left behind is offered, without its last torn line.
func TestLeftBehind(t *testing.T) {
	s, _, dir := kept(t)
	id := leftBehind(t, s, dir, "header\na 1 torn he")
	list, err := s.List()
	if err != nil || len(list) != 2 || !list[1].Unfinished || list[1].ID != id {
		t.Fatalf("%+v, %v", list, err)
	}
	if text, err := s.Tape(id); string(text) != "header\n" || err != nil {
		t.Errorf("%q, %v", text, err)
	}
	if err := s.Settle(id, sheet()); err != nil {
		t.Fatal(err)
	}
	if list, err = s.List(); err != nil || list[1].Unfinished {
		t.Errorf("%+v, %v", list, err)
	}
}

// A program that dies between the sheet and the last rename has kept everything.
func TestDiedBeforeTheRename(t *testing.T) {
	s, _, dir := kept(t)
	id := leftBehind(t, s, dir, "header\n")
	if err := s.writeJSON(id, sheetFile, sheet()); err != nil {
		t.Fatal(err)
	}
	list, err := s.List()
	if err != nil || len(list) != 2 || list[1].Unfinished || list[1].Sheet == nil {
		t.Fatalf("%+v, %v", list, err)
	}
	if text, err := s.Tape(id); string(text) != "header\n" || err != nil {
		t.Errorf("%q, %v", text, err)
	}
}

// What cannot be read is told of in a line that names it, and the rest is listed.
func TestSpoiledSheet(t *testing.T) {
	for name, text := range map[string]string{"empty": "", "cut": `{"sheet": 1, "dri`, "other": `{"sheet": 7}`, "list": "[]"} {
		s, _, dir := kept(t)
		id := leftBehind(t, s, dir, "header\n")
		if err := s.Settle(id, sheet()); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, id, sheetFile), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		list, err := s.List()
		if len(list) != 1 || err == nil || !strings.Contains(err.Error(), id) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %d, %v", name, len(list), err)
		}
	}
}

// Names from outside never leave the folder.
func TestNames(t *testing.T) {
	s, _, _ := kept(t)
	for _, id := range []string{"..", "../x", "20260301-120000-a/../../b", "/etc"} {
		if _, err := s.Tape(id); !errors.Is(err, ErrUnknown) {
			t.Errorf("%s: %v", id, err)
		}
		if err := s.Remove(id); !errors.Is(err, ErrUnknown) {
			t.Errorf("%s: %v", id, err)
		}
	}
}
