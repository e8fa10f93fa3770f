package fireground

import (
	"math"
	"testing"

	"steadyneedle/sim/flownet"
	"steadyneedle/sim/hydraulics"
	"steadyneedle/sim/unit"
)

// TestTipFlow: 29.7 d² √NP against its own table [computed] within rounding, and against the
// Hydraulic Institute's table of theoretical discharge, C = 1.0 (Engineering Data Book, open
// repository hydraulic-institute/edb) within 1 %.
func TestTipFlow(t *testing.T) {
	for _, c := range []struct{ d, at50, hi50, at80, hi80 float64 }{
		{0.5, 52.5, 52.8, 66.4, 66.7}, {0.625, 82.0, 82.4, 103.8, 104.3}, {0.75, 118.1, 119, 149.4, 150},
		{0.875, 160.8, 162, 203.4, 204}, {0.9375, 184.6, 0, 233.5, 0}, {1, 210.0, 211, 265.6, 267},
		{1.125, 265.8, 267, 336.2, 338}, {1.25, 328.1, 330, 415.1, 417}, {1.375, 397.1, 399, 502.2, 505},
		{1.5, 472.5, 475, 597.7, 601}, {1.75, 643.2, 646, 813.5, 817}, {2, 840.0, 844, 1062.6, 1068},
	} {
		d := NozzleDef{TipIn: c.d}
		for _, x := range [][3]float64{{50, c.at50, c.hi50}, {80, c.at80, c.hi80}} {
			q := d.FlowGPM(x[0])
			if math.Abs(q-x[1]) > 0.06 {
				t.Errorf("tip %.4f at %.0f psi: %.2f gpm, want %.1f", c.d, x[0], q, x[1])
			}
			if x[2] > 0 && math.Abs(q/x[2]-1) > 0.01 {
				t.Errorf("tip %.4f at %.0f psi: %.1f gpm, Hydraulic Institute %.1f", c.d, x[0], q, x[2])
			}
		}
	}
}

// TestFogFlow: Q = Qr √(NP/NPr) [common practice].
func TestFogFlow(t *testing.T) {
	d := NozzleDef{RatedGPM: 150, RatedPSI: 100}
	if q := d.FlowGPM(100); math.Abs(q-150) > 1e-9 {
		t.Errorf("%.2f gpm at rated pressure, want 150", q)
	}
	if q := d.FlowGPM(64); math.Abs(q-120) > 1e-9 {
		t.Errorf("%.2f gpm at 64 psi, want 120", q)
	}
}

// TestReaction: 1.57 d² NP and 0.0505 Q √NP [common practice, in every handbook].
func TestReaction(t *testing.T) {
	tip := NozzleDef{TipIn: 1.125}
	if f := tip.ReactionLbf(50, tip.FlowGPM(50)); math.Abs(f-99.35) > 0.01 { // 99 lbf, the twenty numbers, no. 7
		t.Errorf("%.2f lbf, want 99.35", f)
	}
	fog := NozzleDef{RatedGPM: 150, RatedPSI: 100}
	if f := fog.ReactionLbf(100, 150); math.Abs(f-75.75) > 0.01 {
		t.Errorf("%.2f lbf, want 75.75", f)
	}
}

// TestFriction: FL = C (Q/100)² L/100. Examples: City of Rohnert Park, apparatus operator slides
// [read], and computed ones; the net must show the same loss as the formula.
func TestFriction(t *testing.T) {
	for _, c := range []struct{ c, q, feet, psi float64 }{
		{2, 200, 100, 8}, {2, 100, 300, 6}, {2, 200, 400, 32}, {2, 300, 200, 36}, {10, 150, 150, 33.75}, // Rohnert Park (rounds the last to 34)
		{15.5, 150, 200, 69.75}, {2, 200, 300, 24}, {0.2, 1000, 100, 20}, // computed
	} {
		q := unit.GPM(c.q).M3S()
		if psi := frictionR(c.c, c.feet) * q * q / unit.PaPerPSI; math.Abs(psi-c.psi) > 1e-9*c.psi {
			t.Errorf("C %.1f, %.0f gpm, %.0f ft: %.4f psi, want %.2f", c.c, c.q, c.feet, psi, c.psi)
		}
	}
}

// TestContent: 4.08 d² gal per 100 ft [computed]; 1½ in 9.2 gal, 1 in 4.1 gal (NWCG, Fireline
// Handbook table 3.1) [read].
func TestContent(t *testing.T) {
	for _, c := range []struct{ d, gal float64 }{{1.5, 9.2}, {1, 4.1}, {1.75, 12.5}, {2.5, 25.5}, {4, 65.3}, {5, 102}} {
		b := newBench(t, 50, 1e-5, HoseDef{SizeIn: c.d, LossC: 1, LengthFt: 100}, NozzleDef{TipIn: 1})
		if gal := float64(unit.GallonsOf(b.hose.Content())); math.Abs(gal-c.gal) > 0.06 {
			t.Errorf("100 ft of %.2f in hold %.2f gal, want %.1f", c.d, gal, c.gal)
		}
	}
}

// TestPumpDischargePressure runs the lays of the table PDP = NP + FL [computed] through the net:
// fed with that pressure, the nozzle shows its pressure.
func TestPumpDischargePressure(t *testing.T) {
	for _, c := range []struct {
		name      string
		hose      HoseDef
		nozzle    NozzleDef
		pdp, rise float64
	}{
		{"200 ft 1¾, fog 150 at 100", HoseDef{SizeIn: 1.75, LossC: 15.5, LengthFt: 200}, NozzleDef{RatedGPM: 150, RatedPSI: 100}, 169.75, 0},
		{"150 ft 1¾, 15/16 at 50", HoseDef{SizeIn: 1.75, LossC: 15.5, LengthFt: 150}, NozzleDef{TipIn: 0.9375, RatedPSI: 50}, 129.2, 0},
		{"200 ft 2½, 1⅛ at 50", HoseDef{SizeIn: 2.5, LossC: 2, LengthFt: 200}, NozzleDef{TipIn: 1.125, RatedPSI: 50}, 78.3, 0},
		{"250 ft 2½, 1¼ at 50", HoseDef{SizeIn: 2.5, LossC: 2, LengthFt: 250}, NozzleDef{TipIn: 1.25, RatedPSI: 50}, 103.8, 0},
		{"600 ft 2½, 1⅛ at 50", HoseDef{SizeIn: 2.5, LossC: 2, LengthFt: 600}, NozzleDef{TipIn: 1.125, RatedPSI: 50}, 134.8, 0},
		{"the same, 75 ft up at 0.434 psi/ft", HoseDef{SizeIn: 2.5, LossC: 2, LengthFt: 600}, NozzleDef{TipIn: 1.125, RatedPSI: 50}, 134.8 + 0.433*75, 75},
	} {
		b := newBench(t, c.pdp, 1e-9, c.hose, c.nozzle)
		b.valve = Valve{Law: hydraulics.Gate, R: 1e-9 * rUnit}
		b.hose.Lay(b.Net, c.hose, c.hose.LengthFt, c.rise, 0)
		b.nozzle.Set(1)
		for b.seconds < 300 {
			b.valve.Set(b.gate, b.seconds/4)
			b.step()
		}
		if np := b.nozzle.PSI(); math.Abs(np-c.nozzle.RatedPSI) > 0.15 {
			t.Errorf("%s: %.2f psi at the nozzle, want %.0f (filled %.4f, void %.5f)", c.name, np, c.nozzle.RatedPSI, b.hose.End.Filled(), b.VoidFraction(b.hose.End))
		}
		b.check(t)
	}
}

// TestHydrant: Q_R = Q_F (h_R/h_F)^0.54 (NFPA 291, read second-hand).
func TestHydrant(t *testing.T) {
	for _, c := range []struct{ static, residual, flow, at, want float64 }{
		{65, 50, 1000, 20, 1809.9}, // computed
		{80, 60, 1000, 20, 1809.9}, // computed
		{86, 42, 789, 20, 980},     // T. Kolb, water supply slides (rounded there)
		{86, 42, 789, 67, 500},     // the same
		{86, 42, 789, 46, 750},     // the same
	} {
		var b flownet.Builder
		air := b.Boundary("air", 0, 1)
		sink := b.Boundary("sink", c.at*unit.PaPerPSI, 0)
		h := AddHydrant(&b, HydrantDef{StaticPSI: c.static, ResidualPSI: c.residual, FlowGPM: c.flow}, air)
		out := b.Link(flownet.Link{Name: "out", From: h.Outlet, To: sink, R: 1e-10 * rUnit})
		n, err := b.Build()
		if err != nil {
			t.Fatal(err)
		}
		h.Set(1, false, 0)
		if !n.Settle() {
			t.Fatal("no steady state")
		}
		q := float64(unit.GPMOf(out.Q()))
		if math.Abs(q/c.want-1) > 0.015 {
			t.Errorf("%.0f/%.0f at %.0f: %.0f gpm at %.0f psi, want %.0f", c.static, c.residual, c.flow, q, c.at, c.want)
		}
	}
}

// TestHydrantFlush: an open 4½ in outlet flows freely and shows the barrel some pressure; capped, it
// stands at static.
func TestHydrantFlush(t *testing.T) {
	var b flownet.Builder
	air := b.Boundary("air", 0, 1)
	h := AddHydrant(&b, HydrantDef{StaticPSI: 65, ResidualPSI: 45, FlowGPM: 1000}, air)
	n, err := b.Build()
	if err != nil {
		t.Fatal(err)
	}
	run := func(open float64, toAir bool, seconds float64) {
		h.Set(open, toAir, 0)
		for range int(seconds * 240) {
			n.Step(1.0 / 240)
		}
	}
	run(1, true, 5)
	if q := float64(unit.GPMOf(h.Flush.WaterFlow())); q < 1200 || q > 1900 {
		t.Errorf("flushing at %.0f gpm, want what the main gives (0 psi at about 1830)", q)
	}
	run(1, false, 5)
	if p := float64(unit.PSIOf(h.Outlet.P)); math.Abs(p-65) > 0.5 {
		t.Errorf("capped outlet at %.2f psi, want static 65", p)
	}
	run(0, false, 20)
	if p := float64(unit.PSIOf(h.Outlet.P)); math.Abs(p-65) > 0.5 {
		t.Errorf("shut off and capped, the outlet at %.2f psi; water has nowhere to go", p)
	}
	if c := n.Counters(); c.CapMet > 0 {
		t.Errorf("cap met: %+v", c)
	}
}
