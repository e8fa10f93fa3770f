//go:build !js

package settings

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sort"
	"strings"

	"github.com/adrg/xdg"
	"github.com/spf13/pflag"
	"github.com/spf13/viper"

	"steadyneedle/scenarios/reader"
)

const folder = "steadyneedle"

// names are all settings, as files, environment and flags call them.
var names = []string{"shelf", "attempts", "units", "pad", "scale", "theme", "sound", "on_unsafe"}

// File is the path of the user's settings file, whether it is there or not.
func File() string { return filepath.Join(xdg.ConfigHome, folder, "settings.yaml") }

// AddFlags gives a command the flags that Load reads.
func AddFlags(flags *pflag.FlagSet) {
	flags.String("shelf", "", "folder of your own drills, apparatus, rules and operators")
	flags.String("units", "", "units shown: us or si")
}

// Load reads all layers. flags may be nil. A setting that is not known, or has a value that cannot be,
// is an error that names the file.
func Load(flags *pflag.FlagSet) (Settings, error) { return load(File(), flags) }

func load(file string, flags *pflag.FlagSet) (Settings, error) {
	v := viper.New()
	v.SetDefault("shelf", filepath.Join(xdg.DataHome, folder, "shelf"))
	v.SetDefault("attempts", filepath.Join(xdg.DataHome, folder, "attempts"))
	v.SetDefault("units", "us")
	v.SetDefault("pad", "")
	v.SetDefault("scale", "fit")
	v.SetDefault("theme", "auto")
	v.SetDefault("sound", "")
	v.SetDefault("on_unsafe", AsDrill)
	v.SetConfigFile(file)
	v.SetConfigType("yaml")
	if err := v.ReadInConfig(); err != nil && !errors.Is(err, os.ErrNotExist) {
		return Settings{}, fmt.Errorf("%s:1:1: cannot be read: %s", file, oneLine(err))
	}
	keys := v.AllKeys()
	sort.Strings(keys)
	for _, k := range keys {
		if !known(k) {
			return Settings{}, fmt.Errorf("%s:1:1: unknown setting %q, %s", file, k, reader.DidYouMean(k, names))
		}
		_, text := v.Get(k).(string)
		if _, number := v.Get(k).(int); !text && !(number && k == "scale") {
			return Settings{}, fmt.Errorf("%s:1:1: %s: expected text", file, k)
		}
	}
	v.SetEnvPrefix(folder)
	v.AutomaticEnv()
	if flags != nil {
		for _, n := range names {
			if f := flags.Lookup(n); f != nil {
				if err := v.BindPFlag(n, f); err != nil {
					return Settings{}, err
				}
			}
		}
	}
	s := Settings{Shelf: v.GetString("shelf"), Attempts: v.GetString("attempts"), Units: v.GetString("units"),
		Pad: v.GetString("pad"), Scale: v.GetString("scale"), Theme: v.GetString("theme"), Sound: v.GetString("sound"), OnUnsafe: v.GetString("on_unsafe")}
	return s, s.check("settings")
}

func known(key string) bool {
	for _, n := range names {
		if n == key {
			return true
		}
	}
	return false
}

func oneLine(err error) string { return strings.Join(strings.Fields(err.Error()), " ") }
