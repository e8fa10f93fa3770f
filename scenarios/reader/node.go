package reader

import (
	"slices"
	"strings"
)

// Kind is the shape of a node.
type Kind uint8

const (
	Scalar Kind = iota
	List
	Mapping
)

// Node is one value of a file, with its place in it.
type Node struct {
	Kind      Kind
	Text      string  // of a scalar, unquoted
	Plain     bool    // scalar without quotes: may be a number or true, false
	Null      bool    // nothing was written after the key
	Keys      []*Node // of a mapping, beside Items
	Items     []*Node // of a mapping or a list
	Line, Col int
	file      *file
}

type file struct {
	name  string
	lines []string
}

// File is the name of the file that the node stands in.
func (n *Node) File() string { return n.file.name }

// Get finds the value of a key, or nil.
func (n *Node) Get(key string) *Node {
	if n == nil || n.Kind != Mapping {
		return nil
	}
	for i, k := range n.Keys {
		if k.Text == key {
			return n.Items[i]
		}
	}
	return nil
}

// Over lays n over base: the keys of n replace those of base, whole; the others are kept.
// Where either is not a mapping, n stands alone.
func (n *Node) Over(base *Node) *Node {
	if n == nil {
		return base
	}
	if base == nil || base.Kind != Mapping || n.Kind != Mapping {
		return n
	}
	out := *n
	out.Keys = append([]*Node(nil), n.Keys...)
	out.Items = append([]*Node(nil), n.Items...)
	for i, k := range base.Keys {
		if n.Get(k.Text) == nil {
			out.Keys = append(out.Keys, k)
			out.Items = append(out.Items, base.Items[i])
		}
	}
	return &out
}

// Without returns the mapping without some of its keys.
func (n *Node) Without(keys ...string) *Node {
	if n == nil || n.Kind != Mapping {
		return n
	}
	out := *n
	out.Keys, out.Items = nil, nil
	for i, k := range n.Keys {
		if !slices.Contains(keys, k.Text) {
			out.Keys = append(out.Keys, k)
			out.Items = append(out.Items, n.Items[i])
		}
	}
	return &out
}

// found describes what stands there, for a message.
func (n *Node) found() string {
	switch {
	case n.Kind == Mapping:
		return "found a group of keys"
	case n.Kind == List:
		return "found a list"
	case n.Null:
		return "found nothing"
	case n.Plain:
		return "found " + quote(n.Text)
	}
	return "found the text " + quote(n.Text)
}

// quote shows a piece of a file in a message, on one line and not too long.
func quote(s string) string {
	r := []rune(strings.Join(strings.Fields(s), " "))
	if len(r) > 40 {
		r = append(r[:40], '…')
	}
	var b strings.Builder
	b.WriteByte('"')
	for _, c := range r {
		if c < ' ' || c == 0x7f {
			c = '?'
		}
		b.WriteRune(c)
	}
	b.WriteByte('"')
	return b.String()
}

// Only returns the mapping with none but these keys.
func (n *Node) Only(keys ...string) *Node {
	var others []string
	for _, k := range n.Keys {
		if !slices.Contains(keys, k.Text) {
			others = append(others, k.Text)
		}
	}
	return n.Without(others...)
}
