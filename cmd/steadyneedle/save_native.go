//go:build !js

package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"

	"steadyneedle/render/report"
)

// stamp is the moment as part of a file's name.
func stamp() string { return time.Now().Format("2006-01-02-150405") }

// createCopy begins a recording in a file of the user's.
func createCopy(name string) (io.WriteCloser, error) { return os.Create(name) }

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
