package sound

import (
	"math"
	"testing"
)

// loudness is the mean square of a second, after two seconds of settling.
func loudness(t *testing.T, st State) float64 {
	t.Helper()
	s := NewSynth()
	st.Level = 1
	s.Set(st)
	sum := 0.0
	for i := range 3 * Rate {
		x := s.Next()
		if math.IsNaN(x) || x < -1 || x > 1 {
			t.Fatalf("sample %d is %g", i, x)
		}
		if i >= 2*Rate {
			sum += x * x
		}
	}
	return sum / Rate
}

func TestEveryStateIsHeard(t *testing.T) {
	if l := loudness(t, State{}); l > 1e-9 {
		t.Errorf("silence has %g", l)
	}
	idle := loudness(t, State{EngineRPM: 700, Load: 0.1})
	if idle < 1e-4 {
		t.Errorf("an idling engine has only %g", idle)
	}
	for name, st := range map[string]State{
		"engine up": {EngineRPM: 1800, Load: 0.8}, "by-pass": {EngineRPM: 700, Load: 0.1, Bypass: 1},
		"gravel": {EngineRPM: 700, Load: 0.1, Gravel: 1}, "air": {EngineRPM: 700, Load: 0.1, Air: 1}, "horn": {EngineRPM: 700, Load: 0.1, Horn: true},
	} {
		if l := loudness(t, st); l < idle*1.05 {
			t.Errorf("%s is not louder than idling: %g against %g", name, l, idle)
		}
	}
	s := NewSynth()
	s.Set(State{EngineRPM: 2000, Level: 0})
	for range Rate {
		if x := s.Next(); x != 0 {
			t.Fatalf("muted, yet %g", x)
		}
	}
}

func BenchmarkSecond(b *testing.B) {
	s := NewSynth()
	s.Set(State{EngineRPM: 1500, Load: 0.5, Bypass: 0.5, Gravel: 0.5, Level: 0.3})
	for b.Loop() {
		for range Rate {
			s.Next()
		}
	}
}
