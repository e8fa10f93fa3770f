package speaker

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"steadyneedle/render/sound"
)

// TestNullDevice plays through the machine's own sound library into a device that swallows everything.
func TestNullDevice(t *testing.T) {
	home := t.TempDir()
	if err := os.WriteFile(filepath.Join(home, ".asoundrc"), []byte("pcm.!default { type null }\nctl.!default { type null }\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	t.Setenv("HOME", home)
	s := Start()
	s.Set(sound.State{EngineRPM: 900, Load: 0.3, Level: sound.Quiet})
	for range 100 {
		s.mu.Lock()
		ever := s.ever
		s.mu.Unlock()
		if ever {
			break
		}
		time.Sleep(50 * time.Millisecond)
	}
	s.mu.Lock()
	ever, player := s.ever, s.player
	s.mu.Unlock()
	if !ever {
		t.Fatalf("the device took no samples: %s", s.Fault())
	}
	if f := s.Fault(); f != "" {
		t.Errorf("a working device is called broken: %s", f)
	}
	if player != nil {
		if err := player.Close(); err != nil {
			t.Error(err)
		}
	}
}
