package rig

import (
	"testing"

	"steadyneedle/sim/unit"
)

type hands struct{ pump, drive bool }

func runDrive(d *Drive, seconds, rpm float64, h hands) {
	for range int(seconds * 240) {
		d.Step(step, unit.RPM(rpm).RadS(), h.pump, h.drive)
	}
}

func newDrive() Drive { return NewDrive(Default().Drive, Default().Engine) }

// Source: from memory, pump shift 2–5 s.
func TestShiftTakesItsTime(t *testing.T) {
	d := newDrive()
	seconds := 0.0
	for ; !d.Engaged() && seconds < 10; seconds += step {
		d.Step(step, unit.RPM(700).RadS(), true, false)
	}
	if seconds < 2 || seconds > 5 || d.Clashes() != 0 {
		t.Errorf("shift took %.1f s with %v clashes", seconds, d.Clashes())
	}
	if d.Ready(true, true) {
		t.Error("ready before the transmission has taken hold")
	}
	runDrive(&d, 2, 700, hands{true, true})
	if !d.Ready(true, true) || d.Ready(true, false) || d.Ready(false, true) {
		t.Error("ready needs pump gear, drive and parking brake, all three")
	}
	if d.Shaft() != unit.RPM(700).RadS() {
		t.Error("the shaft does not turn with the engine")
	}
}

func TestThrottleInterlock(t *testing.T) {
	d := newDrive()
	if d.Throttle(0.5, false) != 0 || d.Throttle(0.5, true) != 0.5 {
		t.Error("the interlock must block the throttle until the pump is ready, and only then")
	}
	def := Default()
	def.Drive.FreeThrottle = true
	free := NewDrive(def.Drive, def.Engine)
	if free.Throttle(0.5, false) != 0.5 {
		t.Error("a free throttle is blocked")
	}
}

// Wind-down about 5 s (from memory: 3–6 s); a shift while the shaft turns grinds once and waits.
func TestWindDownAndClash(t *testing.T) {
	d := newDrive()
	runDrive(&d, 4, 700, hands{true, false})
	runDrive(&d, 2, 700, hands{true, true})
	seconds := 0.0
	for ; d.Shaft() > 0 && seconds < 20; seconds += step {
		d.Step(step, unit.RPM(700).RadS(), true, false)
	}
	if seconds < 3 || seconds > 6 {
		t.Errorf("the shaft ran down in %.1f s", seconds)
	}
	runDrive(&d, 2, 700, hands{true, true})
	runDrive(&d, 1, 700, hands{false, false}) // too soon
	if d.Clashes() != 1 || !d.Engaged() {
		t.Errorf("shifting with the shaft turning: %v clashes, engaged %v", d.Clashes(), d.Engaged())
	}
	runDrive(&d, 8, 700, hands{false, false})
	if d.Engaged() || d.Clashes() != 1 {
		t.Errorf("after the shaft stood: engaged %v, %v clashes", d.Engaged(), d.Clashes())
	}
}

func TestShiftInDriveClashes(t *testing.T) {
	d := newDrive()
	runDrive(&d, 5, 700, hands{true, true})
	if d.Clashes() != 1 || d.Engaged() {
		t.Errorf("shift in drive: %v clashes, engaged %v", d.Clashes(), d.Engaged())
	}
	d = newDrive()
	runDrive(&d, 1, 700, hands{true, false})
	runDrive(&d, 5, 700, hands{true, true}) // drive before the shift was completed
	if d.Clashes() != 1 || d.Engaged() {
		t.Errorf("drive before the lamp: %v clashes, engaged %v", d.Clashes(), d.Engaged())
	}
}

// Load on the engine is the pump's power and 3 % (assumption), at the shaft's speed.
func TestDriveLoad(t *testing.T) {
	d := newDrive()
	runDrive(&d, 4, 700, hands{true, false})
	runDrive(&d, 3, 1520, hands{true, true})
	w := unit.RPM(1520).RadS()
	if got, want := d.Load(w, 100e3, true, false)*w, 100e3/0.97; got < want-1 || got > want+1 {
		t.Errorf("engine gives %.0f W for 100000 W at the pump, want %.0f", got, want)
	}
}
