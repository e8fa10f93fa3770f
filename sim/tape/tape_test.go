package tape

import (
	"bytes"
	"errors"
	"io"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"steadyneedle/sim/world"
)

var controls = []world.Control{{Name: "throttle"}, {Name: "say_static"}}

func header() Header {
	return Header{Physics: 3, Build: "test", Drill: "reverse-lay", Apparatus: "engine41", Seed: 1<<63 + 5,
		Files: []File{{Name: "drills/reverse-lay.yaml", Text: "name: reverse-lay\n\ttitle: \"½ <line>\"\n"}}}
}

// record writes a short recording.
func record(t testing.TB, values ...float64) string {
	t.Helper()
	var b bytes.Buffer
	w, err := NewWriter(&b, header(), controls)
	if err != nil {
		t.Fatal(err)
	}
	w.Hash(0, 0x0123456789abcdef)
	for i, v := range values {
		w.Action(&world.Action{At: world.Tick(i), By: world.Candidate, From: world.Panel, Control: 0, Value: v})
	}
	w.Derived(&world.Action{At: world.Tick(len(values)), By: world.Crew, Control: 1, Value: 1})
	w.Mark(world.Tick(len(values)), "good\nhands")
	if err := w.End(world.Tick(len(values)+1), 7); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func readAll(text string) (Header, []Line, error) {
	r, err := NewReader(strings.NewReader(text))
	if err != nil {
		return Header{}, nil, err
	}
	var list []Line
	for {
		l, err := r.Next()
		if errors.Is(err, io.EOF) {
			return r.Header, list, nil
		}
		if err != nil {
			return r.Header, list, err
		}
		list = append(list, l)
	}
}

func TestRoundTrip(t *testing.T) {
	values := []float64{0, 0.1, 1.0 / 3, 1e-300, 5e-324, 2.5, 134.8, -29.92, math.MaxFloat64, 1e21}
	dice := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		v := math.Float64frombits(dice.Uint64())
		if v == v && !math.IsInf(v, 0) {
			values = append(values, v)
		}
	}
	h, lines, err := readAll(record(t, values...))
	if err != nil {
		t.Fatal(err)
	}
	want := header()
	want.Tape, want.Files[0].SHA256 = Version, h.Files[0].SHA256
	if !reflect.DeepEqual(h, want) {
		t.Errorf("header %+v", h)
	}
	if lines[0].Kind != Hash || lines[0].Hash != 0x0123456789abcdef {
		t.Errorf("hash line: %+v", lines[0])
	}
	for i, v := range values {
		l := lines[1+i]
		if l.Kind != Action || l.At != world.Tick(i) || l.By != world.Candidate || l.From != world.Panel || l.Control != "throttle" {
			t.Fatalf("line %d: %+v", i, l)
		}
		if math.Float64bits(l.Value) != math.Float64bits(v) {
			t.Fatalf("%x came back as %x", v, l.Value)
		}
	}
	rest := lines[1+len(values):]
	if len(rest) != 3 || rest[0].Kind != Derived || rest[0].By != world.Crew || rest[0].From != world.Walking ||
		rest[1].Text != "good hands" || rest[2].Kind != End || rest[2].Hash != 7 {
		t.Errorf("the last lines: %+v", rest)
	}
}

func TestFaultyRecordings(t *testing.T) {
	good := record(t, 0.25, 0.5)
	if _, _, err := readAll(good); err != nil {
		t.Fatal(err)
	}
	swap := func(old, new string) string {
		s := strings.Replace(good, old, new, 1)
		if s == good {
			t.Fatalf("%q is not in the recording", old)
		}
		return s
	}
	lines := strings.SplitAfter(good, "\n")
	without := func(n int) string { return strings.Join(append(append([]string{}, lines[:n]...), lines[n+1:]...), "") }
	for _, c := range []struct {
		what string
		text string
		is   error
		line int
	}{
		{"empty", "", ErrNotTape, 1},
		{"another file", "name: reverse-lay\n", ErrNotTape, 1},
		{"another json", "{\"name\":1}\n", ErrNotTape, 1},
		{"header alone, cut", lines[0][:40], ErrTruncated, 1},
		{"another format", swap(`{"tape":1`, `{"tape":9`), ErrVersion, 1},
		{"a file's text edited", swap(`title:`, `titel:`), ErrFile, 1},
		{"no end line", without(len(lines) - 2), ErrTruncated, 7},
		{"cut in a line", good[:len(good)-8], ErrTruncated, 7},
		{"cut off the last line's end", strings.TrimSuffix(good, "\n"), ErrTruncated, 7},
		{"out of order", strings.Join([]string{lines[0], lines[1], lines[3], lines[2], lines[4], lines[5], lines[6]}, ""), ErrOrder, 4},
		{"no such source", swap("candidate", "nobody"), ErrSyntax, 3},
		{"no such place", swap("panel", "attic"), ErrSyntax, 3},
		{"no value", swap("0.25", "abc"), ErrSyntax, 3},
		{"not a number", swap("0.25", "NaN"), ErrSyntax, 3},
		{"infinite", swap("0.25", "1e999"), ErrSyntax, 3},
		{"a missing field", swap(" 0.25", ""), ErrSyntax, 3},
		{"a bad hash", swap("0123456789abcdef", "123"), ErrSyntax, 2},
		{"an unknown line", swap("m 2 good", "z 2 good"), ErrSyntax, 6},
		{"a negative tick", swap("a 0 ", "a -1 "), ErrSyntax, 3},
		{"something after the end", good + "a 9 candidate panel throttle 1\n", ErrSyntax, 8},
		{"a line without end", swap("m 2 good", "m 2 "+strings.Repeat("x", maxLine)), ErrSyntax, 6},
	} {
		_, _, err := readAll(c.text)
		var e *Error
		if !errors.Is(err, c.is) || !errors.As(err, &e) || e.Line != c.line {
			t.Errorf("%s: got %v; want line %d: %v", c.what, err, c.line, c.is)
			continue
		}
		if strings.Contains(err.Error(), "\n") || len(err.Error()) > 200 {
			t.Errorf("%s: not one clear line: %q", c.what, err)
		}
	}
}

// failing is an io.Writer that fails after n bytes.
type failing struct{ left int }

var errFull = errors.New("disk full")

func (f *failing) Write(b []byte) (int, error) {
	if f.left -= len(b); f.left < 0 {
		return 0, errFull
	}
	return len(b), nil
}

func TestWriteErrorsAreTold(t *testing.T) {
	w, err := NewWriter(&failing{600}, header(), controls)
	if err != nil {
		t.Fatal(err)
	}
	for i := range 1000 {
		w.Action(&world.Action{At: world.Tick(i)})
		w.Hash(world.Tick(i), 1)
	}
	if err := w.End(1000, 1); !errors.Is(err, errFull) || !errors.Is(w.Err(), errFull) {
		t.Errorf("got %v", err)
	}
}

func TestWriterDoesNotAllocate(t *testing.T) {
	w, err := NewWriter(io.Discard, header(), controls)
	if err != nil {
		t.Fatal(err)
	}
	a := world.Action{By: world.Candidate, From: world.Panel, Value: 1.0 / 3}
	if n := testing.AllocsPerRun(500, func() {
		for range 60 {
			a.At++
			w.Action(&a)
		}
		w.Hash(a.At, 12345)
	}); n != 0 {
		t.Errorf("%g allocations a second", n)
	}
}

func FuzzReader(f *testing.F) {
	f.Add(record(f, 0.25))
	f.Add("")
	f.Add("{\"tape\":1}\nend 0 0000000000000000\n")
	f.Fuzz(func(t *testing.T, text string) {
		_, _, err := readAll(text)
		var e *Error
		if err != nil && !errors.As(err, &e) {
			t.Errorf("an error without a line: %v", err)
		}
	})
}
