//go:build !js

package settings

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/pflag"
)

func write(t *testing.T, text string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "settings.yaml")
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return file
}

func TestLayers(t *testing.T) {
	flags := pflag.NewFlagSet("x", pflag.ContinueOnError)
	AddFlags(flags)
	missing := filepath.Join(t.TempDir(), "none.yaml")
	if s, err := load(missing, flags); err != nil || s.Units != "us" || s.OnUnsafe != AsDrill || !strings.HasSuffix(s.Shelf, filepath.Join("steadyneedle", "shelf")) {
		t.Errorf("defaults: %+v, %v", s, err)
	}
	fromFile, fromEnv, fromFlag := t.TempDir(), t.TempDir(), t.TempDir()
	file := write(t, "units: si\nshelf: "+fromFile+"\n")
	if s, err := load(file, flags); err != nil || s.Units != "si" || s.Shelf != fromFile {
		t.Errorf("file: %+v, %v", s, err)
	}
	if s, err := load(write(t, "scale: 150\npad: axis 2 throttle\n"), nil); err != nil || s.Scale != "150" || s.Pad != "axis 2 throttle" {
		t.Errorf("size and game-pad: %+v, %v", s, err)
	}
	if s, err := load(write(t, "on_unsafe: ask\n"), nil); err != nil || s.OnUnsafe != "ask" {
		t.Errorf("unsafe acts: %+v, %v", s, err)
	}
	t.Setenv("STEADYNEEDLE_SHELF", fromEnv)
	if s, err := load(file, flags); err != nil || s.Units != "si" || s.Shelf != fromEnv {
		t.Errorf("environment over file: %+v, %v", s, err)
	}
	if err := flags.Parse([]string{"--shelf", fromFlag}); err != nil {
		t.Fatal(err)
	}
	if s, err := load(file, flags); err != nil || s.Shelf != fromFlag {
		t.Errorf("flag over environment: %+v, %v", s, err)
	}
}

func TestFaultySettingsAreRefused(t *testing.T) {
	for text, say := range map[string]string{
		"unit: si":                  `:1:1: unknown key "unit", did you mean "units"?`,
		"# mine\n\nunits: metric":   `:3:8: units: found "metric", expected us or si`,
		"units: [si]":               ":1:8: units: expected text, found a list",
		"on_unsafe: no":             `:1:12: on_unsafe: found "no", expected go-on, stop, ask or drill`,
		"units: [":                  ":1:1: did not find expected node content",
		"units: us\n---\nunits: si": ":2:1: a second document begins here, expected exactly one",
		"shelf: /nowhere/at/all":    `:1:8: shelf: found "/nowhere/at/all", expected a folder`,
		"\xff\xfe":                  ":1:1: not UTF-8 text",
	} {
		_, err := load(write(t, text), nil)
		if err == nil || !strings.Contains(err.Error(), say) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%q: %v, want one line with %s", text, err, say)
		}
	}
}

// A file that says nothing, and one that is not there, are as good as each other; a folder is not.
func TestEmptySettings(t *testing.T) {
	for _, text := range []string{"", "\n", "# nothing of mine\n\n  # nor here\n", "\uFEFF# saved with a byte order mark\n"} {
		if s, err := load(write(t, text), nil); err != nil || s.Units != "us" {
			t.Errorf("%q: %+v, %v", text, s, err)
		}
	}
	dir := t.TempDir()
	if _, err := load(dir, nil); err == nil || !strings.HasPrefix(err.Error(), dir+":1:1: is a folder, expected a file") {
		t.Errorf("a folder: %v", err)
	}
}

// Attempts are kept in a folder, which need not be there yet; a file would be noticed too late.
func TestFolderOfAttempts(t *testing.T) {
	at := filepath.Join(t.TempDir(), "attempts")
	name := write(t, "attempts: "+at+"\n")
	if s, err := load(name, nil); err != nil || s.Attempts != at {
		t.Errorf("%+v, %v", s, err)
	}
	if err := os.WriteFile(at, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := load(name, nil); err == nil || err.Error() != name+`:1:11: attempts: found "`+at+`", expected a folder` {
		t.Errorf("a file: %v", err)
	}
}

// A wrong value is told of where it was given.
func TestWhence(t *testing.T) {
	none := filepath.Join(t.TempDir(), "none.yaml")
	t.Setenv("STEADYNEEDLE_UNITS", "furlongs")
	if _, err := load(none, nil); err == nil || err.Error() != `STEADYNEEDLE_UNITS: found "furlongs", expected us or si` {
		t.Errorf("by the environment: %v", err)
	}
	flags := pflag.NewFlagSet("x", pflag.ContinueOnError)
	AddFlags(flags)
	if err := flags.Parse([]string{"--units", "rods"}); err != nil {
		t.Fatal(err)
	}
	_, err := load(none, flags)
	if wrong := (FlagError{}); !errors.As(err, &wrong) || err.Error() != `--units: found "rods", expected us or si` {
		t.Errorf("by a flag: %v", err)
	}
}
