package store

import (
	"io"
	"math/rand/v2"
	"strings"
	"syscall/js"
	"testing"
	"time"

	"steadyneedle/render/report"
)

// page lends the test a browser's storage with so much room for texts.
func page(t *testing.T, room int) {
	t.Helper()
	make := js.Global().Get("Function").New("room", `
		const kept = new Map();
		const used = () => { let n = 0; for (const [k, v] of kept) n += k.length + v.length; return n; };
		return {
			get length() { return kept.size; },
			key: i => [...kept.keys()][i],
			getItem: k => kept.has(k) ? kept.get(k) : null,
			removeItem: k => { kept.delete(k); },
			setItem: (k, v) => {
				const old = kept.get(k);
				kept.set(k, v);
				if (used() > room) { if (old === undefined) kept.delete(k); else kept.set(k, old); throw new Error("QuotaExceededError"); }
			},
		};`)
	js.Global().Set("localStorage", make.Invoke(room))
}

var noon = time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC)

func sheet() *report.Sheet {
	return &report.Sheet{Format: report.SheetFormat, Drill: "reverse-lay", Title: "Reverse lay", Score: 94, Full: 100}
}

// An attempt is kept in the page's storage, listed, and thrown away.
func TestAnAttemptIsKept(t *testing.T) {
	page(t, 1<<20)
	s, err := Open("")
	if err != nil {
		t.Fatal(err)
	}
	j, err := s.Begin("reverse-lay", noon)
	if err != nil {
		t.Fatal(err)
	}
	line := "a 1 candidate panel throttle 0.5\n"
	for range 3 {
		io.WriteString(j, line)
		time.Sleep(2 * syncEvery) // pieces of their own
	}
	if err := s.Finish(j, sheet(), nil); err != nil {
		t.Fatal(err)
	}
	list, err := s.List()
	if err != nil || len(list) != 1 || list[0].Sheet.Score != 94 {
		t.Fatalf("%+v, %v", list, err)
	}
	if text, err := s.Tape(j.ID); err != nil || string(text) != strings.Repeat(line, 3) {
		t.Errorf("%q, %v", text, err)
	}
	if err := s.SetOwn(j.ID, &report.Own{Pass: true}); err != nil {
		t.Fatal(err)
	}
	if got, err := s.Sheet(j.ID); err != nil || !got.Own.Pass {
		t.Errorf("%+v, %v", got, err)
	}
	if err := s.Remove(j.ID); err != nil {
		t.Fatal(err)
	}
	if n := js.Global().Get("localStorage").Get("length").Int(); n != 0 {
		t.Errorf("%d keys are left", n)
	}
}

// A page that is closed in the middle leaves a journal that is offered; a storage that is full says so.
func TestLeftBehindAndFull(t *testing.T) {
	page(t, 3000)
	s, err := Open("")
	if err != nil {
		t.Fatal(err)
	}
	j, err := s.Begin("reverse-lay", noon)
	if err != nil {
		t.Fatal(err)
	}
	io.WriteString(j, "header\na 1 torn he")
	time.Sleep(2 * syncEvery)
	again, _ := Open("")
	list, err := again.List()
	if err != nil || len(list) != 1 || !list[0].Unfinished {
		t.Fatalf("%+v, %v", list, err)
	}
	if text, err := again.Tape(j.ID); err != nil || string(text) != "header\n" {
		t.Errorf("%q, %v", text, err)
	}
	var noise strings.Builder
	dice := rand.New(rand.NewPCG(1, 2))
	for range 20000 {
		noise.WriteByte(byte('!' + dice.IntN(90)))
	}
	io.WriteString(j, noise.String())
	err = j.Close()
	if err == nil || !strings.Contains(err.Error(), "no room for more") {
		t.Errorf("%v", err)
	}
	if list, err = again.List(); err != nil || len(list) != 1 {
		t.Errorf("%+v, %v", list, err)
	}
}
