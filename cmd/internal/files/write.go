package files

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// Unwritable says that a file could not be written, and which flag named it.
type Unwritable struct {
	Flag, Name string
	Why        string
}

func (u *Unwritable) Error() string { return u.Flag + " " + u.Name + ": " + u.Why }

// Write gives work a file that takes its name only when it is whole; what was there before stays until
// then. An error of work's drops the file, unless kept says that what was written is whole all the same.
// What is no file, as a pipe or a terminal, is written to as it is; a link to a file stays a link. flag is where the name was given.
func Write(flag, name string, kept func(error) bool, work func(io.Writer) error) error {
	told := func(err error) error {
		return &Unwritable{flag, name, fmt.Sprintf("cannot be written (%v)", cause(err))}
	}
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		if info.IsDir() {
			return &Unwritable{flag, name, "is a folder, expected a file"}
		}
		return toDevice(name, work, told)
	}
	to := name
	if real, err := filepath.EvalSymlinks(name); err == nil {
		to = real
	}
	f, err := os.CreateTemp(filepath.Dir(to), ".writing-*")
	if err != nil {
		return told(err)
	}
	defer os.Remove(f.Name())
	out := &noting{Writer: f}
	worked := work(out)
	if out.err != nil || worked != nil && !kept(worked) {
		f.Close()
		if out.err != nil {
			return told(out.err)
		}
		return worked
	}
	if err := errors.Join(f.Chmod(0o644), f.Close()); err != nil {
		return told(err)
	}
	if err := os.Rename(f.Name(), to); err != nil {
		return told(err)
	}
	return worked
}

// None is for work whose every error drops the file.
func None(error) bool { return false }

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
