package reader

import (
	"math"
	"reflect"
	"strconv"
	"strings"
)

func (d *decoder) scalar(n *Node, v reflect.Value, f field) {
	wrong := func() { d.fail(n, "%s: expected %s, %s", f.key, f.expected(v.Type()), n.found()) }
	if n.Kind != Scalar || n.Null {
		wrong()
		return
	}
	switch v.Kind() {
	case reflect.String:
		if _, number := n.Number(); number || n.Plain && (n.Text == "true" || n.Text == "false") {
			d.fail(n, "%s: expected text, found %s (put it in quotes if it is meant as text)", f.key, quote(n.Text))
			return
		}
		v.SetString(n.Text)
	case reflect.Bool:
		if !n.Plain || n.Text != "true" && n.Text != "false" {
			wrong()
			return
		}
		v.SetBool(n.Text == "true")
	case reflect.Float64:
		x, ok := n.Number()
		if !ok || !within(x, f.limits) {
			wrong()
			return
		}
		v.SetFloat(x)
	case reflect.Int, reflect.Int64:
		x, ok := n.Number()
		if !ok || x != math.Floor(x) || math.Abs(x) > 1<<53 || !within(x, f.limits) {
			wrong()
			return
		}
		v.SetInt(int64(x))
	case reflect.Uint64:
		x, err := strconv.ParseUint(n.Text, 10, 64)
		if err != nil || !n.Plain || !within(float64(x), f.limits) {
			wrong()
			return
		}
		v.SetUint(x)
	default:
		d.fail(n, "%s cannot be read from a file", f.key)
	}
}

// Number reads a plain scalar as a decimal number.
func (n *Node) Number() (float64, bool) {
	if n.Kind != Scalar || !n.Plain || n.Text == "" || strings.Trim(n.Text, "+-.0123456789eE") != "" {
		return 0, false
	}
	x, err := strconv.ParseFloat(n.Text, 64)
	return x, err == nil
}

// expected says in words what a field takes.
func (f field) expected(t reflect.Type) string {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	if p, ok := reflect.New(t).Interface().(placed); ok {
		return f.expected(p.kind())
	}
	if w, ok := reflect.New(t).Interface().(interface{ Expected() string }); ok {
		return w.Expected()
	}
	switch t.Kind() {
	case reflect.String:
		return "text"
	case reflect.Bool:
		return "true or false"
	case reflect.Float64:
		return "a number" + span(f.limits)
	case reflect.Int, reflect.Int64, reflect.Uint64:
		return "a whole number" + span(f.limits)
	case reflect.Array:
		return "a list of exactly " + strconv.Itoa(t.Len())
	case reflect.Slice:
		if lo, hi, ok := bounds(f.size); ok {
			return "a list of " + plain(lo) + " to " + plain(hi)
		}
		return "a list"
	}
	return "a group of keys"
}

func span(limits string) string {
	lo, hi, ok := bounds(limits)
	if !ok {
		return ""
	}
	return " from " + plain(lo) + " to " + plain(hi)
}

func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// bounds reads a range tag, lo..hi.
func bounds(limits string) (lo, hi float64, ok bool) {
	a, b, cut := strings.Cut(limits, "..")
	if !cut {
		return 0, 0, false
	}
	lo, errLo := strconv.ParseFloat(a, 64)
	hi, errHi := strconv.ParseFloat(b, 64)
	return lo, hi, errLo == nil && errHi == nil
}

func within(x float64, limits string) bool {
	lo, hi, ok := bounds(limits)
	return !ok || x >= lo && x <= hi
}
