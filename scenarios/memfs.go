package scenarios

import (
	"bytes"
	"io/fs"
	"path"
	"sort"
	"strings"
	"time"
)

// FromTexts makes a shelf of nothing but the files that a recording has kept.
func FromTexts(texts []Text) *Shelf {
	files := make(textFS, len(texts))
	for _, t := range texts {
		files[t.Path] = []byte(t.Body)
	}
	return newShelf([]layer{{files, func(p string) string { return p }}})
}

// oneFile is a folder tree with a single file.
type oneFile struct {
	name string
	text []byte
}

func (o oneFile) Open(name string) (fs.File, error) { return textFS{o.name: o.text}.Open(name) }

// textFS is a folder tree of texts by path, enough for fs.ReadFile and fs.ReadDir.
type textFS map[string][]byte

// Open finds a file, or a folder that some file lies in.
func (t textFS) Open(name string) (fs.File, error) {
	if text, ok := t[name]; ok {
		return &textFile{info: info{path.Base(name), int64(len(text)), 0o444}, Reader: bytes.NewReader(text)}, nil
	}
	dir := &textFile{info: info{path.Base(name), 0, fs.ModeDir | 0o555}, Reader: bytes.NewReader(nil)}
	seen := map[string]bool{}
	for p, text := range t {
		rest, inside := strings.CutPrefix(p, name+"/")
		if !inside {
			continue
		}
		entry, _, folder := strings.Cut(rest, "/")
		if seen[entry] {
			continue
		}
		seen[entry] = true
		i := info{entry, int64(len(text)), 0o444}
		if folder {
			i.size, i.mode = 0, fs.ModeDir|0o555
		}
		dir.list = append(dir.list, fs.FileInfoToDirEntry(i))
	}
	if len(dir.list) == 0 {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	}
	sort.Slice(dir.list, func(a, b int) bool { return dir.list[a].Name() < dir.list[b].Name() })
	return dir, nil
}

type textFile struct {
	info
	*bytes.Reader
	list []fs.DirEntry
}

func (f *textFile) Stat() (fs.FileInfo, error) { return f.info, nil }
func (f *textFile) Close() error               { return nil }
func (f *textFile) Size() int64                { return f.info.size }

// ReadDir returns all entries; n is not honored, fs.ReadDir asks for all.
func (f *textFile) ReadDir(int) ([]fs.DirEntry, error) { return f.list, nil }

type info struct {
	name string
	size int64
	mode fs.FileMode
}

func (i info) Name() string       { return i.name }
func (i info) Size() int64        { return i.size }
func (i info) Mode() fs.FileMode  { return i.mode }
func (i info) ModTime() time.Time { return time.Time{} }
func (i info) IsDir() bool        { return i.mode.IsDir() }
func (i info) Sys() any           { return nil }
