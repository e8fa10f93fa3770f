package tape

import (
	"errors"
	"fmt"

	"steadyneedle/sim/world"
)

// Version is the number of the format.
const Version = 1

// HashEvery is the number of ticks between two hashes.
const HashEvery world.Tick = world.TicksPerSecond

// Header says what a recording was made with.
type Header struct {
	Tape      int    `json:"tape"`    // Version
	Physics   int    `json:"physics"` // number of the model; replay is proof while it is the same
	Build     string `json:"build"`   // of the program that recorded
	Drill     string `json:"drill"`
	Apparatus string `json:"apparatus"`
	Variant   string `json:"variant"`
	Operator  string `json:"operator"` // script's name, or empty for a person
	Seed      uint64 `json:"seed"`
	Mode      string `json:"mode,omitempty"`  // rehearsal or rated, where a person worked
	Begun     string `json:"begun,omitempty"` // date and time of day, RFC 3339; told by the caller
	From      string `json:"from,omitempty"`  // when the attempt was begun from a moment of which this one goes on
	Files     []File `json:"files"`
}

// File is one file that the attempt was read from. Its text makes the recording whole on a machine
// that has another version of it.
type File struct {
	Name   string `json:"name"`
	SHA256 string `json:"sha256"` // of the text, in hex; filled in by the writer
	Text   string `json:"text"`
}

// Kind is what a line holds.
type Kind byte

const (
	Action  Kind = 'a'
	Derived Kind = 'd'
	Hash    Kind = 'h'
	Mark    Kind = 'm'
	Note    Kind = 'n'
	End     Kind = 'e'
)

// Line is one line after the header.
type Line struct {
	Kind    Kind
	At      world.Tick
	By      world.Source
	From    world.Place
	Control string
	Value   float64
	Hash    uint64
	About   string // of a note: what sort it is, one word
	Text    string // of a mark or a note
	Number  int    // of the line, from 1
}

// What can be wrong with a recording. An Error wraps one of them.
var (
	ErrNotTape   = errors.New("not a recording")
	ErrVersion   = errors.New("recorded in another format")
	ErrTruncated = errors.New("the recording breaks off")
	ErrSyntax    = errors.New("not a line of a recording")
	ErrOrder     = errors.New("out of order")
	ErrControl   = errors.New("no such control")
	ErrRefused   = errors.New("not possible at that moment")
	ErrEdited    = errors.New("the recording does not match itself")
	ErrFile      = errors.New("a file in the recording was changed")
)

// Error says what is wrong and where.
type Error struct {
	Line    int // from 1
	Problem error
	Detail  string
}

func (e *Error) Error() string {
	s := fmt.Sprintf("line %d: %v", e.Line, e.Problem)
	if e.Detail != "" {
		s += ": " + e.Detail
	}
	return s
}

func (e *Error) Unwrap() error { return e.Problem }

// Mismatch is the first second at which a replay is not what was recorded. It unwraps to ErrEdited: a
// line before it was changed, or the physics was.
type Mismatch struct {
	Line      int
	At        world.Tick
	Want, Got string
}

func (m *Mismatch) Error() string {
	return fmt.Sprintf("line %d: the replay first differs within the second before %.0f s: recorded %s, replayed %s",
		m.Line, m.At.Seconds(), m.Want, m.Got)
}

func (m *Mismatch) Unwrap() error { return ErrEdited }
