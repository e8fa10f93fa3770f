//go:build !js

package settings

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/adrg/xdg"
	"github.com/spf13/pflag"
	"github.com/spf13/viper"

	"steadyneedle/scenarios"
	"steadyneedle/scenarios/reader"
)

const folder = "steadyneedle"

// File is the path of the user's settings file, whether it is there or not.
func File() string { return filepath.Join(xdg.ConfigHome, folder, "settings.yaml") }

// AddFlags gives a command the flags that Load reads.
func AddFlags(flags *pflag.FlagSet) {
	flags.String("shelf", "", "folder of your own drills, apparatus, rules and operators")
	flags.String("units", "", "units shown: us or si")
}

// FlagError says what is wrong with a setting that was given by a flag.
type FlagError struct{ error }

// Load reads all layers. flags may be nil. A setting that is not known, or has a value that cannot be,
// is an error that says where it was given: a FlagError, the place in the file, or the name of the
// variable.
func Load(flags *pflag.FlagSet) (Settings, error) { return load(File(), flags) }

func load(name string, flags *pflag.FlagSet) (Settings, error) {
	v := viper.New()
	v.SetDefault("shelf", ownShelf())
	v.SetDefault("attempts", filepath.Join(xdg.DataHome, folder, "attempts"))
	v.SetDefault("units", "us")
	v.SetDefault("pad", "")
	v.SetDefault("scale", "fit")
	v.SetDefault("theme", "auto")
	v.SetDefault("sound", "")
	v.SetDefault("on_unsafe", AsDrill)
	f, err := readFile(name)
	if err != nil {
		return Settings{}, err
	}
	given := map[string]any{}
	for n, t := range f.texts() {
		if t.Given() {
			given[n] = t.Value
		}
	}
	if err := v.MergeConfigMap(given); err != nil {
		return Settings{}, err
	}
	v.SetEnvPrefix(folder)
	v.AutomaticEnv()
	if flags != nil {
		for n := range f.texts() {
			if l := flags.Lookup(n); l != nil {
				if err := v.BindPFlag(n, l); err != nil {
					return Settings{}, err
				}
			}
		}
	}
	s := Settings{Shelf: v.GetString("shelf"), Attempts: v.GetString("attempts"), Units: v.GetString("units"),
		Pad: v.GetString("pad"), Scale: v.GetString("scale"), Theme: v.GetString("theme"), Sound: v.GetString("sound"), OnUnsafe: v.GetString("on_unsafe"),
		whence: func(name string, err error) error { return whence(name, err, f, flags) }}
	which, err := s.check()
	if err == nil {
		which, err = s.checkFolders()
	}
	if err != nil {
		err = s.Told(which, err)
	}
	return s, err
}

// ownShelf is the folder of the user's own files, unless they name another; it need not be there.
func ownShelf() string { return filepath.Join(xdg.DataHome, folder, "shelf") }

// checkFolders says which folder cannot be one. That of attempts is made when the first is kept.
func (s Settings) checkFolders() (name string, err error) {
	if info, err := os.Stat(s.Shelf); s.Shelf != "" && s.Shelf != ownShelf() && (err != nil || !info.IsDir()) {
		return "shelf", fmt.Errorf("found %q, expected a folder", s.Shelf)
	}
	if info, err := os.Stat(s.Attempts); err == nil && !info.IsDir() {
		return "attempts", fmt.Errorf("found %q, expected a folder", s.Attempts)
	}
	return "", nil
}

// whence tells where a setting was given that has a wrong value.
func whence(name string, err error, f *file, flags *pflag.FlagSet) error {
	if flags != nil {
		if l := flags.Lookup(name); l != nil && l.Changed {
			return FlagError{fmt.Errorf("--%s: %w", name, err)}
		}
	}
	variable := strings.ToUpper(folder + "_" + name)
	if os.Getenv(variable) != "" {
		return fmt.Errorf("%s: %w", variable, err)
	}
	if t := f.texts()[name]; t.Given() {
		return reader.Faults{t.Fault(0, "%s: %v", name, err)}
	}
	return fmt.Errorf("settings: %s: %w", name, err)
}

// OpenShelf opens the user's folder, if it is there, over the shipped files.
func (s Settings) OpenShelf() *scenarios.Shelf {
	shelf := scenarios.Open(nil)
	if info, err := os.Stat(s.Shelf); err == nil && info.IsDir() {
		shelf = shelf.Over(os.DirFS(s.Shelf), func(p string) string { return filepath.Join(s.Shelf, filepath.FromSlash(p)) })
	}
	return shelf
}
