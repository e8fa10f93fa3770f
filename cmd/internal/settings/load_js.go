package settings

// Load returns the defaults: a browser has no folders of ours.
func Load() (Settings, error) {
	return Settings{Units: "us", Scale: "fit", Theme: "auto", OnUnsafe: AsDrill}, nil
}
