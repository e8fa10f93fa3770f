package recorded

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"

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
		return nil, fmt.Errorf("attempt %s: %w", id, err)
	}
	o.ID = id
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
		if !errors.Is(err, attempt.ErrFrames) && !errors.Is(err, tape.ErrVersion) {
			return nil, err
		}
	}
	o.length = lastTick(text)
	o.replay, err = attempt.NewReplay(t, d, attempt.Options{Keys: true})
	return o, err
}

// lastTick is the tick of a recording's last whole line; 0 where it cannot be read.
func lastTick(text []byte) world.Tick {
	text = text[:max(0, bytes.LastIndexByte(text, '\n'))]
	fields := bytes.Fields(text[bytes.LastIndexByte(text, '\n')+1:])
	if len(fields) < 2 {
		return 0
	}
	at, err := strconv.ParseInt(string(fields[1]), 10, 64)
	if err != nil {
		return 0
	}
	return world.Tick(at)
}

// Work opens on for about so many ticks, and reports whether the attempt is there.
func (o *Opening) Work(ticks int) bool { return o.replay == nil || o.replay.Work(ticks) }

// Reached is the moment up to which the attempt has been worked again, and how long it is.
func (o *Opening) Reached() (now, whole world.Tick) {
	if o.replay == nil {
		return o.length, o.length
	}
	now = o.replay.Attempt().Now()
	return now, max(o.length, now)
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
