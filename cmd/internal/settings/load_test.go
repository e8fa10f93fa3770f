//go:build !js

package settings

import (
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
	file := write(t, "units: si\nshelf: /from/file\n")
	if s, err := load(file, flags); err != nil || s.Units != "si" || s.Shelf != "/from/file" {
		t.Errorf("file: %+v, %v", s, err)
	}
	if s, err := load(write(t, "scale: 150\npad: axis 2 throttle\n"), nil); err != nil || s.Scale != "150" || s.Pad != "axis 2 throttle" {
		t.Errorf("size and game-pad: %+v, %v", s, err)
	}
	if s, err := load(write(t, "on_unsafe: ask\n"), nil); err != nil || s.OnUnsafe != "ask" {
		t.Errorf("unsafe acts: %+v, %v", s, err)
	}
	t.Setenv("STEADYNEEDLE_SHELF", "/from/env")
	if s, err := load(file, flags); err != nil || s.Units != "si" || s.Shelf != "/from/env" {
		t.Errorf("environment over file: %+v, %v", s, err)
	}
	if err := flags.Parse([]string{"--shelf", "/from/flag"}); err != nil {
		t.Fatal(err)
	}
	if s, err := load(file, flags); err != nil || s.Shelf != "/from/flag" {
		t.Errorf("flag over environment: %+v, %v", s, err)
	}
}

func TestFaultySettingsAreRefused(t *testing.T) {
	for text, say := range map[string]string{
		"unit: si":      `unknown setting "unit", did you mean "units"?`,
		"units: metric": `units: found "metric", expected us or si`,
		"units: [si]":   "units: expected text",
		"on_unsafe: no": `on_unsafe: found "no", expected go-on, stop, ask or drill`,
		"units: [":      "cannot be read",
	} {
		_, err := load(write(t, text), nil)
		if err == nil || !strings.Contains(err.Error(), say) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%q: %v, want one line with %s", text, err, say)
		}
	}
}
