package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"steadyneedle/scenarios"
)

const (
	maxRead = 1 << 20   // more than any file of the shelf may have: enough to see that it is too long
	maxTape = 256 << 20 // an attempt of hours with hands that never rest
)

// readFile reads a file of the shelf.
func readFile(name string) ([]byte, error) { return readUpTo(name, maxRead) }

// readTape reads a recording.
func readTape(name string) ([]byte, error) { return readUpTo(name, maxTape) }

func readUpTo(name string, most int64) ([]byte, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, brokenInput(fmt.Errorf("%s:1:1: cannot be read, expected a file (%v)", name, cause(err)))
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, brokenInput(fmt.Errorf("%s:1:1: is a folder, expected a file", name))
	}
	text, err := io.ReadAll(io.LimitReader(f, most))
	if err != nil {
		return nil, brokenInput(fmt.Errorf("%s:1:1: cannot be read (%v)", name, cause(err)))
	}
	return text, nil
}

// wholeFile gives work a file that takes its name only when it is whole. What a failed attempt leaves is
// whole all the same. flag is where the name was given.
func wholeFile(flag, name string, work func(io.Writer) error) error {
	told := func(err error) error { return fmt.Errorf("%s %s: cannot be written (%v)", flag, name, cause(err)) }
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		if info.IsDir() {
			return fmt.Errorf("%s %s: is a folder, expected a file", flag, name)
		}
		return toDevice(name, work, told)
	}
	f, err := os.CreateTemp(filepath.Dir(name), ".writing-*")
	if err != nil {
		return told(err)
	}
	defer os.Remove(f.Name())
	out := &noting{Writer: f}
	worked := work(out)
	if out.err != nil {
		f.Close()
		return told(out.err)
	}
	if worked != nil && !isFailedAttempt(worked) {
		f.Close()
		return worked
	}
	if err := errors.Join(f.Chmod(0o644), f.Close()); err != nil {
		return told(err)
	}
	if err := os.Rename(f.Name(), name); err != nil {
		return told(err)
	}
	return worked
}

// toDevice lets work write to what is no file: a pipe, a terminal. It stays what it is.
func toDevice(name string, work func(io.Writer) error, told func(error) error) error {
	f, err := os.OpenFile(name, os.O_WRONLY, 0)
	if err != nil {
		return told(err)
	}
	out := &noting{Writer: f}
	worked := work(out)
	if err := errors.Join(out.err, f.Close()); err != nil {
		return told(err)
	}
	return worked
}

// noting is a writer that remembers its first error, so that it is told as the file's whatever work made
// of it.
type noting struct {
	io.Writer
	err error
}

func (n *noting) Write(b []byte) (int, error) {
	k, err := n.Writer.Write(b)
	n.err = cmp.Or(n.err, err)
	return k, err
}

// cause is an error of the file system without the paths, which the message has already.
func cause(err error) error {
	var p *os.PathError
	var l *os.LinkError
	switch {
	case errors.As(err, &p):
		return p.Err
	case errors.As(err, &l):
		return l.Err
	}
	return err
}

// around lays the folder tree that a file lies in over the shelf, if it is laid out like one: then a
// drill under work uses the rules and the apparatus beside it.
func around(s *scenarios.Shelf, name string) *scenarios.Shelf {
	full, err := filepath.Abs(name)
	if err != nil {
		return s
	}
	dir := filepath.Dir(full)
	switch filepath.Base(dir) {
	case "drills", "apparatus", "demonstrations", "rules":
	default:
		if dir = filepath.Dir(dir); filepath.Base(dir) != "operators" {
			return s
		}
	}
	top := filepath.Dir(dir)
	shown := filepath.Dir(name)
	if dir != filepath.Dir(full) {
		shown = filepath.Dir(shown)
	}
	shown = filepath.Dir(shown)
	return s.Over(os.DirFS(top), func(p string) string { return filepath.Join(shown, filepath.FromSlash(p)) })
}
