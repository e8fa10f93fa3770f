package fireground

import (
	"math"
	"testing"

	"steadyneedle/sim/unit"
)

var supply4 = HoseDef{SizeIn: 4, LossC: 0.2, LengthFt: 25}

// TestDeadEndDoesNotRing charges a supply hose to a shut intake: without damping of storage it rings
// for twelve seconds (seen in a trial, assumption). Three seconds after it is full it must stand.
func TestDeadEndDoesNotRing(t *testing.T) {
	for _, feet := range []float64{15, 25, 50} {
		def := supply4
		def.LengthFt = feet
		b := newBench(t, 65, 2e-5, def, NozzleDef{TipIn: 1, RatedPSI: 50})
		for b.hose.Filling() {
			b.valve.Set(b.gate, min(b.seconds/8, 1))
			if b.step(); b.seconds > 30 {
				t.Fatal("it doesn't fill")
			}
		}
		b.run(3)
		low, high := math.Inf(1), math.Inf(-1)
		for range 480 {
			b.step()
			low, high = min(low, b.endPSI()), max(high, b.endPSI())
		}
		t.Logf("%.0f ft: between %.2f and %.2f psi from 3 s to 5 s", feet, low, high)
		if high-low > 1 || math.Abs(high-65) > 1 {
			t.Errorf("%.0f ft of supply hose still swings between %.1f and %.1f psi", feet, low, high)
		}
		b.check(t)
	}
}

// TestCollapse draws more from a soft supply hose than its source gives: it goes flat, lets air in,
// and the pressure stays above the vapor limit; hard suction under the same pull stays round.
func TestCollapse(t *testing.T) {
	for _, hard := range []bool{false, true} {
		def := supply4
		def.Hard = hard
		b := newBench(t, 10, 4e-4, def, NozzleDef{TipIn: 1, RatedPSI: 50})
		b.valve.Set(b.gate, 1)
		b.run(10)
		b.SetAir(b.hose.End, 1e-6)
		b.run(10)
		draw := 700 * unit.M3SPerGPM // the source gives some 158 gpm at no pressure
		low := 0.0
		for range 240 * 4 {
			b.hose.Update(b.Net)
			// The pull gives way as a pump does, when nothing but vapor comes.
			b.hose.End.WaterIn = -draw * max(0, 1-b.VoidFraction(b.hose.End)) * min(max((b.endPSI()+14)/10, 0), 1)
			b.hose.InLeak(1)
			b.Step(b.dt)
			low = min(low, b.endPSI())
		}
		end := b.hose.End
		t.Logf("hard %v: filled %.2f, %.1f psi (lowest %.1f), air %.2f L, %.0f gpm, %+v", hard, end.Filled(), b.endPSI(), low, end.Air*1000, b.gpm(), b.Counters())
		if low < -14.4 {
			t.Errorf("%.1f psi is below the vapor limit", low)
		}
		if !hard && (end.Filled() > 0.3 || end.Air < 8e-4) {
			t.Errorf("soft hose: filled %.2f with %.2f L of air, want it flat and drawing air", end.Filled(), end.Air*1000)
		}
		if hard && (end.Air > 5e-4 || b.endPSI() > -5) {
			t.Errorf("hard suction: %.2f L of air at %.1f psi, want none in and a vacuum", end.Air*1000, b.endPSI())
		}
		b.check(t)

		end.WaterIn = 0
		b.run(30)
		if b.endPSI() < 9 {
			t.Errorf("hard %v: %.1f psi after the pull has gone, want it to recover to 10", hard, b.endPSI())
		}
		b.check(t)
	}
}
