//go:build !js

package settings

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"

	"steadyneedle/scenarios/reader"
)

// file is the user's file of settings; each text knows where it stands.
type file struct {
	Shelf    reader.Text `file:"shelf"`
	Attempts reader.Text `file:"attempts"`
	Units    reader.Text `file:"units"`
	Pad      reader.Text `file:"pad"`
	Scale    reader.Text `file:"scale"`
	Theme    reader.Text `file:"theme"`
	Sound    reader.Text `file:"sound"`
	OnUnsafe reader.Text `file:"on_unsafe"`
}

// texts are the settings that the file gives, by name.
func (f *file) texts() map[string]reader.Text {
	return map[string]reader.Text{"shelf": f.Shelf, "attempts": f.Attempts, "units": f.Units, "pad": f.Pad,
		"scale": f.Scale, "theme": f.Theme, "sound": f.Sound, "on_unsafe": f.OnUnsafe}
}

// readFile reads the user's file. One that is not there, or has nothing but comments, gives no settings.
func readFile(name string) (*file, error) {
	f := new(file)
	text, err := os.ReadFile(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return f, nil
	case err != nil:
		var p *fs.PathError
		if errors.As(err, &p) {
			err = p.Err
		}
		return nil, fmt.Errorf("%s:1:1: cannot be read, expected a file of settings (%v)", name, err)
	case says(text):
		n, faults := reader.Parse(name, text)
		if n != nil {
			faults = n.Decode(f)
		}
		return f, faults.Err()
	}
	return f, nil
}

// says reports whether any line of a text is more than a comment.
func says(text []byte) bool {
	for line := range bytes.Lines(text) {
		if line = bytes.TrimSpace(line); len(line) > 0 && line[0] != '#' {
			return true
		}
	}
	return false
}
