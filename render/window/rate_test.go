package window

import (
	"os"
	"slices"
	"testing"
	"time"

	"github.com/hajimehoshi/ebiten/v2"

	"steadyneedle/render/app"
	"steadyneedle/render/play"
	"steadyneedle/render/stage"
	"steadyneedle/render/view"
	"steadyneedle/scenarios"
	"steadyneedle/sim/attempt"
)

// race draws the panel and a program that only blits one full-screen image in turns, two seconds each,
// in one process: frame rates vary by half from run to run, their ratio does not.
type race struct {
	panel  *game
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

// TestFrameRate reports how the panel's frame rate compares with a plain blit's; it asserts nothing,
// for no machine is the same twice. STEADYNEEDLE_FRAMERATE=1 runs it; it takes 20 s.
func TestFrameRate(t *testing.T) {
	if os.Getenv("STEADYNEEDLE_FRAMERATE") == "" {
		t.Skip("a measurement: set STEADYNEEDLE_FRAMERATE=1")
	}
	a := app.New(app.Options{Start: func(name string, rated bool) (view.Attempt, error) {
		d, err := scenarios.Open(nil).Drill(name, scenarios.Options{Seed: 1})
		if err != nil {
			return nil, err
		}
		at, err := attempt.New(d, attempt.Options{Live: true, Keys: true})
		return play.New(at, "", rated), err
	}})
	begun := time.Now()
	if err := a.Begin("reverse-lay", false); err != nil {
		t.Fatal(err)
	}
	a.Open("panel")
	a.Frame()
	t.Logf("first frame of the panel put together in %.0f ms", time.Since(begun).Seconds()*1000)
	plain := ebiten.NewImage(1280, 720)
	plain.Fill(a.Frame().Sprites[0].Art.Img.At(640, 360))
	r := &race{panel: &game{app: a, resized: true, textures: map[*stage.Art]*ebiten.Image{}}, plain: plain}
	ebiten.SetWindowSize(1280, 720)
	ebiten.SetVsyncEnabled(false)
	ebiten.SetScreenClearedEveryFrame(false)
	if err := ebiten.RunGame(r); err != nil {
		t.Fatal(err)
	}
	median := func(v []float64) float64 { slices.Sort(v); return v[len(v)/2] }
	panel, blit := median(r.rates[0]), median(r.rates[1])
	t.Logf("panel %.0f frames/s, blit %.0f frames/s, ratio %.2f (0.7 is wanted)", panel, blit, panel/blit)
}
