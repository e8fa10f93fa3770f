package attempt

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"errors"
	"fmt"
	"io"

	"steadyneedle/sim/drill"
	"steadyneedle/sim/scene"
	"steadyneedle/sim/tape"
	"steadyneedle/sim/world"
)

// Frames are a finished attempt's key frames and series, kept beside its recording so that it opens
// without being worked again. They prove nothing: a replay does. They fit one recording, one number of
// the physics and one build of the program, and say so.

// framesMark begins them; its last figure is the number of the format.
const framesMark = "frames 2"

// ErrFrames is what frames that do not fit wrap: the recording is to be replayed instead.
var ErrFrames = errors.New("the key frames do not fit this recording")

// WriteFrames writes the frames of an attempt that is over and kept keys. recording is its whole text.
func (a *Attempt) WriteFrames(w io.Writer, recording []byte) error {
	if !a.closed || !a.o.Keys {
		return fmt.Errorf("frames are of an attempt that is over and has key frames")
	}
	var b packer
	sum := sumOf(recording)
	b.text(framesMark)
	b.text(string(sum[:]))
	b.text(a.o.Header.Build)
	b.word(scene.Physics)
	last := key{at: a.Now(), scene: a.Scene.Save(nil), rest: a.saveRest(), log: len(a.log)}
	b.word(uint64(len(a.keys) + 1))
	for _, k := range append(a.keys[:len(a.keys):len(a.keys)], last) {
		b.word(uint64(k.at))
		b.word(uint64(k.log))
		b.words(k.scene)
		b.words(k.rest)
	}
	b.series(&a.Series)
	b.word(a.hash)
	whole := sha256.Sum256(b.Bytes())
	b.text(string(whole[:]))
	_, err := w.Write(b.Bytes())
	return err
}

// OpenFrames makes a finished attempt from its recording and frames, without working it again. What
// does not fit gives ErrFrames.
func OpenFrames(recording []byte, d *drill.Drill, frames []byte, o Options) (*Attempt, error) {
	t, err := tape.NewReader(bytes.NewReader(recording))
	if err != nil {
		return nil, err
	}
	if err := matches(&t.Header, d); err != nil {
		return nil, err
	}
	build := o.Header.Build
	o.Header, o.Record, o.Keys = t.Header, nil, true
	a, err := New(d, o)
	if err != nil {
		return nil, err
	}
	tail, err := a.readLog(t)
	if err != nil {
		return nil, err
	}
	if err := a.unpack(frames, sumOf(recording), build); err != nil {
		return nil, err
	}
	for i := range tail {
		if err := a.takeRuling(&tail[i]); err != nil {
			return nil, fmt.Errorf("%w: line %d: %w", ErrFrames, tail[i].Number, err)
		}
	}
	return a, nil
}

// sumOf is of a recording as it ended: an evaluator's ruling may be added later.
func sumOf(recording []byte) [32]byte {
	whole, _ := tape.Ended(recording)
	return sha256.Sum256(whole)
}

// readLog takes over a recording's lines as they are, and gives those that follow its end.
func (a *Attempt) readLog(t *tape.Reader) (tail []tape.Line, err error) {
	names, ended := a.names(), false
	for {
		l, err := t.Next()
		if errors.Is(err, io.EOF) {
			return tail, nil
		}
		if err != nil {
			return nil, err
		}
		if ended {
			tail = append(tail, l)
			continue
		}
		e := entry{kind: l.Kind, hash: l.Hash, about: l.About, text: l.Text}
		e.action = world.Action{At: l.At, By: l.By, From: l.From, Value: l.Value}
		switch l.Kind {
		case tape.End:
			ended = true
			continue
		case tape.Action, tape.Derived:
			id, ok := names[l.Control]
			if !ok {
				return nil, &tape.Error{Line: l.Number, Problem: tape.ErrControl, Detail: l.Control}
			}
			e.action.Control = id
		}
		a.log = append(a.log, e)
		a.hear(&e)
	}
}

func (a *Attempt) unpack(frames []byte, sum [32]byte, build string) error {
	if len(frames) < 40 {
		return ErrFrames
	}
	body := frames[:len(frames)-40]
	whole := sha256.Sum256(body)
	u := unpacker{rest: frames[len(body):]}
	if u.text() != string(whole[:]) {
		return ErrFrames
	}
	u = unpacker{rest: body}
	if u.text() != framesMark || u.text() != string(sum[:]) || u.text() != build || u.word() != scene.Physics {
		return ErrFrames
	}
	n := u.count(32)
	for range n {
		k := key{at: world.Tick(u.word()), log: int(u.word())}
		k.scene, k.rest = u.words(), u.words()
		if k.log < 0 || k.log > len(a.log) {
			return ErrFrames
		}
		a.keys = append(a.keys, k)
	}
	u.series(&a.Series)
	a.hash = u.word()
	if u.bad || n == 0 {
		return ErrFrames
	}
	last := a.keys[n-1]
	a.keys = a.keys[:n-1]
	if err := a.load(last); err != nil || a.Now() != last.at {
		return ErrFrames
	}
	a.over, a.closed = true, true
	return nil
}

// packer writes words and texts, each text and list with its length.
type packer struct{ bytes.Buffer }

func (b *packer) word(v uint64) { b.Write(binary.LittleEndian.AppendUint64(b.AvailableBuffer(), v)) }

func (b *packer) text(s string) {
	b.word(uint64(len(s)))
	b.WriteString(s)
}

func (b *packer) words(list []uint64) {
	b.word(uint64(len(list)))
	for _, v := range list {
		b.word(v)
	}
}

// unpacker reads what a packer wrote; bad is set when there is not enough.
type unpacker struct {
	rest []byte
	bad  bool
}

func (u *unpacker) word() uint64 {
	if len(u.rest) < 8 {
		u.bad = true
		return 0
	}
	v := binary.LittleEndian.Uint64(u.rest)
	u.rest = u.rest[8:]
	return v
}

// count reads a number of things that take at least so many bytes each.
func (u *unpacker) count(size int) int {
	n := u.word()
	if n > uint64(len(u.rest)/size) {
		u.bad = true
		return 0
	}
	return int(n)
}

func (u *unpacker) text() string {
	n := u.count(1)
	s := string(u.rest[:n])
	u.rest = u.rest[n:]
	return s
}

func (u *unpacker) words() []uint64 {
	list := make([]uint64, u.count(8))
	for i := range list {
		list[i] = u.word()
	}
	return list
}
