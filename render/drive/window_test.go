package drive

import (
	"bytes"
	"encoding/json"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"
)

// frame is one line of the program's trace.
type frame struct {
	Tick    int64
	Screen  string
	Place   string
	Focus   string
	Notice  string
	Events  int
	Items   []item
	Needles map[string]float64
}

type item struct {
	Key, Label              string
	X, Y, W, H, Value, Hand float64
	Parts                   [][4]float64
}

// driver works one window.
type driver struct {
	t     *testing.T
	x     *xserver
	dir   string
	trace *os.File
	rest  []byte
	now   frame
	left  int // of the window on the screen
	top   int
	px    int // where the pointer is on the screen
	py    int
}

// open builds the program, starts it on the display, and waits for its window.
func open(t *testing.T, args ...string) *driver {
	t.Helper()
	display := os.Getenv("DISPLAY")
	if display == "" {
		t.Skip("no display: xvfb-run go test ./render/drive")
	}
	dir := t.TempDir()
	program := filepath.Join(dir, "steadyneedle")
	build := exec.Command("go", "build", "-o", program, "steadyneedle/cmd/steadyneedle")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("build: %v\n%s", err, out)
	}
	trace := filepath.Join(dir, "trace")
	cmd := exec.Command(program, append(args, "--trace", trace)...)
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "LIBGL_ALWAYS_SOFTWARE=1", "XDG_CONFIG_HOME="+filepath.Join(dir, "config"), "XDG_DATA_HOME="+filepath.Join(dir, "data"))
	var said bytes.Buffer
	cmd.Stderr = &said
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		cmd.Process.Kill()
		cmd.Wait()
		if t.Failed() {
			t.Logf("the program said: %s", said.String())
		}
	})
	d := &driver{t: t, dir: dir, x: openX(t, display)}
	d.until("the trace", 60, func() bool {
		f, err := os.Open(trace)
		if err != nil {
			return false
		}
		d.trace = f
		return true
	})
	d.until("the first frame", 60, func() bool { return len(d.now.Items) > 0 })
	d.until("the window", 20, func() bool {
		var ok bool
		d.left, d.top, ok = d.x.find("Steady Needle")
		return ok
	})
	return d
}

// look reads the trace up to its last whole line.
func (d *driver) look() {
	if d.trace == nil {
		return
	}
	more, err := io.ReadAll(d.trace)
	if err != nil {
		d.t.Fatal(err)
	}
	d.rest = append(d.rest, more...)
	end := bytes.LastIndexByte(d.rest, '\n')
	if end < 0 {
		return
	}
	begin := bytes.LastIndexByte(d.rest[:end], '\n') + 1
	var f frame
	if err := json.Unmarshal(d.rest[begin:end], &f); err != nil {
		d.t.Fatalf("trace: %v", err)
	}
	d.now = f
	d.rest = append(d.rest[:0], d.rest[end+1:]...)
}

// until waits for a state, never for a time.
func (d *driver) until(what string, seconds int, holds func() bool) {
	d.t.Helper()
	for end := time.Now().Add(time.Duration(seconds) * time.Second); ; {
		d.look()
		if holds() {
			return
		}
		if time.Now().After(end) {
			d.t.Fatalf("waited %d s in vain for %s; screen %s, place %s, focus %s, notice %q", seconds, what, d.now.Screen, d.now.Place, d.now.Focus, d.now.Notice)
		}
		time.Sleep(4 * time.Millisecond)
	}
}

func (d *driver) item(key string) item {
	d.t.Helper()
	d.look()
	it, ok := d.find(key)
	if !ok {
		d.t.Fatalf("nothing is called %q on screen %s", key, d.now.Screen)
	}
	return it
}

func (d *driver) find(key string) (item, bool) {
	for _, it := range d.now.Items {
		if it.Key == key {
			return it, true
		}
	}
	return item{}, false
}

func (d *driver) value(key string) float64 { d.t.Helper(); return d.item(key).Value }

func (d *driver) needle(name string) float64 { d.look(); return d.now.Needles[name] }

// felt does something with the hands and waits until the program has taken it in.
func (d *driver) felt(what string, do func()) {
	d.t.Helper()
	d.look()
	before := d.now.Events
	do()
	d.until(what+" to be felt", 20, func() bool { return d.now.Events > before })
}
