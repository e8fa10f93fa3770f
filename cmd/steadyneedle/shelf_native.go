//go:build !js

package main

import (
	"io/fs"
	"os"

	"steadyneedle/cmd/internal/settings"
	"steadyneedle/scenarios"
)

// openShelf opens the user's own folder over the shipped files, as the settings say.
func openShelf() (*scenarios.Shelf, settings.Settings, error) {
	s, err := settings.Load(nil)
	if err != nil {
		return nil, s, err
	}
	var user fs.FS
	if info, err := os.Stat(s.Shelf); err == nil && info.IsDir() {
		user = os.DirFS(s.Shelf)
	}
	return scenarios.Open(user), s, nil
}
