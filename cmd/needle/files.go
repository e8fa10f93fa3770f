package main

import (
	"io"
	"os"
	"path/filepath"

	"steadyneedle/cmd/internal/files"
	"steadyneedle/scenarios"
	"steadyneedle/scenarios/reader"
)

// readFile reads a file of the shelf.
func readFile(name string) ([]byte, error) { return files.Read(name, reader.MaxBytes) }

// readTape reads a recording.
func readTape(name string) ([]byte, error) { return files.Read(name, files.MaxTape) }

// wholeFile gives work a file that takes its name only when it is whole. What a failed attempt leaves is
// whole all the same. flag is where the name was given.
func wholeFile(flag, name string, work func(io.Writer) error) error {
	return files.Write(flag, name, isFailedAttempt, work)
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
