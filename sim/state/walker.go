package state

import "math"

type mode uint8

const (
	saving mode = iota
	loading
	hashing
)

// Walker visits state in a fixed order: to save it, to load it, or to hash it.
type Walker struct {
	mode mode
	buf  []uint64
	pos  int
	hash uint64
	bad  bool
}

// Saver returns a walker that appends state to buf[:0].
func Saver(buf []uint64) Walker { return Walker{mode: saving, buf: buf[:0]} }

// Loader returns a walker that reads back what a Saver wrote.
func Loader(buf []uint64) Walker { return Walker{mode: loading, buf: buf} }

// Hasher returns a walker that folds state into one 64-bit number.
func Hasher() Walker { return Walker{mode: hashing, hash: 0xcbf29ce484222325} }

// Saved returns what a Saver has written.
func (w *Walker) Saved() []uint64 { return w.buf }

// Sum returns the hash so far.
func (w *Walker) Sum() uint64 { return w.hash }

// Loading reports whether values are being replaced.
func (w *Walker) Loading() bool { return w.mode == loading }

// OK is false when a NaN was met while hashing or saving, or a load did not fit.
func (w *Walker) OK() bool { return !w.bad && (w.mode != loading || w.pos == len(w.buf)) }

// Word visits 64 raw bits.
func (w *Walker) Word(p *uint64) {
	switch w.mode {
	case saving:
		w.buf = append(w.buf, *p)
	case loading:
		if w.pos >= len(w.buf) {
			w.bad = true
			return
		}
		*p = w.buf[w.pos]
		w.pos++
	default:
		h := (w.hash ^ *p) * 0x9e3779b97f4a7c15
		w.hash = h ^ (h >> 29)
	}
}

// Float visits one number. A NaN marks the walk as bad: it is a fault, never state.
func (w *Walker) Float(p *float64) {
	if *p != *p && w.mode != loading {
		w.bad = true
	}
	u := math.Float64bits(*p)
	w.Word(&u)
	if w.mode == loading {
		*p = math.Float64frombits(u)
	}
}

// Floats visits a slice whose length is fixed at build.
func (w *Walker) Floats(s []float64) {
	for i := range s {
		w.Float(&s[i])
	}
}

// Int visits a whole number.
func (w *Walker) Int(p *int) {
	u := uint64(int64(*p))
	w.Word(&u)
	if w.mode == loading {
		*p = int(int64(u))
	}
}

// Int64 visits a 64-bit whole number.
func (w *Walker) Int64(p *int64) {
	u := uint64(*p)
	w.Word(&u)
	if w.mode == loading {
		*p = int64(u)
	}
}

// Bool visits a flag.
func (w *Walker) Bool(p *bool) {
	var u uint64
	if *p {
		u = 1
	}
	w.Word(&u)
	if w.mode == loading {
		*p = u != 0
	}
}
