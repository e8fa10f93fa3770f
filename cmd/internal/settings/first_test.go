//go:build !js

package settings

import (
	"path/filepath"
	"testing"
)

func TestFirst(t *testing.T) {
	mark := filepath.Join(t.TempDir(), "deep", "greeted")
	if !first(mark) || first(mark) || first(mark) {
		t.Error("the first time is not the first time alone")
	}
}
