package window

import (
	"os"
	"testing"
	"time"

	"steadyneedle/render/app"
	"steadyneedle/render/play"
	"steadyneedle/render/view"
	"steadyneedle/scenarios"
	"steadyneedle/sim/demo"
	"steadyneedle/sim/unit"
)

// TestShowFrameRate reports how the frame rate of a running demonstration, with the inside of the pump and
// three plots, compares with a plain blit's. STEADYNEEDLE_FRAMERATE=1 runs it; it takes 20 s.
func TestShowFrameRate(t *testing.T) {
	if os.Getenv("STEADYNEEDLE_FRAMERATE") == "" {
		t.Skip("a measurement: set STEADYNEEDLE_FRAMERATE=1")
	}
	a := app.New(app.Options{Present: func(name string) (view.Stage, error) {
		d, err := scenarios.Open(nil).Demonstration(name)
		if err != nil {
			return nil, err
		}
		d.Below = demo.Both
		p, err := demo.New(d)
		if err != nil {
			return nil, err
		}
		return play.NewStage(p, "", unit.US), nil
	}})
	if err := a.Present("cavitation-at-a-hydrant"); err != nil {
		t.Fatal(err)
	}
	a.OnKey(app.Key{Name: "Space", Down: true}) // the caution has been read
	a.Frame()
	frames, last := 0, time.Now()
	show, blit := raceAgainstBlit(t, a, func() {
		frames++
		if frames%600 == 0 {
			a.OnKey(app.Key{Name: "Space", Down: true}) // past a stop
		}
		if more := time.Since(last).Seconds() - 1.0/60; more > 0 && more < 0.5 {
			a.Advance(more) // plots are redrawn by the world's time, which is that of the wall
		}
		last = time.Now()
	})
	t.Logf("demonstration %.0f frames/s, blit %.0f frames/s, ratio %.2f (0.70 is wanted)", show, blit, show/blit)
}
