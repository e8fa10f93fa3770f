package expression

import (
	"math"
	"math/rand/v2"
	"testing"
)

// moment is what the signals are at a time; the program is refreshed there.
type moment struct {
	at, x, bell, want float64
}

func play(t *testing.T, text string, want Want, story []moment) {
	t.Helper()
	p := mustCompile(t, text, want)
	m := make([]float64, p.Slots)
	for _, now := range story {
		s := []float64{now.at, now.x, 0, now.bell, 0}
		before := p.Value(s, m)
		p.Refresh(s, m)
		after := p.Value(s, m)
		if before != after {
			t.Errorf("%s at %v s: %v before Refresh, %v after it: the result must see the present", text, now.at, before, after)
		}
		if math.Abs(after-now.want) > 1e-9 {
			t.Errorf("%s at %v s = %v, want %v", text, now.at, after, now.want)
		}
	}
}

func TestSince(t *testing.T) {
	play(t, "since(x > 5)", Number, []moment{{0, 0, 0, Never}, {1, 6, 0, 0}, {2.5, 7, 0, 1.5}, {3, 0, 0, 2}, {3.5, 6, 0, 0}})
	play(t, "since(x > 5)", Number, []moment{{4, 6, 0, 0}, {5, 6, 0, 1}}) // already so at the first look
	play(t, "since(bell)", Number, []moment{{0, 0, 0, Never}, {1, 0, 1, 0}, {3, 0, 1, 2}, {4, 0, 3, 0}, {5, 0, 0, 1}, {6, 0, 1, 0}})
}

func TestFirst(t *testing.T) {
	play(t, "first(x > 5)", Number, []moment{{0, 0, 0, Never}, {1, 6, 0, 1}, {2, 0, 0, 1}, {3, 6, 0, 1}})
	play(t, "first(bell)", Number, []moment{{0.5, 0, 1, 0.5}, {1, 0, 2, 0.5}})
}

func TestHeld(t *testing.T) {
	play(t, "held(x > 5, 2)", Condition, []moment{{0, 6, 0, 0}, {1.9, 6, 0, 0}, {2, 6, 0, 1}, {2.1, 0, 0, 0}, {2.2, 6, 0, 0}, {4.1, 6, 0, 0}, {4.2, 6, 0, 1}})
	play(t, "held(x > 5, 0)", Condition, []moment{{0, 6, 0, 1}})
}

// Sixtieths of a second, subtracted, must reach the limit on the very tick.
func TestHeldIsExactToTheTick(t *testing.T) {
	p := mustCompile(t, "held(x > 5, 2)", Condition)
	for start := range 600 {
		m := make([]float64, p.Slots)
		s := []float64{float64(start) / 60, 6, 0, 0, 0}
		p.Refresh(s, m)
		s[0] = float64(start+119) / 60
		early := p.True(s, m)
		s[0] = float64(start+120) / 60
		if early || !p.True(s, m) {
			t.Fatalf("begun at tick %d: after 119 ticks %v, after 120 %v", start, early, p.True(s, m))
		}
	}
}

func TestEver(t *testing.T) {
	play(t, "ever(x > 5)", Condition, []moment{{0, 0, 0, 0}, {1, 6, 0, 1}, {2, 0, 0, 1}})
}

func TestAt(t *testing.T) {
	play(t, "at(bell, x)", Number, []moment{{0, 7, 0, 0}, {1, 5, 1, 5}, {2, 8, 1, 5}, {3, 2, 2, 2}, {4, 9, 2, 2}})
	play(t, "at(x > 5, x)", Number, []moment{{0, 4, 0, 0}, {1, 6, 0, 6}, {2, 7, 0, 6}, {3, 1, 0, 6}, {4, 8, 0, 8}})
	play(t, "at(x > 5, x)", Number, []moment{{0, 6, 0, 6}, {1, 9, 0, 6}}) // what is already so happens then
}

func TestCount(t *testing.T) {
	play(t, "count(bell, 8)", Number, []moment{{0, 0, 0, 0}, {1, 0, 1, 1}, {2, 0, 3, 3}, {9, 0, 3, 3}, {9.1, 0, 3, 2}, {10.1, 0, 3, 0}})
	play(t, "count(x > 5, 8)", Number, []moment{{0, 6, 0, 1}, {1, 6, 0, 1}, {2, 0, 0, 1}, {3, 6, 0, 2}, {8.5, 6, 0, 1}})
	play(t, "count(bell, 8)", Number, []moment{{0, 0, 100, counted}})
}

func TestAnswered(t *testing.T) {
	play(t, "answered(bell, x > 5)", Condition, []moment{{0, 6, 0, 0}, {1, 0, 1, 0}, {2, 6, 1, 1}, {3, 0, 1, 1}, {4, 0, 2, 0}, {5, 6, 2, 1}})
	play(t, "answered(bell, x > 5, x < -5)", Condition, []moment{{0, 0, 1, 0}, {1, -6, 1, 1}})
	play(t, "answered(bell, x > 5)", Condition, []moment{{0, 6, 1, 1}}) // in the same moment
}

func TestMaxAndMin(t *testing.T) {
	play(t, "max(x, 4)", Number, []moment{{0, 1, 0, 1}, {1, 5, 0, 5}, {2, 2, 0, 5}, {4.9, 2, 0, 5}, {5.2, 3, 0, 3}, {100, -1, 0, -1}})
	play(t, "min(x, 4)", Number, []moment{{0, 1, 0, 1}, {1, -5, 0, -5}, {4.9, 2, 0, -5}, {5.2, 3, 0, 2}, {100, 9, 0, 9}})
}

// Against the plain definition, at irregular spacing: everything in the window counts, and nothing
// older than the window and one part more.
func TestMaxAgainstDefinition(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for _, window := range []struct {
		text string
		s    float64
	}{{"max(x, 2)", 2}, {"max(x, 30)", 30}, {"max(x, 600)", 600}} {
		p := mustCompile(t, window.text, Number)
		m := make([]float64, p.Slots)
		var times, values []float64
		now := 0.0
		for range 3000 {
			now += r.Float64() * r.Float64() * window.s / 20
			x := r.Float64()
			times, values = append(times, now), append(values, x)
			s := []float64{now, x, 0, 0, 0}
			p.Refresh(s, m)
			lo, hi := 0.0, 0.0
			for i := range times {
				if times[i] >= now-window.s {
					lo = max(lo, values[i])
				}
				if times[i] >= now-window.s*(1+1.0/parts)-1e-9 {
					hi = max(hi, values[i])
				}
			}
			if got := p.Value(s, m); got < lo || got > hi {
				t.Fatalf("%s at %v: %v, want %v to %v", window.text, now, got, lo, hi)
			}
		}
	}
}

// Words within words: the inner ones are refreshed first, and none is skipped by and, or and ?:.
func TestNestedWordsAreAlwaysRefreshed(t *testing.T) {
	play(t, "since(held(x > 5, 2))", Number, []moment{{0, 6, 0, Never}, {1, 6, 0, Never}, {2, 6, 0, 0}, {3, 6, 0, 1}})
	play(t, "bell > 0 and ever(x > 5)", Condition, []moment{{0, 6, 0, 0}, {1, 0, 1, 1}})
	play(t, "bell > 0 or ever(x > 5)", Condition, []moment{{0, 6, 1, 1}, {1, 0, 0, 1}})
	play(t, "bell > 0 ? since(x > 5) : 0", Number, []moment{{0, 6, 0, 0}, {3, 0, 1, 3}})
}

// A rewind puts the memory back; the same moments must then give the same answers.
func TestMemoryIsTheWholeState(t *testing.T) {
	p := mustCompile(t, "held(x > 0.5, 1) and since(bell) < 3 or max(x, 5) > 0.99 and count(x > 0.5, 10) > 3 and answered(bell, x > 0.9)", Condition)
	run := func(r *rand.Rand, m []float64, from, steps int) (out []float64) {
		for i := range steps {
			s := []float64{float64(from+i) / 10, r.Float64(), 0, math.Floor(float64(from+i) / 37), 0}
			p.Refresh(s, m)
			out = append(out, p.Value(s, m))
		}
		return out
	}
	m := make([]float64, p.Slots)
	run(rand.New(rand.NewPCG(3, 4)), m, 0, 500)
	saved := append([]float64(nil), m...)
	a := run(rand.New(rand.NewPCG(5, 6)), m, 500, 500)
	b := run(rand.New(rand.NewPCG(5, 6)), saved, 500, 500)
	yes := 0
	for i := range a {
		if a[i] != b[i] {
			t.Fatalf("step %d differs after the rewind", i)
		}
		yes += int(a[i])
	}
	if yes == 0 || yes == len(a) {
		t.Errorf("the condition never changed (%d of %d): nothing was tested", yes, len(a))
	}
}

func TestRefreshAndValueDoNotAllocate(t *testing.T) {
	p := mustCompile(t, "held(x > 2, 3) and since(bell) < 5 or max(x, 10) > 3 and count(bell, 8) == 1 and answered(bell, x > 1)", Condition)
	s, m := []float64{10, 3, -4, 0, 2}, make([]float64, p.Slots)
	if n := testing.AllocsPerRun(100, func() { s[0] += 0.1; s[3]++; p.Refresh(s, m); p.True(s, m) }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}
