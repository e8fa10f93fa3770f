package cutaway

import (
	"image"
	"math"
	"testing"

	"steadyneedle/render/draw"
	"steadyneedle/render/stage"
	"steadyneedle/sim/unit"
)

// states are the corners of what can stand inside a pump.
func states() []State {
	list := []State{{HeadFactor: 1, AirFactor: 1}}
	for _, intake := range []float64{-12, 0, 80, 200} {
		for _, net := range []float64{0, 3, 60, 350} {
			for _, share := range []float64{0, 0.3, 1} {
				list = append(list, State{
					IntakePSI: intake, DischargePSI: intake + net, ShaftRPM: 2300 * share, HeadFactor: share, AirFactor: 1 - share/2, CasingWater: share,
					NPSHa: 40 * share, NPSHr: 12, PumpF: 60 + 150*share, IntakeGPM: 1800 * share, TankToPumpGPM: 600 * share, DischargeGPM: 2000 * share,
					ReliefGPM: 1450 * share, RecircGPM: 40 * share, TankFillGPM: 180 * share, ReliefLift: share, ReliefSetPSI: 280 * share,
					TankGal: 500 * share, TankShare: share, SupplyFill: share, Governor: share == 0.3, Draft: share == 1,
				})
			}
		}
	}
	// What a class must not see yet.
	return append(list, State{IntakePSI: math.NaN(), DischargePSI: math.NaN(), ShaftRPM: math.NaN(), HeadFactor: 1, AirFactor: 1, CasingWater: 1,
		NPSHa: math.NaN(), NPSHr: 12, PumpF: math.NaN(), IntakeGPM: 500, DischargeGPM: 500, TankGal: 400, TankShare: 0.8, SupplyFill: 1, ReliefHidden: true})
}

// Whatever the state, nothing is drawn outside of the box: no number runs over the edge.
func TestStaysInItsBox(t *testing.T) {
	sh := stage.NewShelf()
	for n := range 6 {
		text, two := []float64{22, 33, 33}[n%3], n >= 3
		d := New(draw.Rect{X: 60, Y: 60, W: 760, H: 530}, text, unit.System(n%3/2), two)
		inside := image.Rect(58, 58, 822, 592)
		for i, s := range states() {
			s.TransferAt = []float64{0, 1, 0.4}[i%3]
			s.Series = s.TransferAt
			var f stage.Frame
			f.Reset(1)
			d.Moving(sh, &f, &s)
			for k := range f.Sprites {
				if b := f.Sprites[k].Bounds(); !b.In(inside) {
					t.Errorf("type %v, two stages %v, state %d (%+v): drawn at %v, outside of %v", text, two, i, s, b, inside)
				}
			}
		}
	}
}

// Contours lie between the pressures at eye and rim, and are few enough to be read.
func TestContours(t *testing.T) {
	d := New(draw.Rect{W: 860, H: 570}, 26, unit.US, false)
	for _, s := range states() {
		list := contours(s.IntakePSI, s.DischargePSI, unit.US)
		if len(list) > 6 {
			t.Errorf("%d contours between %.0f and %.0f psi", len(list), s.IntakePSI, s.DischargePSI)
		}
		if s.DischargePSI-s.IntakePSI > 30 && len(list) == 0 {
			t.Errorf("no contour between %.0f and %.0f psi", s.IntakePSI, s.DischargePSI)
		}
		last := 0.0
		for _, psi := range list {
			r := d.radius(&d.plan.wheels[0], s.IntakePSI, s.DischargePSI, psi)
			if psi <= s.IntakePSI || psi >= s.DischargePSI || r <= last || r > rimR*d.k {
				t.Errorf("contour of %.0f psi at radius %.1f between %.0f and %.0f psi", psi, r, s.IntakePSI, s.DischargePSI)
			}
			last = r
		}
	}
}

// More pressure is never drawn paler.
func TestDeeperIsHigher(t *testing.T) {
	light := func(c draw.Color) float64 {
		return 0.2126*float64(c.R) + 0.7152*float64(c.G) + 0.0722*float64(c.B)
	}
	for i := 1; i <= levels; i++ {
		if light(water(i)) >= light(water(i-1)) {
			t.Errorf("step %d is not deeper than the one before", i)
		}
	}
	if level(math.Inf(1)) != levels || level(-15) != 0 {
		t.Error("pressures beyond the scale leave it")
	}
}

// Water runs where its flow takes it, and as far as its speed says; the wheel turns with the shaft.
func TestRuns(t *testing.T) {
	d := New(draw.Rect{W: 860, H: 570}, 26, unit.US, false)
	s := State{At: 10, IntakeGPM: 1000, TankToPumpGPM: -50, DischargeGPM: 1000, ShaftRPM: 1500, HeadFactor: 1, AirFactor: 1}
	d.advance(&s)
	s.At = 11
	d.advance(&s)
	// 1000 gpm in 5 in run at 16.3 ft/s (0.4085 Q/d² [C]); 154 units are a foot.
	if want := 0.4085 * 1000 / 25 * 154 / Slowed; math.Abs(d.run[0]-want) > 1e-9 {
		t.Errorf("the intake's water ran %.2f units, want %.2f", d.run[0], want)
	}
	if d.run[1] >= 0 {
		t.Error("water that runs back into the tank is drawn running out of it")
	}
	if want := -math.Mod(1500*6/Slowed, 360); math.Abs(math.Mod(d.turn-want, 360)) > 1e-9 {
		t.Errorf("the wheel turned by %.2f degrees, want %.2f", d.turn, want)
	}
	s.At = 3 // back in time
	was := d.turn
	d.advance(&s)
	if d.turn != was {
		t.Error("the wheel jumps when time goes back")
	}
}

// In a two-stage pump each impeller adds the whole rise side by side and half of it one behind the other, and
// what runs into each wheel runs out of it, however far the transfer valve has gone.
func TestTwoStages(t *testing.T) {
	p := double()
	list := flowsOf(p)
	speed := func(w *way, s *State) float64 {
		for i := range list {
			if list[i].way == w {
				return list[i].speed(s)
			}
		}
		t.Fatal("nothing runs there")
		return 0
	}
	for _, series := range []float64{0, 0.1, 0.5, 1} {
		s := State{IntakePSI: 20, DischargePSI: 220, DischargeGPM: 600, ReliefGPM: 50, RecircGPM: 10, TransferAt: series, Series: series}
		eye1, rim1 := s.stage(0, true)
		eye2, rim2 := s.stage(1, true)
		if eye1 != 20 || rim2 != 220 || math.Abs((rim1-eye1)-(rim2-eye2)) > 1e-9 || math.Abs(rim1-20-200/(1+series)) > 1e-9 {
			t.Errorf("series %g: from %.0f to %.0f and from %.0f to %.0f psi", series, eye1, rim1, eye2, rim2)
		}
		low, high, second := speed(&p.low, &s), speed(&p.high, &s), speed(&p.second, &s)
		cross, branch := speed(&p.cross, &s), speed(&p.behind, &s)
		whole := 0.4085 * 660 / (3.5 * 3.5) * 154 / Slowed // [C] by the bore that is assumed for all of them
		for what, d := range map[string]float64{"at the transfer valve": low - high - cross, "at the second impeller": cross + branch - second, "at the discharge": high + second - whole} {
			if math.Abs(d) > 1e-9 {
				t.Errorf("series %g: %.3f is lost %s", series, d, what)
			}
		}
		if branch < 0 || series == 1 && branch != 0 || series == 0 && cross != 0 {
			t.Errorf("series %g: %.1f run past the first impeller, %.1f across", series, branch, cross)
		}
	}
}

func BenchmarkMoving(b *testing.B) {
	d := New(draw.Rect{W: 760, H: 510}, 26, unit.US, false)
	sh := stage.NewShelf()
	var f stage.Frame
	s := State{HeadFactor: 0.8, AirFactor: 1, CasingWater: 1, NPSHa: 10, NPSHr: 9, IntakeGPM: 900, DischargeGPM: 900, ReliefGPM: 100, ReliefLift: 0.2, ShaftRPM: 1500, DischargePSI: 150, IntakePSI: 10}
	i := 0
	for b.Loop() {
		i++
		s.At += 1.0 / 30
		s.DischargePSI = 150 + 20*math.Sin(float64(i)/40)
		f.Reset(1)
		d.Moving(sh, &f, &s)
	}
	b.ReportMetric(float64(len(f.Sprites)), "sprites")
}
