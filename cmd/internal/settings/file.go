//go:build !js

package settings

import (
	"bytes"
	"errors"
	"io/fs"
	"os"

	"steadyneedle/cmd/internal/files"
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
	if _, err := os.Stat(name); errors.Is(err, fs.ErrNotExist) {
		return f, nil
	}
	text, err := files.Read(name, reader.MaxBytes)
	if err != nil || !says(text) {
		return f, err
	}
	n, faults := reader.Parse(name, text)
	if n != nil {
		faults = n.Decode(f)
	}
	return f, faults.Err()
}

// says reports whether any line of a text is more than a comment.
func says(text []byte) bool {
	for line := range bytes.Lines(bytes.TrimPrefix(text, []byte("\uFEFF"))) {
		if line = bytes.TrimSpace(line); len(line) > 0 && line[0] != '#' {
			return true
		}
	}
	return false
}
