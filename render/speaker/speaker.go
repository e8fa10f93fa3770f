package speaker

import (
	"encoding/binary"
	"math"
	"sync"
	"time"

	"github.com/ebitengine/oto/v3"

	"steadyneedle/render/sound"
)

// Speaker plays states; without a device it is silent and says so once, whether there never was one or
// it went away.
type Speaker struct {
	mu     sync.Mutex
	synth  *sound.Synth
	muted  bool
	broken func() error // what is wrong with the device; nil: there is none
	player *oto.Player
	ever   bool // the device has taken samples
	told   bool
}

// Start opens the audio device. It never fails: Fault tells what is wrong with it.
func Start() *Speaker {
	s := &Speaker{synth: sound.NewSynth()}
	ctx, ready, err := oto.NewContext(&oto.NewContextOptions{
		SampleRate: sound.Rate, ChannelCount: 1, Format: oto.FormatFloat32LE, BufferSize: 40 * time.Millisecond,
	})
	if err != nil {
		return s
	}
	s.broken = ctx.Err
	go func() {
		<-ready
		if ctx.Err() != nil {
			return
		}
		p := ctx.NewPlayer(s)
		p.SetBufferSize(sound.Rate / 20 * 4) // before Play: the player would read half a second ahead
		p.Play()
		s.mu.Lock()
		s.player = p // else it would be collected
		s.mu.Unlock()
	}()
	return s
}

// Read gives the player its samples.
func (s *Speaker) Read(b []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.ever = true
	n := len(b) / 4
	for i := range n {
		binary.LittleEndian.PutUint32(b[4*i:], math.Float32bits(float32(s.synth.Next())))
	}
	return 4 * n, nil
}

// Set says what is to be heard.
func (s *Speaker) Set(st sound.State) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.muted {
		st.Level = 0
	}
	s.synth.Set(st)
}

// Mute turns sound off and on, and reports whether it is off.
func (s *Speaker) Mute() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.muted = !s.muted
	return s.muted
}

// Fault is a word about a missing device, once; empty otherwise. Nothing else changes: the program goes
// on, and captions say what would be heard.
func (s *Speaker) Fault() string {
	if s.told || s.broken != nil && s.broken() == nil {
		return ""
	}
	s.told = true
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.ever {
		return "The audio device is gone: captions stand for every sound."
	}
	return "There is no audio device: captions stand for every sound."
}
