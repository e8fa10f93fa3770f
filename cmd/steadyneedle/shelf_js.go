package main

import (
	"steadyneedle/cmd/internal/settings"
	"steadyneedle/scenarios"
)

// openShelf opens the shipped files: a browser has no folder of the user's, and keeps nothing.
func openShelf() (*scenarios.Shelf, settings.Settings, error) {
	s, err := settings.Load()
	return s.OpenShelf(), s, err
}
