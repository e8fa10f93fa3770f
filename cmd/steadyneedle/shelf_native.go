//go:build !js

package main

import (
	"io/fs"
	"os"

	"steadyneedle/cmd/internal/settings"
	"steadyneedle/scenarios"
)

// openShelf opens the user's own folder over the shipped files, and says where attempts are kept.
func openShelf() (shelf *scenarios.Shelf, kept string, err error) {
	s, err := settings.Load(nil)
	if err != nil {
		return nil, "", err
	}
	var user fs.FS
	if info, err := os.Stat(s.Shelf); err == nil && info.IsDir() {
		user = os.DirFS(s.Shelf)
	}
	return scenarios.Open(user), s.Attempts, nil
}
