package app

import (
	"runtime"
	"testing"
	"time"

	"steadyneedle/render/stage"
)

// TestResizing: after two hundred sizes of the window nothing is kept of those that are gone: the art on the
// shelf is what the last size needs, all other art was given back, and memory stands where it stood.
func TestResizing(t *testing.T) {
	a := begin(t, false)
	a.Open("panel")
	alive := map[*stage.Art]bool{}
	a.shelf.Gone = func(art *stage.Art) { delete(alive, art) }
	heap := func() uint64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	a.shelf.Dry = true // where things are is kept as ever; painting two hundred panels would take minutes
	var early uint64
	var count int
	for n := range 200 {
		a.Resize(1024+(n%40)*23, 640+(n%40)*11)
		a.Advance(1.0 / 60)
		for i := range a.Frame().Sprites {
			alive[a.frame.Sprites[i].Art] = true
		}
		if n == 39 {
			early, count = heap(), len(alive)
		}
	}
	late := heap()
	if len(alive) > count+20 {
		t.Errorf("%d pieces of art after 200 sizes, %d after 40", len(alive), count)
	}
	if late > early+early/4 {
		t.Errorf("%d kB after 200 sizes, %d kB after 40", late>>10, early>>10)
	}
}

// TestLateFrames: with a budget for painting, the first frames of a new size come in pieces, and the page
// is whole in the end: as whole as painted at once.
func TestLateFrames(t *testing.T) {
	a, b := begin(t, false), begin(t, false)
	a.Open("panel")
	b.Open("panel")
	a.shelf.Late = func() bool { return true } // each frame paints one piece
	frames := 0
	for !a.Still() || frames == 0 {
		a.Frame()
		if frames++; frames > 400 {
			t.Fatal("the page never got done")
		}
	}
	if frames < 10 {
		t.Errorf("a whole panel in %d frames of one piece each", frames)
	}
	got, want := stage.Compose(a.Frame(), 1280, 720), stage.Compose(b.Frame(), 1280, 720)
	for i := range want.Pix {
		if got.Pix[i] != want.Pix[i] {
			t.Fatalf("pixel %d differs", i/4)
		}
	}
}

// BenchmarkNewSize is the longest that one frame takes after the window got a new size, at the budget that
// the window allows.
func BenchmarkNewSize(b *testing.B) {
	a := begin(b, false)
	a.Open("panel")
	longest := time.Duration(0)
	var began time.Time
	a.shelf.Late = func() bool { return time.Since(began) > 25*time.Millisecond }
	n := 0
	for b.Loop() {
		n++
		a.Resize(1920-n%2*16, 1080)
		for first := true; first || !a.Still(); first = false {
			began = time.Now()
			a.Frame()
			longest = max(longest, time.Since(began))
		}
	}
	b.ReportMetric(longest.Seconds()*1000, "ms-longest")
}
