package sim

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"math"
	"strings"
)

// allowedMath are the functions of package math that give the same bits on every processor. The others
// (Exp, Log, Pow, Hypot, trigonometry …) differ, Cbrt ends in a product and a sum that some processors
// fuse, and FMA is what the product rule keeps out.
var allowedMath = names("Sqrt Floor Round RoundToEven Abs Min Max Mod Float64bits Float64frombits IsNaN IsInf Inf NaN")

func names(list string) map[string]bool {
	m := map[string]bool{}
	for _, n := range strings.Fields(list) {
		m[n] = true
	}
	return m
}

// linter looks for what could make two machines, or two runs, disagree:
//
//   - a float product that can meet an addition unrounded. Processors may fuse a*b + c into one rounding,
//     across statements and inlined calls; only a conversion, float64(a*b), forbids it. A product may
//     stand bare as an operand of *, of / or of a comparison, which nothing fuses with. Division by a
//     constant power of two is compiled to a product, and counts as one.
//   - complex numbers: their products are sums of products
//   - a function of package math outside allowedMath
//   - a range over a map, unless a comment "//order: why it does not matter" stands on its line or above
//   - goroutines, channels, select
type linter struct {
	fset    *token.FileSet
	info    *types.Info
	excused map[int]bool // lines of the present file that follow or carry an //order: comment
	path    []ast.Node   // from the file down to the present node
	faults  []string
}

func (l *linter) fault(n ast.Node, format string, args ...any) {
	p := l.fset.Position(n.Pos())
	l.faults = append(l.faults, fmt.Sprintf("%s:%d: %s", p.Filename, p.Line, fmt.Sprintf(format, args...)))
}

func (l *linter) file(f *ast.File) {
	l.excused = map[int]bool{}
	for _, g := range f.Comments {
		for _, c := range g.List {
			if why, ok := strings.CutPrefix(c.Text, "//order:"); ok && strings.TrimSpace(why) != "" {
				line := l.fset.Position(c.End()).Line
				l.excused[line], l.excused[line+1] = true, true
			}
		}
	}
	ast.Inspect(f, func(n ast.Node) bool {
		if n == nil {
			l.path = l.path[:len(l.path)-1]
			return true
		}
		l.path = append(l.path, n)
		l.node(n)
		return true
	})
}

func (l *linter) node(n ast.Node) {
	switch n := n.(type) {
	case *ast.BinaryExpr:
		product := n.Op == token.MUL || n.Op == token.QUO && l.powerOfTwo(n.Y)
		if product && l.isFloat(n) && !l.rounded() {
			l.fault(n, "float product can fuse with an addition: write float64(%s)", types.ExprString(n))
		}
	case *ast.AssignStmt:
		product := n.Tok == token.MUL_ASSIGN || n.Tok == token.QUO_ASSIGN && l.powerOfTwo(n.Rhs[0])
		if product && l.isFloat(n.Lhs[0]) {
			x, y := types.ExprString(n.Lhs[0]), types.ExprString(n.Rhs[0])
			l.fault(n, "float product can fuse with an addition: write %s = float64(%s %s %s)", x, x, n.Tok.String()[:1], y)
		}
	case *ast.RangeStmt:
		if t := l.info.TypeOf(n.X); t != nil {
			_, isMap := t.Underlying().(*types.Map)
			if isMap && !l.excused[l.fset.Position(n.Pos()).Line] {
				l.fault(n, "range over a map has no order: keep a sorted slice, or say //order: why it does not matter")
			}
		}
	case *ast.Ident:
		f, ok := l.info.Uses[n].(*types.Func)
		if ok && f.Pkg() != nil && f.Pkg().Path() == "math" && !allowedMath[f.Name()] {
			l.fault(n, "math.%s differs between processors: only %s are allowed", f.Name(), "Sqrt, Floor, Round, RoundToEven, Abs, Min, Max, Mod")
		}
		if v, ok := l.info.Defs[n].(*types.Var); ok && isComplex(v.Type()) {
			l.fault(n, "complex numbers are products and sums that can fuse")
		}
	case *ast.GoStmt, *ast.SelectStmt, *ast.SendStmt, *ast.ChanType:
		l.fault(n, "goroutines and channels have no order")
	}
}

// powerOfTwo reports whether e is a constant that division by is compiled to a product.
func (l *linter) powerOfTwo(e ast.Expr) bool {
	v := l.info.Types[e].Value
	if v == nil {
		return false
	}
	x, _ := constant.Float64Val(constant.ToFloat(v))
	m, _ := math.Frexp(x)
	return m == 0.5 || m == -0.5
}

func isComplex(t types.Type) bool {
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&types.IsComplex != 0
}

// isFloat reports whether e is a float (or a type parameter, which may be one) and no constant.
func (l *linter) isFloat(e ast.Expr) bool {
	tv := l.info.Types[e]
	if tv.Type == nil || tv.Value != nil {
		return false
	}
	if _, ok := tv.Type.(*types.TypeParam); ok {
		return true
	}
	b, ok := tv.Type.Underlying().(*types.Basic)
	return ok && b.Info()&types.IsFloat != 0
}

// rounded reports whether the product at the end of the path can't reach an addition unrounded.
func (l *linter) rounded() bool {
	for i := len(l.path) - 2; i >= 0; i-- {
		switch up := l.path[i].(type) {
		case *ast.ParenExpr:
			continue
		case *ast.UnaryExpr:
			continue
		case *ast.BinaryExpr:
			switch up.Op {
			case token.MUL, token.QUO, token.EQL, token.NEQ, token.LSS, token.LEQ, token.GTR, token.GEQ:
				return true
			}
			return false
		case *ast.CallExpr:
			return l.info.Types[up.Fun].IsType()
		default:
			return false
		}
	}
	return false
}
