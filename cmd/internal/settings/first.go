//go:build !js

package settings

import (
	"os"
	"path/filepath"

	"github.com/adrg/xdg"
)

// First reports whether this user opens the window for the first time, and remembers that they have. If
// it cannot be remembered, the hint for the first time merely shows again.
func First() bool { return first(filepath.Join(xdg.StateHome, folder, "greeted")) }

func first(mark string) bool {
	if _, err := os.Stat(mark); err == nil {
		return false
	}
	if err := os.MkdirAll(filepath.Dir(mark), 0o755); err == nil {
		if f, err := os.Create(mark); err == nil {
			f.Close()
		}
	}
	return true
}
