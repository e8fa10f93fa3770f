package sound

import (
	"math"
	"strings"
	"testing"
)

// play renders seconds of a state after it has settled for settle seconds.
func play(s *Synth, seconds float64) []float64 {
	out := make([]float64, int(seconds*Rate))
	for i := range out {
		out[i] = s.Next()
	}
	return out
}

func settled(st State) *Synth {
	s := NewSynth()
	st.Level = 1
	s.Set(st)
	play(s, 2)
	return s
}

func power(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v * v
	}
	return sum / float64(len(x))
}

// tone is the power of x at one frequency (Goertzel).
func tone(x []float64, hz float64) float64 {
	k := 2 * math.Cos(2*math.Pi*hz/Rate)
	var a, b float64
	for _, v := range x {
		a, b = v+k*a-b, a
	}
	n := float64(len(x))
	return (a*a + b*b - k*a*b) / (n * n / 2)
}

// bright is the share of power above about 2 kHz: what is left after a one-pole low-pass is taken off.
func bright(x []float64) float64 {
	low, high := 0.0, make([]float64, len(x))
	for i, v := range x {
		follow(&low, v, Rate/(2*math.Pi*2000))
		high[i] = v - low
	}
	return power(high) / power(x)
}

var idle = State{EngineRPM: 700, Load: 0.1}

// with is idling and one thing more.
func with(change func(*State)) State {
	st := idle
	change(&st)
	return st
}

func TestEveryStateIsHeard(t *testing.T) {
	if l := power(play(settled(State{}), 1)); l > 1e-9 {
		t.Errorf("silence has %g", l)
	}
	base := power(play(settled(idle), 1))
	if base < 1e-4 {
		t.Errorf("an idling engine has only %g", base)
	}
	for name, st := range map[string]State{
		"engine up": {EngineRPM: 1800, Load: 0.8}, "engine loaded": {EngineRPM: 700, Load: 1},
		"by-pass": with(func(s *State) { s.Bypass = 1 }), "gravel": with(func(s *State) { s.Gravel = 1 }),
		"air": with(func(s *State) { s.Air = 1 }), "spitting": with(func(s *State) { s.Spit = 1 }),
		"splash": with(func(s *State) { s.Splash = 1 }), "primer": with(func(s *State) { s.Primer = 1 }),
		"horn": with(func(s *State) { s.Horn = true }),
	} {
		if l := power(play(settled(st), 1)); l < base*1.03 {
			t.Errorf("%s is not louder than idling: %g against %g", name, l, base)
		}
	}
	for name, change := range map[string]func(*State){
		"valve": func(s *State) { s.Valves++ }, "brake": func(s *State) { s.Brake++ },
		"clash": func(s *State) { s.Clash++ }, "radio": func(s *State) { s.Radio++ },
	} {
		s := settled(State{})
		st := State{Level: 1}
		change(&st)
		s.Set(st)
		if l := power(play(s, 0.15)); l < 1e-5 {
			t.Errorf("%s: heard with only %g", name, l)
		}
		play(s, 3)
		if l := power(play(s, 0.2)); l > 1e-9 {
			t.Errorf("%s: still heard three seconds on, %g", name, l)
		}
	}
}

// TestSpectrum: tones stand where their causes put them.
func TestSpectrum(t *testing.T) {
	for _, rpm := range []float64{700, 1200, 1900} {
		x := play(settled(State{EngineRPM: rpm, Load: 0.5}), 1)
		fire := rpm / 60 * 3 // three firings a turn
		if on, off := tone(x, fire), tone(x, fire*1.13); on < 20*off {
			t.Errorf("%g rpm: firing at %.0f Hz has %.3g, beside it %.3g", rpm, fire, on, off)
		}
		x = play(settled(State{EngineRPM: rpm, Load: 0.5, PumpPSI: 300}), 1)
		whine := rpm / 60 * 14
		if on, off := tone(x, whine), tone(x, whine*1.07); on < 20*off {
			t.Errorf("%g rpm: the pump's whine at %.0f Hz has %.3g, beside it %.3g", rpm, whine, on, off)
		}
	}
	s := settled(State{})
	s.Set(State{Level: 1, Radio: 1})
	if x := play(s, 0.15); tone(x, 1050) < 0.5*power(x) {
		t.Error("the radio's tone is not at 1050 Hz")
	}
	x := play(settled(State{Horn: true}), 1)
	if tone(x, 311) < 100*tone(x, 350) || tone(x, 392) < 100*tone(x, 350) {
		t.Error("the horn's two notes do not stand out")
	}
	rush, hiss := bright(play(settled(State{Bypass: 1}), 1)), bright(play(settled(State{Air: 1}), 1))
	if hiss < rush+0.1 {
		t.Errorf("air is not brighter than water: %.2f against %.2f", hiss, rush)
	}
	light, loaded := play(settled(State{EngineRPM: 1500, Load: 0.1}), 1), play(settled(State{EngineRPM: 1500, Load: 0.9}), 1)
	if power(loaded) < 1.3*power(light) {
		t.Errorf("load is not heard: %.3g against %.3g", power(loaded), power(light))
	}
	out, in := settled(State{Air: 1}), settled(State{Air: 1, Muffled: true})
	if a, b := bright(play(out, 1)), bright(play(in, 1)); b > a*0.8 {
		t.Errorf("the cab does not dull what is outside: %.2f against %.2f", b, a)
	}
}

// everything is all sources at once, as loud as they go.
var everything = State{
	EngineRPM: 2200, Load: 1, PumpPSI: 400, Bypass: 1, Gravel: 1, Air: 1, Spit: 1, Splash: 1, Primer: 1, Horn: true,
	Valves: 1, Brake: 1, Clash: 1, Radio: 1,
}

func TestNoClipping(t *testing.T) {
	s := settled(State{})
	st := everything
	st.Level = 1
	s.Set(st)
	for i, x := range play(s, 3) {
		if math.IsNaN(x) || math.Abs(x) >= 1 {
			t.Fatalf("sample %d is %g", i, x)
		}
	}
}

// jump is the largest step between two samples.
func jump(x []float64) float64 {
	most := 0.0
	for i := 1; i < len(x); i++ {
		most = max(most, math.Abs(x[i]-x[i-1]))
	}
	return most
}

// TestNoClick: in the moment of a change no sample is farther from the one before than it is in the
// states before and after.
func TestNoClick(t *testing.T) {
	quiet := func(change func(*State)) (State, State) {
		a := State{EngineRPM: 1200, Load: 0.4, Level: 1}
		b := a
		change(&b)
		return a, b
	}
	for name, change := range map[string]func(*State){
		"speed": func(s *State) { s.EngineRPM = 2000 }, "stop": func(s *State) { s.EngineRPM = 0 },
		"load": func(s *State) { s.Load = 1 }, "pressure": func(s *State) { s.PumpPSI = 300 },
		"horn": func(s *State) { s.Horn = true }, "radio": func(s *State) { s.Radio++ }, "primer": func(s *State) { s.Primer = 1 },
		"valve": func(s *State) { s.Valves++ }, "mute": func(s *State) { s.Level = 0 },
		"cab": func(s *State) { s.Muffled = true }, "mix": func(s *State) { s.Mix[Engine] = 1 },
	} {
		for _, back := range []bool{false, true} {
			a, b := quiet(change)
			if back {
				a, b = b, a
			}
			s := NewSynth()
			s.Set(a)
			before := jump(play(s, 2)[Rate:])
			s.Set(b)
			moment := jump(play(s, 0.01))
			play(s, 0.09)
			after := jump(play(s, 1))
			if most := max(before, after) * 1.3; moment > most {
				t.Errorf("%s (back %v): a step of %.4f, in rest at most %.4f", name, back, moment, most)
			}
		}
	}
}

func TestMix(t *testing.T) {
	level, m, err := ParseMix("all 80, engine 0, horn 25")
	if err != nil || level != 0.8 || m.level(Engine) != 0 || m.level(Horn) != 0.25 || m.level(Radio) != 1 {
		t.Errorf("%g, %v, %v", level, m, err)
	}
	if level, _, err := ParseMix(""); err != nil || level != Quiet {
		t.Errorf("nothing said: %g, %v", level, err)
	}
	if level, _, err := ParseMix("off"); err != nil || level != 0 {
		t.Errorf("off: %g, %v", level, err)
	}
	for text, say := range map[string]string{"engine": "a name and a percent", "engine 120": "0 to 100", "motor 3": "expected all, engine"} {
		if _, _, err := ParseMix(text); err == nil || !strings.Contains(err.Error(), say) {
			t.Errorf("%q: %v, want %s", text, err, say)
		}
	}
	st := State{EngineRPM: 1500, Load: 0.5, Mix: m}
	if l := power(play(settled(st), 1)); l > 1e-7 {
		t.Errorf("the engine is turned off, yet %g", l)
	}
	for s := range Sources { // each source obeys its own level and no other's
		one := everything
		one.Mix = Mix{}
		for o := range Sources {
			if o != s {
				one.Mix[o] = 1
			}
		}
		y := NewSynth()
		y.Set(State{Level: 1, Mix: one.Mix})
		play(y, 1)
		one.Level = 1
		y.Set(one)
		if l := power(play(y, 0.3)); l < 1e-6 {
			t.Errorf("%s alone is not heard", s)
		}
	}
}

// TestCaptions: every source has a caption, and a rated one does not name what another says of the cause.
func TestCaptions(t *testing.T) {
	recent := [Sources]bool{Valves: true, Brake: true, Gears: true, Radio: true}
	heard := Heard(&everything, recent)
	if len(heard) != int(Sources) || heard[0] != Gravel {
		t.Errorf("all at once: %v", heard)
	}
	for s := range Sources {
		rated := Caption(s, &everything, true)
		if rated == "" {
			t.Errorf("%s has no caption", s)
		}
		for _, cause := range []string{"cavitat", "by-pass", "overflow", "bleeder", "shift"} {
			if strings.Contains(rated, cause) {
				t.Errorf("%s: rated, the caption names the cause: %s", s, rated)
			}
		}
	}
	if got := Heard(&State{}, [Sources]bool{}); len(got) != 0 {
		t.Errorf("in silence one hears %v", got)
	}
}

func TestMuted(t *testing.T) {
	s := NewSynth()
	s.Set(State{EngineRPM: 2000})
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
