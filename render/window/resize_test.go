package window

import (
	"testing"
	"time"

	"github.com/hajimehoshi/ebiten/v2"

	"steadyneedle/render/app"
)

// TestSizing: the interface takes the first size at once, waits while the size goes on changing, and follows
// when it has come to rest; a size that comes back changes nothing.
func TestSizing(t *testing.T) {
	a := app.New(app.Options{})
	var s sizing
	now := time.Unix(0, 0)
	step := func(w, h int, after time.Duration, follow, changing bool) {
		t.Helper()
		now = now.Add(after)
		if got := s.wants(a, w, h, now); got != follow || s.changing() != changing {
			t.Fatalf("%d by %d after %v: follows %v, changing %v", w, h, after, got, s.changing())
		} else if got {
			a.Resize(w, h)
		}
	}
	step(1400, 800, 0, true, false)
	step(1400, 800, 16*time.Millisecond, false, false)
	for n := range 20 {
		step(1401+n, 800, 16*time.Millisecond, false, true)
	}
	step(1420, 800, rest/2, false, true)
	step(1420, 800, rest/2, true, false)
	step(1300, 800, 16*time.Millisecond, false, true)
	step(1420, 800, 16*time.Millisecond, false, false)
}

// TestFingerNumbers: each touch gets the lowest number that is free.
func TestFingerNumbers(t *testing.T) {
	var d devices
	if a, b := d.finger(ebiten.TouchID(70)), d.finger(ebiten.TouchID(90)); a != 0 || b != 1 {
		t.Errorf("two touches are %d and %d, want 0 and 1", a, b)
	}
	d.fingers[0] = -1
	if c := d.finger(ebiten.TouchID(110)); c != 0 {
		t.Errorf("the next touch is %d, want the number that is free, 0", c)
	}
}
