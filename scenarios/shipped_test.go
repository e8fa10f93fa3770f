package scenarios

import (
	"io/fs"
	"path"
	"strings"
	"testing"
)

// Every shipped file is checked as `needle check` does it.
func TestShippedFilesAreSound(t *testing.T) {
	s := Open(nil)
	n := 0
	err := fs.WalkDir(Files(), ".", func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || path.Ext(p) != ".yaml" {
			return err
		}
		text, err := fs.ReadFile(Files(), p)
		if err != nil {
			return err
		}
		n++
		e, err := s.Check("scenarios/"+p, text)
		if err != nil {
			t.Errorf("%v", err)
		}
		if e.path() != p {
			t.Errorf("%s: taken for %s", p, e.path())
		}
		if !strings.Contains(string(text), "raining aid") && (e.Kind == DrillFile || e.Kind == ApparatusFile || e.Kind == RulesFile) {
			t.Errorf("%s does not say that it is a training aid", p)
		}
		return nil
	})
	if err != nil || n < 4 {
		t.Errorf("%d files walked, %v", n, err)
	}
}
