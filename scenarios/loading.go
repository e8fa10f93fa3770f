package scenarios

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"path"
	"sort"

	"steadyneedle/scenarios/reader"
)

// Text is a file that something was made of: what a recording keeps, so that it can be played again.
type Text struct {
	Path string // on the shelf: drills/reverse-lay.yaml
	Body string
	Sum  string // SHA-256, hexadecimal
}

// loading is one job of reading: the faults found and the files used on the way.
type loading struct {
	shelf      *Shelf
	faults     reader.Faults
	nodes      map[string]*reader.Node
	texts      map[string]Text
	shared     *sharedRules
	sharedUsed map[string]bool // files of shared rules that a drill took one from
}

func (s *Shelf) loading() *loading {
	return &loading{shelf: s, nodes: map[string]*reader.Node{}, texts: map[string]Text{}}
}

func (l *loading) fail(at *reader.Node, format string, args ...any) {
	l.faults = append(l.faults, at.Fault(format, args...))
}

// maxFaults is how many faults are noted of what a file means: nobody reads more, and a file made to
// have millions must not keep the program busy.
const maxFaults = 1000

// at notes a fault at a character of a text. A text that was not given has its fault already.
func (l *loading) at(t reader.Text, offset int, format string, args ...any) {
	if t.Given() && len(l.faults) < maxFaults {
		l.faults = append(l.faults, t.Fault(offset, format, args...))
	}
}

// take notes faults and reports whether there were none.
func (l *loading) take(f reader.Faults) bool {
	l.faults = append(l.faults, f...)
	return len(f) == 0
}

// file reads and parses a file of the shelf once. A file that is not there is an error that wraps
// ErrUnknown; what is wrong inside is noted as faults and gives nil.
func (l *loading) file(name string) (*reader.Node, error) {
	if n, known := l.nodes[name]; known {
		return n, nil
	}
	text, shown, err := l.shelf.read(name)
	var faults reader.Faults
	if errors.As(err, &faults) {
		l.take(faults)
		l.nodes[name] = nil
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	hash := sha256.Sum256(text)
	sum := hex.EncodeToString(hash[:])
	l.texts[name] = Text{name, string(text), sum}
	var n *reader.Node
	n, faults = l.shelf.memory.parse(shown, text, sum)
	l.take(faults)
	l.nodes[name] = n
	return n, nil
}

// named reads the file dir/name.yaml that a user or another file asked for by name.
func (l *loading) named(what, dir, name string, at *reader.Node) (*reader.Node, error) {
	n, err := l.file(path.Join(dir, name+".yaml"))
	if err == nil {
		return n, nil
	}
	if errors.Is(err, ErrUnknown) {
		err = fmt.Errorf("%s %q is %w, %s", what, name, ErrUnknown, reader.DidYouMean(name, l.shelf.names(dir)))
	}
	if at != nil {
		l.fail(at, "%v", err)
		return nil, nil
	}
	return nil, err
}

// itsName faults a file whose name inside is not the one it lies under.
func (l *loading) itsName(inside reader.Text, name string) {
	if inside.Given() && inside.Value != name {
		l.at(inside, 0, "name: found %q, expected %q, as the file is called", inside.Value, name)
	}
}

// used lists the files that were read, in the order of their paths.
func (l *loading) used() []Text {
	list := make([]Text, 0, len(l.texts))
	for _, t := range l.texts {
		list = append(list, t)
	}
	sort.Slice(list, func(i, j int) bool { return list[i].Path < list[j].Path })
	return list
}
