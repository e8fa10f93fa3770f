package attempt

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// What follows a recording's end is taken as it would be from an evaluator, and refused like theirs,
// whether the recording is replayed or opened by its frames.
func TestRulingOfARecording(t *testing.T) {
	a := worked(t, Options{Keys: true, Header: tape.Header{Build: "b"}})
	recording := text(t, a)
	var frames bytes.Buffer
	if err := a.WriteFrames(&frames, []byte(recording)); err != nil {
		t.Fatal(err)
	}
	f := a.Sheet().Findings[0]
	if err := a.Waive(f.Rule, f.From, "Nobody was near."); err != nil {
		t.Fatal(err)
	}
	waives := strings.TrimPrefix(text(t, a), recording)
	if err := a.Sign("Lt. Brook"); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ what, tail, says string }{
		{"as it was made", strings.TrimPrefix(text(t, a), recording), ""},
		{"waived twice", waives + waives, "waived already"},
		{"no such finding", strings.Replace(waives, f.Rule, "never", 1), "no finding of rule never"},
		{"no reason", strings.Replace(waives, "Nobody was near.", "", 1), "waives nothing"},
		{"another note", strings.Replace(waives, " waive ", " help ", 1), "a note of help follows the end"},
	} {
		d, _ := exercise(t)
		b, err := OpenFrames([]byte(recording+c.tail), d, frames.Bytes(), Options{Header: tape.Header{Build: "b"}})
		if c.says == "" {
			if err != nil || b.Ruling().SignedBy != "Lt. Brook" || len(b.Ruling().Waivers) != 1 || b.Ruling().Score != 100 {
				t.Errorf("%s, by frames: %v", c.what, err)
			}
		} else if !errors.Is(err, ErrFrames) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s, by frames: %v, want %q", c.what, err, c.says)
		}
		reader, err := tape.NewReader(strings.NewReader(recording + c.tail))
		if err != nil {
			t.Fatal(err)
		}
		_, err = Replay(reader, d, Options{})
		if c.says == "" && err != nil || c.says != "" && (!errors.Is(err, tape.ErrRefused) || !strings.Contains(err.Error(), c.says)) {
			t.Errorf("%s, replayed: %v, want %q", c.what, err, c.says)
		}
	}
}

// A ruling is on one end: who goes back and comes to another has none yet.
func TestRulingIsForgottenByRewind(t *testing.T) {
	a := worked(t, Options{Keys: true})
	f := a.Sheet().Findings[0]
	if err := errors.Join(a.Waive(f.Rule, f.From, "Nobody was near."), a.Sign("Lt. Brook")); err != nil {
		t.Fatal(err)
	}
	if err := a.Rewind(a.Now() - 5*world.TicksPerSecond); err != nil {
		t.Fatal(err)
	}
	a.Close()
	if r := a.Ruling(); r.Made() {
		t.Errorf("after a rewind: %+v", r)
	}
}
