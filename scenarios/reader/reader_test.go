package reader

import (
	"fmt"
	"reflect"
	"strings"
	"testing"
)

type hose struct {
	SizeIn float64 `file:"size_in" range:"0.75..6" need:"yes"`
	LossC  float64 `file:"loss_c" range:"0.01..2000"`
}

type sample struct {
	Name   string             `file:"name" need:"yes"`
	Count  int                `file:"count" range:"1..24"`
	Seed   uint64             `file:"seed"`
	Night  bool               `file:"night"`
	Hose   hose               `file:"hose"`
	Spare  *hose              `file:"spare"`
	Points []float64          `file:"points" range:"0..10" size:"2..3"`
	Hoses  []hose             `file:"hoses"`
	Pairs  [][2]float64       `file:"pairs"`
	Start  map[string]float64 `file:"start"`
	When   Text               `file:"when"`
	Rest   *Node              `file:"rest"`
	Inner  `file:",inline"`
	Hidden string
}

type Inner struct {
	Depth float64 `file:"depth"`
}

func read(t *testing.T, text string, into *sample) Faults {
	t.Helper()
	n, faults := Parse("f.yaml", []byte(text))
	if n == nil {
		return faults
	}
	return n.Decode(into)
}

func TestDecode(t *testing.T) {
	def := &hose{SizeIn: 6, LossC: 0.08}
	got := sample{Count: 7, Hose: hose{SizeIn: 4, LossC: 0.2}, Spare: def, Hoses: []hose{{LossC: 7}}, Start: map[string]float64{"kept": 1}}
	faults := read(t, `
name: "600"
seed: 18446744073709551615
night: true
hose: {size_in: 2.5}
spare: {size_in: 5}
points: [1, 2.5]
hoses:
  - size_in: 1.75
    loss_c: 15.5
  - {size_in: 3}
pairs: [[1, 2], [3, 4]]
start: {throttle: 0.5}
when: 5 > 3
rest: [1, two]
depth: -1e2
`, &got)
	if faults != nil {
		t.Fatal(faults)
	}
	want := sample{Name: "600", Count: 7, Seed: 1<<64 - 1, Night: true, Hose: hose{2.5, 0.2}, Spare: &hose{5, 0.08}, Points: []float64{1, 2.5},
		Hoses: []hose{{1.75, 15.5}, {3, 7}}, Pairs: [][2]float64{{1, 2}, {3, 4}}, Start: map[string]float64{"kept": 1, "throttle": 0.5}, Inner: Inner{-100}}
	if got.When.Value != "5 > 3" || got.Rest == nil || got.Rest.Kind != List {
		t.Errorf("when %q, rest %v", got.When.Value, got.Rest)
	}
	got.When, got.Rest = Text{}, nil
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
	if def.SizeIn != 6 {
		t.Error("the default behind a pointer was changed")
	}
}

func TestFaultsAreAllReportedWithTheirPlace(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"nam: x\ncount: 30\n", `f.yaml:1:1: key "name" is missing, expected text
f.yaml:1:1: unknown key "nam", did you mean "name"?
f.yaml:2:8: count: expected a whole number from 1 to 24, found "30"`},
		{"name: 600", `f.yaml:1:7: name: expected text, found "600" (put it in quotes if it is meant as text)`},
		{"name: x\ncount: 2.5", `f.yaml:2:8: count: expected a whole number from 1 to 24, found "2.5"`},
		{"name: x\ncount: '2'", `f.yaml:2:8: count: expected a whole number from 1 to 24, found the text "2"`},
		{"name: x\nnight: yes", `f.yaml:2:8: night: expected true or false, found "yes"`},
		{"name: x\nhose: {}", `f.yaml:2:7: key "size_in" is missing, expected a number from 0.75 to 6`},
		{"name: x\nhose: 5", `f.yaml:2:7: hose: expected a group of keys, found "5"`},
		{"name: x\nhose: {size_in: .nan}", `f.yaml:2:17: size_in: expected a number from 0.75 to 6, found ".nan"`},
		{"name: x\ndepth: .inf", `f.yaml:2:8: depth: expected a number, found ".inf"`},
		{"name: x\ndepth: 1e999", `f.yaml:2:8: depth: expected a number, found "1e999"`},
		{"name: x\npoints: [1]", `f.yaml:2:9: points: expected a list of 2 to 3, found 1`},
		{"name: x\npoints: [1, 11]", `f.yaml:2:13: points: expected a number from 0 to 10, found "11"`},
		{"name: x\npoints: 3", `f.yaml:2:9: points: expected a list of 2 to 3, found "3"`},
		{"name: x\nhoses:\n", `f.yaml:2:7: hoses: expected a list, found nothing`},
		{"name: x\npairs: [[1]]", `f.yaml:2:9: pairs: expected a list of exactly 2, found a list`},
		{"name: x\nhose: {size_in: 2, loss_c: max(1, 2)}", "f.yaml:2:28: loss_c: expected a number from 0.01 to 2000, found \"max(1\"\nf.yaml:2:35: \"2)\" stands here as a key: text with a comma or a colon must be in quotes, expected a key of hose"},
		{"name:", `f.yaml:1:6: name: expected text, found nothing`},
		{"name: x\nname: y", `f.yaml:2:1: key "name" stands twice, expected once (the first is on line 1)`},
		{"name: x\nHidden: y", `f.yaml:2:1: unknown key "Hidden", none of the 13 known names is near it`},
		{"name: x\nwhen: [a]", `f.yaml:2:7: when: expected text, found a list`},
		{"name: &a x\ndepth: *a", "f.yaml:1:7: anchors and aliases (& and *) are not used in these files, expected the value itself (put text that begins so in quotes)\nf.yaml:2:8: anchors and aliases (& and *) are not used in these files, expected the value itself (put text that begins so in quotes)"},
		{"name: !!str 5", "f.yaml:1:7: tags (!) are not used in these files, expected the value itself (put text that begins so in quotes)"},
		{"", "f.yaml:1:1: file is empty, expected one document of keys and values"},
		{"# nothing\n", "f.yaml:1:1: file is empty, expected one document of keys and values"},
		{"name: x\n---\nname: y\n", "f.yaml:2:1: a second document begins here, expected exactly one"},
		{"- a\n- b", "f.yaml:1:1: the file: expected a group of keys, found a list"},
		{"name: x\n  bad: y", "f.yaml:2:1: mapping values are not allowed in this context, expected YAML (see the indentation, quotes and colons here)"},
		{"name: \xff", "f.yaml:1:1: not UTF-8 text, expected plain UTF-8"},
		{strings.Repeat("#", MaxBytes+1), "f.yaml:1:1: file is too long, expected at most 262144 bytes"},
		{"rest: " + strings.Repeat("[", 30) + strings.Repeat("]", 30), "f.yaml:1:31: nested too deeply, expected at most 24 levels"},
	} {
		faults := read(t, c.text, &sample{})
		got := faults.Sorted().Error()
		if got != c.want {
			t.Errorf("%.60q:\n got %s\nwant %s", c.text, got, c.want)
		}
	}
}

// Each text holds the character ^ once; Locate must find it in the file wherever YAML put it.
func TestLocate(t *testing.T) {
	for _, text := range []string{
		"when: a > ^",
		"when: \"a > ^\"",
		"when: \"a \\\" \\u0041 \\n \\x20 > ^\"",
		"when: 'it''s > ^'",
		"when: a >\n  b and\n  ^ > c",
		"when: |\n  a > b\n\n  and ^",
		"when: >-\n  a > b\n  and ^",
		"rest:\n  - {when: 'ä ö ^'}",
		"rest: [\"a\n   b ^\"]",
		"when:    ^",
		"when: # comment\n  ^",
	} {
		n, faults := Parse("f", []byte(text))
		if faults != nil {
			t.Fatalf("%q: %v", text, faults)
		}
		for n.Kind != Scalar {
			n = n.Items[0]
		}
		offset := strings.Index(n.Text, "^")
		offset = len([]rune(n.Text[:offset]))
		line, col := n.Locate(offset)
		row := []rune(strings.Split(text, "\n")[line-1])
		if col > len(row) || row[col-1] != '^' {
			t.Errorf("%q: found at %d:%d", text, line, col)
		}
	}
}

func TestOver(t *testing.T) {
	base, _ := Parse("base", []byte("a: {x: 1, y: 2}\nb: 3"))
	over, _ := Parse("over", []byte("a: {x: 9}\nc: 4"))
	n := over.Over(base)
	if n.Get("a").Get("x").Text != "9" || n.Get("a").Get("y") != nil || n.Get("b").File() != "base" || n.Get("c").Text != "4" {
		t.Error("keys of the upper layer replace those below, whole, and the others stay")
	}
	if w := n.Without("a", "c"); w.Get("a") != nil || w.Get("b") == nil {
		t.Error("Without leaves the others")
	}
}

func TestNearest(t *testing.T) {
	names := []string{"line1_gauge", "line1_gpm", "intake_gauge", "throttle", "on"}
	for word, want := range map[string]string{"line1_gage": "line1_gauge", "trottle": "throttle", "thorttle": "throttle", "zzz": "", "o": "on", "Throttle": "throttle", "banana_split": ""} {
		if got, _ := nearest(word, names); got != want {
			t.Errorf("%s: %q, want %q", word, got, want)
		}
	}
}

func ExampleFaults() {
	n, _ := Parse("hose.yaml", []byte("size_in: 9\nlos_c: 2\n"))
	fmt.Println(n.Decode(&hose{}).Err())
	// Output:
	// hose.yaml:1:10: size_in: expected a number from 0.75 to 6, found "9"
	// hose.yaml:2:1: unknown key "los_c", did you mean "loss_c"?
}

// Whatever is given, the reader answers with a struct or with faults that have a place in the file.
func FuzzDecode(f *testing.F) {
	for _, s := range []string{"name: x", "name: [", "? a\n: b", "<<: {a: 1}", "a: &x [*x]", "name: 'a\n b'", "when: |\n a\n  b", "- - - a", "\t", "---\n...\n---\n", "%YAML 9.9\n---\na: 1", "{a: {b: [}}", "hose: {size_in: 1e400}", "\ufeffname: x", "name: \"\\U0001F600 \\q\"", "start: {? [a] : 1}"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		n, faults := Parse("f", text)
		if (n == nil) != (len(faults) > 0) {
			t.Fatalf("node %v with faults %v", n, faults)
		}
		if n == nil {
			return
		}
		var s sample
		faults = n.Decode(&s)
		lines := strings.Count(string(text), "\n") + 1
		for _, x := range faults {
			if x.Line < 1 || x.Line > lines+1 || x.Col < 1 || strings.ContainsRune(x.Msg, '\n') {
				t.Fatalf("fault without a place: %v", x)
			}
		}
		if s.When.Given() {
			for i := range []rune(s.When.Value) {
				s.When.Fault(i, "x")
			}
		}
	})
}
