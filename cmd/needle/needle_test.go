package main

import (
	"bytes"
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/cobra"
)

// needle runs the program as a shell would, with a home folder of its own.
func needle(t *testing.T, args ...string) (out, errs string, code int) {
	t.Helper()
	t.Setenv("STEADYNEEDLE_SHELF", t.TempDir())
	var o, e bytes.Buffer
	code = run(args, &o, &e)
	return o.String(), e.String(), code
}

func put(t *testing.T, path, text string) string {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

const shelf = "../../scenarios/"

func TestExitCodes(t *testing.T) {
	empty := put(t, filepath.Join(t.TempDir(), "empty.yaml"), "")
	for _, c := range []struct {
		args []string
		code int
		say  string // on standard error
	}{
		{[]string{"list"}, 0, ""},
		{[]string{"--help"}, 0, ""},
		{[]string{"check", shelf + "apparatus/engine41.yaml"}, 0, ""},
		{[]string{"check"}, 2, "expected files, found nothing"},
		{[]string{"chek"}, 2, "unknown command"},
		{[]string{"list", "--jsn"}, 2, "unknown flag"},
		{[]string{"list", "more"}, 2, "unknown command"},
		{[]string{"check", empty}, 3, "empty.yaml:1:1: file is empty"},
		{[]string{"check", filepath.Dir(empty)}, 3, ":1:1: is a folder, expected a file"},
		{[]string{"check", empty + "x"}, 3, "yamlx:1:1: cannot be read, expected a file (no such file or directory)"},
		{[]string{"list", "--units", "metric"}, 2, `--units: found "metric", expected us or si`},
	} {
		_, errs, code := needle(t, c.args...)
		if code != c.code || !strings.Contains(errs, c.say) {
			t.Errorf("needle %v: exit %d, %q; want %d and %q", c.args, code, errs, c.code, c.say)
		}
		if c.code != 0 && strings.Count(errs, "\n") != 1 {
			t.Errorf("needle %v: %q is not one line", c.args, errs)
		}
	}
}

func TestAPanicIsOurFault(t *testing.T) {
	var o, e bytes.Buffer
	code := guard(&e, func() int {
		cmd := &cobra.Command{RunE: func(*cobra.Command, []string) error { panic("table of rules is empty") }, SilenceErrors: true}
		cmd.SetArgs(nil)
		return codeOf(cmd.Execute())
	})
	if code != 4 || !strings.Contains(e.String(), "a fault of this program, not of yours: table of rules is empty") || o.Len() != 0 {
		t.Errorf("exit %d, %q", code, e.String())
	}
}

func TestCheckTellsEverythingOfAllFiles(t *testing.T) {
	dir := t.TempDir()
	a := put(t, filepath.Join(dir, "a.yaml"), "name: a\ntitle: A\nengine: {idle_rpm: 6, rpm: 3}\n")
	b := put(t, filepath.Join(dir, "b.yaml"), "name: b\ntitle: B\npump: {rated_gpm: x}\n")
	out, errs, code := needle(t, "check", a, shelf+"drills/reverse-lay.yaml", b)
	want := a + `:3:20: idle_rpm: expected a number from 400 to 1200, found "6"
` + a + `:3:23: unknown key "rpm", expected one of `
	if code != 3 || !strings.HasPrefix(errs, want[:len(want)-20]) || !strings.Contains(errs, b+`:3:19: rated_gpm: expected a number from 50 to 4000, found "x"`) || strings.Count(errs, "\n") != 3 {
		t.Errorf("exit %d\n%s", code, errs)
	}
	if out != shelf+"drills/reverse-lay.yaml: drill reverse-lay is sound\n" {
		t.Errorf("sound files: %q", out)
	}
}

// A drill under work is checked with the rules and the apparatus that lie beside it, and with files that
// are named together with it.
func TestCheckUsesWhatLiesBeside(t *testing.T) {
	dir := t.TempDir()
	text, err := os.ReadFile("../../scenarios/testdata/shelf/drills/small.yaml")
	if err != nil {
		t.Fatal(err)
	}
	drill := put(t, filepath.Join(dir, "drills", "small.yaml"), string(text))
	if _, errs, code := needle(t, "check", drill); code != 3 || !strings.Contains(errs, `apparatus "twin" is not on the shelf`) || !strings.Contains(errs, `unknown shared rule "fast-throttle"`) {
		t.Errorf("alone: exit %d\n%s", code, errs)
	}
	twin, _ := os.ReadFile("../../scenarios/testdata/shelf/apparatus/twin.yaml")
	extra, _ := os.ReadFile("../../scenarios/testdata/shelf/rules/extra.yaml")
	put(t, filepath.Join(dir, "rules", "extra.yaml"), string(extra))
	loose := put(t, filepath.Join(t.TempDir(), "engine.yaml"), string(twin))
	if _, errs, code := needle(t, "check", drill, loose); code != 0 {
		t.Errorf("with rules beside it and the apparatus named: exit %d\n%s", code, errs)
	}
	broken := put(t, filepath.Join(dir, "rules", "extra.yaml"), strings.Replace(string(extra), "when: discharge_gauge > limit", "when: discharge_gage > limit", 1))
	if _, errs, code := needle(t, "check", drill, loose); code != 3 || !strings.Contains(errs, broken+`:19:11: unknown name "discharge_gage", did you mean "discharge_gauge"?`) {
		t.Errorf("with a fault in the rule beside it: exit %d\n%s", code, errs)
	}
}

func TestListAsJSON(t *testing.T) {
	out, _, code := needle(t, "list", "--json")
	var list map[string][]map[string]string
	if err := json.Unmarshal([]byte(out), &list); err != nil || code != 0 {
		t.Fatalf("exit %d, %v", code, err)
	}
	if len(list) != 4 || list["drills"][0]["name"] == "" || list["apparatus"][0]["name"] == "" || list["demonstrations"] == nil {
		t.Errorf("%v", list)
	}
	clean := false
	for _, o := range list["operators"] {
		_, breaks := o["breaks"]
		clean = clean || o["name"] == "clean" && o["drill"] == "reverse-lay" && o["breaks"] == "" && breaks
	}
	if !clean {
		t.Errorf("the clean operator is not listed: %v", list["operators"])
	}
}

func TestListTellsOfBrokenFilesAndListsTheOthers(t *testing.T) {
	dir := t.TempDir()
	put(t, filepath.Join(dir, "drills", "mine.yaml"), "name: mine\ntitle: My drill\n")
	put(t, filepath.Join(dir, "drills", "torn.yaml"), "name: [")
	out, errs, code := needle(t, "list", "--shelf", dir)
	if code != 3 || !strings.Contains(out, "My drill") || !strings.Contains(errs, "drills/torn.yaml:") || !strings.Contains(out, "engine41") {
		t.Errorf("exit %d\n%s\n%s", code, out, errs)
	}
}

// shipped is the text of a file of the shelf.
func shipped(t *testing.T, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(shelf + name)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func folder(dir string) fs.FS { return os.DirFS(dir) }
