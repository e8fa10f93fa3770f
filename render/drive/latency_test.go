package drive

import (
	"os"
	"slices"
	"testing"
	"time"
)

// TestLatency reports how long it takes from a key pressed on the display to the changed pixel on it, the
// ring of focus at the next item, beside the length of a frame in the same seconds. It asserts nothing, for
// no machine is the same twice. STEADYNEEDLE_FRAMERATE=1 runs it.
func TestLatency(t *testing.T) {
	if os.Getenv("STEADYNEEDLE_FRAMERATE") == "" {
		t.Skip("a measurement: set STEADYNEEDLE_FRAMERATE=1")
	}
	d := open(t, "reverse-lay")
	d.press("Tab")
	d.look()
	began, frames := time.Now(), d.now.Frames
	var took []time.Duration
	for range 60 {
		next := d.now.Items[(d.at(d.now.Focus)+1)%len(d.now.Items)]
		x, y := d.ring(next)
		before := d.x.pixel(x, y)
		pressed := time.Now()
		d.x.key("Tab", true)
		for d.x.pixel(x, y) == before && time.Since(pressed) < time.Second {
		}
		if dt := time.Since(pressed); dt < time.Second { // round items have their ring elsewhere
			took = append(took, dt)
		}
		d.felt("Tab up", func() { d.x.key("Tab", false) })
	}
	d.look()
	frame := time.Since(began) / time.Duration(max(1, d.now.Frames-frames))
	if len(took) < 20 {
		t.Fatalf("only %d presses changed a pixel", len(took))
	}
	slices.Sort(took)
	ms := func(d time.Duration) float64 { return d.Seconds() * 1000 }
	t.Logf("press to changed pixel: median %.0f ms, p95 %.0f ms of %d; a frame takes %.0f ms, so that %.0f are wanted",
		ms(took[len(took)/2]), ms(took[len(took)*95/100]), len(took), ms(frame), ms(2*frame)+20)
}

// ring is a place on the screen where the ring of focus round an item will be, and that round the present
// one is not.
func (d *driver) ring(next item) (x, y int) {
	fx, fy := next.X-4, next.Y+next.H/2
	if now, ok := d.find(d.now.Focus); ok && fx > now.X-8 && fx < now.X+now.W+8 && fy > now.Y-8 && fy < now.Y+now.H+8 {
		fx, fy = next.X+next.W/2, next.Y-4
	}
	return d.left + int(fx), d.top + int(fy)
}

// at is the place of an item in the order of focus; −1: none.
func (d *driver) at(key string) int {
	return slices.IndexFunc(d.now.Items, func(it item) bool { return it.Key == key })
}
