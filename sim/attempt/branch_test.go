package attempt

import (
	"bytes"
	"errors"
	"reflect"
	"strings"
	"testing"

	"steadyneedle/sim/prompter"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// text is the whole recording.
func text(t *testing.T, a *Attempt) string {
	t.Helper()
	var b bytes.Buffer
	if err := a.WriteTape(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// again does from a moment on what a log says, and goes on to the end.
func again(t *testing.T, a *Attempt, log []entry) {
	t.Helper()
	from := a.Now()
	for i := range log {
		e := &log[i]
		if e.kind != tape.Action || e.action.At < from {
			continue
		}
		for a.Now() < e.action.At {
			a.Tick()
		}
		if err := a.Do(e.action); err != nil {
			t.Fatal(err)
		}
	}
	for !a.Finished() {
		a.Tick()
	}
}

// A branch is recorded from the beginning, and what it branched from stays as it was.
func TestBranch(t *testing.T) {
	a := worked(t, Options{Keys: true})
	before := text(t, a)
	for _, at := range []world.Tick{0, 1, 600, 750, a.Now() - 1} {
		var rec bytes.Buffer
		b, err := a.Branch(at, Options{Keys: true, Record: &rec})
		if err != nil {
			t.Fatal(err)
		}
		if b.Now() != at || b.Finished() {
			t.Fatalf("branched to %d, finished %v; want %d", b.Now(), b.Finished(), at)
		}
		again(t, b, a.log)
		if b.Hash() != a.Hash() || !reflect.DeepEqual(b.Sheet(), a.Sheet()) || !reflect.DeepEqual(b.Series.At, a.Series.At) {
			t.Errorf("the same actions after a branch at %d came to another end", at)
		}
		if rec.String() != before || text(t, b) != before {
			t.Errorf("the recording of a branch at %d is not the same", at)
		}
		if text(t, a) != before {
			t.Error("branching changed what was branched from")
		}
	}
}

// A finished attempt opens from its recording and frames as it was, and every moment can be looked at.
func TestFrames(t *testing.T) {
	a := worked(t, Options{Keys: true, Header: tape.Header{Build: "b"}})
	recording := []byte(text(t, a))
	var frames bytes.Buffer
	if err := a.WriteFrames(&frames, recording); err != nil {
		t.Fatal(err)
	}
	d, _ := exercise(t)
	open := func(recording, frames []byte, build string) (*Attempt, error) {
		return OpenFrames(recording, d, frames, Options{Header: tape.Header{Build: build}})
	}
	b, err := open(recording, frames.Bytes(), "b")
	if err != nil {
		t.Fatal(err)
	}
	if b.Hash() != a.Hash() || b.Now() != a.Now() || !b.Finished() || !reflect.DeepEqual(b.Sheet(), a.Sheet()) ||
		!reflect.DeepEqual(b.Series, a.Series) || text(t, b) != string(recording) {
		t.Error("it opened as something else")
	}
	view, err := b.NewView()
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range a.log {
		if e.kind != tape.Hash || e.action.At%420 != 0 {
			continue
		}
		if err := b.Look(e.action.At, view); err != nil {
			t.Fatal(err)
		}
		if h, _ := view.Hash(); h != e.hash {
			t.Errorf("the look at tick %d is not what was there", e.action.At)
		}
	}
	if c, err := b.Branch(750, Options{}); err != nil || c.Now() != 750 {
		t.Errorf("branch: %v", err)
	}

	spoiled := bytes.Clone(frames.Bytes())
	spoiled[len(spoiled)/2] ^= 1
	mark := strings.Replace(string(recording), "end ", "m 1 x\nend ", 1)
	for name, c := range map[string]struct {
		recording, frames []byte
		build             string
	}{
		"spoiled": {recording, spoiled, "b"}, "empty": {recording, nil, "b"}, "cut": {recording, frames.Bytes()[:frames.Len()-9], "b"},
		"another program": {recording, frames.Bytes(), "c"}, "another recording": {[]byte(mark), frames.Bytes(), "b"},
	} {
		if _, err := open(c.recording, c.frames, c.build); !errors.Is(err, ErrFrames) && name != "another recording" || err == nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A replay in slices is the replay.
func TestReplayInSlices(t *testing.T) {
	a := worked(t, Options{})
	r, err := tape.NewReader(strings.NewReader(text(t, a)))
	if err != nil {
		t.Fatal(err)
	}
	d, _ := exercise(t)
	p, err := NewReplay(r, d, Options{})
	if err != nil {
		t.Fatal(err)
	}
	slices := 1
	for ; !p.Work(100); slices++ {
		if now := p.Attempt().Now(); now > world.Tick(slices*(100+60)) {
			t.Fatalf("slice %d went on to tick %d", slices, now)
		}
	}
	if err := p.Close(); err != nil || p.Attempt().Hash() != a.Hash() || slices < 5 {
		t.Errorf("%v after %d slices", err, slices)
	}
}

// What the prompter says is on the recording, and a replay shows it without asking anybody.
func TestHintsAreRecorded(t *testing.T) {
	d, _ := exercise(t)
	a := worked(t, Options{Help: prompter.New(d.Steps, nil), Keys: true})
	said := a.Hints()
	var words []string
	for _, h := range said {
		words = append(words, h.Cause.String()+" "+h.About)
	}
	if got := strings.Join(words, ", "); got != "told shift, told complete, unsafe chocks" {
		t.Errorf("said %s", got)
	}
	b, err := replayed(t, text(t, a))
	if err != nil || !reflect.DeepEqual(b.Hints(), said) {
		t.Errorf("%v, %v", b.Hints(), err)
	}
	if n := a.Notes(HelpNote); len(n) != 1 || n[0].Text != "every step" {
		t.Errorf("%v", n)
	}
	c, err := a.Branch(said[1].At+60, Options{Help: prompter.New(d.Steps, nil)})
	if err != nil {
		t.Fatal(err)
	}
	for range 60 {
		c.Tick()
	}
	if got := len(c.Hints()); got != 2 {
		t.Errorf("%d hints after a branch, want the 2 from before", got)
	}
	if out := a.Outcomes(a.Sheet()); !out[0].Hinted || !out[1].Hinted || out[0].Rank != 1 || out[1].Rank != 2 || out[0].Missed() {
		t.Errorf("%+v", out)
	}
}

// watch drives steps by their conditions alone.
func watch(t *testing.T, waits [][]int, holds ...string) *Attempt {
	t.Helper()
	d, _ := exercise(t)
	d.Steps = nil
	a := &Attempt{Drill: d, steps: newSteps(nil)}
	a.steps.at, a.steps.waits = make([]step, len(waits)), waits
	for s := range holds[0] { // each letter is ten seconds
		for i, h := range holds {
			a.steps.at[i].see(h[s] == '#', false, world.Tick(600*s+1))
			a.steps.settle(i, world.Tick(600*s+1))
		}
	}
	return a
}

func TestDoneInTurn(t *testing.T) {
	chain := [][]int{nil, {0}}
	for _, c := range []struct {
		name   string
		holds  []string
		done   string
		early  string
		second world.Tick
	}{
		{"in order", []string{"..####", "...###"}, "yy", "nn", 1801},
		{"held from the beginning", []string{"..####", "######"}, "yy", "nn", 1201},
		{"opened, then shut again in its turn", []string{"..####", "#..###"}, "yy", "nn", 1801},
		{"too soon", []string{"...###", ".#####"}, "yy", "ny", 601},
		{"too soon and for long, then undone", []string{"....##", ".##..."}, "yy", "ny", 601},
		{"the other never", []string{"......", ".#####"}, "ny", "ny", 601},
		{"never", []string{"..####", "......"}, "yn", "nn", 0},
	} {
		a := watch(t, chain, c.holds...)
		for i := range chain {
			at, done := a.StepDone(i)
			if done != (c.done[i] == 'y') || a.StepEarly(i) != (c.early[i] == 'y') {
				t.Errorf("%s, step %d: done %v, early %v", c.name, i, done, a.StepEarly(i))
			}
			if i == 1 && at != c.second {
				t.Errorf("%s: at %d, want %d", c.name, at, c.second)
			}
		}
	}
}
