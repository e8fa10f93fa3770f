package reader

import (
	"fmt"
	"sort"
	"strings"
)

// Fault is one thing that is wrong in a file. Line and Col count from 1.
type Fault struct {
	File      string
	Line, Col int
	Msg       string // what is wrong, and what was expected
}

// String is the fault as one line: file:line:col: message.
func (f Fault) String() string { return fmt.Sprintf("%s:%d:%d: %s", f.File, f.Line, f.Col, f.Msg) }

// Faults is everything that was found wrong. It is an error when it is not empty.
type Faults []Fault

// Error prints one fault a line.
func (f Faults) Error() string {
	lines := make([]string, len(f))
	for i := range f {
		lines[i] = f[i].String()
	}
	return strings.Join(lines, "\n")
}

// Err returns nil where nothing is wrong, and otherwise the faults in the order of files and lines,
// each once.
func (f Faults) Err() error {
	if len(f) == 0 {
		return nil
	}
	return f.Sorted()
}

// Sorted returns the faults by file, line and column, without repetitions.
func (f Faults) Sorted() Faults {
	list := append(Faults(nil), f...)
	sort.SliceStable(list, func(i, j int) bool {
		a, b := list[i], list[j]
		switch {
		case a.File != b.File:
			return a.File < b.File
		case a.Line != b.Line:
			return a.Line < b.Line
		case a.Col != b.Col:
			return a.Col < b.Col
		}
		return a.Msg < b.Msg
	})
	out := list[:0]
	for i, x := range list {
		if i == 0 || x != list[i-1] {
			out = append(out, x)
		}
	}
	return out
}
