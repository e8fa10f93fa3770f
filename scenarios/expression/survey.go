package expression

import (
	"fmt"

	"github.com/expr-lang/expr/ast"

	"steadyneedle/scenarios/reader"
)

// survey walks a parsed tree before it is checked: it refuses everything that has no place in these
// files, looks up all names, and writes whole numbers as the floats that signals are.
type survey struct {
	resolve Resolve
	names   map[string]int
	faults  []Fault
}

func (s *survey) refuse(n ast.Node, format string, args ...any) ast.Node {
	s.faults = append(s.faults, Fault{n.Location().From, fmt.Sprintf(format, args...)})
	return n
}

var binary = map[string]bool{
	"+": true, "-": true, "*": true, "/": true, "%": true,
	"<": true, ">": true, "<=": true, ">=": true, "==": true, "!=": true,
	"and": true, "&&": true, "or": true, "||": true, "in": true,
}

func (s *survey) visit(node ast.Node) ast.Node {
	switch n := node.(type) {
	case *ast.IntegerNode:
		f := &ast.FloatNode{Value: float64(n.Value)}
		f.SetLocation(n.Location())
		return f
	case *ast.FloatNode, *ast.BoolNode:
		return n
	case *ast.IdentifierNode:
		s.name(n)
	case *ast.UnaryNode:
		n.Node = s.visit(n.Node)
	case *ast.BinaryNode:
		return s.binary(n)
	case *ast.ConditionalNode:
		n.Cond, n.Exp1, n.Exp2 = s.visit(n.Cond), s.visit(n.Exp1), s.visit(n.Exp2)
	case *ast.CallNode:
		return s.call(n)
	case *ast.BuiltinNode:
		return s.refuse(n, "%s is not used here, expected one of %s", n.Name, words())
	case *ast.ArrayNode:
		return s.refuse(n, "a list stands only after \"in\", expected a number or condition")
	case *ast.StringNode:
		return s.refuse(n, "text is not used in expressions, expected a number or a name")
	case *ast.NilNode:
		return s.refuse(n, "nil is not used here, expected a number or a name")
	case *ast.SequenceNode, *ast.VariableDeclaratorNode:
		return s.refuse(n, "only one expression may stand here, without \";\" and \"let\"")
	default:
		return s.refuse(n, "dots, brackets and braces are not used here, expected a plain name")
	}
	return node
}

func (s *survey) name(n *ast.IdentifierNode) {
	if _, known := s.names[n.Value]; known {
		return
	}
	if shape, word := usage[n.Value]; word {
		s.refuse(n, "%s needs its arguments, expected %s", n.Value, shape)
		return
	}
	i, ok, why := s.resolve(n.Value)
	if !ok {
		s.refuse(n, "%s", why)
		return
	}
	s.names[n.Value] = i
}

func (s *survey) binary(n *ast.BinaryNode) ast.Node {
	if !binary[n.Operator] {
		return s.refuse(n, "operator %s is not used here, expected + - * / %% < <= > >= == != and or in (sq(x) is x times x)", n.Operator)
	}
	n.Left = s.visit(n.Left)
	if n.Operator == "in" {
		list, ok := n.Right.(*ast.ArrayNode)
		if !ok || len(list.Nodes) == 0 {
			return s.refuse(n.Right, "expected a list of numbers after \"in\", like [1, 2]")
		}
		for i := range list.Nodes {
			if _, ok := literal(list.Nodes[i]); !ok {
				s.refuse(list.Nodes[i], "expected a number in the list")
			}
			list.Nodes[i] = s.visit(list.Nodes[i])
		}
		return n
	}
	n.Right = s.visit(n.Right)
	if n.Operator == "%" { // the checker would ask for whole numbers
		word := &ast.IdentifierNode{Value: "mod"}
		word.SetLocation(n.Location())
		call := &ast.CallNode{Callee: word, Arguments: []ast.Node{n.Left, n.Right}}
		call.SetLocation(n.Location())
		return call
	}
	return n
}

func (s *survey) call(n *ast.CallNode) ast.Node {
	word, ok := n.Callee.(*ast.IdentifierNode)
	if !ok {
		return s.refuse(n, "only plain words can be called, expected one of %s", words())
	}
	if _, known := functions[word.Value]; !known {
		return s.refuse(n, "unknown word %q, %s", word.Value, reader.DidYouMean(word.Value, wordList))
	}
	for i := range n.Arguments {
		n.Arguments[i] = s.visit(n.Arguments[i])
	}
	switch word.Value {
	case "count", "max", "min":
		if len(n.Arguments) == 2 {
			if x, ok := literal(n.Arguments[1]); !ok || x <= 0 || x > MaxWindow {
				s.refuse(n.Arguments[1], "%s: the window must be a plain number of seconds, expected above 0 and at most %d", word.Value, MaxWindow)
			}
		}
	}
	return n
}

// literal reads a number as written, with its sign.
func literal(n ast.Node) (float64, bool) {
	switch x := n.(type) {
	case *ast.IntegerNode:
		return float64(x.Value), true
	case *ast.FloatNode:
		return x.Value, true
	case *ast.UnaryNode:
		v, ok := literal(x.Node)
		if x.Operator == "-" {
			return -v, ok
		}
		return v, ok && x.Operator == "+"
	}
	return 0, false
}

var wordList = []string{"abs", "sqrt", "round", "floor", "sq", "since", "held", "count", "max", "min", "first", "answered", "ever", "at"}

func words() string {
	out := ""
	for i, w := range wordList {
		if i > 0 {
			out += ", "
		}
		out += w
	}
	return out
}
