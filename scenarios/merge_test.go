package scenarios

import (
	"errors"
	"strings"
	"testing"

	"steadyneedle/scenarios/reader"
)

// said are moves in one word each.
func said(words string) []moveFile {
	var list []moveFile
	for _, w := range strings.Fields(words) {
		list = append(list, moveFile{V: move{Say: textOf(w)}})
	}
	return list
}

func textOf(s string) reader.Text { return reader.Text{Value: s} }

func TestMerged(t *testing.T) {
	for _, c := range []struct{ base, one, other, want string }{
		{"a b c d", "a b c d", "a x c d", "a x c d"},
		{"a b c d", "a c d", "a b c y", "a c y"},             // one leaves out b, the other does d otherwise
		{"a b c d", "n a b c d", "a b c d n", "n a b c d n"}, // each adds at one end
		{"a b c", "a x c", "a x c", "a x c"},                 // both alike
		{"a b c", "a x c", "a y c", "-"},                     // the same move in two ways
		{"a b c", "a c", "a y c", "-"},                       // left out, and done otherwise
		{"a b c d", "a x y d", "a b c d e", "a x y d e"},     // more than one move
		{"", "x", "", "x"},
	} {
		got := "-"
		if list, ok := merged(said(c.base), said(c.one), said(c.other)); ok {
			var words []string
			for i := range list {
				words = append(words, list[i].V.Say.Value)
			}
			got = strings.Join(words, " ")
		}
		if got != c.want {
			t.Errorf("%q with %q and %q: %q, want %q", c.base, c.one, c.other, got, c.want)
		}
	}
}

// Mistakes in the same step are joined where a person could make both; where they could not, it is said.
func TestPairsInOneStep(t *testing.T) {
	s := Open(nil)
	for _, c := range []struct {
		one, other string
		apart      bool
	}{
		{"slams-discharge", "charges-unasked", false}, // one move of the step each
		{"drains-tank", "relief-wound-in", false},     // one adds to the step that the other does wrong
		{"slams-discharge", "discharge-part", true},   // the same valve in two ways
		{"tank-too-soon", "starves-shutdown", true},   // the file says so
		{"turns-dry", "drains-tank", true},            // they begin differently
	} {
		o, err := s.PairConditions("reverse-lay", c.one, c.other, Options{Seed: 1, Variant: "wye"})
		if err == nil {
			d, bad := s.Drill("reverse-lay", o)
			if bad != nil {
				t.Fatal(bad)
			}
			_, err = s.PairScript(d, c.one, c.other)
		}
		asked, can := s.CanPair("reverse-lay", c.one, c.other)
		if errors.Is(can, ErrApart) != c.apart || can == nil && asked.Variant != "" && asked.Variant != "wye" {
			t.Errorf("%s and %s: without the drill %v", c.one, c.other, can)
		}
		if c.apart != errors.Is(err, ErrApart) || !c.apart && err != nil {
			t.Errorf("%s and %s: %v", c.one, c.other, err)
		}
	}
}
