package speaker

import (
	"errors"
	"math"
	"strings"
	"testing"

	"steadyneedle/render/sound"
)

// TestDeviceGoes: no device is told once, and one that goes away while it plays is told once, as that;
// everything can still be called.
func TestDeviceGoes(t *testing.T) {
	none := &Speaker{synth: sound.NewSynth()}
	if f := none.Fault(); !strings.HasPrefix(f, "There is no audio device") {
		t.Errorf("without a device: %q", f)
	}
	if f := none.Fault(); f != "" {
		t.Errorf("told twice: %q", f)
	}
	var gone error
	s := &Speaker{synth: sound.NewSynth(), broken: func() error { return gone }}
	s.Set(sound.State{EngineRPM: 700, Level: 1})
	buf := make([]byte, 4*sound.Rate)
	if n, err := s.Read(buf); n != len(buf) || err != nil {
		t.Fatalf("read %d, %v", n, err)
	}
	if f := s.Fault(); f != "" {
		t.Errorf("a working device: %q", f)
	}
	gone = errors.New("unplugged")
	if f := s.Fault(); !strings.HasPrefix(f, "The audio device is gone") {
		t.Errorf("unplugged: %q", f)
	}
	if f := s.Fault(); f != "" {
		t.Errorf("told twice: %q", f)
	}
	s.Set(sound.State{EngineRPM: 900, Level: 1})
	if !s.Mute() || s.Mute() {
		t.Error("mute does not go to and fro")
	}
}

// TestSamples: what the device gets is little-endian 32-bit floats within ±1.
func TestSamples(t *testing.T) {
	s := &Speaker{synth: sound.NewSynth(), broken: func() error { return nil }}
	s.Set(sound.State{EngineRPM: 1500, Load: 0.5, Horn: true, Level: 1})
	buf := make([]byte, 4*sound.Rate)
	if _, err := s.Read(buf); err != nil {
		t.Fatal(err)
	}
	loud := 0.0
	for i := 0; i < len(buf); i += 4 {
		bits := uint32(buf[i]) | uint32(buf[i+1])<<8 | uint32(buf[i+2])<<16 | uint32(buf[i+3])<<24
		v := math.Float32frombits(bits)
		loud = max(loud, math.Abs(float64(v)))
	}
	if loud < 0.1 || loud >= 1 {
		t.Errorf("the loudest sample is %g", loud)
	}
}
