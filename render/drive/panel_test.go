package drive

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"steadyneedle/sim/world"
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
	p := newPart(t, d)
	p.bleedAndOpen()
	p.say("say_static", p.needle("intake_gauge"))
	p.connect()
	pressure := p.charge()
	p.bring("line1_gauge", pressure)
	p.say("say_pressure_set", 1)
	p.say("say_how_is_it", 1)
	p.until("the crew's word", 60, func() bool { return p.needle("crew_good_heard") > 0 })
	p.byKey("recirculation", 1)
	p.until("recirculation open", 10, func() bool { return p.value("recirculation") > 0.99 })
	p.say("say_residual", p.needle("intake_gauge"))
	p.readSheet()
}

// part works by pointer and by keys in turn.
type part struct {
	*person
	pointer, keyboard hands
}

func newPart(t *testing.T, d *driver) *part {
	p := newPerson(t, d, newKeyboard, "reverse-lay")
	return &part{p, newPointer(d), p.hands}
}

func (p *part) control(name string) *world.Control {
	p.t.Helper()
	for i := range p.controls {
		if p.controls[i].Name == name {
			return &p.controls[i]
		}
	}
	p.t.Fatalf("no control %s", name)
	return nil
}

func (p *part) byKey(name string, v float64) {
	p.t.Helper()
	p.pointer.letGo()
	p.hands = p.keyboard
	p.do(p.control(name), v)
	p.hands.settle()
}

func (p *part) byPointer(name string, v float64) {
	p.t.Helper()
	p.hands = p.pointer
	p.do(p.control(name), v)
}

func (p *part) say(name string, v float64) { p.t.Helper(); p.byKey(name, math.Round(v)) }

func (p *part) walkTo(place world.Place) {
	p.t.Helper()
	p.byPointer("walk", float64(place))
	p.until("arriving", 60, func() bool { return p.now.Place == place.String() })
}

// bleedAndOpen bleeds the supply hose, turns the intake wheel with the pointer, and shuts tank to pump.
func (p *part) bleedAndOpen() {
	p.t.Helper()
	p.byPointer("bleeder", 1)
	p.until("air at the bleeder", 30, func() bool { return p.needle("bleeder_air") > 0 })
	p.until("solid water at the bleeder", 60, func() bool { return p.needle("bleeder_air") == 0 })
	p.byPointer("bleeder", 0)
	for n := 1; n <= 60; n++ { // slowly: a wheel that is spun open makes a surge
		p.byPointer("intake", float64(n)/60)
		p.until("the hand", 10, p.later(8)) // however fast the machine draws
	}
	p.until("the intake's lamp", 20, func() bool { return p.needle("intake_open_lamp") > 0 })
	p.byKey("tank_to_pump", 0)
	p.until("tank to pump shut", 10, func() bool { return p.value("tank_to_pump") == 0 })
	p.until("a steady intake", 20, func() bool { return p.needle("intake_gauge") > 20 })
}

// connect parts the laid line and hangs it on its discharge, with the keyboard.
func (p *part) connect() {
	p.t.Helper()
	p.walkTo(world.RearStep)
	for _, name := range []string{"line_slack", "line_break", "bed_coupling", "line_route"} {
		p.byKey(name, 1)
	}
	p.until("the line parted", 20, func() bool { return p.value("line_break") == 1 })
	p.say("say_sections", p.needle("sections_laid"))
	p.walkTo(world.Panel)
	p.byKey("line_to", 1)
	p.until("the line at its discharge", 40, func() bool { return p.value("line_to") == 1 })
	p.byKey("line_coupling", 2)
	p.until("the coupling tight", 40, func() bool { return p.value("line_coupling") == 2 })
}

// charge answers the crew and pulls the handle slowly; it returns the pressure that was calculated
// from what the line is made of: 300 ft of 3 in (C 0.8) at 300 gpm, a wye, 150 ft of 1¾ in (C 15.5) at
// 150 gpm, nozzles at 100 psi, for seed 1 (the drill's variant "wye").
func (p *part) charge() float64 {
	p.t.Helper()
	want := 100 + 15.5*1.5*1.5*1.5 + 0.8*3*3*3 // FL = C (Q/100)² L/100
	p.say("say_calculated", want)
	p.byPointer("sign_ready", 1)
	p.byKey("look_round", 1)
	p.until("the crew's sign for water", 60, func() bool {
		return p.needle("crew_wants_water_heard") > 0 && p.needle("crew_wants_water_sign_heard") > 0
	})
	p.byPointer("look_round", 0)
	p.byPointer("say_water_coming", 1)
	p.show("relief_wheel")
	p.byKey("relief_wheel", p.value("relief_wheel")+2.2) // its standby setting would open below the wanted pressure
	for n := 1; n <= 60; n++ {
		p.byPointer("discharge1", float64(n)/60)
		p.until("the hand", 10, p.later(8)) // however fast the machine draws
	}
	p.until("the discharge open", 20, func() bool { return p.value("discharge1") > 0.99 })
	p.until("water at the nozzle", 60, func() bool { return p.needle("crew_has_water_heard") > 0 })
	return want
}

// bring works the throttle with the arrow keys until a gauge shows the pressure.
func (p *part) bring(gauge string, psi float64) {
	p.t.Helper()
	steady := 0
	for range 400 {
		off := psi - p.needle(gauge)
		if math.Abs(off) < 2.5 {
			if steady++; steady > 5 {
				return
			}
			p.until("a look later", 10, p.later(12))
			continue
		}
		steady = 0
		step := 0.01
		if math.Abs(off) < 12 {
			step = 0.002
		}
		p.byKey("throttle", p.item("throttle").Hand+math.Copysign(step, off))
		p.until("the needle", 10, p.later(24))
	}
	p.t.Fatalf("%s stands at %.1f psi, wanted %.1f", gauge, p.needle(gauge), psi)
}

// later is true so many ticks of the world from now.
func (p *part) later(ticks int64) func() bool {
	at := p.now.Tick + ticks
	return func() bool { return p.now.Tick >= at }
}

// readSheet ends the attempt and reads the findings on the screen and in the saved file.
func (p *part) readSheet() {
	p.t.Helper()
	p.press("Escape")
	p.until("the menu", 10, func() bool { return p.now.Screen == "pause" })
	p.click("pause-1")
	p.until("the sheet", 20, func() bool { return p.now.Screen == "debrief" })
	wrong := map[string]bool{}
	for _, rule := range p.findings() {
		wrong[rule] = true
	}
	for _, rule := range []string{"unbled", "intake-fast", "intake-part", "starved-changeover", "static", "line-wrong", "coupling-loose",
		"charged-unasked", "discharge-fast", "discharge-part", "calculation", "pressure-late", "pressure-off", "overpressure", "throttle-no-flow", "nozzle-unconfirmed"} {
		if wrong[rule] {
			p.t.Errorf("the sheet finds %s, though the panel was worked without that error", rule)
		}
	}
	p.click("save")
	var saved string
	p.until("the saved sheet", 10, func() bool {
		files, _ := filepath.Glob(filepath.Join(p.dir, "data", "steadyneedle", "attempts", "sheet-*.html"))
		if len(files) == 0 {
			return false
		}
		text, _ := os.ReadFile(files[0])
		saved = string(text)
		return strings.Contains(saved, "</html>")
	})
	for _, want := range []string{"Ended early", "Training aid only", "<svg", "Discharge 1"} {
		if !strings.Contains(saved, want) {
			p.t.Errorf("the saved sheet lacks %q", want)
		}
	}
}
