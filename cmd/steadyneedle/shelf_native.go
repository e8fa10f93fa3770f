//go:build !js

package main

import (
	"steadyneedle/cmd/internal/settings"
	"steadyneedle/scenarios"
)

// openShelf opens the user's own folder over the shipped files, as the settings say.
func openShelf() (*scenarios.Shelf, settings.Settings, error) {
	s, err := settings.Load(nil)
	if err != nil {
		return nil, s, brokenFile{err}
	}
	return s.OpenShelf(), s, nil
}
