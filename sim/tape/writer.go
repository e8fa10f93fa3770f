package tape

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"io"
	"math"
	"strconv"
	"strings"

	"steadyneedle/sim/world"
)

// Writer writes a recording as it happens; each second's lines go out together. The first error of the
// io.Writer sticks and is told by End and Err.
type Writer struct {
	w     io.Writer
	names []world.Control
	buf   []byte
	err   error
}

// NewWriter writes the header. controls names the actions that follow.
func NewWriter(w io.Writer, h Header, controls []world.Control) (*Writer, error) {
	h.Tape = Version
	h.Files = append([]File{}, h.Files...)
	for i := range h.Files {
		h.Files[i].SHA256 = sum(h.Files[i].Text)
	}
	head, err := json.Marshal(h)
	if err != nil {
		return nil, err
	}
	t := &Writer{w: w, names: controls, buf: append(head, '\n')}
	t.flush()
	return t, t.err
}

func sum(text string) string {
	s := sha256.Sum256([]byte(text))
	return hex.EncodeToString(s[:])
}

// Action writes an action that came from outside.
func (t *Writer) Action(a *world.Action) { t.act('a', a) }

// Derived writes what the scene's own people did.
func (t *Writer) Derived(a *world.Action) { t.act('d', a) }

func (t *Writer) act(kind byte, a *world.Action) {
	b := append(t.buf, kind, ' ')
	b = strconv.AppendInt(b, int64(a.At), 10)
	b = append(b, ' ')
	b = append(b, a.By.String()...)
	b = append(b, ' ')
	b = append(b, a.From.String()...)
	b = append(b, ' ')
	b = append(b, t.names[a.Control].Name...)
	b = append(b, ' ')
	v := a.Value
	if v == 0 {
		v = 0 // one zero only
	}
	b = strconv.AppendFloat(b, v, 'g', -1, 64)
	t.buf = append(b, '\n')
}

// Hash writes the scene's hash before tick at, and sends out what has been gathered.
func (t *Writer) Hash(at world.Tick, hash uint64) {
	t.hash("h ", at, hash)
	t.flush()
}

// Mark writes an evaluator's remark.
func (t *Writer) Mark(at world.Tick, text string) {
	b := append(t.buf, "m "...)
	b = strconv.AppendInt(b, int64(at), 10)
	b = append(b, ' ')
	b = append(b, strings.Map(flat, text)...)
	t.buf = append(b, '\n')
}

// Note writes what was told to the candidate or written down by them; about is one word that says which.
func (t *Writer) Note(at world.Tick, about, text string) {
	b := append(t.buf, "n "...)
	b = strconv.AppendInt(b, int64(at), 10)
	b = append(b, ' ')
	b = append(b, about...)
	b = append(b, ' ')
	b = append(b, strings.Map(flat, text)...)
	t.buf = append(b, '\n')
}

// Flush sends out what has been gathered, before its second is full.
func (t *Writer) Flush() {
	if len(t.buf) > 0 {
		t.flush()
	}
}

// flat keeps a remark on its line.
func flat(r rune) rune {
	if r < ' ' {
		return ' '
	}
	return r
}

// End writes the last line.
func (t *Writer) End(at world.Tick, hash uint64) error {
	t.hash("end ", at, hash)
	t.flush()
	return t.err
}

// Err is the first error of the io.Writer.
func (t *Writer) Err() error { return t.err }

func (t *Writer) hash(word string, at world.Tick, hash uint64) {
	b := append(t.buf, word...)
	b = strconv.AppendInt(b, int64(at), 10)
	b = append(b, ' ')
	b = appendHash(b, hash)
	t.buf = append(b, '\n')
}

// appendHash writes 16 hex digits.
func appendHash(b []byte, hash uint64) []byte {
	const digits = "0123456789abcdef"
	for shift := 60; shift >= 0; shift -= 4 {
		b = append(b, digits[hash>>shift&15])
	}
	return b
}

// HashText is a hash as recordings and reports write it.
func HashText(hash uint64) string { return string(appendHash(nil, hash)) }

func (t *Writer) flush() {
	if t.err == nil {
		_, t.err = t.w.Write(t.buf)
	}
	t.buf = t.buf[:0]
}

// sound reports whether a value can stand in a recording.
func sound(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
