package settings

import "steadyneedle/scenarios"

// Load returns the defaults: a browser has no folders of ours.
func Load() (Settings, error) {
	return Settings{Units: "us", Scale: "fit", Theme: "auto", OnUnsafe: AsDrill}, nil
}

// OpenShelf opens the shipped files.
func (s Settings) OpenShelf() *scenarios.Shelf { return scenarios.Open(nil) }
