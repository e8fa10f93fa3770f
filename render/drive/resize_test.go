package drive

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"
)

// TestResize reports the longest time for which the real window did nothing while it was given two hundred
// sizes, and what that did to its memory. It asserts nothing. STEADYNEEDLE_FRAMERATE=1 runs it.
func TestResize(t *testing.T) {
	if os.Getenv("STEADYNEEDLE_FRAMERATE") == "" {
		t.Skip("a measurement: set STEADYNEEDLE_FRAMERATE=1")
	}
	d := open(t, "reverse-lay")
	longest := time.Duration(0)
	watch := func(for_ time.Duration) {
		last, size := time.Now(), d.updates()
		for end := time.Now().Add(for_); time.Now().Before(end); time.Sleep(time.Millisecond) {
			now := d.updates()
			longest = max(longest, time.Since(last))
			if now != size {
				last, size = time.Now(), now
			}
		}
	}
	give := func(from, to int) {
		for n := from; n < to; n++ {
			d.x.resize("Steady Needle", 1024+n%30*8, 640+n%30*2)
			watch(20 * time.Millisecond)
			if n%10 == 9 { // the size comes to rest, and the interface follows
				watch(1500 * time.Millisecond)
			}
		}
	}
	give(0, 40)
	early := memory(t, d.pid)
	give(40, 200)
	t.Logf("200 sizes: the window never did nothing for longer than %.0f ms (250 at most are wanted); memory %d MB after 40, %d MB after 200",
		longest.Seconds()*1000, early, memory(t, d.pid))
}

// memory is what a process has in memory, MB.
func memory(t *testing.T, pid int) int {
	t.Helper()
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		t.Skip("no /proc here")
	}
	for _, line := range strings.Split(string(text), "\n") {
		kb := 0
		if n, _ := fmt.Sscanf(line, "VmRSS: %d kB", &kb); n == 1 {
			return kb / 1024
		}
	}
	return 0
}
