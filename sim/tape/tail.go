package tape

import (
	"bytes"
	"io"
)

// Ended is a recording up to and with its end line, without the notes that may follow: what can never
// change. ok is false where it breaks off.
func Ended(text []byte) (whole []byte, ok bool) {
	at := bytes.LastIndex(text, []byte("\nend "))
	if at < 0 {
		return text, false
	}
	n := bytes.IndexByte(text[at+1:], '\n')
	if n < 0 {
		return text, false
	}
	return text[:at+1+n+1], true
}

// NewTail writes what follows a recording's end line: notes only.
func NewTail(w io.Writer) *Writer { return &Writer{w: w} }
