//go:build !js

package files

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"testing"
)

func TestRead(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, "file")
	if err := os.WriteFile(name, []byte("abcdef"), 0o600); err != nil {
		t.Fatal(err)
	}
	if text, err := Read(name, 6); string(text) != "abcdef" || err != nil {
		t.Errorf("%q, %v", text, err)
	}
	if text, err := Read(name, 5); text != nil || err == nil || err.Error() != name+":1:1: file is too long, expected at most 5 bytes" {
		t.Errorf("%q, %v", text, err)
	}
	none := filepath.Join(dir, "none")
	for name, want := range map[string]string{dir: "is a folder, expected a file", none: "cannot be read, expected a file (no such file or directory)"} {
		if _, err := Read(name, 4); err == nil || err.Error() != name+":1:1: "+want {
			t.Errorf("%v, want %s", err, want)
		}
	}
}

// A file takes its name when it is whole; until then, and where work fails, what was there stays.
func TestWrite(t *testing.T) {
	name := filepath.Join(t.TempDir(), "file")
	say := func(text string, err error) func(io.Writer) error {
		return func(w io.Writer) error {
			_, _ = io.WriteString(w, text)
			return err
		}
	}
	bad, half := errors.New("bad"), errors.New("whole all the same")
	for _, c := range []struct {
		text string
		err  error
		want string
	}{{"first", nil, "first"}, {"second", bad, "first"}, {"third", half, "third"}} {
		err := Write("--to", name, func(err error) bool { return err == half }, say(c.text, c.err))
		if got, _ := os.ReadFile(name); err != c.err || string(got) != c.want {
			t.Errorf("%s: %v, the file has %q, want %q", c.text, err, got, c.want)
		}
	}
	if left, _ := filepath.Glob(filepath.Join(filepath.Dir(name), "*")); len(left) != 1 {
		t.Errorf("left behind: %v", left)
	}
	link := filepath.Join(filepath.Dir(name), "link")
	if os.Symlink("file", link) == nil { // where the system has links, they stay
		err := Write("--to", link, None, say("fourth", nil))
		got, _ := os.ReadFile(name)
		if to, _ := os.Readlink(link); err != nil || string(got) != "fourth" || to != "file" {
			t.Errorf("through a link: %v, the file has %q, the link leads to %q", err, got, to)
		}
	}
	link = filepath.Join(filepath.Dir(name), "pipe")
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	if os.Symlink(fmt.Sprintf("/proc/self/fd/%d", w.Fd()), link) == nil { // a pipe by name, where the system has one
		if info, err := os.Stat(link); err == nil && !info.Mode().IsRegular() {
			if err := Write("--to", link, None, say("piped", nil)); err != nil {
				t.Error(err)
			}
			w.Close()
			if got, _ := io.ReadAll(r); string(got) != "piped" {
				t.Errorf("through a pipe: %q", got)
			}
		}
	}
}
