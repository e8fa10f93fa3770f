package reader

import "fmt"

// Text is a scalar whose place in the file is kept: a name to be looked up or an expression to be
// compiled. Numbers and true, false are taken as they are written.
type Text struct {
	Value string
	node  *Node
}

// Given reports whether the file has it.
func (t Text) Given() bool { return t.node != nil }

// Node is where it stands; nil if it was not given.
func (t Text) Node() *Node { return t.node }

// Expected says what a file may write.
func (t *Text) Expected() string { return "text" }

// FromNode takes any single value.
func (t *Text) FromNode(n *Node, fail Fail) {
	if n.Kind != Scalar || n.Null {
		fail(n, "expected text, %s", n.found())
		return
	}
	t.Value, t.node = n.Text, n
}

// Fault is a fault at the character at offset (in runes) of the text.
func (t Text) Fault(offset int, format string, args ...any) Fault {
	if t.node == nil {
		return Fault{Line: 1, Col: 1, Msg: fmt.Sprintf(format, args...)}
	}
	line, col := t.node.Locate(offset)
	return Fault{t.node.file.name, line, col, fmt.Sprintf(format, args...)}
}

// Fault is a fault at the node.
func (n *Node) Fault(format string, args ...any) Fault {
	return Fault{n.file.name, n.Line, n.Col, fmt.Sprintf(format, args...)}
}
