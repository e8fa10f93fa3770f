//go:build !js

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"time"

	"steadyneedle/render/report"
)

// stamp is the moment as part of a file's name.
func stamp() string { return time.Now().Format("2006-01-02-150405") }

// newTape begins the recording of an attempt: in the file that was asked for, or in the user's folder of
// attempts.
func (f *front) newTape(drill string) error {
	if f.tape != nil {
		f.tape.Close()
		f.tape = nil
	}
	name := f.o.record
	switch {
	case f.o.picture != "":
		return nil
	case name == "" && f.kept == "":
		return nil
	case name == "":
		if err := os.MkdirAll(f.kept, 0o755); err != nil {
			return err
		}
		name = filepath.Join(f.kept, fmt.Sprintf("%s-%s.tape", drill, stamp()))
	}
	var err error
	f.tape, err = os.Create(name)
	return err
}

// save writes a sheet into the user's folder of attempts, or where the program was started.
func (f *front) save(s *report.Sheet) (string, error) {
	if f.kept != "" {
		if err := os.MkdirAll(f.kept, 0o755); err != nil {
			return "", err
		}
	}
	name := filepath.Join(f.kept, fmt.Sprintf("sheet-%s.html", stamp()))
	out, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return "", err
	}
	if err := report.HTML(out, s); err != nil {
		out.Close()
		return "", err
	}
	return name, out.Close()
}
