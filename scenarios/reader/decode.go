package reader

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
)

// FromNode is a type that reads itself from a node. Faults go to fail; what the field was expected to
// be is part of their message.
type FromNode interface {
	FromNode(n *Node, fail Fail)
}

// Fail takes note of a fault at a node.
type Fail func(at *Node, format string, args ...any)

// Decode fills dst, a pointer to a struct, from a mapping. The struct may hold defaults: only what the
// file gives is changed. Fields carry tags:
//
//	file:"name"    the key; a field without this tag is not read; ",inline" reads a struct's keys here
//	range:"lo..hi" what a number may be, ends included; of a list, each of its numbers
//	need:"yes"     the key must be there
//	size:"lo..hi"  how many a list may hold
//
// One word may stand for a list of words. All faults are reported. A list is replaced whole, its elements begin as those of the default at the
// same place (beyond its end: as its last). What a pointer leads to is copied before it is changed.
func (n *Node) Decode(dst any) Faults {
	d := decoder{}
	v := reflect.ValueOf(dst)
	if v.Kind() != reflect.Pointer || v.Elem().Kind() != reflect.Struct {
		d.fail(n, "cannot be read into %T", dst)
		return d.faults
	}
	d.structure(n, v.Elem(), "the file")
	return d.faults
}

type decoder struct{ faults Faults }

func (d *decoder) fail(at *Node, format string, args ...any) {
	name := ""
	if at.file != nil {
		name = at.file.name
	}
	d.faults = append(d.faults, Fault{name, at.Line, at.Col, fmt.Sprintf(format, args...)})
}

type field struct {
	key, limits, size string
	need              bool
	value             reflect.Value
}

// fields lists what a struct can take.
func fields(v reflect.Value) []field {
	var list []field
	for i := 0; i < v.NumField(); i++ {
		t := v.Type().Field(i)
		key, tagged := t.Tag.Lookup("file")
		if !tagged || !t.IsExported() {
			continue
		}
		if key == ",inline" {
			list = append(list, fields(v.Field(i))...)
			continue
		}
		list = append(list, field{key, t.Tag.Get("range"), t.Tag.Get("size"), t.Tag.Get("need") == "yes", v.Field(i)})
	}
	return list
}

func (d *decoder) structure(n *Node, v reflect.Value, what string) {
	if n.Kind != Mapping {
		d.fail(n, "%s: expected a group of keys, %s", what, n.found())
		return
	}
	list := fields(v)
	names := make([]string, len(list))
	for i := range list {
		names[i] = list[i].key
	}
	for i, k := range n.Keys {
		at := slices.Index(names, k.Text)
		if at < 0 {
			if strings.ContainsAny(k.Text, "()<>=+*/, ") {
				d.fail(k, "%s stands here as a key: text with a comma or a colon must be in quotes, expected a key of %s", quote(k.Text), what)
				continue
			}
			d.fail(k, "unknown key %s, %s", quote(k.Text), DidYouMean(k.Text, names))
			continue
		}
		d.value(n.Items[i], list[at].value, list[at])
	}
	for _, f := range list {
		if f.need && n.Get(f.key) == nil {
			d.fail(n, "key %s is missing, expected %s", quote(f.key), f.expected(f.value.Type()))
		}
	}
}

var nodeType = reflect.TypeOf((*Node)(nil))

// value reads one node into one field or list element.
func (d *decoder) value(n *Node, v reflect.Value, f field) {
	if v.Type() == nodeType {
		v.Set(reflect.ValueOf(n))
		return
	}
	if p, ok := v.Addr().Interface().(placed); ok {
		d.value(n, p.place(n), f)
		return
	}
	if r, ok := v.Addr().Interface().(FromNode); ok {
		r.FromNode(n, func(at *Node, format string, args ...any) {
			d.fail(at, f.key+": "+format, args...)
		})
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		d.structure(n, v, f.key)
	case reflect.Pointer:
		p := reflect.New(v.Type().Elem())
		if !v.IsNil() {
			p.Elem().Set(v.Elem())
		}
		d.value(n, p.Elem(), f)
		v.Set(p)
	case reflect.Slice:
		d.list(n, v, f)
	case reflect.Array:
		d.array(n, v, f)
	case reflect.Map:
		d.table(n, v, f)
	default:
		d.scalar(n, v, f)
	}
}

func (d *decoder) list(n *Node, v reflect.Value, f field) {
	if n.Kind == Scalar && v.Type().Elem().Kind() == reflect.String { // one word stands for a list of one
		one := reflect.New(v.Type().Elem()).Elem()
		d.value(n, one, field{key: f.key})
		v.Set(reflect.Append(reflect.MakeSlice(v.Type(), 0, 1), one))
		return
	}
	if n.Kind != List {
		d.fail(n, "%s: expected %s, %s", f.key, f.expected(v.Type()), n.found())
		return
	}
	if lo, hi, ok := bounds(f.size); ok && (float64(len(n.Items)) < lo || float64(len(n.Items)) > hi) {
		d.fail(n, "%s: expected %s, found %d", f.key, f.expected(v.Type()), len(n.Items))
	}
	out := reflect.MakeSlice(v.Type(), len(n.Items), len(n.Items))
	for i, item := range n.Items {
		if known := v.Len(); known > 0 {
			out.Index(i).Set(v.Index(min(i, known-1)))
		}
		d.value(item, out.Index(i), field{key: f.key, limits: f.limits})
	}
	v.Set(out)
}

func (d *decoder) array(n *Node, v reflect.Value, f field) {
	if n.Kind != List || len(n.Items) != v.Len() {
		d.fail(n, "%s: expected %s, %s", f.key, f.expected(v.Type()), n.found())
		return
	}
	for i, item := range n.Items {
		d.value(item, v.Index(i), field{key: f.key, limits: f.limits})
	}
}

func (d *decoder) table(n *Node, v reflect.Value, f field) {
	if n.Kind != Mapping || v.Type().Key().Kind() != reflect.String {
		d.fail(n, "%s: expected %s, %s", f.key, f.expected(v.Type()), n.found())
		return
	}
	out := reflect.MakeMap(v.Type())
	for it := v.MapRange(); it.Next(); {
		out.SetMapIndex(it.Key(), it.Value())
	}
	for i, k := range n.Keys {
		x := reflect.New(v.Type().Elem()).Elem()
		d.value(n.Items[i], x, field{key: strings.TrimSpace(k.Text), limits: f.limits})
		out.SetMapIndex(reflect.ValueOf(k.Text), x)
	}
	v.Set(out)
}
