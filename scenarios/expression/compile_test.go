package expression

import (
	"math"
	"strings"
	"testing"

	"steadyneedle/scenarios/reader"
	"steadyneedle/sim/cond"
)

var table = []string{"time", "x", "y", "bell", "horn"}

func resolve(name string) (int, bool, string) {
	for i, n := range table {
		if n == name {
			return i, true, ""
		}
	}
	return 0, false, "unknown name \"" + name + "\", " + reader.DidYouMean(name, table)
}

func mustCompile(t testing.TB, text string, want Want) *cond.Program {
	t.Helper()
	p, faults := Compile(text, want, resolve)
	if len(faults) > 0 {
		t.Fatalf("%s: %v", text, faults)
	}
	return p
}

func TestNumbers(t *testing.T) {
	signals := []float64{10, 3, -4, 0, 2}
	for _, c := range []struct {
		text string
		want float64
	}{
		{"1", 1}, {"x + y", -1}, {"x - y * 2", 11}, {"(x - y) * 2", 14}, {"7 / 2", 3.5}, {"x % 2", 1}, {"7.5 % 2", 1.5},
		{"-x", -3}, {"+x", 3}, {"abs(y)", 4}, {"sqrt(sq(x) + sq(y))", 5}, {"round(2.5)", 3}, {"floor(-0.5)", -1},
		{"x > 2 ? 10 : y", 10}, {"x > 3 ? 10 : y", -4}, {"horn == 0 ? 1 : horn == 2 ? 5 : 6", 5}, {"1e3 + 0.5", 1000.5},
	} {
		if got := mustCompile(t, c.text, Number).Value(signals, nil); got != c.want {
			t.Errorf("%s = %v, want %v", c.text, got, c.want)
		}
	}
}

func TestConditions(t *testing.T) {
	signals := []float64{10, 3, -4, 0, 2}
	for _, c := range []struct {
		text string
		want bool
	}{
		{"x > 2", true}, {"x >= 3 and y < 0", true}, {"x > 2 && y > 0", false}, {"x > 5 || y < 0", true},
		{"not (x > 2)", false}, {"!(x > 5)", true}, {"x == 3 or y == 3", true}, {"x != 3", false}, {"0 < x < 5", true},
		{"0 < x < 2", false}, {"x in [1, 2, 3]", true}, {"y in [-4]", true}, {"x not in [1, 2]", true}, {"x in [1, 2]", false},
		{"true", true}, {"(x > 1) == (y > 1)", false}, {"x > 1 ? y > 1 : true", false},
	} {
		if got := mustCompile(t, c.text, Condition).True(signals, nil); got != c.want {
			t.Errorf("%s = %v, want %v", c.text, got, c.want)
		}
	}
}

// What is not perceived is NaN: no comparison with it holds, and memory never takes it in.
func TestNaNIsNeverRemembered(t *testing.T) {
	for _, text := range []string{"since(x)", "first(x > 1)", "count(x, 5)", "max(x, 5)", "min(x, 5)", "since(held(x > 1, 2))", "answered(x, y) ? 1 : 0"} {
		p := mustCompile(t, text, Number)
		m := make([]float64, p.Slots)
		signals := []float64{0, math.NaN(), math.NaN(), 0, 0}
		for range 100 {
			p.Refresh(signals, m)
			p.Value(signals, m)
			signals[0] += 0.1
		}
		for i, v := range m {
			if v != v {
				t.Errorf("%s: slot %d is NaN", text, i)
			}
		}
	}
}

func TestFaults(t *testing.T) {
	for _, c := range []struct {
		text   string
		want   Want
		offset int
		say    string // a part of the message
	}{
		{"x", Condition, 0, "yields a number, expected a condition"},
		{"x > 1", Number, 0, "yields a condition, expected a number"},
		{"x > 1 and bel > 0", Condition, 10, `did you mean "bell"?`},
		{"x ** 2", Number, 2, "operator ** is not used"},
		{"x ^ 2", Number, 2, "operator ^ is not used"},
		{"all([1], x > 1)", Condition, 0, "all is not used here"},
		{"filter([1], # > 1)", Condition, 0, "filter is not used here"},
		{"'text' == x", Condition, 0, "text is not used"},
		{"x and y > 1", Condition, 2, "cannot use operator and"},
		{"not x", Condition, 0, "cannot use operator not"},
		{"count(x, y)", Number, 9, "window must be a plain number"},
		{"max(x, 601)", Number, 7, "window must be a plain number"},
		{"max(x, 0)", Number, 7, "window must be a plain number"},
		{"held(x, 3)", Condition, 5, "held(condition, seconds)"},
		{"held(x > 1)", Condition, 0, "held(condition, seconds)"},
		{"since", Number, 0, "expected since(event)"},
		{"sinse(x)", Number, 0, `did you mean "since"?`},
		{"x >", Condition, 2, "ends too early"},
		{"x > > 1", Condition, 4, "unexpected"},
		{"(x > 1", Condition, 5, "ends too early"},
		{"x.y", Number, 2, "plain name"},
		{"x in [y]", Condition, 6, "expected a number in the list"},
		{"x in y", Condition, 5, "list of numbers"},
		{"let a = 1; a", Number, 4, "only one expression"},
		{"x; y", Number, 0, "only one expression"},
		{"nil == x", Condition, 0, "nil"},
		{"[1, 2]", Number, 0, "only after"},
		{"", Condition, 0, "empty"},
		{"   ", Number, 0, "empty"},
		{"x > 1 ? 1 : y > 1", Number, 0, "mixes numbers and conditions"},
		{"1..3", Number, 1, "operator .. is not used"},
		{"x == (y > 1)", Condition, 2, "cannot use operator =="},
	} {
		p, faults := Compile(c.text, c.want, resolve)
		if p != nil || len(faults) == 0 {
			t.Errorf("%q: compiled", c.text)
			continue
		}
		if faults[0].Offset != c.offset || !strings.Contains(faults[0].Msg, c.say) {
			t.Errorf("%q: at %d %q, want at %d ...%s...", c.text, faults[0].Offset, faults[0].Msg, c.offset, c.say)
		}
		if strings.Contains(faults[0].Msg, "float64") || strings.Contains(faults[0].Msg, "\n") {
			t.Errorf("%q: message not in our words: %q", c.text, faults[0].Msg)
		}
	}
}

func TestAllUnknownNamesAtOnce(t *testing.T) {
	_, faults := Compile("foo > 1 and bar < 2", Condition, resolve)
	if len(faults) != 2 || faults[0].Offset != 0 || faults[1].Offset != 12 {
		t.Errorf("got %v, want faults at 0 and 12", faults)
	}
}

func FuzzCompile(f *testing.F) {
	for _, s := range []string{"x > 1", "since(x) < 3 and held(y>1, 2)", "a?b:c", "count(x, 1) | max(3)", "x[1].y", "'", "((((((", "0x_", "not not not x", "x in [1,-2]", "#.a", "::max(x,1)", "$env.x", "-[x]", "if x {1} else {2}", "{a:1}"} {
		f.Add(s)
	}
	signals := []float64{1, 2, 3, 4, 5}
	f.Fuzz(func(t *testing.T, text string) {
		for _, want := range []Want{Condition, Number} {
			p, faults := Compile(text, want, resolve)
			if (p == nil) != (len(faults) > 0) {
				t.Fatalf("%q: program %v with faults %v", text, p, faults)
			}
			if p != nil {
				m := make([]float64, p.Slots)
				p.Refresh(signals, m)
				p.Value(signals, m)
			}
		}
	})
}

// Measured here: about 2 ns a node, no allocation.
func BenchmarkCondition(b *testing.B) {
	p := mustCompile(b, "x > 2 and (y + 4) * 2 < 10 or horn == 3 and not (bell > 0)", Condition) // 18 nodes
	signals := []float64{10, 3, -4, 0, 2}
	b.ReportAllocs()
	for b.Loop() {
		p.True(signals, nil)
	}
}

func BenchmarkTimeWords(b *testing.B) {
	p := mustCompile(b, "held(x > 2, 3) and since(bell) < 5 and max(y, 10) > 3 and count(horn, 8) == 1", Condition)
	signals, m := []float64{10, 3, -4, 0, 2}, make([]float64, p.Slots)
	b.ReportAllocs()
	for b.Loop() {
		signals[0] += 0.1
		p.Refresh(signals, m)
		p.True(signals, m)
	}
}
