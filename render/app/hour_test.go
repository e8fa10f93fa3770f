package app

import (
	"os"
	"runtime"
	"slices"
	"testing"
	"time"

	"steadyneedle/sim/unit"
	"steadyneedle/sim/world"
)

// TestShowHour reports what an hour in front of a class costs: memory for going back, the time that going back
// to any second of it takes, and how fast time can pass on one core. It asserts nothing, for no machine is the
// same twice. STEADYNEEDLE_FRAMERATE=1 runs it; it takes a few minutes.
func TestShowHour(t *testing.T) {
	if os.Getenv("STEADYNEEDLE_FRAMERATE") == "" {
		t.Skip("a measurement: set STEADYNEEDLE_FRAMERATE=1")
	}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	a, s := present(t, "cavitation-at-a-hydrant", unit.US)
	a.shelf.Dry = false
	p := s.stage.Player()
	p.Interrupt() // by hand from here, the claims being looked at all the time
	before := heap()
	begun := time.Now()
	throttle, _ := a.eyes.Control("throttle")
	for i := range 3600 {
		if i%10 == 0 {
			if err := s.stage.Act(throttle, 0.1+0.3*float64(i/10%4)/3); err != nil {
				t.Fatal(err)
			}
		}
		for range world.TicksPerSecond {
			s.stage.Tick()
		}
	}
	t.Logf("an hour passed %.1f times as fast as real on one core, with nothing drawn", 3600/time.Since(begun).Seconds())
	t.Logf("it takes %.0f MB (200 at most)", float64(heap()-before)/1e6)

	var took []float64
	end := p.Attempt.Now()
	for i := range 40 {
		to := end - world.TicksIn(float64(1+(i*1597)%3500))
		from := time.Now()
		if err := s.stage.Back(to); err != nil {
			t.Fatal(err)
		}
		a.Frame()
		took = append(took, time.Since(from).Seconds()*1000)
		if err := s.stage.Swap(); err != nil {
			t.Fatal(err)
		}
	}
	slices.Sort(took)
	t.Logf("going back with the first picture: median %.0f ms, worst %.0f ms (300 at most)", took[len(took)/2], took[len(took)-1])

	a.tempo = 8
	const frames, rate = 20 * 30, 30.0
	from, at := time.Now(), p.Attempt.Now()
	for range frames {
		a.Advance(1 / rate)
		a.Frame()
	}
	wall, world := time.Since(from).Seconds(), (p.Attempt.Now() - at).Seconds()
	t.Logf("eight times as fast, %v pictures put together a second: %.0f s of the world take %.1f s of one core, %.1f times real", rate, world, wall, world/wall)
}

func heap() int64 {
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return int64(m.HeapAlloc)
}
