package sim

import (
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"strings"
	"sync"
	"testing"
)

// TestLintCases proves that the lint can fail, and that it does not where there is nothing wrong.
func TestLintCases(t *testing.T) {
	for _, c := range []struct {
		code string // body of a function with float64 a, b, c, int i, j and map m
		want string // part of the one fault; empty for none
	}{
		{"c = a*b + c", "float64(a * b)"},
		{"c = c - a*b", "float64(a * b)"},
		{"c += a * b", "float64(a * b)"},
		{"c -= (a * b)", "float64(a * b)"},
		{"c = -(a * b) + c", "float64(a * b)"},
		{"c *= a", "c = float64(c * a)"},
		{"x := a * a; c += x", "float64(a * a)"}, // fuses across statements
		{"c = f(a * b)", "float64(a * b)"},       // f may be inlined
		{"c = 2 * a", "float64(2 * a)"},
		{"c = max(a*b, c)", "float64(a * b)"},
		{"c = float64(a*b + c)", "float64(a * b)"}, // the conversion comes after the addition
		{"p.v = a * b", "float64(a * b)"},
		{"s[i] = psi(a) * psi(b)", "float64(psi(a) * psi(b))"},
		{"c = a/2 + b", "float64(a / 2)"}, // compiled to a*0.5
		{"c /= 4", "float64(c / 4)"},
		{"c = b - (a+b)/0.25", "float64((a + b) / 0.25)"},
		{"p = &pair{a * b}", "float64(a * b)"}, // by way of a field
		{"p = &pair{v: a * b}", "float64(a * b)"},
		{"r[i] = a * b", "float64(a * b)"}, // of an array
		{"r = [2]float64{a * b, c}", "float64(a * b)"},
		{"h := func() float64 { return a * b }; c += h()", "float64(a * b)"}, // of an inlined result
		{"a, c = c, a*b", "float64(a * b)"},
		{"q := &c; *q = a * b", "float64(a * b)"},
		{"var e any = a * b; c += e.(float64)", "float64(a * b)"},
		{"c = float64(single(a) + single(a)*single(b))", "float64(single(a) * single(b))"},
		{"for x := a * b; x < c; x++ { c += x }", "float64(a * b)"},
		{"switch x := a * b; { case x > c: c += x }", "float64(a * b)"},
		{"z := complex(a, b); c = real(z * z)", "complex"},
		{"var z complex64; _ = z", "complex"},
		{"c = math.Exp(a)", "math.Exp"},
		{"c = math.Cbrt(a)", "math.Cbrt"},
		{"c = math.FMA(a, b, c)", "math.FMA"},
		{"g := math.Pow; c = g(a, b)", "math.Pow"},
		{"for range m { i++ }", "range over a map"},
		{"//order:\nfor range m { i++ }", "range over a map"}, // no reason given
		{"go f(a)", "goroutines"},
		{"var ch chan int; _ = ch", "goroutines"},

		{"c = float64(a*b) + c", ""},
		{"c = float64(a*b*c) + c", ""},
		{"c = float64(-(a*b)) + c", ""},
		{"c = a*b/c + a", ""}, // a quotient fuses with nothing
		{"c = a/3 + b/c", ""},
		{"c = float64(a/2) + b", ""},
		{"if c > a/2 { i++ }", ""},
		{"i = i/2 + j", ""},
		{"c = (float64)(a*b) + c", ""},
		{"s[i] = psi(a*b) + s[i]", ""},
		{"if a*b > c { i++ }", ""},
		{"i = int(a * b)", ""},
		{"const k = 2.0 * 3; c = k + a", ""},
		{"i = i*j + i", ""},
		{"c = math.Sqrt(a) + math.Floor(b) + math.Pi", ""},
		{"//order: only counted\nfor range m { i++ }", ""},
		{"for range m { i++ } //order: only counted", ""},
		{"for range s { i++ }", ""},
	} {
		faults := lintSnippet(t, c.code)
		switch {
		case c.want == "" && len(faults) > 0:
			t.Errorf("%q: unexpected %v", c.code, faults)
		case c.want != "" && len(faults) == 0:
			t.Errorf("%q: nothing found", c.code)
		case c.want != "" && !strings.Contains(faults[0], c.want):
			t.Errorf("%q: found %v, want %q", c.code, faults, c.want)
		}
	}
}

// TestLintGenerics: a product of type parameters may be one of floats.
func TestLintGenerics(t *testing.T) {
	src := "package p\nfunc area[T ~float64 | ~int](a, b T) T { return a * b }\n"
	if faults := lintSource(t, src); len(faults) != 1 {
		t.Errorf("found %v, want one fault", faults)
	}
}

// TestLintDotImport: a function of package math that is called without its name.
func TestLintDotImport(t *testing.T) {
	src := "package p\nimport . \"math\"\nfunc f(x float64) float64 { return Exp(x) + Sqrt(x) }\n"
	if faults := lintSource(t, src); len(faults) != 1 || !strings.Contains(faults[0], "math.Exp") {
		t.Errorf("found %v, want math.Exp", faults)
	}
}

func lintSnippet(t *testing.T, body string) []string {
	t.Helper()
	return lintSource(t, `package p
import "math"
type psi float64
type pair struct{ v float64 }
func f(x float64) float64 { return x + math.Sqrt(x) }
func single(x float64) float32 { return float32(x) }
func g(a, b, c float64, i, j int, m map[int]int, s []psi, p *pair, r [2]float64) (float64, int) {
`+body+`
return c, i
}
`)
}

// mathExports is what go list tells of package math and what it stands on, asked once.
func mathExports(t *testing.T) map[string]string {
	mathOnce.Do(func() { mathFiles = exportsOf(list(t, "-deps", "-export", "math")) })
	return mathFiles
}

var (
	mathOnce  sync.Once
	mathFiles map[string]string
)

func lintSource(t *testing.T, src string) []string {
	t.Helper()
	fset := token.NewFileSet()
	f, err := parser.ParseFile(fset, "snippet.go", src, parser.ParseComments)
	if err != nil {
		t.Fatalf("%v in\n%s", err, src)
	}
	info := newInfo()
	conf := types.Config{Importer: compiled(fset, mathExports(t))}
	if _, err := conf.Check("p", fset, []*ast.File{f}, info); err != nil {
		t.Fatalf("%v in\n%s", err, src)
	}
	l := &linter{fset: fset, info: info}
	l.file(f)
	return l.faults
}
