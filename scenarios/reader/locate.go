package reader

import (
	"strconv"
	"unicode"
)

// Locate finds where the character at offset (in runes) of a scalar's text stands in the file.
// It is exact for plain, quoted and block scalars: both sides are walked together over everything but
// white space, which YAML may fold.
func (n *Node) Locate(offset int) (line, col int) {
	line, col = n.Line, n.Col
	if n.Kind != Scalar || n.file == nil || n.Line > len(n.file.lines) {
		return line, col
	}
	skip := 0 // visible characters before the one that is looked for
	for i, r := range []rune(n.Text) {
		if i >= offset {
			break
		}
		if !unicode.IsSpace(r) {
			skip++
		}
	}
	w := walkText{lines: n.file.lines, line: n.Line - 1, col: n.Col - 1}
	w.begin()
	for {
		l, c, ok := w.next()
		if !ok {
			return line, col
		}
		line, col = l+1, c+1
		if skip == 0 {
			return line, col
		}
		skip--
	}
}

// walkText yields the visible characters of one scalar as they stand in the file.
type walkText struct {
	lines     []string
	line, col int // from 0, in runes
	quote     rune
	row       []rune
}

func (w *walkText) begin() {
	w.row = []rune(w.lines[w.line])
	if w.col >= len(w.row) {
		return
	}
	switch w.row[w.col] {
	case '"', '\'':
		w.quote = w.row[w.col]
		w.col++
	case '|', '>':
		w.down()
	}
}

func (w *walkText) down() bool {
	w.line++
	w.col = 0
	if w.line >= len(w.lines) {
		return false
	}
	w.row = []rune(w.lines[w.line])
	return true
}

// next returns the place of the next visible character, from 0.
func (w *walkText) next() (line, col int, ok bool) {
	for {
		for w.col >= len(w.row) {
			if !w.down() {
				return 0, 0, false
			}
		}
		r, at := w.row[w.col], w.col
		w.col++
		switch {
		case unicode.IsSpace(r):
			continue
		case w.quote != 0 && r == w.quote:
			if r == '\'' && w.col < len(w.row) && w.row[w.col] == '\'' {
				w.col++ // '' stands for one quote
				return w.line, at, true
			}
			return w.line, at, false
		case w.quote == '"' && r == '\\':
			if w.escape() {
				continue
			}
		}
		return w.line, at, true
	}
}

// escape passes an escape of a double-quoted text and reports whether it stands for white space.
func (w *walkText) escape() bool {
	if w.col >= len(w.row) {
		return true // a line break that is escaped away
	}
	r := w.row[w.col]
	w.col++
	switch r {
	case 'n', 't', 'r', 'f', 'v', ' ', 'N', '_', 'L', 'P', '\t':
		return true
	case 'x', 'u', 'U':
		digits := map[rune]int{'x': 2, 'u': 4, 'U': 8}[r]
		end := min(w.col+digits, len(w.row))
		code, err := strconv.ParseUint(string(w.row[w.col:end]), 16, 32)
		w.col = end
		return err == nil && unicode.IsSpace(rune(code))
	}
	return false
}
