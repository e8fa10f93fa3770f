package sim

import (
	"bytes"
	"encoding/json"
	"errors"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

const module = "steadyneedle"

// order is who may import whom inside sim: each package those listed with it, and whatever these may.
// A new package gets its row here, as low as it can stand.
var order = map[string]string{
	"unit":       "",
	"bound":      "",
	"state":      "",
	"cond":       "",
	"hydraulics": "unit",
	"water":      "unit bound",
	"flownet":    "unit state bound",
	"rig":        "hydraulics water flownet",
	"fireground": "hydraulics water flownet",
	"layout":     "rig fireground",
	"plant":      "layout",
	"world":      "plant cond",
	"board":      "world",
	"crew":       "board",
	"scene":      "crew",
	"operator":   "board",
	"judge":      "scene operator",
	"tape":       "world",
	"drill":      "scene judge tape",
	"prompter":   "drill",
	"attempt":    "prompter",
	"proof":      "attempt",
	"sums":       "attempt",
	"fidelity":   "plant",
	"demo":       "attempt",
}

// pureStandard is what sim may use of the standard library: nothing with a clock, a file, a network, a
// process or a thread behind it. Chance has one door, sim/state.
var pureStandard = names("bufio bytes cmp encoding/binary encoding/hex encoding/json errors fmt crypto/sha256 hash/fnv io math math/bits slices sort strconv strings unicode unicode/utf8")

// layers is who may import whom between the folders at the top; the longest matching row counts.
var layers = map[string]string{
	"sim":              "sim",
	"assets":           "",
	"scenarios":        "sim scenarios assets",
	"render/report":    "sim scenarios assets render/report",
	"render":           "sim scenarios assets render",
	"cmd/internal":     "sim scenarios assets render/report cmd/internal",
	"cmd/needle":       "sim scenarios assets render/report cmd/internal cmd/needle",
	"cmd/steadyneedle": "sim scenarios assets render cmd/internal cmd/steadyneedle",
}

// pkg is what go list tells of a package.
type pkg struct {
	ImportPath, Dir, Export string
	GoFiles, CgoFiles       []string
	SFiles, IgnoredGoFiles  []string
	Imports                 []string
	Standard                bool
}

func (p pkg) name() string { return strings.TrimPrefix(strings.TrimPrefix(p.ImportPath, module), "/") }

// TestMain looks into every folder first: go test then knows that a cached result is stale when a file
// has changed that only go list reads.
func TestMain(m *testing.M) {
	filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err == nil && d.IsDir() && (d.Name() == ".git" || d.Name() == "node_modules") {
			return filepath.SkipDir
		}
		return nil
	})
	m.Run()
}

func list(t *testing.T, args ...string) []pkg {
	t.Helper()
	cmd := exec.Command("go", append([]string{"list", "-json=ImportPath,Dir,Export,GoFiles,CgoFiles,SFiles,IgnoredGoFiles,Imports,Standard"}, args...)...)
	cmd.Dir = ".."
	var wrong bytes.Buffer
	cmd.Stderr = &wrong
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("go list %v: %v\n%s", args, err, wrong.String())
	}
	var all []pkg
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p pkg
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return all
		} else if err != nil {
			t.Fatal(err)
		}
		all = append(all, p)
	}
}

// closure is everything that a package of sim may import, by table order.
func closure(name string, into map[string]bool) map[string]bool {
	for _, n := range strings.Fields(order[name]) {
		if !into[n] {
			into[n] = true
			closure(n, into)
		}
	}
	return into
}

func TestSimImports(t *testing.T) {
	for name, below := range order {
		for _, b := range strings.Fields(below) {
			if _, ok := order[b]; !ok || closure(b, map[string]bool{})[name] {
				t.Errorf("table order in sim/purity_test.go: %s over %s is a circle or names no package", name, b)
			}
		}
	}
	for _, p := range list(t, "./sim/...") {
		name := strings.TrimPrefix(p.name(), "sim/")
		if _, ok := order[name]; !ok && p.name() != "sim" {
			t.Errorf("package sim/%s is new: give it a row in table order of sim/purity_test.go", name)
			continue
		}
		if odd := append(p.SFiles, p.IgnoredGoFiles...); len(odd) > 0 {
			t.Errorf("sim/%s has %v: no assembly, and no file for one kind of machine only", name, odd)
		}
		may := closure(name, map[string]bool{})
		for _, i := range p.Imports {
			sub, inSim := strings.CutPrefix(i, module+"/sim/")
			switch {
			case inSim && !may[sub]:
				t.Errorf("sim/%s imports sim/%s, which does not stand below it (table order of sim/purity_test.go)", name, sub)
			case inSim || pureStandard[i] || i == "math/rand/v2" && name == "state":
			default:
				t.Errorf("sim/%s imports %s: sim takes only sim and the pure part of the standard library (pureStandard in sim/purity_test.go)", name, i)
			}
		}
	}
}

func TestLayers(t *testing.T) {
	for _, p := range list(t, "./...") {
		row := ""
		for r := range layers {
			if under(p.name(), r) && len(r) > len(row) {
				row = r
			}
		}
		if row == "" {
			t.Errorf("package %s stands outside the folders in table layers of sim/purity_test.go", p.name())
			continue
		}
		for _, i := range p.Imports {
			ours, is := strings.CutPrefix(i, module+"/")
			if is && !slices.ContainsFunc(strings.Fields(layers[row]), func(r string) bool { return under(ours, r) }) {
				t.Errorf("%s imports %s, which is not below it (table layers of sim/purity_test.go)", p.name(), ours)
			}
		}
	}
}

func under(name, row string) bool { return name == row || strings.HasPrefix(name, row+"/") }

// TestNoWindowBelow: ebiten panics when it is initialized without a display, so whatever must work on a
// server may not reach it, nor cgo.
func TestNoWindowBelow(t *testing.T) {
	for _, root := range []string{"sim", "scenarios", "assets", "render/report", "cmd/needle"} {
		if found, _ := filepath.Glob(filepath.Join("..", root, "*")); len(found) == 0 {
			continue
		}
		for _, p := range list(t, "-deps", "./"+root+"/...") {
			for _, window := range []string{"github.com/hajimehoshi/", "github.com/ebitengine/"} {
				if strings.HasPrefix(p.ImportPath, window) {
					t.Errorf("%s reaches %s", root, p.ImportPath)
				}
			}
			if len(p.CgoFiles) > 0 && !p.Standard {
				t.Errorf("%s reaches %s, which needs cgo", root, p.ImportPath)
			}
		}
	}
}

// TestWindowCarriesNoTests: the objective tests are the command line's; a window, in a browser above all,
// has no use for them and must not grow by them.
func TestWindowCarriesNoTests(t *testing.T) {
	for _, p := range list(t, "-deps", "./cmd/steadyneedle") {
		if p.name() == "sim/fidelity" || p.name() == "render/report/guide" {
			t.Errorf("cmd/steadyneedle reaches %s", p.name())
		}
	}
}

// TestSameBitsEverywhere runs the lint over all of sim, and holds operators to readings.
func TestSameBitsEverywhere(t *testing.T) {
	all := list(t, "-deps", "-export", "./sim/...")
	fset := token.NewFileSet()
	conf := types.Config{Importer: compiled(fset, exportsOf(all))}
	checked := 0
	for _, p := range all {
		if p.Standard {
			continue
		}
		info := newInfo()
		l := &linter{fset: fset, info: info}
		var files []*ast.File
		for _, name := range p.GoFiles {
			f, err := parser.ParseFile(fset, filepath.Join(p.Dir, name), nil, parser.ParseComments)
			if err != nil {
				t.Fatal(err)
			}
			files = append(files, f)
		}
		if _, err := conf.Check(p.ImportPath, fset, files, info); err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			l.file(f)
			checked++
		}
		if p.name() == "sim/operator" {
			l.seesTruth()
		}
		for _, f := range l.faults {
			t.Error(f)
		}
	}
	if checked == 0 {
		t.Error("nothing was checked")
	}
}

// exportsOf are the files in which the compiler left what a package offers.
func exportsOf(all []pkg) map[string]string {
	exports := map[string]string{}
	for _, p := range all {
		exports[p.ImportPath] = p.Export
	}
	return exports
}

// compiled imports packages from those files: unlike their source they are there with every build flag.
func compiled(fset *token.FileSet, exports map[string]string) types.Importer {
	return importer.ForCompiler(fset, "gc", func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) })
}

// seesTruth finds uses of the world's truth.
func (l *linter) seesTruth() {
	for id, obj := range l.info.Uses {
		if obj.Name() == "Truth" && obj.Pkg() != nil && obj.Pkg().Path() == module+"/sim/world" {
			l.fault(id, "an operator works from readings, never from the truth")
		}
	}
}

func newInfo() *types.Info {
	return &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Uses: map[*ast.Ident]types.Object{}, Defs: map[*ast.Ident]types.Object{}}
}
