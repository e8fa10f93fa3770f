package reader

import "reflect"

// At is a value that keeps the node it was read from, for later messages.
type At[T any] struct {
	V    T
	Node *Node
}

func (a *At[T]) place(n *Node) reflect.Value {
	a.Node = n
	return reflect.ValueOf(&a.V).Elem()
}

func (a *At[T]) kind() reflect.Type { return reflect.TypeOf(a.V) }

// placed is what every At can do.
type placed interface {
	place(n *Node) reflect.Value
	kind() reflect.Type
}

// Words is one word or a list of words.
type Words []Text

// Expected says what a file may write.
func (w *Words) Expected() string { return "a word or a list of words" }

// FromNode takes a single value or a list of them.
func (w *Words) FromNode(n *Node, fail Fail) {
	items := []*Node{n}
	if n.Kind == List {
		items = n.Items
	}
	*w = nil
	for _, item := range items {
		var t Text
		t.FromNode(item, fail)
		if t.Given() {
			*w = append(*w, t)
		}
	}
}
