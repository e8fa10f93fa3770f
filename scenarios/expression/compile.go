package expression

import (
	"errors"
	"fmt"
	"reflect"
	"strings"
	"unicode/utf8"

	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/builtin"
	"github.com/expr-lang/expr/checker"
	"github.com/expr-lang/expr/conf"
	"github.com/expr-lang/expr/file"
	"github.com/expr-lang/expr/parser"

	"steadyneedle/sim/cond"
)

// Want is what an expression must yield.
type Want uint8

const (
	Condition Want = iota // yes or no
	Number
)

func (w Want) String() string {
	if w == Condition {
		return "a condition"
	}
	return "a number"
}

// Resolve finds a name's place in the signal table, or says why it cannot be used.
type Resolve func(name string) (index int, ok bool, why string)

// Fault is one thing wrong, at a character of the text (in runes from 0).
type Fault struct {
	Offset int
	Msg    string
}

const (
	maxLength = 4000 // characters of one expression
	maxNodes  = 400
)

// Compile reads text and makes its program. Without faults the program is not nil.
func Compile(text string, want Want, resolve Resolve) (p *cond.Program, faults []Fault) {
	defer func() {
		if r := recover(); r != nil { // a fault of the parsing library must not end the program
			p, faults = nil, []Fault{{0, "cannot be read as an expression, expected " + want.String()}}
		}
	}()
	if strings.TrimSpace(text) == "" {
		return nil, []Fault{{0, "empty, expected " + want.String()}}
	}
	if utf8.RuneCountInString(text) > maxLength {
		return nil, []Fault{{0, fmt.Sprintf("too long, expected at most %d characters", maxLength)}}
	}
	config := newConfig()
	tree, err := parser.ParseWithConfig(text, config)
	if err != nil {
		return nil, []Fault{fromError(text, err)}
	}
	s := survey{resolve: resolve, names: map[string]int{}}
	tree.Node = s.visit(tree.Node)
	if len(s.faults) > 0 {
		return nil, s.faults
	}
	env := make(map[string]any, len(s.names))
	for name := range s.names {
		env[name] = 0.0
	}
	config.WithEnv(env)
	kind, err := checker.Check(tree, config)
	if err != nil {
		return nil, []Fault{fromError(text, err)}
	}
	got := Number
	if kind.Kind() == reflect.Bool {
		got = Condition
	} else if kind.Kind() != reflect.Float64 {
		return nil, []Fault{{leftmost(tree.Node), "mixes numbers and conditions, expected " + want.String()}}
	}
	if got != want {
		return nil, []Fault{{leftmost(tree.Node), mismatch(want)}}
	}
	c := compiler{names: s.names, program: &cond.Program{Text: text}}
	c.program.Result = c.compile(tree.Node)
	if len(c.faults) > 0 {
		return nil, c.faults
	}
	return c.program, nil
}

func mismatch(want Want) string {
	if want == Condition {
		return "yields a number, expected a condition (compare it: > 0, == 1)"
	}
	return "yields a condition, expected a number (choose one: condition ? 1 : 0)"
}

// functions are the words that may be called, as the checker sees them.
var functions = map[string][]any{
	"abs":   {(func(float64) float64)(nil)},
	"sqrt":  {(func(float64) float64)(nil)},
	"round": {(func(float64) float64)(nil)},
	"floor": {(func(float64) float64)(nil)},
	"sq":    {(func(float64) float64)(nil)},
	"mod":   {(func(a, b float64) float64)(nil)},

	"since":    {(func(bool) float64)(nil), (func(float64) float64)(nil)},
	"first":    {(func(bool) float64)(nil), (func(float64) float64)(nil)},
	"held":     {(func(bool, float64) bool)(nil)},
	"ever":     {(func(bool) bool)(nil)},
	"at":       {(func(bool, float64) float64)(nil), (func(float64, float64) float64)(nil)},
	"count":    {(func(bool, float64) float64)(nil), (func(float64, float64) float64)(nil)},
	"max":      {(func(a, b float64) float64)(nil)},
	"min":      {(func(a, b float64) float64)(nil)},
	"answered": {(func(a, b any, more ...any) bool)(nil)},
}

// usage shows each word as it is meant, for messages.
var usage = map[string]string{
	"abs": "abs(x)", "sqrt": "sqrt(x)", "round": "round(x)", "floor": "floor(x)", "sq": "sq(x)", "mod": "mod(a, b)",
	"since": "since(event)", "first": "first(event)", "held": "held(condition, seconds)", "ever": "ever(condition)", "at": "at(event, x)",
	"count": "count(event, seconds)", "max": "max(x, seconds)", "min": "min(x, seconds)",
	"answered": "answered(request, reply, ...)",
}

// shapes are the functions in the library's own terms, made once.
var shapes = func() conf.FunctionsTable {
	table := conf.FunctionsTable{}
	for name, list := range functions {
		f := &builtin.Function{Name: name}
		for _, s := range list {
			f.Types = append(f.Types, reflect.TypeOf(s))
		}
		table[name] = f
	}
	return table
}()

// newConfig has our functions only: none of the library's own.
func newConfig() *conf.Config {
	return &conf.Config{MaxNodes: maxNodes, DisableIfOperator: true, Functions: shapes}
}

// fromError puts a message of the library into our words.
func fromError(text string, err error) Fault {
	f := Fault{Msg: err.Error()}
	var e *file.Error
	if errors.As(err, &e) {
		f = Fault{min(e.From, utf8.RuneCountInString(text)), e.Message}
	}
	f.Msg = plainWords.Replace(strings.TrimSpace(f.Msg))
	for name, shape := range usage {
		if strings.HasSuffix(f.Msg, "to call "+name) {
			f.Msg += ", expected " + shape
		}
	}
	return f
}

var plainWords = strings.NewReplacer(
	"float64", "number", "bool", "condition", "unexpected token EOF", "ends too early, expected more",
	"unexpected token Operator", "unexpected", "unexpected token Number", "unexpected number",
	"unexpected token Identifier", "unexpected word", "unexpected token Bracket", "unexpected",
	"invalid operation: ", "cannot use operator ", "compilation failed: ", "", "mismatched type", "on type",
)

// leftmost is where a node begins: an operator's own place is between its sides.
func leftmost(n ast.Node) int {
	at := n.Location().From
	switch x := n.(type) {
	case *ast.BinaryNode:
		at = leftmost(x.Left)
	case *ast.ConditionalNode:
		at = leftmost(x.Cond)
	}
	return at
}

// Constant is the program of a number that is already known.
func Constant(text string, v float64) *cond.Program {
	return &cond.Program{Text: text, Result: func(_, _ []float64) float64 { return v }}
}

// Reserved reports whether a name has a meaning of its own in expressions.
func Reserved(name string) bool {
	if _, word := functions[name]; word {
		return true
	}
	switch name {
	case "and", "or", "not", "in", "true", "false", "nil", "let", "if", "else", "matches", "contains", "startsWith", "endsWith":
		return true
	}
	return false
}
