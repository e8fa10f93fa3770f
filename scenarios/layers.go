package scenarios

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"sort"
	"strings"

	"steadyneedle/scenarios/reader"
)

// layer is one folder tree of the shelf. show turns a path in it into what messages say.
type layer struct {
	fs   fs.FS
	show func(path string) string
}

// Shelf is where drills, apparatus, rules and operators are taken from.
type Shelf struct {
	layers []layer // the nearest first
	memory *memory
}

func newShelf(layers []layer) *Shelf { return &Shelf{layers, &memory{}} }

// ErrUnknown is wrapped by the error for a name that nothing on the shelf has.
var ErrUnknown = errors.New("not on the shelf")

// Open makes a shelf of the user's folder (nil: none) over the shipped files.
func Open(user fs.FS) *Shelf {
	s := newShelf([]layer{{shipped, func(p string) string { return path.Join("scenarios", p) }}})
	if user == nil {
		return s
	}
	return s.Over(user, func(p string) string { return p })
}

// Over lays another folder on top. show turns a path in it into what messages are to say.
func (s *Shelf) Over(top fs.FS, show func(path string) string) *Shelf {
	return newShelf(append([]layer{{top, show}}, s.layers...))
}

// read finds a file in the nearest layer that has it. One that is there and cannot be read is a fault.
func (s *Shelf) read(name string) (text []byte, shown string, err error) {
	for _, l := range s.layers {
		text, err = fs.ReadFile(l.fs, name)
		if err == nil {
			return text, l.show(name), nil
		}
		if !errors.Is(err, fs.ErrNotExist) {
			info, bad := fs.Stat(l.fs, name)
			return nil, l.show(name), reader.Unreadable(l.show(name), bad == nil && info.IsDir(), err)
		}
	}
	return nil, name, fmt.Errorf("%s: %w", name, ErrUnknown)
}

// names lists the names of the YAML files in a folder of all layers, in order; a folder that is called
// like one is told of when it is read.
func (s *Shelf) names(dir string) []string {
	var list []string
	seen := map[string]bool{}
	for _, l := range s.layers {
		files, err := fs.ReadDir(l.fs, dir)
		if err != nil {
			continue // a layer need not have every folder
		}
		for _, f := range files {
			name, yaml := strings.CutSuffix(f.Name(), ".yaml")
			if yaml && !seen[name] {
				seen[name] = true
				list = append(list, name)
			}
		}
	}
	sort.Strings(list)
	return list
}

// folders lists the folders in a folder of all layers, in order.
func (s *Shelf) folders(dir string) []string {
	var list []string
	seen := map[string]bool{}
	for _, l := range s.layers {
		files, err := fs.ReadDir(l.fs, dir)
		if err != nil {
			continue
		}
		for _, f := range files {
			if f.IsDir() && !seen[f.Name()] {
				seen[f.Name()] = true
				list = append(list, f.Name())
			}
		}
	}
	sort.Strings(list)
	return list
}
