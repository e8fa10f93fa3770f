package recorded

import (
	"bytes"
	"testing"

	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/operator"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// whole is the recording of a whole attempt, with its key frames.
func whole(t testing.TB) (text, frames []byte) {
	t.Helper()
	s := scenarios.Open(nil)
	d, script, err := s.DrillFor("reverse-lay", "clean", scenarios.Options{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	texts, err := s.TextsOf(d, "clean")
	if err != nil {
		t.Fatal(err)
	}
	var tape1, packed bytes.Buffer
	a, err := attempt.New(d, attempt.Options{Record: &tape1, Keys: true, Header: tape.Header{Build: Build(), Operator: "clean", Files: Files(texts)}})
	if err != nil {
		t.Fatal(err)
	}
	o, err := a.Operator(script, operator.Hands{Speed: 1, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	if err := a.Run("clean", o); err != nil {
		t.Fatal(err)
	}
	if err := a.WriteFrames(&packed, tape1.Bytes()); err != nil {
		t.Fatal(err)
	}
	return tape1.Bytes(), packed.Bytes()
}

// While an attempt is worked again one sees how far it is, and how far it has to go; with key frames it is
// there at once.
func TestReached(t *testing.T) {
	text, frames := whole(t)
	o, err := open(text, nil)
	if err != nil {
		t.Fatal(err)
	}
	o.Work(600)
	now, length := o.Reached()
	if now < 600 || now > 700 || length < 600*world.TicksPerSecond {
		t.Errorf("after ten seconds: %d of %d", now, length)
	}
	for !o.Work(1 << 20) {
	}
	if now, end := o.Reached(); now != end || end != length {
		t.Errorf("in the end: %d of %d, first said to be %d", now, end, length)
	}
	if o, err = open(text, frames); err != nil || !o.Work(0) {
		t.Errorf("with key frames it is not there at once: %v", err)
	}
	for _, spoiled := range []string{"", "hello\n", "x y\n", "h 99"} {
		if got := lastTick([]byte(spoiled)); got != 0 {
			t.Errorf("%q ends at %d", spoiled, got)
		}
	}
}

// BenchmarkReplay is an attempt without key frames, worked again from its recording.
func BenchmarkReplay(b *testing.B) {
	text, _ := whole(b)
	for b.Loop() {
		o, err := open(text, nil)
		if err != nil {
			b.Fatal(err)
		}
		for !o.Work(1 << 20) {
		}
		if _, err := o.Attempt(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkFrames is an attempt with key frames.
func BenchmarkFrames(b *testing.B) {
	text, frames := whole(b)
	for b.Loop() {
		if o, err := open(text, frames); err != nil || !o.Work(0) {
			b.Fatal(err)
		}
	}
}

// BenchmarkJump goes to moments all over an attempt.
func BenchmarkJump(b *testing.B) {
	text, frames := whole(b)
	o, err := open(text, frames)
	if err != nil {
		b.Fatal(err)
	}
	a, err := o.Attempt()
	if err != nil {
		b.Fatal(err)
	}
	view, err := a.NewView()
	if err != nil {
		b.Fatal(err)
	}
	at := world.Tick(0)
	for b.Loop() {
		at = (at + 7919) % a.Now()
		if err := a.Look(at, view); err != nil {
			b.Fatal(err)
		}
	}
}
