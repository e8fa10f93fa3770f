package tape

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"steadyneedle/sim/world"
)

// Limits of what is read, so that a file of another kind cannot fill the memory.
const (
	maxHeader = 16 << 20
	maxLine   = 64 << 10
)

// Reader reads a recording line by line.
type Reader struct {
	Header Header
	r      *bufio.Reader
	line   int
	last   world.Tick
	ended  bool
}

// NewReader reads and checks the header.
func NewReader(r io.Reader) (*Reader, error) {
	t := &Reader{r: bufio.NewReaderSize(r, 64<<10)}
	head, err := t.next(maxHeader)
	if err != nil {
		if errors.Is(err, ErrTruncated) && len(head) == 0 {
			return nil, t.fault(ErrNotTape, "it is empty")
		}
		return nil, err
	}
	var version struct {
		Tape *int `json:"tape"`
	}
	if json.Unmarshal(head, &version) != nil || version.Tape == nil {
		return nil, t.fault(ErrNotTape, "the first line is not a header")
	}
	if *version.Tape != Version {
		return nil, t.fault(ErrVersion, fmt.Sprintf("format %d; this program reads %d", *version.Tape, Version))
	}
	if err := json.Unmarshal(head, &t.Header); err != nil {
		return nil, t.fault(ErrSyntax, "header: "+inWords(err))
	}
	for _, f := range t.Header.Files {
		if f.SHA256 != sum(f.Text) {
			return nil, t.fault(ErrFile, f.Name)
		}
	}
	return t, nil
}

// inWords says what is wrong with a header without words of Go's.
func inWords(err error) string {
	var kind *json.UnmarshalTypeError
	if errors.As(err, &kind) {
		return fmt.Sprintf("%s: found %s, expected another kind of value", kind.Field, kind.Value)
	}
	return err.Error()
}

// fault makes an error about the line read last.
func (t *Reader) fault(problem error, detail string) error {
	return &Error{Line: max(1, t.line), Problem: problem, Detail: detail}
}

// next reads one line, without its end.
func (t *Reader) next(limit int) ([]byte, error) {
	var line []byte
	t.line++
	for {
		part, err := t.r.ReadSlice('\n')
		line = append(line, part...)
		switch {
		case len(line) > limit:
			return nil, t.fault(ErrSyntax, "it is too long")
		case err == nil:
			return bytes.TrimSuffix(line[:len(line)-1], []byte{'\r'}), nil
		case errors.Is(err, bufio.ErrBufferFull):
		case errors.Is(err, io.EOF):
			return line, t.fault(ErrTruncated, "there is no end line")
		default:
			return nil, t.fault(err, "")
		}
	}
}

// Next reads the next line. After the end line only notes may follow, then io.EOF; a recording without
// an end line gives ErrTruncated.
func (t *Reader) Next() (Line, error) {
	text, err := t.next(maxLine)
	if t.ended && errors.Is(err, ErrTruncated) && len(bytes.TrimSpace(text)) == 0 {
		return Line{}, io.EOF
	}
	if err != nil {
		return Line{}, err
	}
	l, err := t.parse(string(text))
	if t.ended && (err != nil || l.Kind != Note) {
		return Line{}, t.fault(ErrSyntax, "something follows the end line")
	}
	if err != nil {
		return Line{}, err
	}
	l.Number = t.line
	if l.At < t.last {
		return Line{}, t.fault(ErrOrder, fmt.Sprintf("tick %d after tick %d", l.At, t.last))
	}
	t.last = l.At
	t.ended = t.ended || l.Kind == End
	return l, nil
}

func (t *Reader) parse(text string) (Line, error) {
	word, rest, _ := strings.Cut(text, " ")
	tick, rest, _ := strings.Cut(rest, " ")
	at, err := strconv.ParseInt(tick, 10, 64)
	if err != nil || at < 0 {
		return Line{}, t.fault(ErrSyntax, strconv.Quote(shorten(text)))
	}
	l := Line{At: world.Tick(at)}
	switch word {
	case "a", "d":
		l.Kind = Kind(word[0])
		return l, t.parseAction(&l, rest)
	case "h", "end":
		l.Kind = Kind(word[0])
		l.Hash, err = strconv.ParseUint(rest, 16, 64)
		if err != nil || len(rest) != 16 {
			return Line{}, t.fault(ErrSyntax, "a hash has 16 hex digits")
		}
		return l, nil
	case "m":
		l.Kind, l.Text = Mark, rest
		return l, nil
	case "n":
		l.Kind = Note
		l.About, l.Text, _ = strings.Cut(rest, " ")
		if l.About == "" {
			return Line{}, t.fault(ErrSyntax, "a note has a word and a text")
		}
		return l, nil
	}
	return Line{}, t.fault(ErrSyntax, strconv.Quote(shorten(text)))
}

func (t *Reader) parseAction(l *Line, rest string) error {
	f := strings.Split(rest, " ")
	if len(f) != 4 {
		return t.fault(ErrSyntax, "an action has source, place, control and value")
	}
	var ok bool
	if l.By, ok = world.SourceNamed(f[0]); !ok {
		return t.fault(ErrSyntax, fmt.Sprintf("nobody is called %q", shorten(f[0])))
	}
	if f[1] != world.Walking.String() {
		if l.From, ok = world.PlaceNamed(f[1]); !ok {
			return t.fault(ErrSyntax, fmt.Sprintf("no place is called %q", shorten(f[1])))
		}
	}
	l.Control = f[2]
	v, err := strconv.ParseFloat(f[3], 64)
	if err != nil || !sound(v) {
		return t.fault(ErrSyntax, fmt.Sprintf("%q is not a value", shorten(f[3])))
	}
	l.Value = v
	return nil
}

// shorten keeps an error to one clear line.
func shorten(s string) string {
	if len(s) > 60 {
		return s[:60] + "…"
	}
	return s
}
