package main

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// spoiled are ways in which any file of the shelf can be broken, and what is then said of it, after its
// name.
func spoiled(good string) map[string]struct{ text, say string } {
	noise := make([]byte, 4000)
	r := rand.NewChaCha8([32]byte{1})
	_, _ = r.Read(noise)
	return map[string]struct{ text, say string }{
		"empty":    {"", ":1:1: file is empty, expected one document"},
		"binary":   {string(noise), "not UTF-8 text, expected plain UTF-8"},
		"two":      {good + "---\n" + good, ": a second document begins here, expected exactly one"},
		"unknown":  {good + "unheard_of: 3\n", `unknown key "unheard_of"`},
		"kind":     {strings.Replace(good, "\nname: ", "\nname: [1]\nwas: ", 1), "name: expected text, found a list"},
		"enormous": {good + strings.Repeat("# and more of it\n", 1<<16), ":1:1: file is too long, expected at most 262144 bytes"},
		"deep":     {strings.Repeat("[", 100_000), ":1:1: exceeded max depth"},
		"circular": {"a: &a [*a, *a]\n", ":1:4: anchors and aliases (& and *) are not used"},
		"scalar":   {"only a sentence\n", ":1:1: cannot tell what this file describes"},
		"wide":     {"\xff\xfen\x00a\x00m\x00e\x00", ":1:1: not UTF-8 text"},
		"open":     {good + "last: [1, 2\n", "expected YAML"},
		"tab":      {good + "\tlast: 1\n", "expected YAML"},
	}
}

// Whatever is wrong with a file, each command that is given it says so in a line with the file's name and
// the place, and ends with 3.
func TestBrokenFiles(t *testing.T) {
	dir := t.TempDir()
	for kind, from := range map[string]string{
		"drill": "drills/reverse-lay.yaml", "apparatus": "apparatus/engine41.yaml",
		"operator": "operators/reverse-lay/no-helmet.yaml", "demonstration": "demonstrations/dead-head.yaml",
	} {
		good := "\n" + string(shipped(t, from))
		for how, c := range spoiled(good) {
			name := put(t, filepath.Join(dir, kind+"-"+how+".yaml"), c.text)
			use := [][]string{{"check", name}}
			switch kind {
			case "operator":
				use = append(use, []string{"run", "reverse-lay", "--operator", name})
			case "demonstration":
				use = append(use, []string{"show", name})
			}
			for _, args := range use {
				out, errs, code := needle(t, args...)
				first, _, _ := strings.Cut(errs, "\n")
				if code != broken || !strings.HasPrefix(first, name+":") || !strings.Contains(errs, c.say) || strings.Contains(out, "sound") {
					t.Errorf("%s, %s: exit code %d, %.300q, want %q", args[0], filepath.Base(name), code, errs, c.say)
				}
			}
		}
		folder := filepath.Join(dir, kind+"-folder.yaml")
		if err := os.Mkdir(folder, 0o700); err != nil {
			t.Fatal(err)
		}
		if _, errs, code := needle(t, "check", folder); code != broken || errs != folder+":1:1: is a folder, expected a file\n" {
			t.Errorf("a folder: %d, %q", code, errs)
		}
	}
}

// A file of the user's own shelf that cannot be read is told of by its path, by every command that needs
// it, and what only follows from that is not.
func TestUnreadableOnTheShelf(t *testing.T) {
	for _, c := range []struct{ at, args string }{
		{"drills/reverse-lay.yaml", "run reverse-lay --operator clean"},
		{"drills/reverse-lay.yaml", "prove reverse-lay"},
		{"drills/reverse-lay.yaml", "list"},
		{"apparatus/engine41.yaml", "show dead-head"},
		{"apparatus/engine41.yaml", "list"},
		{"rules/common.yaml", "run reverse-lay --operator clean"},
		{"operators/reverse-lay/clean.yaml", "run reverse-lay --operator no-helmet"},
		{"demonstrations/dead-head.yaml", "show dead-head"},
	} {
		dir := t.TempDir()
		at := filepath.Join(dir, filepath.FromSlash(c.at))
		if err := os.MkdirAll(at, 0o700); err != nil {
			t.Fatal(err)
		}
		_, errs, code := needle(t, append(strings.Fields(c.args), "--shelf", dir)...)
		if code != broken || errs != at+":1:1: is a folder, expected a file\n" {
			t.Errorf("%s with %s a folder: exit code %d, %q", c.args, c.at, code, errs)
		}
	}
}

// A shelf that somebody names has to be there.
func TestNoShelf(t *testing.T) {
	file := put(t, filepath.Join(t.TempDir(), "file"), "")
	for _, name := range []string{file, file + "-none"} {
		if _, errs, code := needle(t, "list", "--shelf", name); code != wrongUse || errs != `--shelf: found "`+name+"\", expected a folder\n" {
			t.Errorf("exit code %d, %q", code, errs)
		}
	}
}

// What cannot be written is said with the flag and the name, and nothing half-made is left. What is no
// file stays what it is.
func TestUnwritable(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("STEADYNEEDLE_ATTEMPTS", filepath.Join(dir, "attempts"))
	keepOne(t, filepath.Join(dir, "attempts"))
	good := filepath.Join(dir, "good.tape")
	if _, errs, code := needle(t, "run", "reverse-lay", "--operator", "clean", "--record", good); code != done {
		t.Fatal(errs)
	}
	targets := map[string]string{dir: "is a folder, expected a file", filepath.Join(dir, "none", "x"): "cannot be written (no such file or directory)"}
	full := filepath.Join(dir, "full")
	if info, err := os.Stat("/dev/full"); err == nil && info.Mode()&os.ModeDevice != 0 && os.Symlink("/dev/full", full) == nil {
		targets[full] = "cannot be written (no space left on device)"
	}
	for name, say := range targets {
		for _, c := range []struct{ args, flag string }{
			{"run reverse-lay --operator clean", "--record"}, {"rate " + good + " --sign Brook", "--to"}, {"records export last --as json", "--to"},
		} {
			_, errs, code := needle(t, append(strings.Fields(c.args), c.flag, name)...)
			if want := c.flag + " " + name + ": " + say + "\n"; code != wrongUse || errs != want {
				t.Errorf("%s: exit code %d, %q, want %q", c.args, code, errs, want)
			}
		}
	}
	if info, err := os.Lstat(full); targets[full] != "" && (err != nil || info.Mode()&os.ModeSymlink == 0) {
		t.Error("what led to a device was replaced by a file")
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".writing-*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

// keepOne keeps a sheet with an empty recording.
func keepOne(t *testing.T, folder string) string {
	t.Helper()
	id := "20260301-120000-reverse-lay"
	put(t, filepath.Join(folder, id, "attempt.tape"), "")
	return put(t, filepath.Join(folder, id, "sheet.json"), `{"sheet": 1, "drill": "reverse-lay"}`)
}

// A sheet that cannot be read is a broken file, told of with its line; an ID that nobody has is wrong use.
func TestBrokenSheets(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("STEADYNEEDLE_ATTEMPTS", dir)
	sheet := keepOne(t, dir)
	for text, say := range map[string]string{
		"":                                    "line 1: not a sheet: the text breaks off",
		"{\"sheet\": 1,\n":                    "line 2: not a sheet: the text breaks off",
		"[]":                                  "line 1: not a sheet: found array, expected names and values in braces",
		"{\"sheet\": 7}":                      "a sheet of format 7; this program reads 1",
		"{\n\"sheet\": 1, \"score\":\n\"x\"}": "line 3: not a sheet: score: found string, expected another kind of value",
		"{\"sheet\": 1}\n{}":                  "line 2: not a sheet: expected JSON",
		"\x00\x01":                            "line 1: not a sheet: expected JSON",
	} {
		put(t, sheet, text)
		for _, args := range [][]string{{"records", "show", "last"}, {"records", "export", "last"}, {"records", "list"}} {
			_, errs, code := needle(t, args...)
			if want := "attempt 20260301-120000-reverse-lay, sheet.json: " + say + "\n"; code != broken || errs != want {
				t.Errorf("%v: exit code %d, %q, want %q", args, code, errs, want)
			}
		}
	}
	if _, _, code := needle(t, "records", "show", "1999"); code != wrongUse {
		t.Errorf("an unknown ID: exit code %d", code)
	}
	put(t, filepath.Join(dir, "20260302-120000-reverse-lay", "journal.tape"), "")
	if _, errs, code := needle(t, "records", "show", "20260302"); code != broken || !strings.Contains(errs, "was cut off and has no sheet yet") {
		t.Errorf("an attempt that was cut off: exit code %d, %q", code, errs)
	}
}

// A recording that cannot be read is told of once, and nothing is written.
func TestBrokenRecordings(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("STEADYNEEDLE_ATTEMPTS", dir)
	at := filepath.Join(filepath.Dir(keepOne(t, dir)), "attempt.tape")
	to := filepath.Join(t.TempDir(), "out")
	for what, c := range map[string]struct {
		make func() error
		say  string
	}{
		"empty":    {func() error { return os.WriteFile(at, nil, 0o600) }, ": line 1: not a recording: it is empty"},
		"no file":  {func() error { return nil }, " is not kept"},
		"a folder": {func() error { return os.Mkdir(at, 0o700) }, ", attempt.tape: cannot be read (is a directory)"},
	} {
		if err := os.RemoveAll(at); err != nil {
			t.Fatal(err)
		}
		if err := c.make(); err != nil {
			t.Fatal(err)
		}
		_, errs, code := needle(t, "records", "export", "last", "--to", to)
		if want := "attempt 20260301-120000-reverse-lay" + c.say + "\n"; code != broken || errs != want {
			t.Errorf("%s: exit code %d, %q, want %q", what, code, errs, want)
		}
		if _, err := os.Stat(to); err == nil {
			t.Errorf("%s: a file was written", what)
		}
	}
}

// Operators that are based on one another are one fault each, not one for each of their edits too.
func TestCircleOfOperators(t *testing.T) {
	dir := t.TempDir()
	at := func(name string) string { return filepath.Join(dir, "operators", "reverse-lay", name+".yaml") }
	for name, base := range map[string]string{"one": "two", "two": "one", "self": "self"} {
		put(t, at(name), "name: "+name+"\ndrill: reverse-lay\nbased_on: "+base+"\nbreaks: helmet\nedits:\n  - {skip: helmet-on}\n")
	}
	for _, name := range []string{"one", "self"} {
		_, errs, code := needle(t, "run", "reverse-lay", "--operator", name, "--shelf", dir)
		if want := at(name) + ":3:11: based_on: operators are based on one another in a circle or too deeply, expected at most 4\n"; code != broken || errs != want {
			t.Errorf("%s: exit code %d, %q, want %q", name, code, errs, want)
		}
	}
}
