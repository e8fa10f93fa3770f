package window

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/hajimehoshi/ebiten/v2"

	"steadyneedle/render/app"
	"steadyneedle/render/play"
	"steadyneedle/render/stage"
	"steadyneedle/render/view"
	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
	"steadyneedle/sim/world"
)

// race draws the panel and a program that only blits one full-screen image in turns, two seconds each,
// in one process: frame rates vary by half from run to run, their ratio does not.
type race struct {
	panel  *game
	before func() // each frame of it
	plain  *ebiten.Image
	turn   int
	since  time.Time
	frames int
	rates  [2][]float64
}

const (
	stretches = 5
	stretch   = 2 * time.Second
)

func (r *race) Layout(w, h int) (int, int) { return 1280, 720 }

func (r *race) Update() error {
	if r.turn >= 2*stretches {
		return ebiten.Termination
	}
	return nil
}

func (r *race) Draw(screen *ebiten.Image) {
	if r.since.IsZero() {
		r.since = time.Now()
	}
	if r.turn%2 == 0 {
		r.before()
		r.panel.app.Advance(1.0 / 60)
		r.panel.fresh = true
		r.panel.Draw(screen)
	} else {
		screen.DrawImage(r.plain, nil)
	}
	r.frames++
	if d := time.Since(r.since); d >= stretch {
		r.rates[r.turn%2] = append(r.rates[r.turn%2], float64(r.frames)/d.Seconds())
		r.panel.resized = true // the other one has drawn over it
		r.turn, r.frames, r.since = r.turn+1, 0, time.Now()
	}
}

// swinging is an attempt whose needles all swing through their scales all the time.
type swinging struct {
	view.Attempt
	t float64 // s
	r world.Reading
}

func (s *swinging) Reading() *world.Reading {
	in := s.Attempt.Reading()
	s.r = world.Reading{At: in.At, Place: in.Place, V: append(s.r.V[:0], in.V...)}
	for i, d := range s.Signals() {
		wave := 0.5 + 0.5*math.Sin(2*s.t+float64(i))
		switch {
		case d.Name == "tach":
			s.r.V[i] = 3000 * wave
		case strings.HasSuffix(d.Name, "_gauge"):
			s.r.V[i] = 300 * wave
		}
	}
	return &s.r
}

// raceAgainstBlit gives the median frame rates of an interface, with before called each frame of it, and of
// a blit of one full-screen image.
func raceAgainstBlit(t *testing.T, a *app.App, before func()) (drawn, blit float64) {
	t.Helper()
	plain := ebiten.NewImage(1280, 720)
	plain.Fill(a.Frame().Sprites[0].Art.Img.At(640, 360))
	r := &race{before: before, panel: &game{app: a, resized: true, textures: map[*stage.Art]*ebiten.Image{}}, plain: plain}
	ebiten.SetWindowSize(1280, 720)
	ebiten.SetVsyncEnabled(false)
	ebiten.SetScreenClearedEveryFrame(false)
	if err := ebiten.RunGame(r); err != nil {
		t.Fatal(err)
	}
	for i := range r.rates {
		slices.Sort(r.rates[i])
	}
	return r.rates[0][stretches/2], r.rates[1][stretches/2]
}

// atPanel is the interface with the shipped drill's panel open.
func atPanel(t *testing.T) (*app.App, *swinging) {
	t.Helper()
	swing := &swinging{}
	a := app.New(app.Options{Start: func(name string, rated bool) (view.Attempt, error) {
		d, err := scenarios.Open(nil).Drill(name, scenarios.Options{Seed: 1})
		if err != nil {
			return nil, err
		}
		at, err := attempt.New(d, attempt.Options{Live: true, Keys: true})
		swing.Attempt = play.New(at, "", rated)
		return swing, err
	}})
	if err := a.Begin("reverse-lay", false); err != nil {
		t.Fatal(err)
	}
	a.Open("panel")
	return a, swing
}

// TestFrameRate reports how the panel's frame rate compares with a plain blit's; it asserts nothing,
// for no machine is the same twice. STEADYNEEDLE_FRAMERATE=1 runs it; it takes 20 s.
func TestFrameRate(t *testing.T) {
	if os.Getenv("STEADYNEEDLE_FRAMERATE") == "" {
		t.Skip("a measurement: set STEADYNEEDLE_FRAMERATE=1")
	}
	begun := time.Now()
	a, swing := atPanel(t)
	a.Frame()
	t.Logf("first frame of the panel put together in %.0f ms", time.Since(begun).Seconds()*1000)
	panel, blit := raceAgainstBlit(t, a, func() { swing.t += 1.0 / 60 })
	t.Logf("panel %.0f frames/s, blit %.0f frames/s, ratio %.2f (0.85 is wanted)", panel, blit, panel/blit)
}
