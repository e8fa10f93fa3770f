package drive

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestPanelPart works the panel part of the reverse lay in the real window with pointer and keys, from
// the open hydrant to a line at its calculated pressure, and reads the sheet. The clean operator's
// recording brings the drill there; the numbers stated are read off the needles.
func TestPanelPart(t *testing.T) {
	if testing.Short() {
		t.Skip("takes minutes")
	}
	tape, at := upToPanel(t)
	d := open(t, "--replay", tape, "--at", fmt.Sprint(at), "--pace", "3")
	d.bleedAndOpen()
	d.say("static", whole(d.needle("intake_gauge")))
	d.connect()
	pressure := d.charge()
	d.bring(pressure)
	d.say("pressure is set", "")
	d.say("how is", "")
	d.until("the crew's word", 60, func() bool { return d.needle("crew_good_heard") > 0 })
	d.recirculate()
	d.say("residual", whole(d.needle("intake_gauge")))
	d.readSheet()
}

func whole(v float64) string { return fmt.Sprintf("%.0f", v) }

// bleedAndOpen bleeds the supply hose, turns the intake wheel with the pointer, and shuts tank to pump.
func (d *driver) bleedAndOpen() {
	d.t.Helper()
	d.click("bleeder")
	d.until("air at the bleeder", 30, func() bool { return d.needle("bleeder_air") > 0 })
	d.until("solid water at the bleeder", 60, func() bool { return d.needle("bleeder_air") == 0 })
	d.click("bleeder")
	w := d.item("intake")
	cx, cy, r := w.X+w.W/2, w.Y+w.H/2, w.W*0.4
	d.point(cx, cy-r)
	d.hold()
	for n := 1; d.value("intake") < 0.999; n++ {
		if n > 150 {
			d.t.Fatalf("the wheel did not open: %.2f", d.value("intake"))
		}
		s, c := math.Sincos(-float64(n) * 12 * math.Pi / 180)
		d.point(cx+r*s, cy-r*c)
		d.frames(3)
	}
	d.release()
	d.until("the intake's lamp", 20, func() bool { return d.needle("intake_open_lamp") > 0 })
	d.focus("tank_to_pump")
	d.key("Home")
	d.until("tank to pump shut", 10, func() bool { return d.value("tank_to_pump") == 0 })
	d.until("a steady intake", 20, func() bool { return d.needle("intake_gauge") > 20 })
}

// connect parts the laid line and hangs it on its discharge, with the keyboard.
func (d *driver) connect() {
	d.t.Helper()
	d.walk("rear-step")
	d.set("line_slack", 1)
	d.set("line_break", 1)
	d.set("bed_coupling", 1)
	d.set("line_route", 1)
	d.say("sections", whole(d.needle("sections_laid")))
	d.walk("panel")
	d.key("3")
	d.until("the street plan", 10, func() bool { return strings.HasPrefix(d.now.Screen, "street") })
	d.set("line_to", 1)
	d.set("line_coupling", 2)
	d.key("2")
	d.until("the panel", 10, func() bool { return d.now.Screen == "panel" })
}

// charge answers the crew and pulls the handle slowly; it returns the pressure that was calculated
// from what the line is made of: 300 ft of 3 in (C 0.8) at 300 gpm, a wye, 150 ft of 1¾ in (C 15.5) at
// 150 gpm, nozzles at 100 psi, for seed 1 (the drill's variant "wye").
func (d *driver) charge() float64 {
	d.t.Helper()
	want := 100 + 15.5*1.5*1.5*1.5 + 0.8*3*3*3 // FL = C (Q/100)² L/100
	d.say("calculated", whole(want))
	d.key("s")
	d.until("the phrases", 10, func() bool { return d.now.Screen == "talk" })
	d.click("sign_ready")
	d.until("the panel", 10, func() bool { return d.now.Screen == "panel" })
	d.key("l")
	d.until("the crew's sign for water", 60, func() bool {
		return d.needle("crew_wants_water_heard") > 0 && d.needle("crew_wants_water_sign_heard") > 0
	})
	d.key("l")
	d.say("water coming", "")
	d.focus("relief_wheel") // its standby setting would open below the wanted pressure
	for range 22 {
		d.key("Up")
	}
	h := d.item("discharge1")
	x, y := h.X+h.W/2, h.Y+15
	d.point(x, y)
	d.hold()
	for n := 1; n <= 60; n++ {
		d.point(x, y+float64(n)*h.H/80)
		d.frames(3)
	}
	d.release()
	d.until("the discharge open", 20, func() bool { return d.value("discharge1") > 0.99 })
	d.until("water at the nozzle", 60, func() bool { return d.needle("crew_has_water_heard") > 0 })
	return want
}

// bring works the throttle with the arrow keys until the line's own gauge shows the pressure.
func (d *driver) bring(psi float64) {
	d.t.Helper()
	d.focus("throttle")
	steady := 0
	for range 400 {
		off := psi - d.needle("line1_gauge")
		if math.Abs(off) < 2.5 {
			if steady++; steady > 5 {
				return
			}
			d.frames(6)
			continue
		}
		steady = 0
		name := "Up"
		if off < 0 {
			name = "Down"
		}
		if math.Abs(off) < 12 {
			name = "shift+" + name
		}
		d.press(name)
		d.frames(6)
	}
	d.t.Fatalf("the line stands at %.1f psi, wanted %.1f", d.needle("line1_gauge"), psi)
}

// press presses a key together with Shift where the name asks for it.
func (d *driver) press(name string) {
	d.t.Helper()
	plain, shifted := strings.CutPrefix(name, "shift+")
	if shifted {
		d.xdo("keydown", "shift")
	}
	d.key(plain)
	if shifted {
		d.xdo("keyup", "shift")
	}
}

func (d *driver) recirculate() {
	d.t.Helper()
	d.focus("recirculation")
	d.key("Return")
	d.until("recirculation open", 10, func() bool { return d.value("recirculation") > 0.99 })
}

// readSheet ends the attempt and reads the findings on the screen and in the saved file.
func (d *driver) readSheet() {
	d.t.Helper()
	d.key("Escape")
	d.until("the menu", 10, func() bool { return d.now.Screen == "pause" })
	d.click("pause-1")
	d.until("the sheet", 20, func() bool { return d.now.Screen == "debrief" })
	wrong := map[string]bool{}
	for _, it := range d.now.Items {
		if it.Label != "" {
			wrong[it.Label] = true
		}
	}
	for _, rule := range []string{"unbled", "intake-fast", "intake-part", "starved-changeover", "static", "line-wrong", "coupling-loose",
		"charged-unasked", "discharge-fast", "discharge-part", "calculation", "pressure-late", "pressure-off", "overpressure", "throttle-no-flow", "nozzle-unconfirmed"} {
		if wrong[rule] {
			d.t.Errorf("the sheet finds %s, though the panel was worked without that error", rule)
		}
	}
	d.click("save")
	var saved string
	d.until("the saved sheet", 10, func() bool {
		files, _ := filepath.Glob(filepath.Join(d.dir, "data", "steadyneedle", "attempts", "sheet-*.html"))
		if len(files) == 0 {
			return false
		}
		text, _ := os.ReadFile(files[0])
		saved = string(text)
		return strings.Contains(saved, "</html>")
	})
	for _, want := range []string{"Ended early", "Training aid only", "<svg", "Discharge 1"} {
		if !strings.Contains(saved, want) {
			d.t.Errorf("the saved sheet lacks %q", want)
		}
	}
}
