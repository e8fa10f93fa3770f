package expression

import (
	"fmt"
	"math"

	"github.com/expr-lang/expr/ast"

	"steadyneedle/sim/cond"
)

// eval is one compiled node. Conditions are 0 and 1. Products are written float64(a*b), so that no
// processor fuses them with a sum: results must be the same bits everywhere.
type eval = func(s, m []float64) float64

type compiler struct {
	names   map[string]int
	program *cond.Program
	faults  []Fault
}

// slots reserves memory.
func (c *compiler) slots(n int) int {
	at := c.program.Slots
	c.program.Slots += n
	return at
}

// fresh adds work to be done at every Refresh, after that of the words inside.
func (c *compiler) fresh(f func(s, m []float64)) { c.program.Fresh = append(c.program.Fresh, f) }

func (c *compiler) compile(node ast.Node) eval {
	switch n := node.(type) {
	case *ast.FloatNode:
		v := n.Value
		return func(_, _ []float64) float64 { return v }
	case *ast.BoolNode:
		v := flag(n.Value)
		return func(_, _ []float64) float64 { return v }
	case *ast.IdentifierNode:
		i := c.names[n.Value]
		return func(s, _ []float64) float64 { return s[i] }
	case *ast.UnaryNode:
		return c.unary(n)
	case *ast.BinaryNode:
		return c.binary(n)
	case *ast.ConditionalNode:
		yes, a, b := c.compile(n.Cond), c.compile(n.Exp1), c.compile(n.Exp2)
		return func(s, m []float64) float64 {
			if yes(s, m) != 0 {
				return a(s, m)
			}
			return b(s, m)
		}
	case *ast.CallNode:
		return c.call(n)
	}
	c.faults = append(c.faults, Fault{node.Location().From, fmt.Sprintf("%T cannot be compiled, expected a number or condition", node)})
	return func(_, _ []float64) float64 { return 0 }
}

func flag(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}

func (c *compiler) unary(n *ast.UnaryNode) eval {
	a := c.compile(n.Node)
	switch n.Operator {
	case "-":
		return func(s, m []float64) float64 { return -a(s, m) }
	case "+":
		return a
	}
	return func(s, m []float64) float64 { return 1 - a(s, m) } // not
}

func (c *compiler) binary(n *ast.BinaryNode) eval {
	if f := c.cellAndNumber(n); f != nil {
		return f
	}
	a := c.compile(n.Left)
	if n.Operator == "in" {
		return within(a, n.Right.(*ast.ArrayNode))
	}
	b := c.compile(n.Right)
	if f := arithmetic(n.Operator, a, b); f != nil {
		return f
	}
	switch n.Operator {
	case "<":
		return func(s, m []float64) float64 { return flag(a(s, m) < b(s, m)) }
	case "<=":
		return func(s, m []float64) float64 { return flag(a(s, m) <= b(s, m)) }
	case ">":
		return func(s, m []float64) float64 { return flag(a(s, m) > b(s, m)) }
	case ">=":
		return func(s, m []float64) float64 { return flag(a(s, m) >= b(s, m)) }
	case "==":
		return func(s, m []float64) float64 { return flag(a(s, m) == b(s, m)) }
	case "!=":
		return func(s, m []float64) float64 { return flag(a(s, m) != b(s, m)) }
	case "and", "&&":
		return func(s, m []float64) float64 { return flag(a(s, m) != 0 && b(s, m) != 0) }
	}
	return func(s, m []float64) float64 { return flag(a(s, m) != 0 || b(s, m) != 0) }
}

// cellAndNumber compiles what conditions mostly are, a signal compared with a plain number, without a call
// for either side; nil if it is something else.
func (c *compiler) cellAndNumber(n *ast.BinaryNode) eval {
	name, isName := n.Left.(*ast.IdentifierNode)
	number, isNumber := literal(n.Right)
	if !isName || !isNumber {
		return nil
	}
	i, v := c.names[name.Value], number
	switch n.Operator {
	case "<":
		return func(s, _ []float64) float64 { return flag(s[i] < v) }
	case "<=":
		return func(s, _ []float64) float64 { return flag(s[i] <= v) }
	case ">":
		return func(s, _ []float64) float64 { return flag(s[i] > v) }
	case ">=":
		return func(s, _ []float64) float64 { return flag(s[i] >= v) }
	case "==":
		return func(s, _ []float64) float64 { return flag(s[i] == v) }
	case "!=":
		return func(s, _ []float64) float64 { return flag(s[i] != v) }
	}
	return nil
}

func arithmetic(operator string, a, b eval) eval {
	switch operator {
	case "+":
		return func(s, m []float64) float64 { return a(s, m) + b(s, m) }
	case "-":
		return func(s, m []float64) float64 { return a(s, m) - b(s, m) }
	case "*":
		return func(s, m []float64) float64 { return float64(a(s, m) * b(s, m)) }
	case "/":
		return func(s, m []float64) float64 { return a(s, m) / b(s, m) }
	}
	return nil
}

func within(a eval, list *ast.ArrayNode) eval {
	values := make([]float64, len(list.Nodes))
	for i := range list.Nodes {
		values[i], _ = literal(list.Nodes[i])
	}
	return func(s, m []float64) float64 {
		x := a(s, m)
		for _, v := range values {
			if x == v {
				return 1
			}
		}
		return 0
	}
}

func (c *compiler) call(n *ast.CallNode) eval {
	word := n.Callee.(*ast.IdentifierNode).Value
	args := make([]eval, len(n.Arguments))
	for i := range args {
		args[i] = c.compile(n.Arguments[i])
	}
	a := args[0]
	switch word {
	case "abs":
		return func(s, m []float64) float64 { return math.Abs(a(s, m)) }
	case "sqrt":
		return func(s, m []float64) float64 { return math.Sqrt(a(s, m)) }
	case "round":
		return func(s, m []float64) float64 { return math.Round(a(s, m)) }
	case "floor":
		return func(s, m []float64) float64 { return math.Floor(a(s, m)) }
	case "sq":
		return func(s, m []float64) float64 { x := a(s, m); return float64(x * x) }
	case "mod":
		b := args[1]
		return func(s, m []float64) float64 { return math.Mod(a(s, m), b(s, m)) }
	case "since":
		return c.since(a)
	case "first":
		return c.first(a)
	case "held":
		return c.held(a, args[1])
	case "ever":
		return c.ever(a)
	case "at":
		return c.at(a, args[1])
	case "answered":
		return c.answered(a, args[1:])
	case "count":
		window, _ := literal(n.Arguments[1])
		return c.count(a, window)
	}
	window, _ := literal(n.Arguments[1])
	return c.extreme(a, window, word == "max")
}
