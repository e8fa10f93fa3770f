package window

import (
	"os"
	"syscall"
	"testing"
	"time"

	"github.com/hajimehoshi/ebiten/v2"

	"steadyneedle/render/stage"
)

// rester runs the paused panel and an empty window in turns, and takes the processor time of each.
type rester struct {
	panel *game
	turn  int
	since time.Time
	cpu   time.Duration
	used  [2]time.Duration
	took  [2]time.Duration
}

func (r *rester) Layout(w, h int) (int, int) { return 1280, 720 }

// processor is the processor time that this process has used.
func processor() time.Duration {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

func (r *rester) Update() error {
	now := time.Now()
	if r.since.IsZero() {
		r.since, r.cpu = now, processor()
	}
	if d := now.Sub(r.since); d >= 3*time.Second {
		cpu := processor()
		if r.turn >= 2 { // the first ones paint the page
			r.used[r.turn%2] += cpu - r.cpu
			r.took[r.turn%2] += d
		}
		r.turn, r.since, r.cpu = r.turn+1, now, cpu
		if r.turn == 8 {
			return ebiten.Termination
		}
	}
	if r.turn%2 == 0 {
		return r.panel.Update()
	}
	return nil
}

func (r *rester) Draw(screen *ebiten.Image) {
	if r.turn%2 == 0 {
		r.panel.Draw(screen)
	}
}

// TestIdle reports what the paused panel takes of a core, beside an empty window in the same process.
// STEADYNEEDLE_FRAMERATE=1 runs it, by itself, for one process opens one window; it takes 24 s.
func TestIdle(t *testing.T) {
	if os.Getenv("STEADYNEEDLE_FRAMERATE") == "" {
		t.Skip("a measurement: set STEADYNEEDLE_FRAMERATE=1")
	}
	a, _ := atPanel(t)
	a.Open("pause")
	r := &rester{panel: &game{app: a, resized: true, textures: map[*stage.Art]*ebiten.Image{}}}
	ebiten.SetWindowSize(1280, 720)
	ebiten.SetScreenClearedEveryFrame(false)
	if err := ebiten.RunGame(r); err != nil {
		t.Fatal(err)
	}
	share := func(i int) float64 { return 100 * r.used[i].Seconds() / r.took[i].Seconds() }
	t.Logf("paused panel %.1f %% of a core, empty window %.1f %%: %.1f points more (3 at most are wanted)", share(0), share(1), share(0)-share(1))
}
