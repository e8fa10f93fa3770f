package recorded

import (
	"bytes"
	"errors"

	"steadyneedle/cmd/internal/store"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// Opening is an attempt that is being opened.
type Opening struct {
	ID     string
	Header tape.Header
	at     *attempt.Attempt   // opened at once; nil while it is replayed
	replay *attempt.Replaying // nil if there was no need
	length world.Tick
}

// Open begins to open an attempt that is kept. With key frames it is there at once.
func Open(s *store.Store, id string) (*Opening, error) {
	text, err := s.Tape(id)
	if err != nil {
		return nil, err
	}
	o, err := open(text, s.Frames(id))
	if err != nil {
		return nil, err
	}
	o.ID = id
	if sheet, err := s.Sheet(id); err == nil {
		o.length = sheet.Length
	}
	return o, nil
}

// OpenText begins to open a recording that lies elsewhere.
func OpenText(text []byte) (*Opening, error) { return open(text, nil) }

func open(text, frames []byte) (*Opening, error) {
	t, err := tape.NewReader(bytes.NewReader(text))
	if err != nil {
		return nil, err
	}
	d, err := Drill(&t.Header)
	if err != nil {
		return nil, err
	}
	o := &Opening{Header: t.Header}
	if frames != nil {
		o.at, err = attempt.OpenFrames(text, d, frames, attempt.Options{Header: tape.Header{Build: Build()}})
		if err == nil {
			return o, nil
		}
		if !errors.Is(err, attempt.ErrFrames) {
			return nil, err
		}
	}
	o.replay, err = attempt.NewReplay(t, d, attempt.Options{Keys: true})
	return o, err
}

// Work opens on for about so many ticks, and reports whether the attempt is there.
func (o *Opening) Work(ticks int) bool { return o.replay == nil || o.replay.Work(ticks) }

// Share is how much has been replayed, as far as that is known: 0 to 1.
func (o *Opening) Share() float64 {
	if o.replay == nil {
		return 1
	}
	return float64(o.replay.Attempt().Now()) / float64(max(1, o.length, o.replay.Attempt().Now()))
}

// Whole reports whether an error of Attempt leaves an attempt that goes as far as the recording does: it
// was broken off, and everything before is proved.
func Whole(err error) bool { return err == nil || errors.Is(err, tape.ErrTruncated) }

// Attempt is the attempt, once Work has said so. A recording that does not match itself, or breaks off,
// gives the error with the attempt as far as it came.
func (o *Opening) Attempt() (*attempt.Attempt, error) {
	if o.replay == nil {
		return o.at, nil
	}
	return o.replay.Attempt(), o.replay.Close()
}
