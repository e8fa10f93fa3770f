package drive

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

// frame is one line of the program's trace.
type frame struct {
	Tick    int64
	Screen  string
	Place   string
	Focus   string
	Items   []item
	Needles map[string]float64
}

type item struct {
	Key, Label        string
	X, Y, W, H, Value float64
}

// driver works one window.
type driver struct {
	t       *testing.T
	dir     string
	trace   *os.File
	rest    []byte
	now     frame
	originX int
	originY int
}

// open builds the program, starts it on the display, and waits for its window.
func open(t *testing.T, args ...string) *driver {
	t.Helper()
	if os.Getenv("DISPLAY") == "" {
		t.Skip("no display: xvfb-run go test ./render/drive")
	}
	if _, err := exec.LookPath("xdotool"); err != nil {
		t.Skip("xdotool is not installed")
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
	d := &driver{t: t, dir: dir}
	d.until("the window", 60, func() bool {
		f, err := os.Open(trace)
		if err != nil {
			return false
		}
		d.trace = f
		return true
	})
	d.until("the first frame", 60, func() bool { return len(d.now.Items) > 0 })
	d.locate(cmd.Process.Pid)
	return d
}

// locate finds where the program's window lies on the screen.
func (d *driver) locate(pid int) {
	d.t.Helper()
	out := d.xdo("search", "--pid", strconv.Itoa(pid), "--name", "Steady Needle")
	id := strings.Fields(out)
	if len(id) == 0 {
		d.t.Fatal("no window found")
	}
	for _, line := range strings.Split(d.xdo("getwindowgeometry", "--shell", id[0]), "\n") {
		name, value, _ := strings.Cut(line, "=")
		n, _ := strconv.Atoi(strings.TrimSpace(value))
		switch name {
		case "X":
			d.originX = n
		case "Y":
			d.originY = n
		}
	}
}

func (d *driver) xdo(args ...string) string {
	d.t.Helper()
	out, err := exec.Command("xdotool", args...).Output()
	if err != nil {
		d.t.Fatalf("xdotool %s: %v", strings.Join(args, " "), err)
	}
	return string(out)
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
			d.t.Fatalf("waited %d s in vain for %s; screen %s, place %s, focus %s", seconds, what, d.now.Screen, d.now.Place, d.now.Focus)
		}
		time.Sleep(30 * time.Millisecond)
	}
}

func (d *driver) item(key string) item {
	d.t.Helper()
	d.look()
	for _, it := range d.now.Items {
		if it.Key == key {
			return it
		}
	}
	d.t.Fatalf("nothing is called %q on screen %s", key, d.now.Screen)
	return item{}
}

func (d *driver) value(key string) float64 { d.t.Helper(); return d.item(key).Value }

func (d *driver) needle(name string) float64 { d.look(); return d.now.Needles[name] }

// point moves the pointer to a place in the window and lets a frame pass.
func (d *driver) point(x, y float64) {
	d.t.Helper()
	d.xdo("mousemove", strconv.Itoa(d.originX+int(x)), strconv.Itoa(d.originY+int(y)))
	d.frames(2)
}

// frames waits until so many more have been drawn.
func (d *driver) frames(n int) {
	d.t.Helper()
	for range n {
		tick, focus := d.now.Tick, d.now.Focus
		for end := time.Now().Add(2 * time.Second); time.Now().Before(end); {
			d.look()
			if d.now.Tick != tick || d.now.Focus != focus {
				break
			}
			time.Sleep(8 * time.Millisecond)
		}
	}
}

func (d *driver) hold()    { d.xdo("mousedown", "1"); d.frames(2) }
func (d *driver) release() { d.xdo("mouseup", "1"); d.frames(2) }

func (d *driver) click(key string) {
	d.t.Helper()
	it := d.item(key)
	d.point(it.X+it.W/2, it.Y+it.H/2)
	d.hold()
	d.release()
}

// key presses keys one after the other, each long enough to be seen.
func (d *driver) key(names ...string) {
	d.t.Helper()
	for _, n := range names {
		d.xdo("keydown", n)
		time.Sleep(70 * time.Millisecond)
		d.xdo("keyup", n)
		time.Sleep(50 * time.Millisecond)
	}
	d.frames(2)
}

// focus goes to a control with the Tab key alone.
func (d *driver) focus(key string) {
	d.t.Helper()
	for range 120 {
		d.look()
		if d.now.Focus == key {
			return
		}
		d.key("Tab")
	}
	d.t.Fatalf("Tab never reached %s", key)
}

// set brings a choice to a value with the keyboard.
func (d *driver) set(key string, value int) {
	d.t.Helper()
	d.focus(key)
	d.key("Home")
	for range value {
		d.key("Up")
	}
	d.until(fmt.Sprintf("%s at %d", key, value), 40, func() bool { return d.value(key) == float64(value) })
}

// say says a phrase by typing words of it, and its number.
func (d *driver) say(words, number string) {
	d.t.Helper()
	d.key("s")
	d.until("the phrases", 10, func() bool { return d.now.Screen == "talk" })
	time.Sleep(300 * time.Millisecond) // typing is heeded a moment after the list opens
	d.xdo("type", "--delay", "110", words+number)
	d.frames(2)
	d.key("Return")
	d.until("the phrase said", 10, func() bool { return d.now.Screen != "talk" })
}

// walk clicks a spot on the street plan and waits until one is there.
func (d *driver) walk(place string) {
	d.t.Helper()
	if !strings.HasPrefix(d.now.Screen, "street") {
		d.key("3")
		d.until("the street plan", 10, func() bool { return strings.HasPrefix(d.now.Screen, "street") })
	}
	d.click("spot-" + place)
	d.until("walking to "+place, 60, func() bool { return d.now.Place == place })
}
