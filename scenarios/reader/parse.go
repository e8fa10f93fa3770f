package reader

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"
)

// MaxBytes is the most that one file may have.
const MaxBytes = 256 << 10

const maxDepth = 24 // of groups within groups

// Parse reads the one document of a file. On faults the node is nil.
func Parse(name string, text []byte) (n *Node, faults Faults) {
	f := &file{name: name}
	at := func(line, col int, format string, args ...any) Faults {
		return Faults{{File: name, Line: line, Col: col, Msg: fmt.Sprintf(format, args...)}}
	}
	defer func() {
		if r := recover(); r != nil { // a fault of the YAML library must not end the program
			n, faults = nil, at(1, 1, "cannot be read as YAML, expected one document of keys and values")
		}
	}()
	if len(text) > MaxBytes {
		return nil, TooLong(name, MaxBytes)
	}
	if !utf8.Valid(text) {
		return nil, at(1+strings.Count(string(text[:firstBad(text)]), "\n"), 1, "not UTF-8 text, expected plain UTF-8")
	}
	f.lines = strings.Split(strings.TrimPrefix(string(text), "\uFEFF"), "\n")

	d := yaml.NewDecoder(bytes.NewReader(text))
	var doc yaml.Node
	if err := d.Decode(&doc); err != nil {
		if errors.Is(err, io.EOF) {
			return nil, at(1, 1, "file is empty, expected one document of keys and values")
		}
		line, msg := yamlError(err)
		return nil, at(line, 1, "%s", msg)
	}
	var second yaml.Node
	if err := d.Decode(&second); err == nil {
		return nil, at(max(1, second.Line), max(1, second.Column), "a second document begins here, expected exactly one")
	} else if !errors.Is(err, io.EOF) {
		line, msg := yamlError(err)
		return nil, at(line, 1, "%s", msg)
	}
	if len(doc.Content) != 1 {
		return nil, at(1, 1, "file is empty, expected one document of keys and values")
	}
	n = f.convert(doc.Content[0], 0, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	return n, nil
}

func firstBad(text []byte) int {
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRune(text[i:])
		if r == utf8.RuneError && size == 1 {
			return i
		}
		i += size
	}
	return len(text)
}

var lineInError = regexp.MustCompile(`^(?:yaml: )?(?:line (\d+): )?(.*)$`)

// yamlError splits what the library says into line and message.
func yamlError(err error) (int, string) {
	first, _, _ := strings.Cut(err.Error(), "\n")
	m := lineInError.FindStringSubmatch(first)
	line, _ := strconv.Atoi(m[1])
	return max(1, line), m[2] + ", expected YAML (see the indentation, quotes and colons here)"
}

// convert makes our own tree, refusing what has no place in these files.
func (f *file) convert(y *yaml.Node, depth int, faults *Faults) *Node {
	n := &Node{Line: max(1, y.Line), Col: max(1, y.Column), file: f}
	bad := func(at *yaml.Node, msg string) {
		*faults = append(*faults, Fault{f.name, max(1, at.Line), max(1, at.Column), msg})
	}
	if depth > maxDepth {
		bad(y, fmt.Sprintf("nested too deeply, expected at most %d levels", maxDepth))
		return n
	}
	if y.Kind == yaml.AliasNode || y.Anchor != "" {
		bad(y, "anchors and aliases (& and *) are not used in these files, expected the value itself (put text that begins so in quotes)")
		return n
	}
	if y.Style&yaml.TaggedStyle != 0 {
		bad(y, "tags (!) are not used in these files, expected the value itself (put text that begins so in quotes)")
		return n
	}
	switch y.Kind {
	case yaml.ScalarNode:
		n.Text = y.Value
		n.Plain = y.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle|yaml.LiteralStyle|yaml.FoldedStyle) == 0
		n.Null = n.Plain && y.ShortTag() == "!!null"
	case yaml.SequenceNode:
		n.Kind = List
		for _, c := range y.Content {
			n.Items = append(n.Items, f.convert(c, depth+1, faults))
		}
	case yaml.MappingNode:
		n.Kind = Mapping
		lines := make(map[string]int, len(y.Content)/2)
		for i := 0; i+1 < len(y.Content); i += 2 {
			k := f.convert(y.Content[i], depth+1, faults)
			if k.Kind != Scalar {
				bad(y.Content[i], "a key must be a single word")
				continue
			}
			if line, twice := lines[k.Text]; twice {
				bad(y.Content[i], fmt.Sprintf("key %s stands twice, expected once (the first is on line %d)", quote(k.Text), line))
				continue
			}
			lines[k.Text] = k.Line
			n.Keys = append(n.Keys, k)
			n.Items = append(n.Items, f.convert(y.Content[i+1], depth+1, faults))
		}
	}
	return n
}
